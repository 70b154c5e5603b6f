/** How blurred a photo is, from how slowly the colour turns across the sides of its sheet or card. */
import {type Point, type Raster, readColour} from './raster.ts';

const reachPx = 24;
const stepPx = 0.5;
/** Each side is looked at in stretches, so that its bow does not pass for blur, each by so many lines. */
const stretches = 3;
const lines = 8;
/** Next to each corner, of the side. */
const skip = 0.12;
/** Between these shares of a blurred step lie two sigmas of the blur. */
const [low, high] = [0.159, 0.841];
/** A fainter side, in grey levels, tells nothing. */
const faintest = 8;

/** Blur past which ends lie anywhere: pale borders are lost in it (fitted to made-up photos blurred by 3 to 9 pixels). */
const mostPx = 3.5;
/** Up to here ends are told as well as ever; from here on each is off by so many times the blur that is added to it. */
const harmlessPx = 2.3;
const endsOff = 3;

/** Whether a photo is too blurred for any end to be told. */
export function isBlurred(blurPx: number): boolean {
	return blurPx > mostPx;
}

/** How far blur alone may put a length off nine times in ten, in pixels. */
export function blurSpreadPx(blurPx: number): number {
	return endsOff * Math.sqrt(Math.max(0, blurPx ** 2 - harmlessPx ** 2));
}

/** The blur of a photo as sigma of a bell curve, in pixels, by the sharper parts of an outline; 0 when none tells. */
export function blurOf(raster: Raster, corners: readonly Point[]): number {
	const blurs = corners.flatMap((from, index) => {
		const to = corners[(index + 1) % corners.length] ?? from;
		return Array.from({length: stretches}, (_, part) => turnIn(profileOf(raster, [from, to], part))).flatMap(
			turn => (turn === undefined ? [] : [turn]),
		);
	});
	// A shadow along a side makes it look softer than it is, hardly ever sharper.
	return blurs.toSorted((a, b) => a - b)[blurs.length >> 2] ?? 0;
}

/** Half of the way on which a profile turns from its first colour to its last, in pixels; undefined for a faint one. */
function turnIn(profile: Float32Array): number | undefined {
	const last = profile.length / 3 - 1;
	const step = [0, 1, 2].map(channel => (profile[last * 3 + channel] ?? 0) - (profile[channel] ?? 0));
	const square = step.reduce((sum, value) => sum + value * value, 0);
	if (square < 3 * faintest * faintest) return undefined;
	const shares = Float32Array.from({length: last + 1}, (_, index) => {
		const part = step.map(
			(value, channel) => value * ((profile[index * 3 + channel] ?? 0) - (profile[channel] ?? 0)),
		);
		return part.reduce((sum, value) => sum + value, 0) / square;
	});
	// From the middle of the turn outwards, so that what lies farther off does not count.
	let middle = last / 2;
	while (middle > 0 && (shares[middle] ?? 0) > 0.5) middle -= 1;
	while (middle < last && (shares[middle] ?? 0) < 0.5) middle += 1;
	return (
		((reach(shares, middle, {way: 1, share: high}) + reach(shares, middle, {way: -1, share: low})) * stepPx) /
		2
	);
}

/** How many samples from a place on a share is reached, between two of them. */
function reach(shares: Float32Array, from: number, {way, share}: {way: -1 | 1; share: number}): number {
	let at = from;
	while (at > 0 && at < shares.length - 1 && way * (share - (shares[at] ?? 0)) > 0) at += way;
	const [here, before] = [shares[at] ?? 0, shares[at - way] ?? 0];
	return way * (at - from) - (here === before ? 0 : (here - share) / (here - before));
}

/** The mean colours along lines across a part of a side, from one side of it to the other. */
function profileOf(
	raster: Raster,
	[[fromX, fromY], [toX, toY]]: readonly [Point, Point],
	part: number,
): Float32Array {
	const long = Math.hypot(toX - fromX, toY - fromY) || 1;
	const [dx, dy] = [(toX - fromX) / long, (toY - fromY) / long];
	const count = (2 * reachPx) / stepPx + 1;
	const [profile, line] = [new Float32Array(count * 3), new Float32Array(count * 3)];
	for (let place = part * lines; place < (part + 1) * lines; place += 1) {
		const along = long * (skip + ((1 - 2 * skip) * (place + 0.5)) / (stretches * lines));
		const [x, y] = [fromX + dx * along, fromY + dy * along];
		let isSeen = true;
		for (let index = 0; index < count && isSeen; index += 1) {
			const off = index * stepPx - reachPx;
			isSeen = readColour(raster, x - dy * off, y + dx * off, line, index * 3);
		}
		if (!isSeen) continue;
		for (let at = 0; at < line.length; at += 1) profile[at] = (profile[at] ?? 0) + (line[at] ?? 0) / lines;
	}
	return profile;
}
