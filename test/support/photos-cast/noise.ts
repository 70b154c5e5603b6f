/** Smooth chance over the plane, for grain, cloth, stone and skin. */
import type {Pick} from '../../../src/key/random.ts';

/** A value from 0 to 1 at each point of the plane, changing smoothly within about one unit. */
export type Noise = (x: number, y: number) => number;

/** Chance over the plane from a run of numbers: values at whole points, blended between them. */
export function noiseFrom(pick: Pick): Noise {
	const values = Float64Array.from({length: 256}, () => pick());
	const order = new Uint8Array(256);
	for (let at = 0; at < 256; at += 1) order[at] = at;
	for (let at = 255; at > 0; at -= 1) {
		const other = Math.floor(pick() * (at + 1));
		[order[at], order[other]] = [order[other] ?? 0, order[at] ?? 0];
	}
	// Asked millions of times a photo, hence no tuples here.
	return (x, y) => {
		const left = Math.floor(x);
		const top = Math.floor(y);
		const across = eased(x - left);
		const down = eased(y - top);
		const column = order[left & 255] ?? 0;
		const next = order[(left + 1) & 255] ?? 0;
		const a = values[order[(column + top) & 255] ?? 0] ?? 0;
		const b = values[order[(next + top) & 255] ?? 0] ?? 0;
		const c = values[order[(column + top + 1) & 255] ?? 0] ?? 0;
		const d = values[order[(next + top + 1) & 255] ?? 0] ?? 0;
		const upper = a + (b - a) * across;
		return upper + (c + (d - c) * across - upper) * down;
	};
}

/** The same with finer and weaker chance laid over it, from 0 to 1. */
export function layered(noise: Noise, layers: number): Noise {
	return (x, y) => {
		let [sum, weight, all, scale] = [0, 1, 0, 1];
		for (let layer = 0; layer < layers; layer += 1) {
			sum += weight * noise(x * scale + layer * 17.3, y * scale - layer * 9.1);
			all += weight;
			weight *= 0.5;
			scale *= 2.03;
		}
		return sum / all;
	};
}

/** From 0 at `from` to 1 at `to`, level at both ends; `from` may be the greater. */
export function ramp(from: number, to: number, value: number): number {
	const share = Math.min(1, Math.max(0, (value - from) / (to - from)));
	return share * share * (3 - 2 * share);
}

function eased(share: number): number {
	return share * share * share * (share * (share * 6 - 15) + 10);
}
