/** A strip of the photo read from a body outwards, line beside line, and the edges on each line. */
import {type Axis, fromAxis} from './axis.ts';
import {type FlatView, gridPoint, logOf} from './flat-view.ts';
import type {Ground} from './ground.ts';
import {carry, type Homography} from './homography.ts';
import {type Point, type Raster, readColour} from './raster.ts';
import type {Oddness} from './telling.ts';

/** All that is needed to look at a body again in the full photo. */
export type Sight = {
	readonly raster: Raster;
	/** From the plane at the height of the body's outline to pixels. */
	readonly view: Homography;
	readonly flat: FlatView;
	readonly ground: Ground;
	readonly oddness: Oddness;
	/** Oddness by the rule for shadows alone. */
	readonly rule: Oddness;
	readonly mmPerPx: number;
};

/** Where to read: from one of the four sides of a body, over which part of it, between which distances from its middle. */
export type Reach = {
	readonly side: 'end' | 'flank';
	readonly way: -1 | 1;
	/** Where each line starts along the side, in millimetres from the axis or the middle. */
	readonly places: readonly number[];
	/** For each line, where the edge is expected, in millimetres outwards from the middle. */
	readonly near: readonly number[];
	readonly inMm: number;
	readonly outMm: number;
};

/** An edge on one line. */
export type Edge = {
	readonly line: number;
	/** Along the side, in millimetres. */
	readonly place: number;
	/** Outwards from the middle, in millimetres. */
	readonly at: number;
	/** In grey levels. */
	readonly strength: number;
	/** How sure it is that ground lies outside and something else inside, from 0 to 1. */
	readonly trust: number;
};

/** Finds the edges on every line of a strip; undefined when the photo does not show all of it. */
export function edgesOf(sight: Sight, axis: Axis, reach: Reach): readonly Edge[] | undefined {
	const stepMm = Math.max(0.12, 0.5 * sight.mmPerPx);
	const count = Math.ceil((reach.inMm + reach.outMm) / stepMm) + 1;
	const lines = reach.places.map((place, line) => {
		const colours = new Float32Array(count * 3);
		const from = (reach.near[line] ?? 0) - reach.inMm;
		for (let index = 0; index < count; index += 1) {
			const s = reach.way * (from + index * stepMm);
			const point = fromAxis(axis, reach.side === 'end' ? [s, place] : [place, s]);
			if (!readColour(sight.raster, ...carry(sight.view, point), colours, index * 3)) return undefined;
		}
		return {colours, from, place};
	});
	const known = lines.flatMap(line => (line ? [line] : []));
	if (known.length < lines.length) return undefined;
	return known.flatMap((line, index) => {
		const colours = blend(known.slice(Math.max(0, index - 1), index + 2).map(other => other.colours));
		const pointAt = (s: number) =>
			fromAxis(axis, reach.side === 'end' ? [reach.way * s, line.place] : [line.place, reach.way * s]);
		const odd = oddAlong(sight, colours, at => pointAt(line.from + at * stepMm));
		const softMm = Math.max(0.6, 1.6 * sight.mmPerPx);
		return peaksOf(steepness(colours, sight.mmPerPx / stepMm, stepMm)).map(({at, strength}) => ({
			line: index,
			place: line.place,
			at: line.from + at * stepMm,
			strength,
			trust: trustOf(odd, at, {stepMm, softMm}),
		}));
	});
}

/** Neighbouring lines, read side by side, are one line with less noise. */
function blend(lines: readonly Float32Array[]): Float32Array {
	const [first = new Float32Array(0)] = lines;
	return first.map((_, index) => lines.reduce((sum, line) => sum + (line[index] ?? 0), 0) / lines.length);
}

type Odd = {readonly learnt: Float32Array; readonly ruled: Float32Array};

function oddAlong(sight: Sight, colours: Float32Array, pointAt: (at: number) => Point): Odd {
	const {flat, ground, oddness, rule} = sight;
	const [learnt, ruled] = [new Float32Array(colours.length / 3), new Float32Array(colours.length / 3)];
	const logs = colours.map(logOf);
	const difference = new Float32Array(3);
	for (let at = 0; at < learnt.length; at += 1) {
		const [x, y] = gridPoint(flat, pointAt(at));
		ground.differ(logs, at * 3, x, y, difference);
		const [light = 0, red = 0, blue = 0] = difference;
		learnt[at] = oddness(light, red, blue);
		ruled[at] = rule(light, red, blue);
	}
	return {learnt, ruled};
}

/** How much all three colours change about each place, by the derivative of a bell curve, in grey levels. */
function steepness(colours: Float32Array, pxSteps: number, stepMm: number): Float32Array {
	const sigma = Math.max(0.4 / stepMm, 0.9 * pxSteps);
	const half = Math.ceil(2.5 * sigma);
	const kernel = Array.from(
		{length: half},
		(_, index) => (index + 1) * Math.exp(-0.5 * ((index + 1) / sigma) ** 2),
	);
	// A step from 0 to 1 gives 1 where it is.
	const whole = kernel.reduce(
		(sum, _, index) => sum + kernel.slice(index).reduce((rest, value) => rest + value, 0),
		0,
	);
	const size = Math.max(
		...kernel.map((_, index) => kernel.slice(index).reduce((rest, value) => rest + value, 0)),
		1e-9,
	);
	const count = colours.length / 3;
	const steep = new Float32Array(count);
	if (whole === 0) return steep;
	for (let at = half; at < count - half; at += 1) {
		let squares = 0;
		for (let channel = 0; channel < 3; channel += 1) {
			let change = 0;
			for (let off = 1; off <= half; off += 1) {
				const rise = (colours[(at + off) * 3 + channel] ?? 0) - (colours[(at - off) * 3 + channel] ?? 0);
				change += (kernel[off - 1] ?? 0) * rise;
			}
			squares += change * change;
		}
		steep[at] = Math.sqrt(squares / 3) / size;
	}
	return steep;
}

function peaksOf(steep: Float32Array): readonly {readonly at: number; readonly strength: number}[] {
	const peaks: {at: number; strength: number}[] = [];
	for (let at = 1; at < steep.length - 1; at += 1) {
		const [before, here, after] = [steep[at - 1] ?? 0, steep[at] ?? 0, steep[at + 1] ?? 0];
		if (here < 3 || here < before || here <= after) continue;
		peaks.push({at: at + (before - after) / (2 * (before - 2 * here + after) || 1), strength: here});
	}
	return peaks;
}

/** Ground outside, a shadow on it or not, and something of another colour inside. */
function trustOf(
	{learnt, ruled}: Odd,
	at: number,
	{stepMm, softMm}: {stepMm: number; softMm: number},
): number {
	const mean = (odd: Float32Array, fromMm: number, toMm: number) => {
		const from = Math.max(0, Math.round(at + fromMm / stepMm));
		const to = Math.min(odd.length - 1, Math.round(at + toMm / stepMm));
		let sum = 0;
		for (let index = from; index <= to; index += 1) sum += odd[index] ?? 0;
		return sum / Math.max(1, to - from + 1);
	};
	const outside = mean(ruled, softMm, softMm + 1.6);
	// Half by the rule: a shadow's colour may well be one that was learnt from a dark part of the case.
	const inside = (mean(learnt, -softMm - 1.2, -softMm) + mean(ruled, -softMm - 1.2, -softMm)) / 2;
	return share(-outside) * (0.2 + 0.8 * share(inside));
}

function share(value: number): number {
	return 1 / (1 + Math.exp(-2.2 * value));
}
