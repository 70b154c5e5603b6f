/** Finds month by month: a row of upright bars for each kind, or one for all. */
import type {Say} from '../text/text.ts';
import {type Chart, chartOf, drawHeading, emptyChart, innerWidth} from './chart.ts';
import {drawWords, lineHeight, widthOfWords, wrapWords} from './lettering.ts';
import {card, colours, letters, lines} from './palette.ts';

/** A month of a year, 1 to 12. */
export type Month = {readonly year: number; readonly month: number};

/** Counts of one kind, one for each month of the chart, in its order. */
export type MonthRow = {readonly label: string; readonly counts: readonly number[]};

/** What a chart of months is drawn from: up to twelve months one after another, up to six rows. */
export type MonthParts = {
	readonly heading: string;
	readonly months: readonly Month[];
	readonly rows: readonly MonthRow[];
	readonly say: Say;
};

const mostMonths = 12;
const mostRows = 6;
const tallestBar = 150;

/** Draws the rows in one scale, so that they can be compared; throws when months and counts do not go together. */
export function drawMonths(parts: MonthParts): Chart {
	const {heading, months, rows, say} = parts;
	expectFit(parts);
	const most = Math.max(0, ...rows.flatMap(({counts}) => counts));
	if (most === 0) return emptyChart(heading, say.say('chart-nothing'));
	const head = drawHeading(heading);
	const drawn: string[] = [head.svg];
	let foot = head.footUnits;
	for (const row of rows) {
		const {svg, footUnits} = drawRow(row, {months, most, top: foot, language: say.language});
		drawn.push(svg);
		foot = footUnits;
	}
	const nameOf = monthNames(say.language, 'long');
	return chartOf({
		inside: drawn.join('\n'),
		heightUnits: foot + card.margin - 18,
		alt: `${heading}. ${rows.map(row => altOf(row, parts, nameOf)).join(' ')}`,
		plain: [
			heading,
			...rows.flatMap(({label, counts}) => [
				label,
				...months.map((month, at) => `${nameOf(month)}: ${counts[at] ?? 0}`),
			]),
		],
	});
}

function expectFit({months, rows}: MonthParts): void {
	if (months.length < 1 || months.length > mostMonths) {
		throw new Error(`Expected 1 to ${mostMonths} months in a chart; got ${months.length}`);
	}
	if (rows.length > mostRows)
		throw new Error(`Expected at most ${mostRows} rows in a chart of months; got ${rows.length}`);
	for (const [index, {year, month}] of months.entries()) {
		const first = months[0] ?? {year, month};
		if (year * 12 + month !== first.year * 12 + first.month + index || !(month >= 1 && month <= 12)) {
			throw new Error(
				`Expected months one after another; got month ${month} of ${year} as number ${index + 1}`,
			);
		}
	}
	for (const {label, counts} of rows) {
		if (counts.length !== months.length || !counts.every(count => Number.isInteger(count) && count >= 0)) {
			throw new Error(`Expected ${months.length} counts of "${label}"; got ${counts.join(', ')}`);
		}
	}
}

function altOf(
	{label, counts}: MonthRow,
	{months, say}: MonthParts,
	nameOf: (month: Month) => string,
): string {
	const most = Math.max(...counts);
	const at = months[counts.indexOf(most)];
	const total = counts.reduce((sum, count) => sum + count, 0);
	return say.say('months-alt', {label, total, most, month: at && total > 0 ? nameOf(at) : ''});
}

type RowPlace = {
	readonly months: readonly Month[];
	readonly most: number;
	readonly top: number;
	readonly language: string;
};

function drawRow(
	{label, counts}: MonthRow,
	{months, most, top, language}: RowPlace,
): {readonly svg: string; readonly footUnits: number} {
	const words = wrapWords(label, innerWidth, {size: letters.plain});
	const step = innerWidth / Math.max(months.length, 4);
	const nameOf = shortNames(language, step, months);
	const isUpright = counts.some(count => widthOfWords(String(count), {size: letters.small}) > step - 6);
	// Numbers too wide for their month stand on end above the bar.
	const numberHeight = isUpright ? widthOfWords(String(most), {size: letters.small}) + 8 : letters.small;
	const labelFoot = top + words.length * letters.plain * lineHeight;
	const base = labelFoot + numberHeight + 18 + tallestBar;
	const svg = words.map((line, index) =>
		drawWords(line, {
			size: letters.plain,
			x: card.margin,
			y: top + letters.plain + index * letters.plain * lineHeight,
		}),
	);
	for (const [index, month] of months.entries()) {
		const count = counts[index] ?? 0;
		const middle = card.margin + (index + 0.5) * step;
		const height = (count / most) * tallestBar;
		const placed = {
			size: letters.small,
			x: middle,
			y: base + letters.small + 6,
			anchor: 'middle',
			fill: colours.quiet,
		} as const;
		svg.push(drawWords(nameOf(month), placed));
		if (count === 0) continue;
		const width = Math.min(step - 12, 64);
		svg.push(
			`<rect x="${(middle - width / 2).toFixed(1)}" y="${(base - height).toFixed(1)}" width="${width.toFixed(1)}" height="${height.toFixed(1)}" fill="${colours.capsule}" stroke="${colours.ink}" stroke-width="${lines.thin}"/>`,
			drawCount(String(count), {middle, foot: base - height - 9, isUpright}),
		);
	}
	const axis = `<path d="M${card.margin} ${base}H${card.margin + innerWidth}" stroke="${colours.ink}" stroke-width="${lines.thin}"/>`;
	return {svg: [...svg, axis].join('\n'), footUnits: base + letters.small + 34};
}

function drawCount(
	words: string,
	{middle, foot, isUpright}: {middle: number; foot: number; isUpright: boolean},
): string {
	if (!isUpright) return drawWords(words, {size: letters.small, x: middle, y: foot, anchor: 'middle'});
	const turned = drawWords(words, {size: letters.small, x: 0, y: 0});
	return `<g transform="translate(${(middle + 12).toFixed(1)} ${foot.toFixed(1)}) rotate(-90)">${turned}</g>`;
}

/** Names of months as short as their places want: three letters, or one. */
function shortNames(language: string, step: number, months: readonly Month[]): (month: Month) => string {
	const short = monthNames(language, 'short');
	const fits = months.every(month => widthOfWords(short(month), {size: letters.small}) < step - 8);
	return fits ? short : monthNames(language, 'narrow');
}

function monthNames(language: string, length: 'long' | 'short' | 'narrow'): (month: Month) => string {
	const year = length === 'long' ? ({year: 'numeric'} as const) : {};
	const format = new Intl.DateTimeFormat(language, {month: length, ...year, timeZone: 'UTC'});
	return ({year, month}) => format.format(Date.UTC(year, month - 1, 1));
}
