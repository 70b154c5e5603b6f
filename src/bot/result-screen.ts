/** The result in words: the name, how sure, why, and what would settle it. */
import type {NameView, ResultView, SizeView} from '../find/result.ts';
import type {Say} from '../text/text.ts';

/** The lines of a result, each a paragraph; in brief only the name, how sure, and what was measured. */
export function resultText(view: ResultView, say: Say, how: 'whole' | 'brief' = 'whole'): string {
	const sizes = [sizeText(view, {say, which: 'length'}), sizeText(view, {say, which: 'width'})];
	const first = [headline(view, say), alsoText(view, say), sizes.filter(line => line !== '').join('\n')];
	const paragraphs = how === 'brief' ? first : [...first, ...restOf(view, say)];
	return paragraphs.filter(line => line !== '').join('\n\n');
}

function restOf(view: ResultView, say: Say): readonly string[] {
	return [
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
}

function headline(view: ResultView, say: Say): string {
	const {sure, names} = view;
	const [best] = names;
	if (sure === 'unknown' || !best) return say.say('sure-unknown');
	const values = names.map(one => valuesOf(one, say));
	if (sure === 'shortlist') {
		const lines = values.map(one =>
			[say.say('result-name', one), ...rangeTexts(view, {say, taxon: one.taxon})].join('. '),
		);
		const rest =
			view.elsePercent === undefined ? [] : [say.say('result-else', {percent: spoken(view.elsePercent)})];
		return [say.say('sure-shortlist'), ...[...lines, ...rest].map(line => `• ${line}`)].join('\n');
	}
	const [only] = values;
	return only ? `${say.say(`sure-${sure}`, only)}\n${say.say('result-scientific', only)}` : '';
}

function valuesOf({taxon, scientificName, percent}: NameView, say: Say) {
	return {taxon, name: say.say(`taxon-${taxon}`), scientific: scientificName, percent: spoken(percent)};
}

/** A share in 100 as it is said: nothing is ever certain, and nothing said is impossible. */
export function spoken(percent: number): string {
	return String(Math.min(99, Math.max(1, percent)));
}

/** What is possible beside the one name, or what comes nearest where there is none. */
function alsoText(view: ResultView, say: Say): string {
	const also = view.also.map(one => say.say('result-also-name', valuesOf(one, say)));
	const isElse = view.sure !== 'shortlist' && view.sure !== 'unknown' && view.elsePercent !== undefined;
	const names = isElse ? [...also, say.say('result-also-else')] : also;
	if (names.length === 0) return '';
	const message = view.sure === 'unknown' ? 'result-nearest' : 'result-also';
	return say.say(message, {names: names.join(', ')});
}

/** The size as it counts and, beside a single name, its range with what that is worth. */
function sizeText(view: ResultView, {say, which}: {say: Say; which: 'length' | 'width'}): string {
	const size: SizeView | undefined = view[which];
	if (!size) return '';
	const {each} = size;
	const span = each && {
		count: each.count,
		least: Math.round(each.leastMm),
		most: Math.round(each.mostMm),
	};
	const because = size.lowerBound.map(reason => say.say(`because-${reason}`)).join('; ');
	const told =
		because === ''
			? say.say(`result-${which}`, {mm: size.mm, plusMinus: size.plusMinusMm})
			: say.say(`result-${which}-least`, {mm: size.mm, because});
	const measured = span ? `${say.say('result-each', span)} ${told}` : told;
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

/** What was seen, in one sentence; nothing when nothing was. */
export function seenText(
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
