/** The result in words: the name, how sure, why, and what would settle it. */
import type {ResultView, SizeView} from '../find/result.ts';
import type {Say} from '../text/text.ts';

/** The lines of a result, each a paragraph. */
export function resultText(view: ResultView, say: Say): string {
	const name = (taxon: string) => say.say(`taxon-${taxon}`);
	const paragraphs = [
		headline(view, say),
		...sizeLines(view.length, {say, which: 'length'}),
		...sizeLines(view.width, {say, which: 'width'}),
		seenLine(view.seenFor, {say, message: 'result-for'}),
		seenLine(view.seenAgainst, {say, message: 'result-against'}),
		settlesLine(view.settles, say),
		view.leaveIt !== undefined && say.has(`leave-${view.leaveIt}`) ? say.say(`leave-${view.leaveIt}`) : '',
		factLine(view, say),
		view.doubt ? say.say('result-doubt') : '',
		say.say('result-not-final'),
	];
	return paragraphs.filter(line => line !== '').join('\n\n');

	function headline({sure, names}: ResultView, words: Say): string {
		const [best] = names;
		if (sure === 'unknown' || !best) return words.say('sure-unknown');
		if (sure === 'shortlist') {
			const list = names.map(one =>
				words.say('result-name', {
					name: name(one.taxon),
					scientific: one.scientificName,
					percent: percentText(one.percent),
				}),
			);
			return [words.say('sure-shortlist'), ...list.map(line => `• ${line}`)].join('\n');
		}
		const scientific = words.say('result-scientific', {
			scientific: best.scientificName,
			percent: percentText(best.percent),
		});
		return `${words.say(`sure-${sure}`, {name: name(best.taxon)})}\n${scientific}`;
	}
}

/** Nothing is ever said to be certain. */
function percentText(percent: number): string {
	return String(Math.min(99, Math.max(1, percent)));
}

function sizeLines(
	size: SizeView | undefined,
	{say, which}: {say: Say; which: 'length' | 'width'},
): readonly string[] {
	if (!size) return [];
	const isLeast = size.lowerBound.length > 0;
	const because = size.lowerBound.length > 1 ? 'both' : (size.lowerBound[0] ?? 'dry');
	const first = isLeast
		? say.say(`result-${which}-least`, {mm: size.mm, because: say.say(`because-${because}`)})
		: say.say(`result-${which}`, {mm: size.mm, plusMinus: size.plusMinusMm});
	const ranges = size.candidates.map(candidate =>
		say.say(`result-range-${which}`, {
			name: say.say(`taxon-${candidate.taxon}`),
			low: candidate.lowMm,
			high: candidate.highMm,
			fits: candidate.fits ? 'yes' : 'no',
		}),
	);
	return [[first, ...ranges.map(line => `• ${line}`)].join('\n')];
}

function seenLine(
	seen: readonly {readonly character: string; readonly state: string}[],
	{say, message}: {say: Say; message: string},
): string {
	if (seen.length === 0) return '';
	return say.say(message, {seen: seen.map(one => say.say(`seen-${one.character}-${one.state}`)).join('; ')});
}

function settlesLine(settles: string | undefined, say: Say): string {
	if (settles === undefined) return '';
	if (settles === 'length' || settles === 'width') return say.say(`result-settles-${settles}`);
	return say.say('result-settles-character', {what: say.say(`name-${settles}`)});
}

function factLine({fact}: ResultView, say: Say): string {
	if (!fact) return '';
	const source = fact.page === undefined ? fact.citation : `${fact.citation}, p. ${fact.page}`;
	return say.say('result-fact', {fact: say.say(`fact-${fact.taxon}`), source});
}
