/** The edges on each line of a strip: where colours change most, and what lies on both sides. */
import type {Strip} from './strip.ts';

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

/** Weaker is noise. */
const leastStrength = 3;

/** Finds the edges on every line of a strip that was read at so many millimetres a pixel. */
export function edgesOf(strip: Strip, mmPerPx: number): readonly Edge[] {
	const {places, count, stepMm, fromMm} = strip;
	const kernel = kernelOf(Math.max(0.4, 0.9 * mmPerPx) / stepMm);
	const softMm = Math.max(0.6, 1.6 * mmPerPx);
	const edges: Edge[] = [];
	const steep = new Float32Array(count);
	for (const [line, place] of places.entries()) {
		writeSteepness(strip, line, {kernel, steep});
		for (let at = kernel.length + 1; at < count - kernel.length - 1; at += 1) {
			const [before, here, after] = [steep[at - 1] ?? 0, steep[at] ?? 0, steep[at + 1] ?? 0];
			if (here < leastStrength || here < before || here <= after) continue;
			const peak = at + (before - after) / (2 * (before - 2 * here + after) || 1);
			const trust = trustOf(strip, line, {at: peak, softMm});
			edges.push({line, place, at: fromMm + peak * stepMm, strength: here, trust});
		}
	}
	return edges;
}

/** The derivative of a bell curve, from its middle outwards, so that a step from 0 to 1 gives 1 where it is. */
function kernelOf(sigma: number): Float64Array {
	const half = Math.max(1, Math.ceil(2.5 * sigma));
	const kernel = Float64Array.from(
		{length: half},
		(_, index) => (index + 1) * Math.exp(-0.5 * ((index + 1) / sigma) ** 2),
	);
	const whole = kernel.reduce((sum, value) => sum + value, 0);
	return kernel.map(value => value / whole);
}

/** How much all three colours change about each place of a line, in grey levels. */
function writeSteepness(
	{colours, count}: Strip,
	line: number,
	{kernel, steep}: {kernel: Float64Array; steep: Float32Array},
): void {
	const half = kernel.length;
	const start = line * count;
	for (let at = half; at < count - half; at += 1) {
		let [red, green, blue] = [0, 0, 0];
		for (let off = 1; off <= half; off += 1) {
			const share = kernel[off - 1] ?? 0;
			const [after, before] = [(start + at + off) * 3, (start + at - off) * 3];
			red += share * ((colours[after] ?? 0) - (colours[before] ?? 0));
			green += share * ((colours[after + 1] ?? 0) - (colours[before + 1] ?? 0));
			blue += share * ((colours[after + 2] ?? 0) - (colours[before + 2] ?? 0));
		}
		steep[at] = Math.sqrt((red * red + green * green + blue * blue) / 3);
	}
}

/** Ground outside, a shadow on it or not, and something of another colour inside. */
function trustOf(
	{learnt, ruled, stepMm, count}: Strip,
	line: number,
	{at, softMm}: {at: number; softMm: number},
): number {
	const mean = (odd: Float32Array, fromMm: number, toMm: number) => {
		const from = Math.max(0, Math.round(at + fromMm / stepMm));
		const to = Math.min(count - 1, Math.round(at + toMm / stepMm));
		let sum = 0;
		for (let index = from; index <= to; index += 1) sum += odd[line * count + index] ?? 0;
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
