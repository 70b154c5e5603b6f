/** A tally as bars lying on their side: what was found, most first, with a small drawing of each kind. */
import type {Say} from '../text/text.ts';
import {type Chart, chartOf, drawHeading, drawNote, emptyChart, innerWidth} from './chart.ts';
import {drawLines, drawWords, lineHeight, widthOfWords, wrapWords} from './lettering.ts';
import {card, colours, letters, lines} from './palette.ts';
import type {Drawing} from './profile.ts';

/** How many cases of one kind were found. */
export type Bar = {
	readonly label: string;
	readonly scientificName?: string | undefined;
	readonly count: number;
	/** Shown 92 units wide or high. */
	readonly drawing?: Drawing | undefined;
};

/** More, and nobody reads to the end. */
const mostBars = 20;
/** Up to so many kinds have room for their scientific names; beyond, those stand in `plain` alone. */
const mostWithScience = 8;
/** How wide or high the drawing beside a bar is, in units. */
export const barDrawingUnits = 92;
const barHeight = 24;

/** Draws bars, largest first and all in one scale; beyond 20 kinds a last line says how many more there are. */
export function drawBars(parts: {
	readonly heading: string;
	readonly bars: readonly Bar[];
	readonly say: Say;
}): Chart {
	const {heading, say} = parts;
	const bars = sorted(parts.bars, say);
	const [first] = bars;
	if (!first) return emptyChart(heading, say.say('chart-nothing'));
	const shown = bars.slice(0, mostBars);
	const rest = bars.slice(mostBars);
	const head = drawHeading(heading);
	const rows: string[] = [head.svg];
	let foot = head.footUnits;
	for (const bar of shown) {
		const row = drawRow(bar, {
			top: foot,
			share: bar.count / first.count,
			hasDrawings: shown.some(({drawing}) => drawing !== undefined),
			hasScience: shown.length <= mostWithScience,
		});
		rows.push(row.svg);
		foot = row.foot;
	}
	if (rest.length > 0) {
		const note = drawNote(say.say('bars-more', {kinds: rest.length, cases: sumOf(rest)}), foot);
		rows.push(note.svg);
		foot = note.footUnits;
	}
	const values = {kinds: bars.length, cases: sumOf(bars), label: first.label, most: first.count};
	return chartOf({
		inside: rows.join('\n'),
		heightUnits: foot + card.margin - 8,
		alt: `${heading}. ${say.say('bars-alt', values)}`,
		plain: [heading, ...bars.map(lineOf)],
	});
}

function sorted(bars: readonly Bar[], say: Say): readonly Bar[] {
	const byName = new Intl.Collator(say.language);
	return bars
		.filter(({count}) => count > 0)
		.toSorted((a, b) => b.count - a.count || byName.compare(a.label, b.label));
}

function sumOf(bars: readonly Bar[]): number {
	return bars.reduce((sum, {count}) => sum + count, 0);
}

function lineOf({label, scientificName, count}: Bar): string {
	return scientificName === undefined ? `${label}: ${count}` : `${label} (${scientificName}): ${count}`;
}

type Row = {
	readonly top: number;
	/** Of the largest bar, from 0 to 1. */
	readonly share: number;
	readonly hasDrawings: boolean;
	readonly hasScience: boolean;
};

function drawRow(
	bar: Bar,
	{top, share, hasDrawings, hasScience}: Row,
): {readonly svg: string; readonly foot: number} {
	const x = card.margin + (hasDrawings ? barDrawingUnits + 18 : 0);
	const width = card.margin + innerWidth - x;
	const countSet = {size: letters.plain, weight: 'bold'} as const;
	const countWidth = widthOfWords(String(bar.count), countSet);
	const words: string[] = [];
	let foot = top + 4;
	const write = (text: string, set: {size: number; fill: string}) => {
		const wrapped = wrapWords(text, width, set);
		words.push(drawLines(wrapped, {...set, x, y: foot + set.size}));
		foot += wrapped.length * set.size * lineHeight;
	};
	write(bar.label, {size: letters.plain, fill: colours.ink});
	if (hasScience && bar.scientificName !== undefined) {
		write(bar.scientificName, {size: letters.small, fill: colours.quiet});
	}
	// The count follows its bar, so the longest bar leaves it room.
	const length = Math.max(6, share * (width - countWidth - 16));
	const barTop = foot + 12;
	const y = barTop + barHeight - 1;
	const svg = [
		...words,
		`<rect x="${x}" y="${barTop}" width="${length.toFixed(1)}" height="${barHeight}" fill="${colours.capsule}" stroke="${colours.ink}" stroke-width="${lines.thin}"/>`,
		drawWords(String(bar.count), {...countSet, x: x + length + 14, y}),
	];
	const end = barTop + barHeight + 22;
	if (bar.drawing) svg.push(drawSmall(bar.drawing, (top + end - 14) / 2));
	return {svg: svg.join('\n'), foot: end};
}

/** Fits a drawing into its square left of the bar. */
function drawSmall({svg, box}: Drawing, middle: number): string {
	const top = middle - barDrawingUnits / 2;
	const place = `x="${card.margin}" y="${top.toFixed(1)}" width="${barDrawingUnits}" height="${barDrawingUnits}"`;
	const view = [box.left, box.top, box.right - box.left, box.bottom - box.top].join(' ');
	return `<svg ${place} viewBox="${view}">${svg}</svg>`;
}
