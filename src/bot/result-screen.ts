/** The result in words: the name, how sure, why, and what would settle it. */
import type {ResultView, SizeView} from '../find/result.ts';
import type {Say} from '../text/text.ts';

/** The lines of a result, each a paragraph. */
export function resultText(view: ResultView, say: Say): string {
	const paragraphs = [
		headline(view, say),
		sizeText(view, {say, which: 'length'}),
		sizeText(view, {say, which: 'width'}),
		seenText(view.seenFor, {say, message: 'result-for'}),
		seenText(view.seenAgainst, {say, message: 'result-against'}),
		view.unusual.length === 0
			? ''
			: say.say('result-unusual', {names: view.unusual.map(taxon => say.say(`taxon-${taxon}`)).join(', ')}),
		settlesText(view.settles, say),
		view.leaveIt !== undefined && say.has(`leave-${view.leaveIt}`) ? say.say(`leave-${view.leaveIt}`) : '',
		factText(view, say),
		view.doubt ? say.say('result-doubt') : '',
		say.say('result-not-final'),
	];
	return paragraphs.filter(line => line !== '').join('\n\n');
}

function headline(view: ResultView, say: Say): string {
	const {sure, names} = view;
	const [best] = names;
	if (sure === 'unknown' || !best) return say.say('sure-unknown');
	const values = names.map(one => ({
		taxon: one.taxon,
		name: say.say(`taxon-${one.taxon}`),
		scientific: one.scientificName,
		// Nothing is ever said to be certain.
		percent: String(Math.min(99, Math.max(1, one.percent))),
	}));
	if (sure === 'shortlist') {
		const lines = values.map(one =>
			[say.say('result-name', one), ...rangeTexts(view, {say, taxon: one.taxon})].join('. '),
		);
		const rest =
			view.elsePercent === undefined ? [] : [say.say('result-else', {percent: String(view.elsePercent)})];
		return [say.say('sure-shortlist'), ...[...lines, ...rest].map(line => `• ${line}`)].join('\n');
	}
	const [only] = values;
	return only ? `${say.say(`sure-${sure}`, only)}\n${say.say('result-scientific', only)}` : '';
}

/** The size as it counts and, beside a single name, its range with what that is worth. */
function sizeText(view: ResultView, {say, which}: {say: Say; which: 'length' | 'width'}): string {
	const size: SizeView | undefined = view[which];
	if (!size) return '';
	const because = size.lowerBound.map(reason => say.say(`because-${reason}`)).join('; ');
	const measured =
		because === ''
			? say.say(`result-${which}`, {mm: size.mm, plusMinus: size.plusMinusMm})
			: say.say(`result-${which}-least`, {mm: size.mm, because});
	const [only] = view.names;
	if (view.sure === 'shortlist' || !only) return measured;
	return [
		measured,
		...rangeTexts(which === 'length' ? {length: size, width: undefined} : {length: undefined, width: size}, {
			say,
			taxon: only.taxon,
		}),
	].join(' ');
}

/** The ranges of one name against what was measured, and whether anybody published them. */
function rangeTexts(
	view: Pick<ResultView, 'length' | 'width'>,
	{say, taxon}: {say: Say; taxon: string},
): readonly string[] {
	return (['length', 'width'] as const).flatMap(which => {
		const range = view[which]?.candidates.find(candidate => candidate.taxon === taxon);
		if (!range) return [];
		const [low, high] = [Math.round(range.lowMm), Math.round(range.highMm)];
		const values = {
			range: say.say('result-range', {low, high, ends: low === high ? 'one' : 'two'}),
			worth: range.fromMemory ? 'memory' : 'published',
			fits: range.fits ? 'yes' : 'no',
		};
		return [say.say(`result-range-${which}`, values)];
	});
}

function seenText(
	seen: readonly {readonly character: string; readonly state: string}[],
	{say, message}: {say: Say; message: string},
): string {
	if (seen.length === 0) return '';
	return say.say(message, {seen: seen.map(one => say.say(`seen-${one.character}-${one.state}`)).join('; ')});
}

function settlesText(settles: string | undefined, say: Say): string {
	if (settles === undefined) return '';
	if (['length', 'width', 'photo'].includes(settles)) return say.say(`result-settles-${settles}`);
	return say.say('result-settles-character', {what: say.say(`name-${settles}`)});
}

function factText({fact}: ResultView, say: Say): string {
	if (!fact) return '';
	const {citation, page = '', fromMemory} = fact;
	if (fromMemory) return say.say('result-fact-memory', {fact: say.say(`fact-${fact.taxon}`)});
	// A page may also be named: the abstract, a table.
	const where = /^\d/.test(page) ? `p. ${page}` : page;
	const source = [citation, where].filter(part => part !== '').join(', ');
	return say.say('result-fact', {fact: say.say(`fact-${fact.taxon}`), source});
}
