/** Moves a side that was found at the edge of a shadow to the edge of what throws it. */
import {toAmounts} from './amount-of-light.ts';
import type {Corners} from './four-sided.ts';
import {median} from './median.ts';
import {type Raster, readColour} from './raster.ts';
import type {Placed, Side} from './sides.ts';

/**
 * How far inwards and outwards of a line is looked; farther in lie stripes and letters, and 4 and 10 were worse on made-up
 * cards. How many of the outermost points are taken for the thing, or for bare ground.
 */
const innerPx = 6;
const outerPx = 10;
const plain = 3;
const stepPx = 0.5;
const places = 48;

type Ends = readonly [Corners[number], Corners[number]];
const count = (innerPx + outerPx) / stepPx + 1;
/** Of light from 0 to 255: with less besides the ground's own colour a thing is not told from its shadow (tuned on made-up cards). */
const leastLevels = 8;
/** A side's two halves are moved alike but for so much: a shadow lies along a straight side. */
const mostTurnPx = 2;
/** A shadow lies outside, and the grain of a picture alone moves a side by less than this (tuned on made-up cards). */
const leastMovePx = 0.6;
/** A shadow takes at least this share of the light; less is the ground's own grain. */
const leastShade = 0.06;
/** Of the ground's light: how bright a thing is of which a shadow tells the end, and how much darker that shadow is (our choice). */
const [leastLight, leastDip] = [0.6, 0.12];

/** The sides that were found at the edge of a shadow, moved to the edge of what throws it; nothing for the others. */
export function movedPastShadows(raster: Raster, placed: Placed): readonly (Side | undefined)[] {
	return placed.sides.map((side, index) => {
		const along = [placed.corners[index] ?? [0, 0], placed.corners[(index + 1) % 4] ?? [0, 0]] as const;
		const lines = linesAcross(raster, side, along);
		if (lines.length < places) return undefined;
		// A shadow may begin or end on the way along a side.
		const [first = 0, last = 0] = [edgeOff(lines.slice(0, places / 2)), edgeOff(lines.slice(places / 2))];
		if ((first + last) / 2 > -leastMovePx || Math.abs(first - last) > mostTurnPx) return undefined;
		return {...side, line: movedLine(side.line, along, [first, last])};
	});
}

/** A line moved outwards by so much in the middles of its two halves. */
function movedLine(
	[a, b]: Side['line'],
	along: Ends,
	[first, last]: readonly [number, number],
): Side['line'] {
	const [[x, y], [u, v]] = [pointOn(along, 0.3), pointOn(along, 0.7)];
	const turn = (last - first) / Math.hypot(u - x, v - y);
	const size = Math.hypot(1, turn);
	// The normal is turned by as much as the line that it stands on; (b, -a) or (-b, a) runs along it.
	const way = Math.sign(b * (u - x) - a * (v - y));
	const [c, d] = [(a - turn * way * b) / size, (b + turn * way * a) / size];
	return [c, d, c * (x + a * first) + d * (y + b * first)];
}

function pointOn([from, to]: Ends, share: number): Corners[number] {
	return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
}

/** Colours on many lines across a side, from inside outwards. */
function linesAcross(raster: Raster, {line: [a, b]}: Side, along: Ends): readonly Float32Array[] {
	const lines: Float32Array[] = [];
	for (let place = 0; place < places; place += 1) {
		const share = 0.1 + (0.8 * (place + 0.5)) / places;
		const [x, y] = pointOn(along, share);
		const colours = new Float32Array(count * 3);
		let isSeen = true;
		for (let index = 0; index < count && isSeen; index += 1) {
			const off = index * stepPx - innerPx;
			isSeen = readColour(raster, x + a * off, y + b * off, colours, index * 3);
		}
		if (!isSeen) continue;
		toAmounts(colours);
		lines.push(colours);
	}
	return lines;
}

/** How far outwards of the line the thing ends, where a shadow hides it; undefined where there is none to see. */
function edgeOff(lines: readonly Float32Array[]): number | undefined {
	const ground = groundOf(lines);
	const parted = partedOf(lines, ground);
	return parted.levels > leastLevels ? byColour(parted) : byDip(middleOf(lines.map(lightOf)));
}

/** The colour of bare ground, of length 1: a shadow has no other. */
function groundOf(lines: readonly Float32Array[]): Colour {
	const outer = lines.map(line => meanOf(line, count - plain));
	const [red, green, blue] = [0, 1, 2].map(channel => median(outer.map(colour => colour[channel] ?? 0)));
	const size = Math.hypot(red ?? 0, green ?? 0, blue ?? 0) || 1;
	return [(red ?? 0) / size, (green ?? 0) / size, (blue ?? 0) / size];
}

/** How much of each point across is of the thing, how much light the ground has there, and by how many levels they differ. */
type Parted = {readonly shares: Float32Array; readonly lights: Float32Array; readonly levels: number};

/**
 * Parts points by what is in them of another colour than the ground's: each line by itself, since a thing may have a
 * pattern, and a line counts for more the more its colour differs.
 */
function partedOf(lines: readonly Float32Array[], ground: Colour): Parted {
	const [shares, lights] = [new Float32Array(count), new Float32Array(count)];
	let [squares, bare, thing] = [0, 0, 0];
	for (const line of lines) {
		const inner = meanOf(line, 0);
		const own = besides(inner, ground);
		squares += dot(own, own);
		thing += dot(inner, ground);
		bare += dot(meanOf(line, count - plain), ground);
		for (let index = 0; index < count; index += 1) {
			// What is the thing's own has nothing of the ground's colour, so no part of that counts.
			shares[index] = (shares[index] ?? 0) + dotAt(line, index, own);
			lights[index] = (lights[index] ?? 0) + dotAt(line, index, ground);
		}
	}
	const held = shares.map(share => share / Math.max(1, squares));
	return {
		shares: held,
		lights: lights.map((light, index) => (light - (held[index] ?? 0) * thing) / Math.max(1, bare)),
		levels: Math.sqrt(squares / Math.max(1, lines.length)),
	};
}

/** What of a colour is not the ground's. */
function besides(colour: Colour, ground: Colour): Colour {
	const along = dot(colour, ground);
	return [colour[0] - along * ground[0], colour[1] - along * ground[1], colour[2] - along * ground[2]];
}

/** The edge is where the thing's share falls under a half; where both leave light out beyond it, there is shade. */
function byColour({shares, lights}: Parted): number | undefined {
	const first = shares.findIndex(share => share < 0.5);
	if (first < 1 || shares.subarray(first).some(share => share > 0.6)) return undefined;
	const isShaded = shares.some(
		(share, index) => share < 0.5 && (lights[index] ?? 0) < (1 - leastShade) * (1 - share),
	);
	const [before = 1, here = 0] = [shares[first - 1], shares[first]];
	return isShaded ? (first - (0.5 - here) / Math.max(0.05, before - here)) * stepPx - innerPx : undefined;
}

/** Where both have one colour, only a shadow darker than either tells where the thing ends: half way up from it. */
function byDip(lights: Float32Array): number | undefined {
	const mean = (from: number) =>
		lights.subarray(from, from + plain).reduce((sum, one) => sum + one, 0) / plain;
	const [thing, ground, least] = [mean(0), mean(count - plain), Math.min(...lights)];
	// Cameras draw dark things darker still along their edge, to make them crisp.
	if (thing < leastLight * ground || least > Math.min(thing, ground) - leastDip * ground) return undefined;
	const half = (least + thing) / 2;
	const index = lights.findIndex(light => light < half);
	const [before = half, here = half] = [lights[index - 1], lights[index]];
	return index < 1 ? undefined : (index - (half - here) / Math.max(0.1, before - here)) * stepPx - innerPx;
}

/** At each point the middle one of all lines. */
function middleOf(lines: readonly Float32Array[]): Float32Array {
	return Float32Array.from({length: count}, (_, index) => median(lines.map(line => line[index] ?? 0)));
}

function lightOf(line: Float32Array): Float32Array {
	return Float32Array.from({length: count}, (_, index) =>
		Math.sqrt(dotAt(line, index, colourAt(line, index))),
	);
}

type Colour = readonly [red: number, green: number, blue: number];

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

/** The product of a colour with that at a place of a line, none of them made anew for each of so many places. */
function dotAt(line: Float32Array, index: number, colour: Colour): number {
	const at = index * 3;
	return colour[0] * (line[at] ?? 0) + colour[1] * (line[at + 1] ?? 0) + colour[2] * (line[at + 2] ?? 0);
}
