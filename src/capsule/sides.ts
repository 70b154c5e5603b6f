/** The straight sides of a sheet or card, found to a fraction of a pixel from its rough corners. */
import type {Corners} from './four-sided.ts';
import {type Point, type Raster, readColour} from './raster.ts';
import {solve} from './solve.ts';

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

/** How to look: how far to both sides in pixels, and which share of a side next to each corner to leave out. */
export type Look = {readonly reachPx: number; readonly skip: number};

const places = 64;
const stepPx = 0.5;

type Found = {readonly along: number; readonly off: number; readonly strength: number};

/** Finds the four sides near rough corners; undefined when one is not to be seen. */
export function placeSides(raster: Raster, rough: Corners, look: Look): Placed | undefined {
	const sides: Side[] = [];
	for (const [index, from] of rough.entries()) {
		const to = rough[(index + 1) % 4] ?? from;
		const side = placeSide(raster, [from, to], look);
		if (!side) return undefined;
		sides.push(side);
	}
	const points = sides.map((side, index) => meeting(sides[(index + 3) % 4] ?? side, side));
	const [a, b, c, d] = points;
	return a && b && c && d ? {corners: [a, b, c, d], sides} : undefined;
}

function placeSide(
	raster: Raster,
	[from, to]: readonly [Point, Point],
	{reachPx, skip}: Look,
): Side | undefined {
	const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
	const [dx, dy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
	const found: Found[] = [];
	for (let place = 0; place < places; place += 1) {
		const along = long * (skip + ((1 - 2 * skip) * (place + 0.5)) / places);
		const at: Point = [from[0] + dx * along, from[1] + dy * along];
		for (const edge of edgesAcross(raster, at, {normal: [dy, -dx], reachPx})) {
			found.push({along: along - long / 2, off: edge.off, strength: edge.strength});
		}
	}
	const fit = lineThrough(found, {long, skip});
	if (!fit) return undefined;
	const {offset, slope, kept} = fit;
	const middle: Point = [(from[0] + to[0]) / 2 + dy * offset, (from[1] + to[1]) / 2 - dx * offset];
	// The line runs along (dx, dy) + slope · normal.
	const size = Math.hypot(1, slope);
	const direction: Point = [(dx + slope * dy) / size, (dy - slope * dx) / size];
	const [a, b] = [direction[1], -direction[0]];
	const off = kept.map(({along, off: value}) => value - offset - slope * along);
	return {
		line: [a, b, a * middle[0] + b * middle[1]],
		seen: new Set(kept.map(({along}) => along)).size / places,
		scatterPx: Math.sqrt(off.reduce((sum, value) => sum + value * value, 0) / Math.max(1, off.length)),
		contrast: medianOf(kept.map(({strength}) => strength)),
		bowPx: bowOf(kept, off, long),
	};
}

/** The two strongest edges on a short line across, each where it is steepest; outwards is positive. */
function edgesAcross(
	raster: Raster,
	at: Point,
	{normal, reachPx}: {normal: Point; reachPx: number},
): readonly {off: number; strength: number}[] {
	const half = Math.ceil(reachPx / stepPx) + 4;
	const colours = new Float32Array((2 * half + 1) * 3);
	for (let index = -half; index <= half; index += 1) {
		const off = index * stepPx;
		if (!readColour(raster, at[0] + normal[0] * off, at[1] + normal[1] * off, colours, (index + half) * 3))
			return [];
	}
	const steep = steepness(colours, half);
	const peaks: {off: number; strength: number}[] = [];
	for (let index = 4; index < 2 * half - 3; index += 1) {
		const [before, here, after] = [steep[index - 1] ?? 0, steep[index] ?? 0, steep[index + 1] ?? 0];
		if (here < 2.5 || here < before || here <= after) continue;
		const shift = (before - after) / (2 * (before - 2 * here + after) || 1);
		peaks.push({off: (index - half + shift) * stepPx, strength: here});
	}
	return peaks.toSorted((a, b) => b.strength - a.strength).slice(0, 3);
}

/** How much the colour changes about each place, over three pixels, in grey levels. */
function steepness(colours: Float32Array, half: number): Float32Array {
	const steep = new Float32Array(2 * half + 1);
	for (let index = 3; index < steep.length - 3; index += 1) {
		let sum = 0;
		for (let channel = 0; channel < 3; channel += 1) {
			const of = (step: number) => colours[(index + step) * 3 + channel] ?? 0;
			const change = (of(3) - of(-3)) * 0.22 + (of(2) - of(-2)) * 0.4 + (of(1) - of(-1)) * 0.3;
			sum += change * change;
		}
		steep[index] = Math.sqrt(sum / 3);
	}
	return steep;
}

type Fit = {readonly offset: number; readonly slope: number; readonly kept: readonly Found[]};

/** The line that most places agree on, then the best line through those. */
function lineThrough(found: readonly Found[], {long, skip}: {long: number; skip: number}): Fit | undefined {
	const third = long * (0.5 - skip) * 0.25;
	const [early, late] = [found.filter(({along}) => along < -third), found.filter(({along}) => along > third)];
	const some = (list: readonly Found[]) =>
		list.filter((_, index) => index % Math.ceil(list.length / 28) === 0);
	let best = {score: 0, offset: 0, slope: 0};
	for (const a of some(early)) {
		for (const b of some(late)) {
			const slope = (b.off - a.off) / (b.along - a.along);
			const offset = a.off - slope * a.along;
			if (Math.abs(slope) > 0.12) continue;
			let score = 0;
			for (const {along, off, strength} of found) {
				const miss = Math.abs(off - offset - slope * along);
				if (miss < 1.2) score += (1 - miss / 1.2) * Math.min(strength, 25);
			}
			if (score > best.score) best = {score, offset, slope};
		}
	}
	if (best.score === 0) return undefined;
	return tighten(found, best);
}

function tighten(found: readonly Found[], start: {offset: number; slope: number}): Fit | undefined {
	let {offset, slope} = start;
	let kept: readonly Found[] = [];
	for (const reach of [1.6, 1.3, 1.1, 1.1]) {
		kept = found.filter(({along, off}) => Math.abs(off - offset - slope * along) < reach);
		if (kept.length < places * 0.25) return undefined;
		const weights = kept.map(({along, off, strength}) => {
			const miss = (off - offset - slope * along) / reach;
			return (1 - miss * miss) ** 2 * Math.min(strength, 30);
		});
		const fit = solve(
			kept.map(({along}) => [1, along]),
			kept.map(({off}) => off),
			weights,
		);
		if (!fit) return undefined;
		[offset = 0, slope = 0] = fit;
	}
	return {offset, slope, kept};
}

function bowOf(kept: readonly Found[], off: readonly number[], long: number): number {
	const fit = solve(
		kept.map(({along}) => [1, 1 - ((2 * along) / long) ** 2]),
		off,
	);
	return fit?.[1] ?? 0;
}

function meeting({line: [a, b, c]}: Side, {line: [d, e, f]}: Side): Point | undefined {
	const whole = a * e - b * d;
	return Math.abs(whole) < 1e-6 ? undefined : [(c * e - b * f) / whole, (a * f - c * d) / whole];
}

function medianOf(values: readonly number[]): number {
	return values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
}
