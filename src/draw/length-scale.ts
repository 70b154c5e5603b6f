/** A scale of lengths: published ranges as bars under one another, and what was measured across them. */
import {capitalHeight, drawWords, widthOfWords} from './lettering.ts';
import {colours, letters, lines} from './palette.ts';
import {drawPath, upTo} from './path.ts';

/** A range of lengths in millimetres, and whether nobody has checked it in a source. */
export type LengthRange = {readonly lowMm: number; readonly highMm: number; readonly isFromMemory: boolean};

/** A measured length in millimetres; at least so long when `isLeast`. */
export type MeasuredLength = {readonly mm: number; readonly plusMinusMm: number; readonly isLeast: boolean};

/** Where millimetres lie on a card: from `fromMm` at `left` to `toMm`, a number at each `stepMm`. */
export type LengthScale = {
	readonly fromMm: number;
	readonly toMm: number;
	readonly stepMm: number;
	readonly left: number;
	readonly width: number;
};

/** How high a bar is, in units. */
export const barTall = 24;
/** How high the axis is with its numbers, in units. */
export const axisTall = 24 + letters.small;

const steps = [5, 10, 20, 50, 100, 200] as const;
/** Numbers of three digits stand this far apart. */
const leastApart = 96;
const numberGap = 14;
const arrowLong = 46;
/** How far the mark of what was measured stands out over a bar. */
const standsOut = 9;

/** A scale that holds all of these ranges and what was measured, and begins and ends at a number. */
export function scaleOfLengths(
	ranges: readonly LengthRange[],
	measured: MeasuredLength | undefined,
	at: {readonly left: number; readonly width: number},
): LengthScale | undefined {
	const ends = [
		...ranges.flatMap(({lowMm, highMm}) => [lowMm, highMm]),
		...(measured ? [measured.mm - measured.plusMinusMm, measured.mm + measured.plusMinusMm] : []),
	];
	if (ends.length === 0) return undefined;
	const [low, high] = [Math.min(...ends) - 3, Math.max(...ends) + 3];
	const fits = (stepMm: number) => {
		const [from, to] = [Math.floor(low / stepMm), Math.ceil(high / stepMm)];
		return (to - from) * leastApart <= at.width;
	};
	const stepMm = steps.find(fits) ?? 500;
	return {
		...at,
		fromMm: Math.max(0, Math.floor(low / stepMm) * stepMm),
		toMm: Math.ceil(high / stepMm) * stepMm,
		stepMm,
	};
}

/** Where a length lies across the card. */
export function acrossAt({fromMm, toMm, left, width}: LengthScale, mm: number): number {
	return left + ((mm - fromMm) / (toMm - fromMm)) * width;
}

/** The bar of a range with its upper edge at `top`; broken where it is from memory, a diamond where it is one size. */
export function drawRange(scale: LengthScale, range: LengthRange, top: number): string {
	const [from, to] = [acrossAt(scale, range.lowMm), acrossAt(scale, range.highMm)];
	const half = barTall / 2;
	const isOne = to - from < barTall;
	const middle = (from + to) / 2;
	const d = isOne
		? `M${middle} ${top}l${half} ${half}l${-half} ${half}l${-half} ${-half}Z`
		: `M${from} ${top}H${to}V${top + barTall}H${from}Z`;
	return drawPath(d, {
		fill: range.isFromMemory ? colours.white : colours.capsule,
		stroke: colours.ink,
		'stroke-width': lines.thin,
		'stroke-dasharray': range.isFromMemory ? '7 7' : undefined,
	});
}

/** What was measured, across the bar whose upper edge is at `top`: as wide as its uncertainty, or with an arrow. */
export function drawMeasured(scale: LengthScale, measured: MeasuredLength, top: number): string {
	const x = acrossAt(scale, measured.mm);
	const [upper, lower] = [top - standsOut, top + barTall + standsOut];
	const line = drawPath(`M${x} ${upper}V${lower}`, {stroke: colours.mark, 'stroke-width': lines.plain});
	if (measured.isLeast) {
		const y = top + barTall / 2;
		const d = `M${x} ${y}h${arrowLong}m-16 -13l16 13l-16 13`;
		return (
			drawPath(d, {stroke: colours.white, 'stroke-width': 11}) +
			line +
			drawPath(d, {stroke: colours.mark, 'stroke-width': lines.plain})
		);
	}
	const from = acrossAt(scale, measured.mm - measured.plusMinusMm);
	const to = acrossAt(scale, measured.mm + measured.plusMinusMm);
	const band = drawPath(`M${from} ${upper}H${to}V${lower}H${from}Z`, {
		fill: colours.mark,
		'fill-opacity': '0.3',
		stroke: colours.mark,
		'stroke-width': lines.hair,
	});
	return band + line;
}

/** The numbers of a range beside its bar, whose upper edge is at `top`; they keep clear of what was measured. */
export function drawEnds(
	scale: LengthScale,
	{lowMm, highMm}: LengthRange,
	{top, measured}: {readonly top: number; readonly measured: MeasuredLength | undefined},
): string {
	const set = {size: letters.small, y: top + barTall / 2 + (letters.small * capitalHeight) / 2} as const;
	const [low, high] = [Math.round(lowMm), Math.round(highMm)].map(String);
	const mark = measured && markedAt(scale, measured);
	const meets = (from: number, to: number) => mark !== undefined && mark.from < to && mark.to > from;
	const wide = (words = '') => widthOfWords(words, set) + numberGap;
	const [left, right] = [acrossAt(scale, lowMm), acrossAt(scale, highMm)];
	const lowX = mark && meets(left - wide(low), left) ? Math.min(left, mark.from) : left;
	const highX = mark && meets(right, right + wide(high)) ? Math.max(right, mark.to) : right;
	return [
		low === high ? '' : drawWords(low ?? '', {...set, x: lowX - numberGap, anchor: 'end'}),
		drawWords(high ?? '', {...set, x: highX + numberGap}),
	].join('');
}

/** From where to where the mark of what was measured reaches. */
function markedAt(scale: LengthScale, {mm, plusMinusMm, isLeast}: MeasuredLength) {
	const x = acrossAt(scale, mm);
	const [from, to] = isLeast
		? [x, x + arrowLong]
		: [acrossAt(scale, mm - plusMinusMm), acrossAt(scale, mm + plusMinusMm)];
	return {from: Math.min(from, x - lines.plain), to: Math.max(to, x + lines.plain)};
}

/** The axis with its numbers, its line at `top`; a mark stands on it where something was measured. */
export function drawAxis(scale: LengthScale, measured: MeasuredLength | undefined, top: number): string {
	const {fromMm, toMm, stepMm, left, width} = scale;
	const marks = upTo(Math.round((toMm - fromMm) / stepMm)).map(index => fromMm + index * stepMm);
	const ticks = marks.map(mm => `M${acrossAt(scale, mm).toFixed(1)} ${top}v12`).join('');
	const numbers = marks.map(mm =>
		drawWords(String(mm), {
			x: acrossAt(scale, mm),
			y: top + 16 + letters.small,
			size: letters.small,
			anchor: 'middle',
			fill: colours.quiet,
		}),
	);
	const at = measured && acrossAt(scale, measured.mm);
	return [
		drawPath(`M${left} ${top}H${left + width}${ticks}`, {stroke: colours.ink, 'stroke-width': lines.thin}),
		...numbers,
		at === undefined ? '' : drawPath(`M${at} ${top}l-13 -22h26Z`, {fill: colours.mark}),
	].join('');
}
