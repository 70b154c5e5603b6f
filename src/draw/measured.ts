/** What was measured on a photo, drawn over it: lines with their ends, and numbers that say how sure. */
import {drawWords, escapeSvg, widthOfWords} from './lettering.ts';
import {colours, letters} from './palette.ts';
import {drawPath, type Point, pathOf, short} from './path.ts';

/** A size with the line it was measured along; millimetres, and pixels of the photo. */
export type Mark = {
	readonly mm: number;
	readonly uncertaintyMm: number;
	readonly line: readonly [Point, Point];
};

/** What is drawn over a photo of one case; two lengths are lettered A and B. */
export type Marks = {
	readonly lengths: readonly Mark[];
	readonly width?: Mark | undefined;
	/** Round the capsule. */
	readonly outline?: readonly Point[] | undefined;
	/** Middles of what was seen and not measured. */
	readonly unsure?: readonly Point[] | undefined;
	readonly title: string;
};

/** The size of the photo in pixels; lines and letters are the same on a phone whatever it is. */
export type PhotoSize = {readonly widthPx: number; readonly heightPx: number};

/** A photo with how many of its pixels are one unit of a drawing. */
export type Pen = PhotoSize & {readonly unit: number};

/** A card of 720 units is as wide as a phone: letters on a photo are as large as there. */
const unitsAcross = 720;

/** The overlay as SVG in pixels of the photo. */
export function drawMarks(marks: Marks, size: PhotoSize): string {
	const pen = penFor(size);
	const drawn = marks.lengths.map((mark, index) => {
		const letter = marks.lengths.length > 1 ? `${['A', 'B'][index] ?? ''}  ` : '';
		return (
			drawRule(mark.line, pen) + drawSize(`${letter}${mark.mm} ± ${mark.uncertaintyMm} mm`, mark.line, pen)
		);
	});
	const {width} = marks;
	return overlay(marks.title, size, [
		marks.outline ? drawOutline(marks.outline, pen) : '',
		...(marks.unsure ?? []).map(at => drawUnsure(at, pen)),
		width ? drawRule(width.line, pen) : '',
		width ? drawSize(`${width.mm} ± ${width.uncertaintyMm} mm`, width.line, pen) : '',
		...drawn,
	]);
}

/** The pen for a photo. */
export function penFor({widthPx, heightPx}: PhotoSize): Pen {
	return {unit: Math.max(widthPx, heightPx * 0.75) / unitsAcross, widthPx, heightPx};
}

/** What is laid over a photo, with its title. */
export function overlay(title: string, {widthPx, heightPx}: PhotoSize, parts: readonly string[]): string {
	return [
		`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${widthPx} ${heightPx}" width="${widthPx}" height="${heightPx}" stroke-linejoin="round" stroke-linecap="round">`,
		`<title>${escapeSvg(title)}</title>`,
		...parts,
		'</svg>',
	].join('\n');
}

/** The outline of a capsule, thinner than its lines. */
export function drawOutline(points: readonly Point[], {unit}: Pen): string {
	return points.length < 3 ? '' : twice(pathOf(points), unit * 2.5);
}

/** A question mark where something was seen and not measured. */
export function drawUnsure([x, y]: Point, pen: Pen): string {
	const {wide, tall} = plateSize('?', pen);
	return drawPlate('?', [x - wide / 2, y - tall / 2], pen);
}

/** A line with a cross bar at each end. */
export function drawRule(line: Mark['line'], {unit}: Pen): string {
	const [from, to] = line;
	const long = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
	const across: Point = [(-(to[1] - from[1]) / long) * unit * 16, ((to[0] - from[0]) / long) * unit * 16];
	const bars = line.map(([x, y]): readonly Point[] => [
		[x - across[0], y - across[1]],
		[x + across[0], y + across[1]],
	]);
	return twice([line, ...bars].map(points => pathOf(points, 'open')).join(''), unit * 4);
}

/** How much room words on a plate take. */
export function plateSize(words: string, {unit}: Pen): {readonly wide: number; readonly tall: number} {
	const size = letters.small * unit;
	return {wide: widthOfWords(words, {size, weight: 'bold'}) + size, tall: size * 1.5};
}

/** Words on a light plate, which begins at this corner. */
export function drawPlate(words: string, [x, y]: Point, pen: Pen): string {
	const size = letters.small * pen.unit;
	const {wide, tall} = plateSize(words, pen);
	return (
		`<rect x="${short(x)}" y="${short(y)}" width="${short(wide)}" height="${short(tall)}" rx="${short(size * 0.3)}" fill="${colours.card}" stroke="${colours.ink}" stroke-width="${short(pen.unit * 2)}"/>` +
		drawWords(words, {x: x + size / 2, y: y + size * 1.1, size, weight: 'bold'})
	);
}

/** Dark over light, so that a line is seen on paper and on a dark case. */
function twice(d: string, width: number): string {
	return (
		drawPath(d, {stroke: colours.white, 'stroke-width': width * 2.2}) +
		drawPath(d, {stroke: colours.mark, 'stroke-width': width})
	);
}

/** Beyond the end of its line where there is more room, so that it covers neither the case nor the other line. */
function drawSize(words: string, [from, to]: Mark['line'], pen: Pen): string {
	const {widthPx, heightPx} = pen;
	const {wide, tall} = plateSize(words, pen);
	const long = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
	const [right, down] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
	const away = letters.small * pen.unit * 0.8 + Math.abs(right) * (wide / 2) + Math.abs(down) * (tall / 2);
	const [best = [0, 0]] = (
		[
			[to, 1],
			[from, -1],
		] as const
	)
		.map(([[x, y], side]): Point => [x + side * right * away - wide / 2, y + side * down * away - tall / 2])
		.map(wanted => ({
			wanted,
			at: [clamp(wanted[0], widthPx - wide), clamp(wanted[1], heightPx - tall)] as const,
		}))
		.toSorted((one, other) => apart(one) - apart(other))
		.map(({at}) => at);
	return drawPlate(words, best, pen);
}

/** How far a plate had to be moved to stay in the picture. */
function apart({wanted, at}: {readonly wanted: Point; readonly at: Point}): number {
	return Math.hypot(wanted[0] - at[0], wanted[1] - at[1]);
}

/** A value kept between nothing and the most. */
export function clamp(value: number, most: number): number {
	return Math.max(0, Math.min(value, most));
}
