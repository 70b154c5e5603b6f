/** Moves a side that was found at the edge of a shadow to the edge of what throws it. */
import type {Corners} from './four-sided.ts';
import {type Raster, readColour} from './raster.ts';
import {joinSides, type Placed, type Side} from './sides.ts';

/** How far to both sides of a line is looked, and how many of the outermost points are taken for bare ground, or the thing. */
const reach = 10;
const plain = 3;
const stepPx = 0.5;
const places = 48;
const count = (2 * reach) / stepPx + 1;
/** Below this, of a right angle's sine, two colours are too much alike to be told from each other (our choice). */
const leastApart = 0.08;
/** A shadow takes at least this share of the light; less is the ground's own grain. */
const leastShade = 0.06;

/** An outline whose sides lie where the thing ends, also where its shadow is the plainer to see. */
export function withoutShadows(raster: Raster, placed: Placed): Placed {
	const sides = placed.sides.map((side, index) => {
		const along = [placed.corners[index] ?? [0, 0], placed.corners[(index + 1) % 4] ?? [0, 0]] as const;
		const off = edgeOff(profileAcross(raster, side, along));
		const [a, b, c] = side.line;
		return off === undefined ? side : {...side, line: [a, b, c + off] as const};
	});
	return joinSides(sides) ?? placed;
}

/** Colours across a side, each the middle one of many places along it, from inside outwards. */
function profileAcross(
	raster: Raster,
	{line: [a, b]}: Side,
	[from, to]: readonly [Corners[number], Corners[number]],
): Float32Array {
	const profile = new Float32Array(count * 3);
	const seen = new Float32Array(places * 3);
	const [column, colour] = [new Float32Array(places), new Float32Array(3)];
	for (let index = 0; index < count; index += 1) {
		const off = index * stepPx - reach;
		let held = 0;
		for (let place = 0; place < places; place += 1) {
			const share = 0.1 + (0.8 * (place + 0.5)) / places;
			const x = from[0] + share * (to[0] - from[0]) + a * off;
			const y = from[1] + share * (to[1] - from[1]) + b * off;
			if (!readColour(raster, x, y, colour)) continue;
			seen.set(colour, held * 3);
			held += 1;
		}
		for (let channel = 0; channel < 3; channel += 1) {
			for (let place = 0; place < held; place += 1) column[place] = seen[place * 3 + channel] ?? 0;
			profile[index * 3 + channel] = column.subarray(0, held).sort()[held >> 1] ?? Number.NaN;
		}
	}
	return profile;
}

type Colour = readonly [red: number, green: number, blue: number];

/** How far outwards of the line the thing ends, where a shadow hides it; undefined where there is none to see. */
function edgeOff(profile: Float32Array): number | undefined {
	const thing = meanOf(profile, 0);
	const ground = meanOf(profile, count - plain);
	const [ii, ig, gg] = [dot(thing, thing), dot(thing, ground), dot(ground, ground)];
	const whole = ii * gg - ig * ig;
	return whole > leastApart ** 2 * ii * gg
		? byColour(profile, {thing, ground, ii, ig, gg, whole})
		: byDip(profile, Math.sqrt(ii), Math.sqrt(gg));
}

type Two = {
	readonly thing: Colour;
	readonly ground: Colour;
	readonly ii: number;
	readonly ig: number;
	readonly gg: number;
	readonly whole: number;
};

/** Every point is so much of the thing and so much of the ground's light; where both leave light out, there is shade. */
function byColour(profile: Float32Array, {thing, ground, ii, ig, gg, whole}: Two): number | undefined {
	let isShaded = false;
	let edge: number | undefined;
	let before = 1;
	for (let index = 0; index < count; index += 1) {
		const here = colourAt(profile, index);
		const [ip, gp] = [dot(thing, here), dot(ground, here)];
		const share = (gg * ip - ig * gp) / whole;
		const light = (ii * gp - ig * ip) / whole;
		if (edge === undefined && share < 0.5) edge = index - (0.5 - share) / Math.max(0.05, before - share);
		if (share < 0.5 && light < (1 - leastShade) * (1 - share)) isShaded = true;
		before = share;
	}
	return isShaded && edge !== undefined ? edge * stepPx - reach : undefined;
}

/** Where both have one colour, only a shadow darker than either tells where the thing ends: half way up from it. */
function byDip(profile: Float32Array, thing: number, ground: number): number | undefined {
	const lights = Array.from({length: count}, (_, index) => Math.hypot(...colourAt(profile, index)));
	const least = Math.min(...lights);
	if (!(least < (1 - leastShade) * Math.min(thing, ground))) return undefined;
	const half = (least + thing) / 2;
	const index = lights.findIndex(light => light < half);
	const [before = half, here = half] = [lights[index - 1], lights[index]];
	return index < 1 ? undefined : (index - (half - here) / Math.max(0.1, before - here)) * stepPx - reach;
}

function meanOf(profile: Float32Array, first: number): Colour {
	const mean = (channel: number) => {
		let sum = 0;
		for (let index = first; index < first + plain; index += 1) sum += profile[index * 3 + channel] ?? 0;
		return sum / plain;
	};
	return [mean(0), mean(1), mean(2)];
}

function colourAt(profile: Float32Array, index: number): Colour {
	return [profile[index * 3] ?? 0, profile[index * 3 + 1] ?? 0, profile[index * 3 + 2] ?? 0];
}

function dot([a, b, c]: Colour, [d, e, f]: Colour): number {
	return a * d + b * e + c * f;
}
