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
import {type Box, boxOf, type Point} from './path.ts';

/** One of the cases: its number, its length, and its outline where that is known. */
export type NumberedCase = {
	readonly number: number;
	readonly length: Mark;
	readonly outline?: readonly Point[] | undefined;
};

/** What is drawn over a photo of several cases. */
export type TrayMarks = {
	readonly cases: readonly NumberedCase[];
	/** Middles of what was seen and not measured. */
	readonly unsure?: readonly Point[] | undefined;
	readonly title: string;
};

type Plate = {readonly words: string; readonly box: Box};

/** The overlay as SVG in pixels of the photo. */
export function drawTray({cases, unsure = [], title}: TrayMarks, size: PhotoSize): string {
	const pen = penFor(size);
	return overlay(title, size, [
		...cases.map(({outline}) => (outline ? drawOutline(outline, pen) : '')),
		...cases.map(({length}) => drawRule(length.line, pen)),
		...unsure.map(at => drawUnsure(at, pen)),
		...platesFor(cases, unsure, pen).map(({words, box}) => drawPlate(words, [box.left, box.top], pen)),
	]);
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
		const {plate, hidden} = bestFor(words, {body: bodyOf(one), taken, bodies, pen});
		plates = [...plates, plate];
		if (hidden > 0.25 * areaOf(plate.box)) isClear = false;
	}
	return {plates, isClear};
}

type Room = {
	readonly body: Box;
	readonly taken: readonly Box[];
	readonly bodies: readonly Box[];
	readonly pen: Pen;
};

type Tried = {readonly plate: Plate; readonly hidden: number};

/** The place for a plate, and how many square pixels it hides there; another plate counts more. */
function bestFor(words: string, {body, taken, bodies, pen}: Room): Tried {
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
		// Another plate hidden is a number lost, part of a case hidden is not.
		const hidden = sum(taken.map(one => 4 * sharedBy(one, box))) + sum(bodies.map(one => sharedBy(one, box)));
		return {plate: {words, box}, hidden, order};
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

function areaOf(box: Box): number {
	return sharedBy(box, box);
}

function sum(values: readonly number[]): number {
	return values.reduce((all, value) => all + value, 0);
}
