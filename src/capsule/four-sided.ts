/** Four-sided outlines in a photo that might be a sheet or a card: rough corners, found many ways. */
import type {Point} from './raster.ts';
import {
	areaOf,
	fenceRound,
	type Mask,
	partsOf,
	type Region,
	type Runs,
	roomForRuns,
	turnOf,
} from './regions.ts';
import {masksOf, type Shades, type Way} from './shades.ts';

/** Four corners, clockwise as seen. */
export type Corners = readonly [Point, Point, Point, Point];

/** A rough outline and how many of the ways of looking found it. */
export type Outline = {readonly corners: Corners; readonly votes: number};

/** Looks for outlines in one way after another, and gives all that were found so far, those found most often first. */
export type OutlineFinder = (way: Way) => readonly Outline[];

const leastShare = 0.006;
const mostShare = 0.97;

/** Makes a finder of the four-sided outlines of a small picture. */
export function makeOutlineFinder(shades: Shades): OutlineFinder {
	const {width, height} = shades.across;
	const runs = roomForRuns(width, height);
	const found: {corners: Corners; votes: number}[] = [];
	return way => {
		for (const {mask, of} of masksOf(shades, way)) {
			for (const part of partsOf(mask, {leastArea: leastShare * mask.on.length, of, runs})) {
				const corners = cornersOf(runs, part, mask);
				if (!corners) continue;
				const same = found.find(other => isNear(other.corners, corners, 5));
				if (same) same.votes += 1;
				else found.push({corners, votes: 1});
			}
		}
		return found.toSorted((a, b) => b.votes - a.votes);
	};
}

/** The corners of a part that has four; a sheet with a case on it is hollow, but not as hollow as a frame. */
function cornersOf(runs: Runs, part: Region, mask: Mask): Corners | undefined {
	const {left, top, right, bottom, area} = part;
	const touches = [left === 0, top === 0, right === mask.width - 1, bottom === mask.height - 1];
	// Whatever leaves the photo on three sides is ground.
	if (area > mostShare * mask.on.length || touches.filter(Boolean).length > 2) return undefined;
	const fence = fenceRound(runs, part);
	const fenced = areaOf(fence);
	const corners = area < 0.45 * fenced ? undefined : fourOf(fence);
	return corners && fenced > 0.9 * areaOf(corners) && !isAtBorder(corners, mask) ? corners : undefined;
}

/** The four-sided outline that a convex fence comes nearest to, by giving up the sides that cost the least. */
export function fourOf(hull: readonly Point[]): Corners | undefined {
	let fence = thinned(hull);
	while (fence.length > 4) {
		let best: {cost: number; index: number; corner: Point} | undefined;
		for (let index = 0; index < fence.length; index += 1) {
			const [a, b, c, d] = [0, 1, 2, 3].map(step => fence[(index + step) % fence.length]);
			const corner = a && b && c && d ? crossing([a, b], [d, c]) : undefined;
			if (!corner || !b || !c) continue;
			const cost = Math.abs(turnOf(b, corner, c)) / 2;
			if (!best || cost < best.cost) best = {cost, index, corner};
		}
		if (!best) return undefined;
		const {index, corner} = best;
		const [second, third] = [(index + 1) % fence.length, (index + 2) % fence.length];
		fence = fence.flatMap((point, place) => (place === second ? [corner] : place === third ? [] : [point]));
	}
	const [a, b, c, d] = fence;
	return a && b && c && d ? [a, b, c, d] : undefined;
}

/** Where two lines meet beyond the second point of each; undefined when they do not. */
function crossing([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): Point | undefined {
	const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
	const [vx, vy] = [d[0] - c[0], d[1] - c[1]];
	const whole = ux * vy - uy * vx;
	if (Math.abs(whole) < 1e-9) return undefined;
	const along = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / whole;
	const other = ((c[0] - a[0]) * uy - (c[1] - a[1]) * ux) / whole;
	return along >= 1 && other >= 1 ? [a[0] + along * ux, a[1] + along * uy] : undefined;
}

/** Without the points that lie on the way between their neighbours, so that stairs of pixels do not count as sides. */
function thinned(hull: readonly Point[]): readonly Point[] {
	let fence = hull;
	for (;;) {
		const last = fence;
		let gone = -1;
		let least = 0.6;
		for (const [index, point] of last.entries()) {
			const before = last[(index + last.length - 1) % last.length] ?? point;
			const after = last[(index + 1) % last.length] ?? point;
			const base = Math.hypot(after[0] - before[0], after[1] - before[1]) || 1;
			const height = Math.abs(turnOf(before, point, after)) / base;
			if (height < least) [least, gone] = [height, index];
		}
		if (gone < 0 || last.length <= 4) return last;
		fence = last.filter((_, index) => index !== gone);
	}
}

function isAtBorder(corners: Corners, {width, height}: Mask): boolean {
	return corners.some(([x, y]) => x < 0.5 || y < 0.5 || x > width - 1.5 || y > height - 1.5);
}

/** The middle of four corners. */
export function middleOf(corners: Corners): Point {
	const mean = (axis: 0 | 1) => corners.reduce((sum, corner) => sum + corner[axis], 0) / 4;
	return [mean(0), mean(1)];
}

/** Whether all corners of two outlines lie within so many pixels of each other, whichever is named first. */
export function isNear(a: Corners, b: Corners, px: number): boolean {
	for (let turn = 0; turn < 4; turn += 1) {
		let near = 0;
		while (near < 4 && isWithin(a[near], b[(near + turn) % 4], px)) near += 1;
		if (near === 4) return true;
	}
	return false;
}

function isWithin(point: Point | undefined, other: Point | undefined, px: number): boolean {
	if (!point || !other) return false;
	const across = point[0] - other[0];
	const down = point[1] - other[1];
	return across * across + down * down < px * px;
}
