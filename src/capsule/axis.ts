/** The long axis of a body, and where its ends and sides are, roughly. */
import {type FlatView, planePoint} from './flat-view.ts';
import type {Point} from './raster.ts';
import type {Mask} from './regions.ts';
import {solve} from './solve.ts';

/** A body's own frame in the plane: its middle, the way of its long axis, and its rough sizes. */
export type Axis = {
	readonly middle: Point;
	/** A step of one millimetre along it. */
	readonly along: Point;
	readonly lengthMm: number;
	readonly widthMm: number;
	/** Area of the body by that of the rectangle round it: near 1 for a case, 0.79 for an ellipse. */
	readonly fullness: number;
	/** How alike the body is to its own mirror image about the axis: overlap by union. */
	readonly symmetry: number;
};

/** Finds the axis of a body in a flat view. */
export function findAxis(
	view: FlatView,
	{body, whole}: {readonly body: Mask; readonly whole: Mask},
): Axis | undefined {
	const points = pointsOf(body, view);
	const first = principal(points);
	if (!first) return undefined;
	const isOn = lookup(body, view);
	const turned = [first, {...first, along: acrossOf(first.along)}].map(start => straighten(start, isOn));
	const [one, other] = turned;
	if (!one || !other) return undefined;
	const chosen = choose(one, other, {whole, view});
	const areaMm2 = points.length * view.stepMm ** 2;
	return {
		...chosen,
		fullness: areaMm2 / (chosen.lengthMm * chosen.widthMm),
		symmetry: symmetryOf(points, chosen, isOn),
	};
}

/** At right angles to a direction, clockwise as seen. */
export function acrossOf([x, y]: Point): Point {
	return [-y, x];
}

/** A point given in a body's own frame, in the plane. */
export function fromAxis({middle, along}: Pick<Axis, 'middle' | 'along'>, [u, v]: Point): Point {
	return [middle[0] + u * along[0] - v * along[1], middle[1] + u * along[1] + v * along[0]];
}

type Frame = Pick<Axis, 'middle' | 'along' | 'lengthMm' | 'widthMm'>;
type IsOn = (point: Point) => boolean;

function pointsOf({width, on}: Mask, view: FlatView): readonly Point[] {
	const points: Point[] = [];
	for (let at = 0; at < on.length; at += 1) {
		if (on[at] === 1) points.push(planePoint(view, [at % width, Math.floor(at / width)]));
	}
	return points;
}

function lookup({width, height, on}: Mask, {from, stepMm}: FlatView): IsOn {
	return ([x, y]) => {
		const column = Math.round((x - from[0]) / stepMm);
		const row = Math.round((y - from[1]) / stepMm);
		return column >= 0 && row >= 0 && column < width && row < height && on[row * width + column] === 1;
	};
}

function principal(points: readonly Point[]): Frame | undefined {
	if (points.length < 50) return undefined;
	const mean = (of: (point: Point) => number) =>
		points.reduce((sum, point) => sum + of(point), 0) / points.length;
	const [x, y] = [mean(point => point[0]), mean(point => point[1])];
	const xx = mean(point => (point[0] - x) ** 2);
	const yy = mean(point => (point[1] - y) ** 2);
	const xy = mean(point => (point[0] - x) * (point[1] - y));
	const angle = Math.atan2(2 * xy, xx - yy) / 2;
	const spread = Math.sqrt(((xx - yy) / 2) ** 2 + xy * xy);
	const [long, short] = [
		Math.sqrt(12 * ((xx + yy) / 2 + spread)),
		Math.sqrt(12 * Math.max(0.1, (xx + yy) / 2 - spread)),
	];
	return {middle: [x, y], along: [Math.cos(angle), Math.sin(angle)], lengthMm: long, widthMm: short};
}

/** Turns the frame until the middles between the two sides lie on the axis, and takes the sizes of the body in it. */
function straighten(start: Frame, isOn: IsOn): Frame {
	let frame = start;
	for (let round = 0; round < 4; round += 1) {
		const sizes = extents(frame, isOn);
		const rows: number[][] = [];
		const middles: number[] = [];
		for (let share = -0.34; share <= 0.341; share += 0.04) {
			const u = share * sizes.lengthMm;
			const [low, high] = [reachAcross(frame, isOn, {u, way: -1}), reachAcross(frame, isOn, {u, way: 1})];
			if (low === undefined || high === undefined) continue;
			rows.push([1, u]);
			middles.push((high - low) / 2);
		}
		const fit = robustLine(rows, middles);
		if (!fit) return sizes;
		const angle = Math.atan2(frame.along[1], frame.along[0]) + Math.atan(fit[1]);
		const along: Point = [Math.cos(angle), Math.sin(angle)];
		frame = {...sizes, middle: fromAxis({middle: sizes.middle, along}, [0, fit[0]]), along};
	}
	return extents(frame, isOn);
}

function robustLine(
	rows: readonly (readonly number[])[],
	values: readonly number[],
): readonly [number, number] | undefined {
	if (rows.length < 6) return undefined;
	let weights = values.map(() => 1);
	let fit: readonly number[] | undefined;
	for (let round = 0; round < 4; round += 1) {
		fit = solve(rows, values, weights);
		if (!fit) return undefined;
		const [offset = 0, slope = 0] = fit;
		weights = values.map(
			(value, index) => 1 / (0.15 + Math.abs(value - offset - slope * (rows[index]?.[1] ?? 0))),
		);
	}
	return [fit?.[0] ?? 0, fit?.[1] ?? 0];
}

/** The frame moved to the middle between its two ends, with the sizes of the body along and across. */
function extents(frame: Frame, isOn: IsOn): Frame {
	const along = (way: -1 | 1) =>
		median(
			[-0.06, -0.03, 0, 0.03, 0.06].map(share => {
				const v = share * frame.widthMm;
				return walk(s => isOn(fromAxis(frame, [way * s, v])), frame.lengthMm);
			}),
		);
	const [back, front] = [along(-1), along(1)];
	const middle = fromAxis(frame, [(front - back) / 2, 0]);
	const lengthMm = front + back;
	const moved = {...frame, middle, lengthMm};
	const widths = [-0.3, -0.15, 0, 0.15, 0.3].map(share => {
		const u = share * lengthMm;
		return (reachAcross(moved, isOn, {u, way: -1}) ?? 0) + (reachAcross(moved, isOn, {u, way: 1}) ?? 0);
	});
	return {...moved, widthMm: median(widths)};
}

function reachAcross(frame: Frame, isOn: IsOn, {u, way}: {u: number; way: -1 | 1}): number | undefined {
	if (!isOn(fromAxis(frame, [u, 0]))) return undefined;
	return walk(s => isOn(fromAxis(frame, [u, way * s])), frame.lengthMm);
}

/** How far one gets from the middle before being outside for good: gaps under 1.5 mm are stepped over. */
function walk(isIn: (s: number) => boolean, mostMm: number): number {
	let last = 0;
	for (let s = 0; s < mostMm * 1.5 && s - last < 1.5; s += 0.25) if (isIn(s)) last = s;
	return last + 0.125;
}

/** Of the two ways a body may lie, the longer; when it is nearly square, the one that its horns continue. */
function choose(one: Frame, other: Frame, {whole, view}: {whole: Mask; view: FlatView}): Frame {
	const [long, short] = one.lengthMm >= other.lengthMm ? [one, other] : [other, one];
	if (long.widthMm < 0.8 * long.lengthMm) return long;
	const beyond = (frame: Frame) => {
		let count = 0;
		for (const [x, y] of pointsOf(whole, view)) {
			const [dx, dy] = [x - frame.middle[0], y - frame.middle[1]];
			const u = Math.abs(dx * frame.along[0] + dy * frame.along[1]);
			const v = Math.abs(-dx * frame.along[1] + dy * frame.along[0]);
			const isBeyond = u > frame.lengthMm * 0.55 && u - frame.lengthMm / 2 > v - frame.widthMm / 2;
			if (isBeyond && u < frame.lengthMm) count += 1;
		}
		return count;
	};
	return beyond(short) > 2 * beyond(long) + 20 ? short : long;
}

function symmetryOf(points: readonly Point[], {middle, along}: Frame, isOn: IsOn): number {
	let both = 0;
	for (const [x, y] of points) {
		const [dx, dy] = [x - middle[0], y - middle[1]];
		const u = dx * along[0] + dy * along[1];
		const v = -dx * along[1] + dy * along[0];
		if (isOn(fromAxis({middle, along}, [u, -v]))) both += 1;
	}
	return both / (2 * points.length - both);
}

function median(values: readonly number[]): number {
	return values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
}
