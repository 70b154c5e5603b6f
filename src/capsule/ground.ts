/** What the bare ground looks like at each point of a flat view: its light and colour, smooth all over. */
import type {FlatView} from './flat-view.ts';
import {makeScales, type Scales} from './weighing.ts';

/** Bare ground. */
export type Ground = {
	/**
	 * How tones, given from `at` on, differ from bare ground at column `x` and row `y`: in light, red against green and
	 * blue against both, written into `into` from `to` on.
	 */
	readonly differ: (
		tones: Float32Array,
		at: number,
		x: number,
		y: number,
		into: Float32Array,
		to?: number,
	) => void;
	/** The same for all tones of row `y`, which `tones` holds alone. */
	readonly differAlong: (tones: Float32Array, y: number, into: Float32Array) => void;
	/** Spread of the ground's own light and colour, one sigma. */
	readonly lightSpread: number;
	readonly colourSpread: number;
};

const blockPoints = 10;
/** Light may bend as a cubic over the view, colours as a square: so many terms of `writeTerms`. */
const [cubic, square] = [10, 6];

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
	const scales = makeScales(cubic, 3);
	const weights = new Float64Array(blocks.length);
	for (const [index, {light}] of blocks.entries()) weights[index] = pull(light - bright, 0.6);
	let fit: Fit | undefined;
	for (const reach of [0.5, 0.35, 0.22, 0.15, 0.12, 0.1]) {
		fit = fitTo(blocks, weights, {scales, order: reach > 0.3 ? square : cubic});
		if (!fit) return undefined;
		const [light, red, blue] = [polynomialOf(fit.light), polynomialOf(fit.red), polynomialOf(fit.blue)];
		for (const [index, block] of blocks.entries()) {
			const {u, v} = block;
			const [offRed, offBlue] = [block.red - red(u, v), block.blue - blue(u, v)];
			const colour = Math.sqrt(offRed * offRed + offBlue * offBlue);
			weights[index] =
				pull(block.light - light(u, v), reach) * pull(colour, Math.max(0.08, reach * 0.5)) + 1e-6;
		}
	}
	return fit && groundOf(view, fit);
}

type Fit = {readonly light: Float64Array; readonly red: Float64Array; readonly blue: Float64Array};

function fitTo(
	blocks: readonly Block[],
	weights: Float64Array,
	{scales, order}: {scales: Scales; order: number},
): Fit | undefined {
	scales.clear();
	for (const [index, block] of blocks.entries()) {
		writeTerms(block, scales.row);
		scales.add(weights[index] ?? 0, block.light, block.red, block.blue);
	}
	const light = scales.unknowns(0, order);
	const red = scales.unknowns(1, square);
	const blue = scales.unknowns(2, square);
	return light && red && blue && {light, red, blue};
}

function groundOf(view: FlatView, {light, red, blue}: Fit): Ground {
	const [lightAt, redAt, blueAt] = [polynomialOf(light), polynomialOf(red), polynomialOf(blue)];
	const differ: Ground['differ'] = (tones, at, x, y, into, to = 0) => {
		const u = (2 * x) / view.width - 1;
		const v = (2 * y) / view.height - 1;
		into[to] = (tones[at] ?? 0) - lightAt(u, v);
		into[to + 1] = (tones[at + 1] ?? 0) - redAt(u, v);
		into[to + 2] = (tones[at + 2] ?? 0) - blueAt(u, v);
	};
	const fits = [light, red, blue] as const;
	const differAlong: Ground['differAlong'] = (tones, y, into) => {
		const v = (2 * y) / view.height - 1;
		for (const [channel, fit] of fits.entries()) writeOff(tones, into, {channel, terms: termsAt(fit, v)});
	};
	return {differ, differAlong, ...spreadsOf(view, differ)};
}

/** How one of three channels is off a cubic over a row, told by the cubic's four factors. */
function writeOff(
	tones: Float32Array,
	into: Float32Array,
	{channel, terms: [a, b, c, d]}: {readonly channel: number; readonly terms: Cubic},
): void {
	const perTone = 6 / tones.length;
	for (let at = channel, x = 0; at < tones.length; at += 3, x += 1) {
		const u = perTone * x - 1;
		into[at] = (tones[at] ?? 0) - (a + u * (b + u * (c + u * d)));
	}
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
		differ(view.tones, at * 3, at - y * view.width, y, into);
		lights[count] = Math.abs(into[0] ?? 0);
		colours[count] = Math.sqrt((into[1] ?? 0) ** 2 + (into[2] ?? 0) ** 2);
		count += 1;
	}
	const middle = (values: Float32Array) => values.subarray(0, count).toSorted()[count >> 1] ?? 0;
	return {lightSpread: middle(lights) * 1.48, colourSpread: middle(colours) * 0.85};
}

function blocksOf(view: FlatView): readonly Block[] {
	const {width, height} = view;
	const blocks: Block[] = [];
	const lights = new Float32Array(blockPoints ** 2 / 2);
	for (let top = 0; top + blockPoints <= height; top += blockPoints) {
		for (let left = 0; left + blockPoints <= width; left += blockPoints) {
			const block = blockAt(view, {left, top}, lights);
			if (block) blocks.push(block);
		}
	}
	return blocks;
}

/** The middle tone of the brighter part of a block, from every other point of each row. */
function blockAt(
	{width, height, tones, known}: FlatView,
	{left, top}: {left: number; top: number},
	lights: Float32Array,
): Block | undefined {
	let count = 0;
	for (let y = top; y < top + blockPoints; y += 1) {
		const from = y * width + left + (y & 1);
		for (let at = from; at < from + blockPoints; at += 2) {
			if (known[at] !== 1) continue;
			lights[count] = tones[at * 3] ?? 0;
			count += 1;
		}
	}
	if (count < 0.7 * lights.length) return undefined;
	const sorted = lights.subarray(0, count).sort();
	const [least, most] = [sorted[Math.floor(count * 0.4)] ?? 0, sorted[Math.ceil(count * 0.9) - 1] ?? 0];
	let [light, red, blue, some] = [0, 0, 0, 0];
	for (let y = top; y < top + blockPoints; y += 1) {
		const from = y * width + left + (y & 1);
		for (let at = from; at < from + blockPoints; at += 2) {
			const own = tones[at * 3] ?? 0;
			if (known[at] !== 1 || own < least || own > most) continue;
			light += own;
			red += tones[at * 3 + 1] ?? 0;
			blue += tones[at * 3 + 2] ?? 0;
			some += 1;
		}
	}
	return {
		u: (2 * (left + blockPoints / 2)) / width - 1,
		v: (2 * (top + blockPoints / 2)) / height - 1,
		light: light / some,
		red: red / some,
		blue: blue / some,
	};
}

function pull(off: number, reach: number): number {
	const share = off / reach;
	return Math.abs(share) >= 1 ? 0 : (1 - share * share) ** 2;
}

function writeTerms({u, v}: Block, into: Float64Array): void {
	into[0] = 1;
	into[1] = u;
	into[2] = v;
	into[3] = u * u;
	into[4] = u * v;
	into[5] = v * v;
	into[6] = u * u * u;
	into[7] = u * u * v;
	into[8] = u * v * v;
	into[9] = v * v * v;
}

/** A fitted polynomial, its ten factors filled up with zeros so that none has to be asked for. */
function polynomialOf(factors: Float64Array): (u: number, v: number) => number {
	const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0, j = 0] = factors;
	return (u, v) =>
		a + u * (b + d * u + e * v + g * u * u + h * u * v) + v * (c + f * v + i * u * v + j * v * v);
}

type Cubic = readonly [a: number, b: number, c: number, d: number];

/** The factors of what a polynomial is along a row. */
function termsAt(factors: Float64Array, v: number): Cubic {
	const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0, j = 0] = factors;
	return [a + v * (c + v * (f + v * j)), b + v * (e + v * i), d + v * h, g];
}
