/** What lies just outside a card: the same ground on all four sides, or it is only a part of something, and no horns. */

import {logOf} from './flat-view.ts';
import {type Corners, middleOf} from './four-sided.ts';
import {median} from './median.ts';
import {type Point, type Raster, readColour} from './raster.ts';

/** Logarithms by which one side's ground may differ from the others': in light, for shade and grain, and in colour. */
const mostLight = 0.55;
const mostColour = 0.3;

/** Of a ring about a corner so much is another thing than the ground where a horn grows out of it. */
const leastHorn = 0.15;
/** How far the ring is from the corner, of the way to the middle: far enough from what the card itself casts. */
const ringShare = 0.12;
/** Logarithms by which a horn is beyond all that the ground is, in light and in colour (our choice). */
const [beyondLight, beyondColour] = [0.3, 0.12];

/**
 * Whether the ground outside is alike on all sides, since a stripe of a larger card is not; and goes on round the corners,
 * out of which the horns of a case grow.
 */
export function standsAlone(raster: Raster, corners: Corners): boolean {
	const middle = middleOf(corners);
	const sides = corners.map((from, index) =>
		outsideOf(raster, [from, corners[(index + 1) % 4] ?? from], middle),
	);
	const isAlike = [0, 1, 2].every(channel => {
		const values = sides.map(side => median(side[channel] ?? [])).toSorted((a, b) => a - b);
		const usual = (values[1] ?? 0) / 2 + (values[2] ?? 0) / 2;
		return values.every(value => Math.abs(value - usual) < (channel === 0 ? mostLight : mostColour));
	});
	if (!isAlike) return false;
	const ground = [0, 1, 2].map(channel =>
		rangeOf(
			sides.flatMap(side => side[channel] ?? []),
			channel,
		),
	);
	return (
		corners.filter((_, index) => hornShare(raster, {corners, index, middle}, ground) > leastHorn).length < 2
	);
}

type Range = readonly [least: number, most: number];

/** Between what nearly all values lie, with room. */
function rangeOf(values: readonly number[], channel: number): Range {
	const sorted = values.toSorted((a, b) => a - b);
	const room = channel === 0 ? beyondLight : beyondColour;
	const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))] ?? 0;
	return [at(0.1) - room, at(0.9) + room];
}

type Corner = {readonly corners: Corners; readonly index: number; readonly middle: Point};

/** The share of a ring about a corner, outside of the outline, that is not the ground's. */
function hornShare(raster: Raster, {corners, index, middle}: Corner, ground: readonly Range[]): number {
	const [x, y] = corners[index] ?? middle;
	const far = ringShare * Math.hypot(x - middle[0], y - middle[1]);
	const colour = new Float32Array(3);
	let [all, other] = [0, 0];
	for (let turn = 0; turn < 36; turn += 1) {
		const angle = (turn * Math.PI) / 18;
		const at: Point = [x + far * Math.cos(angle), y + far * Math.sin(angle)];
		// Straight outwards and up to a right angle to both sides of it, no side of the card is near.
		if ((at[0] - x) * (x - middle[0]) + (at[1] - y) * (y - middle[1]) < 0) continue;
		if (!readColour(raster, ...at, colour)) continue;
		all += 1;
		const isGround = tonesOf(colour).every((tone, channel) => {
			const [least, most] = ground[channel] ?? [tone, tone];
			return tone >= least && tone <= most;
		});
		if (!isGround) other += 1;
	}
	return all === 0 ? 0 : other / all;
}

/** Light and colours along a line a little outside a side. */
function outsideOf(
	raster: Raster,
	[from, to]: readonly [Point, Point],
	middle: Point,
): readonly (readonly number[])[] {
	const colour = new Float32Array(3);
	const found: [number[], number[], number[]] = [[], [], []];
	for (let share = 0.08; share < 0.93; share += 0.04) {
		const at: Point = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
		const out = 1.13;
		const [x, y] = [middle[0] + out * (at[0] - middle[0]), middle[1] + out * (at[1] - middle[1])];
		if (!readColour(raster, x, y, colour)) continue;
		for (const [channel, tone] of tonesOf(colour).entries()) found[channel]?.push(tone);
	}
	return found;
}

/** Light, and red and blue against the rest, as logarithms. */
function tonesOf(colour: Float32Array): readonly number[] {
	const [red, green, blue] = [logOf(colour[0] ?? 0), logOf(colour[1] ?? 0), logOf(colour[2] ?? 0)];
	return [(red + green + blue) / 3, red - green, blue - (red + green) / 2];
}
