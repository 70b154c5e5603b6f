/** Words in a picture: letters become paths, so that a picture is the same whatever fonts a machine has. */
import {readFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import opentype from 'opentype.js';
import {colours} from './palette.ts';
import {short} from './path.ts';

/** How words are set: the size of the letters in units of the drawing. */
export type Lettering = {
	readonly size: number;
	readonly weight?: 'plain' | 'bold';
};

/** Words with their place: `x` is the start, middle or end of the line, `y` its foot. */
export type Placed = Lettering & {
	readonly x: number;
	readonly y: number;
	readonly anchor?: 'start' | 'middle' | 'end';
	readonly fill?: string;
};

/** From the foot of one line to the foot of the next, in sizes. */
export const lineHeight = 1.2;

/** Height of a capital, in sizes (DejaVu Sans, measured on its H). */
export const capitalHeight = 0.729;

type Font = ReturnType<typeof opentype.parse>;
type Glyph = ReturnType<Font['charToGlyph']>;
type PathCommand = ReturnType<Glyph['getPath']>['commands'][number];

type SizedGlyph = {readonly strokes: readonly PathCommand[]; readonly advance: number};
type Strokes = {readonly x: number; readonly y: number; readonly rest: string};

const files = {plain: 'DejaVuSans.ttf', bold: 'DejaVuSans-Bold.ttf'} as const;
const opened = new Map<keyof typeof files, Font>();
const glyphs = {plain: new Map<string, SizedGlyph>(), bold: new Map<string, SizedGlyph>()} as const;
const drawnStrokes = new Map<string, Strokes>();

/** One line of words as SVG. */
export function drawWords(words: string, placed: Placed): string {
	const {size, weight = 'plain', anchor = 'start', fill = colours.ink} = placed;
	const width = anchor === 'start' ? 0 : widthOfWords(words, placed);
	let x = placed.x - (anchor === 'middle' ? width / 2 : width);
	let path = '';
	for (const letter of words) {
		const {advance, strokes} = glyphOf(letter, weight);
		const drawn = strokesAt(strokes, letter, {size, weight});
		// Only the first point is where it is; all others follow from the one before.
		if (drawn) path += `M${short(x + drawn.x)} ${short(placed.y + drawn.y)}${drawn.rest}`;
		x += advance * size;
	}
	return path === '' ? '' : `<path d="${path}" fill="${fill}"/>`;
}

/** Several lines of words as SVG; `y` is the foot of the first. */
export function drawLines(words: readonly string[], placed: Placed): string {
	return words
		.map((line, index) => drawWords(line, {...placed, y: placed.y + index * placed.size * lineHeight}))
		.join('');
}

/** How wide a line of words is, in units of the drawing. */
export function widthOfWords(words: string, {size, weight = 'plain'}: Lettering): number {
	return [...words].reduce((sum, letter) => sum + glyphOf(letter, weight).advance * size, 0);
}

/** Words broken into lines of at most `width`; a single word that is wider stays whole. */
export function wrapWords(words: string, width: number, lettering: Lettering): readonly string[] {
	const lines: string[] = [];
	for (const word of words.split(/\s+/).filter(Boolean)) {
		const last = lines.at(-1);
		if (last !== undefined && widthOfWords(`${last} ${word}`, lettering) <= width) {
			lines[lines.length - 1] = `${last} ${word}`;
		} else lines.push(word);
	}
	return lines;
}

/** Words as they may stand in an attribute or a title of SVG. */
export function escapeSvg(words: string): string {
	return words
		.replaceAll('&', '&amp;')
		.replaceAll('<', '&lt;')
		.replaceAll('>', '&gt;')
		.replaceAll('"', '&quot;');
}

/** A letter at size 1, its foot at 0, 0; kept, since taking one from its font is most of the work of a picture. */
function glyphOf(letter: string, weight: keyof typeof files): SizedGlyph {
	const kept = glyphs[weight].get(letter);
	if (kept) return kept;
	const font = fontOf(weight);
	const glyph = font.charToGlyph(letter);
	const sized = {strokes: glyph.getPath(0, 0, 1).commands, advance: glyph.advanceWidth / font.unitsPerEm};
	glyphs[weight].set(letter, sized);
	return sized;
}

/** A letter at its size: where it begins, and how it goes on from there; nothing for a space. */
function strokesAt(
	strokes: readonly PathCommand[],
	letter: string,
	set: Required<Lettering>,
): Strokes | undefined {
	const key = `${set.weight} ${set.size} ${letter}`;
	const kept = drawnStrokes.get(key);
	if (kept || strokes.length === 0) return kept;
	const made = relative(strokes, set.size);
	drawnStrokes.set(key, made);
	return made;
}

/**
 * Not opentype.js's own toPathData, which writes NaN for a fraction below 1e-6 (version 2.0.0). Steps lie between
 * rounded places, so that no error adds up.
 */
function relative(strokes: readonly PathCommand[], size: number): Strokes {
	const rounded = (value: number) => Math.round(value * size * 100) / 100;
	let [x, y] = [0, 0];
	let begun = {x: 0, y: 0};
	let rest = '';
	let first: {readonly x: number; readonly y: number} | undefined;
	for (const {type, ...places} of strokes) {
		if (type === 'Z') {
			rest += 'z';
			({x, y} = begun);
			continue;
		}
		const points = pointsOf(places).map(point => ({x: rounded(point.x), y: rounded(point.y)}));
		const last = points.at(-1) ?? {x, y};
		if (first) {
			const steps = points.map(point => `${short(point.x - x)} ${short(point.y - y)}`);
			rest += type.toLowerCase() + steps.join(' ');
		}
		first ??= last;
		({x, y} = last);
		if (type === 'M') begun = last;
	}
	return {...(first ?? {x: 0, y: 0}), rest};
}

function pointsOf({x1, y1, x2, y2, x, y}: Omit<PathCommand, 'type'>) {
	const point = (across: number | undefined, down: number | undefined) =>
		across === undefined || down === undefined ? [] : [{x: across, y: down}];
	return [...point(x1, y1), ...point(x2, y2), ...point(x, y)];
}

/** Read when first needed and then kept: 0.1 s each. */
function fontOf(weight: keyof typeof files): Font {
	const known = opened.get(weight);
	if (known) return known;
	const file = createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${files[weight]}`);
	const bytes = readFileSync(file);
	const buffer = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
	// Any less lazy reading takes three times as long.
	const font = opentype.parse(buffer instanceof ArrayBuffer ? buffer : new ArrayBuffer(0), {lowMemory: true});
	opened.set(weight, font);
	return font;
}
