/** Several cases on one photo, drawn over it: each with its outline, its line, and a plate with number and length. */
import {
	clamp,
	drawOutline,
	drawPlate,
	drawRule,
	drawUnsure,
	type Mark,
	overlay,
	type Pen,
	type PhotoSize,
	penFor,
	plateSize,
} from './measured.ts';
import {type Box, boxAround, boxOf, type Point} from './path.ts';

/** One of the cases: its number, its length, and its outline where that is known. */
export type NumberedCase = {
	readonly number: number;
	readonly length: Mark;
	readonly outline?: readonly Point[] | undefined;
};

/** What is drawn over a photo of several cases. */
export type TrayMarks = {
	readonly cases: readonly NumberedCase[];
	/** The corners of the sheet that they lie on. */
	readonly sheet?: readonly Point[] | undefined;
	/** Middles of what was seen and not measured. */
	readonly unsure?: readonly Point[] | undefined;
	readonly title: string;
};

/** A part of a photo in its pixels, and what is drawn over that part. */
export type TrayPart = {readonly box: Box; readonly svg: string};

/** So much of a photo is shown at least, in pixels: less would be blurred on a phone. */
const leastPx = 480;

/** Words, where they stand, and the rim of the case that they are about. */
type Plate = {readonly words: string; readonly box: Box; readonly rim: readonly Point[]};

/** The part of the photo with the cases and their sheet, so that they and their numbers are as large as they can be. */
export function trayPart(marks: TrayMarks, size: PhotoSize): TrayPart {
	const bodies = marks.cases.map(bodyOf);
	const roomPx = Math.max(
		...bodies.map(({left, right, top, bottom}) => Math.max(right - left, bottom - top)),
	);
	const seen = [...(marks.unsure ?? []), ...(marks.sheet ?? [])];
	const all = boxAround([...bodies, ...seen.map(at => boxOf([at]))]);
	// What lies on a sheet and was not measured has to be seen as such, too.
	const edgePx = marks.sheet ? roomPx / 4 : roomPx;
	const [left, right] = span([all.left - edgePx, all.right + edgePx], size.widthPx);
	const [top, bottom] = span([all.top - edgePx, all.bottom + edgePx], size.heightPx);
	const moved = ([x, y]: Point): Point => [x - left, y - top];
	const cases = marks.cases.map(({length, outline, ...one}) => ({
		...one,
		length: {...length, line: [moved(length.line[0]), moved(length.line[1])] as const},
		outline: outline?.map(moved),
	}));
	const part = {...marks, cases, unsure: marks.unsure?.map(moved)};
	return {
		box: {left, right, top, bottom},
		svg: drawTray(part, {widthPx: right - left, heightPx: bottom - top}),
	};
}

/** Whole pixels from here to there, within the photo and not too few. */
function span([from, to]: readonly [number, number], mostPx: number): readonly [number, number] {
	const lacking = Math.max(0, Math.min(leastPx, mostPx) - (to - from)) / 2;
	return [Math.max(0, Math.floor(from - lacking)), Math.min(mostPx, Math.ceil(to + lacking))];
}

/** The overlay as SVG in pixels of the photo. */
export function drawTray({cases, unsure = [], title}: TrayMarks, size: PhotoSize): string {
	const pen = penFor(size);
	const plates = platesFor(cases, unsure, pen);
	return overlay(title, size, [
		...plates.map(plate => drawTie(plate, pen)),
		...cases.map(({outline}) => (outline ? drawOutline(outline, pen) : '')),
		...cases.map(({length}) => drawRule(length.line, pen)),
		...unsure.map(at => drawUnsure(at, pen)),
		...plates.map(({words, box}) => drawPlate(words, [box.left, box.top], pen)),
	]);
}

/** From a plate to its case, so that nobody takes it for another's. */
function drawTie({box, rim}: Plate, pen: Pen): string {
	const from = middleOf(box);
	const [nearest = from] = rim.toSorted((one, other) => apart(one, from) - apart(other, from));
	return drawOutline([from, nearest, from], pen);
}

/** Each plate beside its case where it hides least; where lengths find no room, the numbers alone. */
function platesFor(cases: readonly NumberedCase[], unsure: readonly Point[], pen: Pen): readonly Plate[] {
	const marks = unsure.map(at => around(at, plateSize('?', pen)));
	const whole = placed(cases, {
		pen,
		marks,
		wordsOf: ({number, length}) => `${number}  ${Math.round(length.mm)} mm`,
	});
	return whole.isClear
		? whole.plates
		: placed(cases, {pen, marks, wordsOf: ({number}) => String(number)}).plates;
}

type Placing = {
	readonly pen: Pen;
	readonly marks: readonly Box[];
	readonly wordsOf: (one: NumberedCase) => string;
};

/** Plates one after another, and whether all of them found a place of their own. */
function placed(
	cases: readonly NumberedCase[],
	{pen, marks, wordsOf}: Placing,
): {readonly plates: readonly Plate[]; readonly isClear: boolean} {
	const bodies = cases.map(bodyOf);
	let plates: readonly Plate[] = [];
	let isClear = true;
	for (const one of cases) {
		const words = wordsOf(one);
		const taken = [...marks, ...plates.map(({box}) => box)];
		const body = bodyOf(one);
		const others = bodies.filter((_, index) => cases[index] !== one);
		const {plate, hidden} = bestFor(words, {body, rim: one.outline ?? one.length.line, taken, others, pen});
		plates = [...plates, plate];
		if (hidden > 0.25 * areaOf(plate.box)) isClear = false;
	}
	return {plates, isClear};
}

type Room = {
	readonly body: Box;
	readonly rim: readonly Point[];
	readonly taken: readonly Box[];
	readonly others: readonly Box[];
	readonly pen: Pen;
};

type Tried = {readonly plate: Plate; readonly hidden: number};

/** The place for a plate, and how many square pixels it hides there; another plate counts more. */
function bestFor(words: string, {body, rim, taken, others, pen}: Room): Tried {
	const {wide, tall} = plateSize(words, pen);
	const gap = pen.unit * 4;
	const [x, y] = middleOf(body);
	const corners: readonly Point[] = [
		[x - wide / 2, body.bottom + gap],
		[x - wide / 2, body.top - gap - tall],
		[body.right + gap, y - tall / 2],
		[body.left - gap - wide, y - tall / 2],
		[body.right + gap, body.bottom + gap],
		[body.left - gap - wide, body.top - gap - tall],
		[x - wide / 2, y - tall / 2],
	];
	const tried = corners.map((corner, order) => {
		const left = clamp(corner[0], pen.widthPx - wide);
		const top = clamp(corner[1], pen.heightPx - tall);
		const box = {left, top, right: left + wide, bottom: top + tall};
		// Another plate hidden is a number lost; a plate too near another case is taken for that one's.
		const near = {
			left: left - 4 * gap,
			top: top - 4 * gap,
			right: box.right + 4 * gap,
			bottom: box.bottom + 4 * gap,
		};
		const hidden =
			sum(taken.map(one => 4 * sharedBy(one, box))) +
			sum(others.map(one => 2 * sharedBy(one, near))) +
			sharedBy(body, box);
		return {plate: {words, box, rim}, hidden, order};
	});
	const [best] = tried.toSorted((one, other) => one.hidden - other.hidden || one.order - other.order);
	if (!best) throw new Error('Expected a place for a plate; none was tried');
	return best;
}

/** Where a case lies: its outline, or half as wide as its line is long. */
function bodyOf({length, outline}: NumberedCase): Box {
	if (outline && outline.length > 2) return boxOf(outline);
	const [[x1, y1], [x2, y2]] = length.line;
	const [across, down] = [(x2 - x1) / 4, (y2 - y1) / 4];
	return boxOf([
		[x1 - down, y1 + across],
		[x1 + down, y1 - across],
		[x2 - down, y2 + across],
		[x2 + down, y2 - across],
	]);
}

function around([x, y]: Point, {wide, tall}: {readonly wide: number; readonly tall: number}): Box {
	return {left: x - wide / 2, right: x + wide / 2, top: y - tall / 2, bottom: y + tall / 2};
}

function middleOf({left, right, top, bottom}: Box): Point {
	return [(left + right) / 2, (top + bottom) / 2];
}

function sharedBy(one: Box, other: Box): number {
	const across = Math.min(one.right, other.right) - Math.max(one.left, other.left);
	const down = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
	return Math.max(0, across) * Math.max(0, down);
}

function apart([x1, y1]: Point, [x2, y2]: Point): number {
	return Math.hypot(x2 - x1, y2 - y1);
}

function areaOf(box: Box): number {
	return sharedBy(box, box);
}

function sum(values: readonly number[]): number {
	return values.reduce((all, value) => all + value, 0);
}
