/** Moves a side that was found at the edge of a shadow to the edge of what throws it. */
import type {Corners} from './four-sided.ts';
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
/** Below this, of a right angle's sine, two colours are too much alike to be told from each other (our choice). */
const leastApart = 0.08;
/** A shadow takes at least this share of the light; less is the ground's own grain. */
const leastShade = 0.06;

/** The sides that were found at the edge of a shadow, moved to the edge of what throws it; nothing for the others. */
export function movedPastShadows(raster: Raster, placed: Placed): readonly (Side | undefined)[] {
	return placed.sides.map((side, index) => {
		const along = [placed.corners[index] ?? [0, 0], placed.corners[(index + 1) % 4] ?? [0, 0]] as const;
		const lines = linesAcross(raster, side, along);
		// A shadow may begin or end on the way along a side.
		const [first, last] = [edgeOff(lines.slice(0, places / 2)), edgeOff(lines.slice(places / 2))];
		if (lines.length < places || (first === undefined && last === undefined)) return undefined;
		return {...side, line: movedLine(side.line, along, [first ?? 0, last ?? 0])};
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
		if (isSeen) lines.push(colours);
	}
	return lines;
}

/** How far outwards of the line the thing ends, where a shadow hides it; undefined where there is none to see. */
function edgeOff(lines: readonly Float32Array[]): number | undefined {
	// Each line by itself: a thing may have a pattern, and still it ends on all of them at one place.
	const parted = lines.flatMap(line => partedOf(line) ?? []);
	if (parted.length > lines.length / 3) {
		return byColour(middleOf(parted.map(({shares}) => shares)), middleOf(parted.map(({lights}) => lights)));
	}
	return byDip(middleOf(lines.map(lightOf)));
}

/** How much of each point of a line is of the thing, and how much of the ground's light is there. */
type Parted = {readonly shares: Float32Array; readonly lights: Float32Array};

/** Parts a line by the two colours at its ends; undefined where these are too much alike. */
function partedOf(line: Float32Array): Parted | undefined {
	const thing = meanOf(line, 0);
	const ground = meanOf(line, count - plain);
	const [ii, ig, gg] = [dot(thing, thing), dot(thing, ground), dot(ground, ground)];
	const whole = ii * gg - ig * ig;
	if (whole <= leastApart ** 2 * ii * gg) return undefined;
	const [shares, lights] = [new Float32Array(count), new Float32Array(count)];
	for (let index = 0; index < count; index += 1) {
		const ip = dotAt(line, index, thing);
		const gp = dotAt(line, index, ground);
		shares[index] = (gg * ip - ig * gp) / whole;
		lights[index] = (ii * gp - ig * ip) / whole;
	}
	return {shares, lights};
}

/** The edge is where the thing's share falls under a half; where both leave light out beyond it, there is shade. */
function byColour(shares: Float32Array, lights: Float32Array): number | undefined {
	let isShaded = false;
	let edge: number | undefined;
	let before = 1;
	for (const [index, share] of shares.entries()) {
		if (edge === undefined && share < 0.5) edge = index - (0.5 - share) / Math.max(0.05, before - share);
		if (share < 0.5 && (lights[index] ?? 0) < (1 - leastShade) * (1 - share)) isShaded = true;
		before = share;
	}
	return isShaded && edge !== undefined ? edge * stepPx - innerPx : undefined;
}

/** Where both have one colour, only a shadow darker than either tells where the thing ends: half way up from it. */
function byDip(lights: Float32Array): number | undefined {
	const mean = (from: number) =>
		lights.subarray(from, from + plain).reduce((sum, one) => sum + one, 0) / plain;
	const [thing, ground, least] = [mean(0), mean(count - plain), Math.min(...lights)];
	if (!(least < (1 - leastShade) * Math.min(thing, ground))) return undefined;
	const half = (least + thing) / 2;
	const index = lights.findIndex(light => light < half);
	const [before = half, here = half] = [lights[index - 1], lights[index]];
	return index < 1 ? undefined : (index - (half - here) / Math.max(0.1, before - here)) * stepPx - innerPx;
}

/** At each point the middle one of all lines. */
function middleOf(lines: readonly Float32Array[]): Float32Array {
	const column = new Float32Array(lines.length);
	return Float32Array.from({length: count}, (_, index) => {
		for (let at = 0; at < lines.length; at += 1) column[at] = lines[at]?.[index] ?? 0;
		return column.sort()[column.length >> 1] ?? 0;
	});
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
