/** A printed page as data, in millimetres from its upper left corner, and the same page as SVG. */
import {drawLines, escapeSvg, lineHeight} from './lettering.ts';
import {colours} from './palette.ts';
import type {Box} from './path.ts';

/** Lines of words that belong together, one below the other. */
export type PageWords = {
	readonly kind: 'words';
	readonly lines: readonly string[];
	/** The start, middle or end of each line. */
	readonly xMm: number;
	/** How much further right all lines but the first begin; only for lines that have their place at their start. */
	readonly restMm?: number;
	/** The foot of the first line. */
	readonly footMm: number;
	readonly sizeMm: number;
	readonly weight?: 'plain' | 'bold';
	readonly anchor?: 'start' | 'middle' | 'end';
	readonly fill?: string;
	/** What the words are to somebody who hears the page read. */
	readonly role?: 'title' | 'heading' | 'text';
};

/** SVG put on a page: `box` in its own units becomes `widthMm` by `heightMm`. */
export type PageDrawing = {
	readonly kind: 'drawing';
	readonly svg: string;
	readonly box: Box;
	readonly xMm: number;
	readonly yMm: number;
	readonly widthMm: number;
	readonly heightMm: number;
	/** What it shows in words; without it, it is an ornament. */
	readonly alt?: string | undefined;
};

/** A page of paper, read aloud in the order of its items. */
export type Page = {
	readonly widthMm: number;
	readonly heightMm: number;
	readonly items: readonly (PageWords | PageDrawing)[];
};

/** A sheet of A4 (ISO 216), upright. */
export const a4 = {widthMm: 210, heightMm: 297} as const;

/** A page as SVG with letters as paths, to be looked at on a screen. */
export function pageSvg({widthMm, heightMm, items}: Page, title: string): string {
	return [
		`<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm * units} ${heightMm * units}" role="img" stroke-linejoin="round" stroke-linecap="round">`,
		`<title>${escapeSvg(title)}</title>`,
		`<rect width="${widthMm * units}" height="${heightMm * units}" fill="${colours.white}"/>`,
		...items.map(item => (item.kind === 'words' ? wordsSvg(item) : placedSvg(item))),
		'</svg>',
	].join('\n');
}

/** How far down lines of words reach, from the top of the first to the foot of the last with its descenders. */
export function heightOfLines(count: number, sizeMm: number): number {
	return count * sizeMm * lineHeight;
}

/** Tenths of a millimetre: letters are written with one decimal of a unit. */
const units = 10;

function wordsSvg({lines, xMm, restMm = 0, footMm, sizeMm, ...look}: PageWords): string {
	const {weight = 'plain', anchor = 'start', fill = colours.ink} = look;
	const placed = {size: sizeMm * units, weight, anchor, fill};
	const [first, ...rest] = lines;
	const nextMm = footMm + sizeMm * lineHeight;
	return (
		drawLines(first === undefined ? [] : [first], {...placed, x: xMm * units, y: footMm * units}) +
		drawLines(rest, {...placed, x: (xMm + restMm) * units, y: nextMm * units})
	);
}

function placedSvg({svg, box, ...place}: PageDrawing): string {
	const at = `x="${place.xMm * units}" y="${place.yMm * units}" width="${place.widthMm * units}" height="${place.heightMm * units}"`;
	return `<svg ${at} viewBox="${viewOf(box)}" preserveAspectRatio="none">${svg}</svg>`;
}

/** A box as SVG writes it: left, top, width, height. */
export function viewOf({left, top, right, bottom}: Box): string {
	return [left, top, right - left, bottom - top].join(' ');
}
