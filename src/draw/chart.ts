/** What charts and maps have in common: a heading, and the same facts in words for those who see no picture. */
import {drawLines, lineHeight, wrapWords} from './lettering.ts';
import {card, colours, letters} from './palette.ts';
import {type Drawn, onCard} from './picture.ts';

/** A chart: `alt` says in a sentence or two what it shows, `plain` holds every figure of it, line by line. */
export type Chart = Drawn & {readonly alt: string; readonly plain: string};

/** How wide the inside of a chart is, in units. */
export const innerWidth = card.widthUnits - 2 * card.margin;

/** A heading over as many lines as it takes; `footUnits` is where what is below may begin. */
export function drawHeading(heading: string): {readonly svg: string; readonly footUnits: number} {
	const set = {size: letters.large, weight: 'bold'} as const;
	const words = wrapWords(heading, innerWidth, set);
	const svg = drawLines(words, {...set, x: card.margin, y: card.margin + letters.large});
	return {svg, footUnits: card.margin + words.length * letters.large * lineHeight + 14};
}

/** Quiet small words from `topUnits` down, and where they end. */
export function drawNote(note: string, topUnits: number): {readonly svg: string; readonly footUnits: number} {
	const words = wrapWords(note, innerWidth, {size: letters.small});
	const placed = {size: letters.small, x: card.margin, y: topUnits + letters.small, fill: colours.quiet};
	return {svg: drawLines(words, placed), footUnits: topUnits + words.length * letters.small * lineHeight + 8};
}

/** Puts a chart on its card. */
export function chartOf(parts: {
	readonly inside: string;
	readonly heightUnits: number;
	readonly alt: string;
	readonly plain: readonly string[];
}): Chart {
	const {alt} = parts;
	return {
		...onCard(parts.inside, {heightUnits: parts.heightUnits, title: alt}),
		alt,
		plain: parts.plain.join('\n'),
	};
}

/** The chart of nothing: its heading, and that there is nothing yet. */
export function emptyChart(heading: string, nothing: string): Chart {
	const head = drawHeading(heading);
	const note = drawNote(nothing, head.footUnits);
	return chartOf({
		inside: head.svg + note.svg,
		heightUnits: note.footUnits + card.margin,
		alt: `${heading}: ${nothing}`,
		plain: [heading, nothing],
	});
}
