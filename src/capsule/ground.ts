/** What the bare ground looks like at each point of a flat view: its light and colour, smooth all over. */
import type {FlatView} from './flat-view.ts';
import {solve} from './solve.ts';

/** How a colour differs from bare ground there: in light, red against green, blue against both; logarithms. */
export type Difference = readonly [light: number, red: number, blue: number];

/** Bare ground. */
export type Ground = {
	/** How a colour, given as logarithms from `at` on, differs from bare ground at column `x` and row `y`. */
	readonly differ: (logs: Float32Array, at: number, x: number, y: number, into: Float32Array) => void;
	/** Spread of the ground's own light and colour, one sigma. */
	readonly lightSpread: number;
	readonly colourSpread: number;
};

const blockPoints = 10;

type Block = {
	readonly u: number;
	readonly v: number;
	readonly light: number;
	readonly red: number;
	readonly blue: number;
};

/** Fits the ground to the brighter part of each block, and gives up the blocks where something lies. */
export function findGround(view: FlatView): Ground | undefined {
	const blocks = blocksOf(view);
	if (blocks.length < 24) return undefined;
	const bright =
		blocks.map(({light}) => light).toSorted((a, b) => a - b)[Math.floor(blocks.length * 0.65)] ?? 0;
	let weights: readonly number[] = blocks.map(({light}) => pull(light - bright, 0.6));
	const curved = blocks.map(({u, v}) => terms(u, v, 3));
	const plain = blocks.map(({u, v}) => terms(u, v, 2));
	const zero = {light: [0], red: [0], blue: [0]};
	let fit: Fit = {light: [bright], red: zero.red, blue: zero.blue};
	for (const reach of [0.5, 0.35, 0.22, 0.15, 0.12, 0.1]) {
		const order = reach > 0.3 ? plain : curved;
		const light = solve(
			order,
			blocks.map(block => block.light),
			weights,
		);
		const red = solve(
			plain,
			blocks.map(block => block.red),
			weights,
		);
		const blue = solve(
			plain,
			blocks.map(block => block.blue),
			weights,
		);
		if (!light || !red || !blue) return undefined;
		fit = {light, red, blue};
		weights = blocks.map((block, index) => {
			const off = block.light - weighted(light, order[index] ?? []);
			const colour = Math.hypot(
				block.red - weighted(red, plain[index] ?? []),
				block.blue - weighted(blue, plain[index] ?? []),
			);
			return pull(off, reach) * pull(colour, Math.max(0.08, reach * 0.5)) + 1e-6;
		});
	}
	return groundOf(view, fit);
}

type Fit = {
	readonly light: readonly number[];
	readonly red: readonly number[];
	readonly blue: readonly number[];
};

function groundOf(view: FlatView, {light, red, blue}: Fit): Ground {
	const [lightAt, redAt, blueAt] = [polynomialOf(light), polynomialOf(red), polynomialOf(blue)];
	const differ: Ground['differ'] = (logs, at, x, y, into) => {
		const u = (2 * x) / view.width - 1;
		const v = (2 * y) / view.height - 1;
		const r = logs[at] ?? 0;
		const g = logs[at + 1] ?? 0;
		const b = logs[at + 2] ?? 0;
		into[0] = (r + g + b) / 3 - lightAt(u, v);
		into[1] = r - g - redAt(u, v);
		into[2] = b - (r + g) / 2 - blueAt(u, v);
	};
	return {differ, ...spreadsOf(view, differ)};
}

/** From the middle half of how points near the ground's light differ. */
function spreadsOf(view: FlatView, differ: Ground['differ']): {lightSpread: number; colourSpread: number} {
	const into = new Float32Array(3);
	const stride = Math.max(1, Math.floor(view.known.length / 3000));
	const [lights, colours] = [new Float32Array(6100), new Float32Array(6100)];
	let count = 0;
	for (let at = 0; at < view.known.length && count < lights.length; at += stride) {
		if (view.known[at] !== 1) continue;
		const y = Math.floor(at / view.width);
		differ(view.logs, at * 3, at - y * view.width, y, into);
		lights[count] = Math.abs(into[0] ?? 0);
		colours[count] = Math.hypot(into[1] ?? 0, into[2] ?? 0);
		count += 1;
	}
	const middle = (values: Float32Array) => values.subarray(0, count).toSorted()[count >> 1] ?? 0;
	return {lightSpread: middle(lights) * 1.48, colourSpread: middle(colours) * 0.85};
}

function blocksOf(view: FlatView): readonly Block[] {
	const {width, height} = view;
	const blocks: Block[] = [];
	for (let top = 0; top + blockPoints <= height; top += blockPoints) {
		for (let left = 0; left + blockPoints <= width; left += blockPoints) {
			const block = blockAt(view, left, top);
			if (block) blocks.push(block);
		}
	}
	return blocks;
}

function blockAt({width, height, logs, known}: FlatView, left: number, top: number): Block | undefined {
	const lights = new Float32Array(blockPoints ** 2);
	let count = 0;
	// As exact as they are kept, so that the least and the most are equal to themselves.
	const lightAt = (at: number) =>
		Math.fround(((logs[at] ?? 0) + (logs[at + 1] ?? 0) + (logs[at + 2] ?? 0)) / 3);
	for (let y = top; y < top + blockPoints; y += 1) {
		for (let at = y * width + left; at < y * width + left + blockPoints; at += 1) {
			if (known[at] !== 1) continue;
			lights[count] = lightAt(at * 3);
			count += 1;
		}
	}
	if (count < 0.7 * blockPoints ** 2) return undefined;
	const sorted = lights.subarray(0, count).toSorted();
	const [least, most] = [sorted[Math.floor(count * 0.4)] ?? 0, sorted[Math.ceil(count * 0.9) - 1] ?? 0];
	let [red, green, blue, some] = [0, 0, 0, 0];
	for (let y = top; y < top + blockPoints; y += 1) {
		for (let at = (y * width + left) * 3; at < (y * width + left + blockPoints) * 3; at += 3) {
			const light = lightAt(at);
			if (known[at / 3] !== 1 || light < least || light > most) continue;
			red += logs[at] ?? 0;
			green += logs[at + 1] ?? 0;
			blue += logs[at + 2] ?? 0;
			some += 1;
		}
	}
	[red, green, blue] = [red / some, green / some, blue / some];
	return {
		u: (2 * (left + blockPoints / 2)) / width - 1,
		v: (2 * (top + blockPoints / 2)) / height - 1,
		light: (red + green + blue) / 3,
		red: red - green,
		blue: blue - (red + green) / 2,
	};
}

function pull(off: number, reach: number): number {
	const share = off / reach;
	return Math.abs(share) >= 1 ? 0 : (1 - share * share) ** 2;
}

function terms(u: number, v: number, order: 2 | 3): readonly number[] {
	const low = [1, u, v, u * u, u * v, v * v];
	return order === 2 ? low : [...low, u * u * u, u * u * v, u * v * v, v * v * v];
}

function weighted(factors: readonly number[], values: readonly number[]): number {
	return factors.reduce((sum, factor, index) => sum + factor * (values[index] ?? 0), 0);
}

/** A fitted polynomial, its ten factors filled up with zeros so that none has to be asked for. */
function polynomialOf(factors: readonly number[]): (u: number, v: number) => number {
	const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0, j = 0] = factors;
	return (u, v) =>
		a + u * (b + d * u + e * v + g * u * u + h * u * v) + v * (c + f * v + i * u * v + j * v * v);
}
