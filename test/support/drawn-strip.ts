/** Strips across the side of a body as they would be read from a photo, each line the same, for tests that tell edges apart. */
import type {Border} from '../../src/capsule/border.ts';
import type {Strip} from '../../src/capsule/strip.ts';

/** Red, green and blue. */
type Colour = readonly [number, number, number];

/** Paper, on which a strip lies. */
export const paper: Colour = [240, 240, 236];

/** A stretch of one colour that ends so many millimetres outwards from the middle of the body. */
export type Stretch = {readonly toMm: number; readonly colour: Colour};

const stepMm = 0.1;
const [fromMm, toMm] = [14, 30] as const;
const places = Array.from({length: 9}, (_, index) => index - 4);

/** Draws a strip of stretches from the inside outwards, then paper, blurred by a bell curve of so many millimetres. */
export function drawStrip(stretches: readonly Stretch[], blurMm: number): Strip {
	const count = Math.round((toMm - fromMm) / stepMm) + 1;
	const line = Array.from({length: count}, (_, index) => blurred(stretches, fromMm + index * stepMm, blurMm));
	const colours = Float32Array.from(places.flatMap(() => line.flat()));
	const differences = Float32Array.from(places.flatMap(() => line.flatMap(differenceOf)));
	const none = new Float32Array(colours.length / 3);
	return {places, fromMm, stepMm, count, colours, learnt: none, ruled: none, differences};
}

/** A straight border at a distance, plain to see. */
export function borderAt(mm: number, more: Partial<Border> = {}): Border {
	return {at: () => mm, score: 0.8, strength: 60, trust: 0.9, scatterMm: 0.05, seen: 1, ...more};
}

function blurred(stretches: readonly Stretch[], at: number, blurMm: number): readonly number[] {
	const sum = [0, 0, 0];
	let whole = 0;
	for (let off = -3; off <= 3; off += 0.25) {
		const weight = Math.exp(-0.5 * off * off);
		const colour = stretches.find(stretch => at + off * blurMm < stretch.toMm)?.colour ?? paper;
		whole += weight;
		for (const channel of [0, 1, 2]) sum[channel] = (sum[channel] ?? 0) + weight * (colour[channel] ?? 0);
	}
	return sum.map(value => value / whole);
}

function differenceOf(colour: readonly number[]): readonly number[] {
	const [red = 0, green = 0, blue = 0] = colour.map((value, channel) =>
		Math.log(value / (paper[channel] ?? 1)),
	);
	return [(red + green + blue) / 3, red - green, blue - (red + green) / 2];
}
