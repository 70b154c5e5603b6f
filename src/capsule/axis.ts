/** The long axis of a body, and where its ends and sides are, roughly. */

import type {Body} from './bodies.ts';
import {type Grid, planePoint} from './flat-view.ts';
import {median} from './median.ts';
import {gatherPoints} from './principal.ts';
import type {Point} from './raster.ts';
import type {Mask} from './regions.ts';
import {makeScales} from './weighing.ts';

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

/** A body's mask and where it lies. */
type Seen = {readonly grid: Grid; readonly body: Mask};

/** Finds the axis of a body. */
export function findAxis(seen: Pick<Body, 'grid' | 'body' | 'whole'>, whereWhole: Grid): Axis | undefined {
	const {grid} = seen;
	const first = principal(seen);
	if (!first) return undefined;
	const one = straightest(first.frame, seen);
	// Two ways to lie only where it is nearly square.
	const isSquare = one.widthMm > squareFrom * one.lengthMm;
	const other = isSquare && straighten({...one, along: acrossOf(one.along)}, seen);
	const chosen = other ? choose(one, other, {...seen.whole, grid: whereWhole}) : one;
	return {
		...chosen,
		fullness: (first.count * grid.stepMm ** 2) / (chosen.lengthMm * chosen.widthMm),
		symmetry: symmetryOf(chosen, seen),
	};
}

/** How far a flank is from the axis, at each place along it. */
type FlankAt = (u: number) => number;

/** The axis laid midway between two flanks that were found more truly than in the mask. */
export function between(
	axis: Axis,
	[left, right]: readonly [FlankAt, FlankAt],
	seen: Pick<Body, 'grid' | 'body'>,
): Axis {
	const places = stations.map(share => share * axis.lengthMm);
	const [offset, slope] = robustLine(places.map(u => ({u, v: (right(u) - left(u)) / 2}))) ?? [0, 0];
	const angle = Math.atan2(axis.along[1], axis.along[0]) + Math.atan(slope);
	const along: Point = [Math.cos(angle), Math.sin(angle)];
	const middle = fromAxis({middle: axis.middle, along}, [0, offset]);
	// What was looked at aslant seems broader.
	const widthMm = median(places.map(u => left(u) + right(u))) * Math.cos(Math.atan(slope));
	const turned = {...axis, middle, along, widthMm};
	return {...turned, symmetry: symmetryOf(turned, seen)};
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

function isOn({grid, body: {width, height, on}}: Seen, x: number, y: number): boolean {
	const column = Math.round((x - grid.from[0]) / grid.stepMm);
	const row = Math.round((y - grid.from[1]) / grid.stepMm);
	return column >= 0 && row >= 0 && column < width && row < height && on[row * width + column] === 1;
}

function principal({
	grid,
	body: {width, on},
}: Seen): {readonly frame: Frame; readonly count: number} | undefined {
	const points = gatherPoints();
	let count = 0;
	for (let at = 0; at < on.length; at += 1) {
		if (on[at] !== 1) continue;
		const y = Math.floor(at / width);
		points.add(at - y * width, y, 1);
		count += 1;
	}
	if (count < 50) return undefined;
	const {middle, along, longSquare, wideSquare} = points.principal();
	const sideMm = (square: number) => grid.stepMm * Math.sqrt(12 * Math.max(0.1, square));
	return {
		frame: {
			middle: planePoint(grid, middle),
			along,
			lengthMm: sideMm(longSquare),
			widthMm: sideMm(wideSquare),
		},
		count,
	};
}

const stations = Array.from({length: 18}, (_, index) => -0.34 + 0.04 * index);

/** How square a body must be for its spread to tell nothing of how it lies, and how unlike its mirror image. */
const [squareFrom, unlikeBelow] = [0.7, 0.92];

/** Straightens the frame; that of a nearly square body may begin aslant, so it is begun at half a right angle, too. */
function straightest(start: Frame, seen: Seen): Frame {
	const one = straighten(start, seen);
	if (one.widthMm <= squareFrom * one.lengthMm || symmetryOf(one, seen) > unlikeBelow) return one;
	const [x, y] = start.along;
	const aslant: Point = [(x - y) * Math.SQRT1_2, (x + y) * Math.SQRT1_2];
	const other = straighten({...start, along: aslant}, seen);
	return symmetryOf(other, seen) > symmetryOf(one, seen) ? other : one;
}

/** Turns the frame until the middles between the two sides lie on the axis, and takes the sizes of the body in it. */
function straighten(start: Frame, seen: Seen): Frame {
	let frame = start;
	for (let round = 0; round < 4; round += 1) {
		const sizes = extents(frame, seen);
		const middles = stations.flatMap(share => {
			const u = share * sizes.lengthMm;
			if (!isOn(seen, ...fromAxis(frame, [u, 0]))) return [];
			const [low, high] = [
				walkOut(frame, seen, {u, v: 0, side: -1}),
				walkOut(frame, seen, {u, v: 0, side: 1}),
			];
			return [{u, v: (high - low) / 2}];
		});
		const fit = robustLine(middles);
		if (!fit) return sizes;
		const angle = Math.atan2(frame.along[1], frame.along[0]) + Math.atan(fit[1]);
		const along: Point = [Math.cos(angle), Math.sin(angle)];
		frame = {...sizes, middle: fromAxis({middle: sizes.middle, along}, [0, fit[0]]), along};
	}
	return extents(frame, seen);
}

function robustLine(
	points: readonly {readonly u: number; readonly v: number}[],
): readonly [number, number] | undefined {
	if (points.length < 6) return undefined;
	const scales = makeScales(2, 1);
	let [offset, slope] = [0, 0];
	for (let round = 0; round < 4; round += 1) {
		scales.clear();
		for (const {u, v} of points) {
			[scales.row[0], scales.row[1]] = [1, u];
			scales.add(round === 0 ? 1 : 1 / (0.15 + Math.abs(v - offset - slope * u)), v);
		}
		const fit = scales.unknowns(0);
		if (!fit) return undefined;
		[offset, slope] = [fit[0] ?? 0, fit[1] ?? 0];
	}
	return [offset, slope];
}

/** The frame moved to the middle between its two ends, with the sizes of the body along and across. */
function extents(frame: Frame, seen: Seen): Frame {
	const along = (end: -1 | 1) =>
		median(
			[-0.06, -0.03, 0, 0.03, 0.06].map(share =>
				walkOut(frame, seen, {u: 0, v: end * share * frame.widthMm, end}),
			),
		);
	const [back, front] = [along(-1), along(1)];
	const middle = fromAxis(frame, [(front - back) / 2, 0]);
	const lengthMm = front + back;
	const moved = {...frame, middle, lengthMm};
	const widths = [-0.3, -0.15, 0, 0.15, 0.3].map(share => {
		const u = share * lengthMm;
		return walkOut(moved, seen, {u, v: 0, side: -1}) + walkOut(moved, seen, {u, v: 0, side: 1});
	});
	return {...moved, widthMm: median(widths)};
}

type Walk = {readonly u: number; readonly v: number; readonly end?: -1 | 0 | 1; readonly side?: -1 | 0 | 1};

/** How far one gets in a body from a place of its frame before being outside for good: gaps under 1.5 mm are stepped over. */
export function walkOut(frame: Omit<Frame, 'widthMm'>, seen: Seen, {u, v, end = 0, side = 0}: Walk): number {
	const [x, y] = fromAxis(frame, [u, v]);
	const [ax, ay] = frame.along;
	const [dx, dy] = [end * ax - side * ay, end * ay + side * ax];
	const mostMm = frame.lengthMm * 1.5;
	let last = 0;
	for (let s = 0; s < mostMm && s - last < 1.5; s += 0.25) {
		if (isOn(seen, x + s * dx, y + s * dy)) last = s;
	}
	return last + 0.125;
}

/** Of the two ways a body may lie, the longer; when it is nearly square, the one that its horns continue. */
function choose(one: Frame, other: Frame, whole: Body['whole'] & {readonly grid: Grid}): Frame {
	const [long, short] = one.lengthMm >= other.lengthMm ? [one, other] : [other, one];
	if (long.widthMm < 0.8 * long.lengthMm) return long;
	return beyond(short, whole) > 2 * beyond(long, whole) + 20 ? short : long;
}

/** How much of what hangs together with a body lies beyond its two ends. */
function beyond(frame: Frame, {regions, region, grid}: Body['whole'] & {readonly grid: Grid}): number {
	let count = 0;
	for (let row = region.top; row <= region.bottom; row += 1) {
		for (let column = region.left; column <= region.right; column += 1) {
			if (regions.labels[row * regions.width + column] !== region.label) continue;
			const dx = grid.from[0] + column * grid.stepMm - frame.middle[0];
			const dy = grid.from[1] + row * grid.stepMm - frame.middle[1];
			const u = Math.abs(dx * frame.along[0] + dy * frame.along[1]);
			const v = Math.abs(-dx * frame.along[1] + dy * frame.along[0]);
			const isBeyond = u > frame.lengthMm * 0.55 && u - frame.lengthMm / 2 > v - frame.widthMm / 2;
			if (isBeyond && u < frame.lengthMm) count += 1;
		}
	}
	return count;
}

function symmetryOf({middle, along}: Frame, seen: Seen): number {
	const {grid, body} = seen;
	let [both, all] = [0, 0];
	for (let at = 0, row = 0; row < body.height; row += 1) {
		for (let column = 0; column < body.width; column += 1, at += 1) {
			if (body.on[at] !== 1) continue;
			all += 1;
			const x = grid.from[0] + column * grid.stepMm;
			const y = grid.from[1] + row * grid.stepMm;
			const twice = 2 * (-(x - middle[0]) * along[1] + (y - middle[1]) * along[0]);
			if (isOn(seen, x + twice * along[1], y - twice * along[0])) both += 1;
		}
	}
	return both / (2 * all - both);
}
