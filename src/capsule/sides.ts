/** The straight sides of a sheet or card, found to a fraction of a pixel from its rough corners. */
import {type Edges, findEdges} from './edges-across.ts';
import type {Corners} from './four-sided.ts';
import type {Point, Raster} from './raster.ts';

/** One side as found: `a·x + b·y = c` with a² + b² = 1. */
export type Side = {
	readonly line: readonly [a: number, b: number, c: number];
	/** Share of the places looked at where the side was seen. */
	readonly seen: number;
	/** How far those places scatter about the line, in pixels. */
	readonly scatterPx: number;
	/** How strong the edge is, in grey levels. */
	readonly contrast: number;
	/** The bow of the side: how far its middle stands off its ends, in pixels, outwards positive. */
	readonly bowPx: number;
};

/** An outline with sides well placed. */
export type Placed = {readonly corners: Corners; readonly sides: readonly Side[]};

/**
 * How to look: how far to both sides in pixels, which share of a side next to each corner to leave out, and how many lines
 * beside each other to take for one.
 */
export type Look = {readonly reachPx: number; readonly skip: number; readonly together?: number};

const places = 64;
/** How far from a line an edge may be that speaks for it, in pixels. */
const nearPx = 1.2;
const mostSlope = 0.12;

/** Finds the four sides near rough corners; undefined when one is not to be seen. */
export function placeSides(raster: Raster, rough: Corners, look: Look): Placed | undefined {
	const sides: Side[] = [];
	for (const [index, from] of rough.entries()) {
		const side = placeSide(raster, [from, rough[(index + 1) % 4] ?? from], look);
		if (!side) return undefined;
		sides.push(side);
	}
	return joinSides(sides);
}

/** The outline that four sides in their order enclose; undefined when two neighbours run alike. */
export function joinSides(sides: readonly Side[]): Placed | undefined {
	const points = sides.map((side, index) => meeting(sides[(index + 3) % 4] ?? side, side));
	const [a, b, c, d] = points;
	return a && b && c && d ? {corners: [a, b, c, d], sides} : undefined;
}

function placeSide(
	raster: Raster,
	[from, to]: readonly [Point, Point],
	{reachPx, skip, together = 1}: Look,
): Side | undefined {
	const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
	const [dx, dy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
	const edges = findEdges(raster, {from, to, places, together, reachPx, skip});
	const start = voteForLine(edges, long, reachPx);
	const fit = start && tighten(edges, start);
	if (!fit) return undefined;
	const {offset, slope} = fit;
	const middle: Point = [(from[0] + to[0]) / 2 + dy * offset, (from[1] + to[1]) / 2 - dx * offset];
	// The line runs along (dx, dy) + slope · normal.
	const size = Math.hypot(1, slope);
	const [a, b] = [(dy - slope * dx) / size, -(dx + slope * dy) / size];
	return {line: [a, b, a * middle[0] + b * middle[1]], ...qualityOf(edges, fit, long)};
}

type Line = {readonly offset: number; readonly slope: number};

/** The line that most edges speak for: votes for its offset in the middle, one slope after another. */
function voteForLine(edges: Edges, long: number, reachPx: number): Line | undefined {
	const most = Math.min((mostSlope * long) / 2, 2 * reachPx);
	const binPx = nearPx / 3;
	const middle = Math.ceil((reachPx + most + 2) / binPx) + 4;
	const scores = new Float32Array(2 * middle + 1);
	const turns = Math.ceil(most / 0.7);
	// A strong edge counts for more, though not by as much: horns across a side are strong and few.
	const weights = Float64Array.from(edges.strength, Math.sqrt);
	let best = {score: 0, offset: 0, slope: 0};
	for (let turn = -turns; turn <= turns; turn += 1) {
		const slope = (2 * turn * most) / turns / long;
		countVotes({...edges, weights}, {slope, binPx, scores});
		for (let bin = 0; bin < scores.length; bin += 1) {
			const score = scores[bin] ?? 0;
			if (score > best.score) best = {score, offset: (bin - middle) * binPx, slope};
		}
	}
	return best.score > 0 ? best : undefined;
}

/** Votes for each offset at one slope, each edge's spread over what is near. */
function countVotes(
	{count, along, off, weights}: Edges & {readonly weights: Float64Array},
	{slope, binPx, scores}: {readonly slope: number; readonly binPx: number; readonly scores: Float32Array},
): void {
	const middle = (scores.length - 1) / 2;
	scores.fill(0);
	for (let index = 0; index < count; index += 1) {
		const at = ((off[index] ?? 0) - slope * (along[index] ?? 0)) / binPx + middle;
		const weight = weights[index] ?? 0;
		for (let bin = Math.ceil(at - 3); bin < at + 3; bin += 1)
			scores[bin] = (scores[bin] ?? 0) + weight * (1 - Math.abs(bin - at) / 3);
	}
}

type Fit = Line & {readonly kept: readonly number[]};

/** The best line through the edges near a line, which are told by their numbers. */
function tighten({count, along, off, strength}: Edges, start: Line): Fit | undefined {
	let {offset, slope} = start;
	let kept: number[] = [];
	for (const reach of [1.6, 1.3, 1.1, 1.1]) {
		kept = [];
		const line = openLine();
		for (let index = 0; index < count; index += 1) {
			const x = along[index] ?? 0;
			const y = off[index] ?? 0;
			const miss = (y - offset - slope * x) / reach;
			if (Math.abs(miss) >= 1) continue;
			kept.push(index);
			line.add(x, y, (1 - miss * miss) ** 2 * Math.min(strength[index] ?? 0, 30));
		}
		const fit = kept.length < places * 0.25 ? undefined : line.fit();
		if (!fit) return undefined;
		[offset, slope] = fit;
	}
	return {offset, slope, kept};
}

/** A straight line through weighted points, in the sense of least squares. */
function openLine() {
	// Numbers of their own would be made anew by each point.
	const sums = new Float64Array(5);
	return {
		add: (x: number, y: number, weight: number): void => {
			sums[0] = (sums[0] ?? 0) + weight;
			sums[1] = (sums[1] ?? 0) + weight * x;
			sums[2] = (sums[2] ?? 0) + weight * y;
			sums[3] = (sums[3] ?? 0) + weight * x * x;
			sums[4] = (sums[4] ?? 0) + weight * x * y;
		},
		fit: (): readonly [offset: number, slope: number] | undefined => {
			const [w = 0, wx = 0, wy = 0, wxx = 0, wxy = 0] = sums;
			const whole = w * wxx - wx * wx;
			if (whole < 1e-9 * w * wxx) return undefined;
			return [(wxx * wy - wx * wxy) / whole, (w * wxy - wx * wy) / whole];
		},
	};
}

function qualityOf({along, off, strength}: Edges, {offset, slope, kept}: Fit, long: number) {
	const bow = openLine();
	const strengths: number[] = [];
	let [squares, last, seen] = [0, Number.NaN, 0];
	for (const index of kept) {
		const x = along[index] ?? 0;
		const miss = (off[index] ?? 0) - offset - slope * x;
		squares += miss * miss;
		strengths.push(strength[index] ?? 0);
		bow.add(1 - ((2 * x) / long) ** 2, miss, 1);
		// A place may show two edges; both lie beside each other in the list.
		if (x !== last) seen += 1;
		last = x;
	}
	return {
		seen: seen / places,
		scatterPx: Math.sqrt(squares / Math.max(1, kept.length)),
		contrast: strengths.sort((a, b) => a - b)[strengths.length >> 1] ?? 0,
		bowPx: bow.fit()?.[1] ?? 0,
	};
}

function meeting({line: [a, b, c]}: Side, {line: [d, e, f]}: Side): Point | undefined {
	const whole = a * e - b * d;
	return Math.abs(whole) < 1e-6 ? undefined : [(c * e - b * f) / whole, (a * f - c * d) / whole];
}
