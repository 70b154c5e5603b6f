/** Questions about a case that looks like another: they say which, and whether its name holds. */
import {misfitOf} from '../find/alike.ts';
import type {Ask, Line} from '../find/question.ts';
import type {Standing} from '../find/stand.ts';
import {draftSchema} from '../record/draft.ts';
import {draftOfFind} from '../store/drafts.ts';
import type {FindRow} from '../store/finds.ts';
import {type Desk, readerAt, shelfOf} from './desk.ts';
import {draftName} from './draft-card.ts';

/** The question as it is asked about this find; any other find's stays as it is. */
export async function alikeAsk(
	desk: Desk,
	row: FindRow,
	{ask, standing}: {readonly ask: Ask; readonly standing: Standing},
): Promise<Ask> {
	const {alike} = standing.facts;
	if (alike === undefined) return ask;
	const brief: Ask = ask.result ? {...ask, isBrief: true} : ask;
	const model = await draftOfFind(desk.tx, alike, draftSchema);
	if (ask.lead || model?.kind !== 'draft') return brief;
	const {say} = readerAt(desk, row.region);
	const values = {number: String(alike), name: draftName(model.body, say)};
	if (ask.kind === 'length') {
		// How to measure was said for the first; what is noted of a dry one is said each time.
		const isSoaked = standing.facts.soak === 'soaked';
		return {
			...ask,
			lead: {message: 'sort-as', values},
			...(isSoaked ? {text: {message: 'sort-length'}} : {}),
		};
	}
	const [taxon, ...others] = model.body.said;
	if (!ask.result || taxon === undefined || others.length > 0) return brief;
	const lead = misfitLine(desk, row, {standing, taxon, values});
	return lead ? {...brief, lead} : brief;
}

function misfitLine(
	desk: Desk,
	row: FindRow,
	found: {readonly standing: Standing; readonly taxon: string; readonly values: Line['values']},
): Line | undefined {
	const {flow} = shelfOf(desk.house, row.region);
	const misfit = misfitOf(flow.region, found.standing, found.taxon);
	if (!misfit) return undefined;
	if (misfit.kind === 'name') return {message: 'sort-misfit-name', values: {...found.values}};
	return {
		message: 'sort-misfit-length',
		values: {...found.values, low: misfit.lowMm, high: misfit.highMm},
	};
}
