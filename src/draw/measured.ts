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

/** What is drawn over a photo; two lengths are lettered A and B. */
export type Marks = {
	readonly lengths: readonly Mark[];
	readonly width?: Mark | undefined;
	readonly title: string;
};

/** The size of the photo in pixels; lines and letters are the same on a phone whatever it is. */
export type PhotoSize = {readonly widthPx: number; readonly heightPx: number};

/** A card of 720 units is as wide as a phone: letters on a photo are as large as there. */
const unitsAcross = 720;

/** The overlay as SVG in pixels of the photo. */
export function drawMarks(marks: Marks, {widthPx, heightPx}: PhotoSize): string {
	const unit = Math.max(widthPx, heightPx * 0.75) / unitsAcross;
	const pen = {unit, widthPx, heightPx};
	const lengths = marks.lengths.map((mark, index) =>
		drawMark(mark, {...pen, letter: marks.lengths.length > 1 ? (['A', 'B'][index] ?? '') : ''}),
	);
	const width = marks.width ? drawMark(marks.width, {...pen, letter: ''}) : '';
	return [
		`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${widthPx} ${heightPx}" width="${widthPx}" height="${heightPx}" stroke-linejoin="round" stroke-linecap="round">`,
		`<title>${escapeSvg(marks.title)}</title>`,
		width,
		...lengths,
		'</svg>',
	].join('\n');
}

type Pen = PhotoSize & {readonly unit: number; readonly letter: string};

/** A line with a cross bar at each end, and its number on a light plate beside it. */
function drawMark({mm, uncertaintyMm, line}: Mark, pen: Pen): string {
	const [from, to] = line;
	const {unit, letter} = pen;
	const long = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
	const across: Point = [(-(to[1] - from[1]) / long) * unit * 16, ((to[0] - from[0]) / long) * unit * 16];
	const bars = line.map(([x, y]): readonly Point[] => [
		[x - across[0], y - across[1]],
		[x + across[0], y + across[1]],
	]);
	const drawn = twice([line, ...bars].map(points => pathOf(points, 'open')).join(''), unit * 4);
	const words = `${letter === '' ? '' : `${letter}  `}${mm} ± ${uncertaintyMm} mm`;
	return drawn + drawPlate(words, line, pen);
}

/** Dark over light, so that a line is seen on paper and on a dark case. */
function twice(d: string, width: number): string {
	return (
		drawPath(d, {stroke: colours.white, 'stroke-width': width * 2.2}) +
		drawPath(d, {stroke: colours.mark, 'stroke-width': width})
	);
}

/** Beyond the end of its line where there is more room, so that it covers neither the case nor the other line. */
function drawPlate(words: string, [from, to]: Mark['line'], {unit, widthPx, heightPx}: Pen): string {
	const size = letters.small * unit;
	const [wide, tall] = [widthOfWords(words, {size, weight: 'bold'}) + size, size * 1.5];
	const long = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
	const [right, down] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
	const away = size * 0.8 + Math.abs(right) * (wide / 2) + Math.abs(down) * (tall / 2);
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
	const [x, y] = best;
	return (
		`<rect x="${short(x)}" y="${short(y)}" width="${short(wide)}" height="${short(tall)}" rx="${short(size * 0.3)}" fill="${colours.card}" stroke="${colours.ink}" stroke-width="${short(unit * 2)}"/>` +
		drawWords(words, {x: x + size / 2, y: y + size * 1.1, size, weight: 'bold'})
	);
}

/** How far a plate had to be moved to stay in the picture. */
function apart({wanted, at}: {readonly wanted: Point; readonly at: Point}): number {
	return Math.hypot(wanted[0] - at[0], wanted[1] - at[1]);
}

function clamp(value: number, most: number): number {
	return Math.max(0, Math.min(value, most));
}
