/** A bar of known length beside a drawing. */
import {capitalHeight, drawWords, widthOfWords} from './lettering.ts';
import {colours, letters, lines} from './palette.ts';
import {drawPath} from './path.ts';

/** Where a bar goes, and how millimetres are said. */
export type ScaleBar = {
	readonly middle: number;
	readonly top: number;
	readonly room: number;
	readonly unitsPerMm: number;
	readonly say: (mm: number) => string;
};

const lengthsMm = [100, 50, 20, 10, 5] as const;
const gap = 14;
const set = {size: letters.small} as const;

/** How high a scale bar is with its words beside it, in units. */
export const scaleBarTall = letters.small;

/** The longest of a few round lengths that fits, its words beside it. */
export function drawScaleBar({middle, top, room, unitsPerMm, say}: ScaleBar): string {
	const wide = (mm: number) => mm * unitsPerMm + gap + widthOfWords(say(mm), set);
	const mm = longestOf(wide, room);
	const left = middle - wide(mm) / 2;
	const y = top + scaleBarTall / 2;
	return (
		drawBar(left, y, mm * unitsPerMm) +
		drawWords(say(mm), {...set, x: left + mm * unitsPerMm + gap, y: y + (set.size * capitalHeight) / 2})
	);
}

/** The same with its words below it, for little room. */
export function drawNarrowScaleBar({middle, top, room, unitsPerMm, say}: ScaleBar): string {
	const mm = longestOf(length => length * unitsPerMm, room);
	const y = top + 12;
	return (
		drawBar(middle - (mm * unitsPerMm) / 2, y, mm * unitsPerMm) +
		drawWords(say(mm), {...set, x: middle, y: y + 4 + set.size, anchor: 'middle'})
	);
}

function longestOf(wide: (mm: number) => number, room: number): number {
	return lengthsMm.find(mm => wide(mm) <= room) ?? 5;
}

function drawBar(left: number, y: number, long: number): string {
	const d = `M${left.toFixed(2)} ${y}h${long.toFixed(2)}m0 -12v24m${(-long).toFixed(2)} 0v-24`;
	return drawPath(d, {stroke: colours.ink, 'stroke-width': lines.plain, 'stroke-linecap': 'butt'});
}
