/** A coin beside a case: no measure, since a single small round thing hardly tells its slant, but enough for a class of size. */

import type {Found} from './flat-fit.ts';
import {makeOutlineFinder} from './four-sided.ts';
import {halve, type Point, type Raster} from './raster.ts';
import {areaOf, fenceRound, partsOf, roomForRuns, turnOf} from './regions.ts';
import {masksOf, type Shades, shadesOf} from './shades.ts';
import {card} from './sizes.ts';

/** A round thing in pixels: its middle, and half its longest and shortest way across. */
export type Round = {readonly middle: Point; readonly long: number; readonly short: number};

/** Coins in use are 16 to 30 mm across (from memory). */
const coinsMm = [16, 30] as const;
/** What a coin is taken for until its size is allowed for. */
const usualMm = 23;
/** What tilt and perspective may add or take, when nothing tells of them (a guess, from cameras tilted by up to 25 degrees). */
const slack = 1.12;

const shares = [0.0004, 0.03] as const;
/** A coin seen from 35 degrees is 0.82 times as high as it is wide. */
const leastRound = 0.8;
/** How far its edge may be off the fitted ellipse, as a share of its size and at least in pixels. */
const mostOff = 0.06;
const finestPx = 0.7;
/** A card takes up less of a photo than this, a sheet on which a coin may lie more (our choice). */
const mostPrinted = 0.3;
/** In how many ways it must be seen to be sure. */
const leastVotes = 3;

/** The one round thing of a photo, in its pixels, looked for in the picture at half its size; undefined where there is not one. */
export function findRound(half: Raster): Round | undefined {
	const shades = shadesOf(halve(half));
	const round = roundIn(shades);
	if (!round || isPrinted(round, shades)) return undefined;
	const [x, y] = round.middle;
	return {middle: [4 * x + 1.5, 4 * y + 1.5], long: 4 * round.long, short: 4 * round.short};
}

function roundIn(shades: Shades): Round | undefined {
	const {width, height} = shades.across;
	const runs = roomForRuns(width, height);
	const found: Round[][] = [];
	for (const way of ['light', 'colour', 'edges'] as const) {
		for (const {mask, of} of masksOf(shades, way)) {
			for (const part of partsOf(mask, {leastArea: shares[0] * width * height, of, runs})) {
				const {left, top, right, bottom, area} = part;
				const [wide, high] = [right - left + 1, bottom - top + 1];
				if (area > shares[1] * width * height || Math.min(wide / high, high / wide) < 0.75) continue;
				if (left === 0 || top === 0 || right === width - 1 || bottom === height - 1) continue;
				const round = roundFrom(fenceRound(runs, part));
				if (!round || area < 0.9 * Math.PI * round.long * round.short) continue;
				const same = found.find(([first]) => first && isSame(first, round));
				if (same) same.push(round);
				else found.push([round]);
			}
		}
	}
	const [first = [], second = []] = found.toSorted((a, b) => b.length - a.length);
	if (first.length < leastVotes || second.length > first.length / 2) return undefined;
	// What lies between edges is smaller than what they go round, so one of the larger is nearest to the truth.
	return first.toSorted((a, b) => a.long - b.long)[Math.floor(0.75 * first.length)];
}

/** Whether a round thing lies on something with four sides, as what is printed on a card does. */
function isPrinted({middle, long}: Round, shades: Shades): boolean {
	const look = makeOutlineFinder(shades);
	for (const way of ['light', 'colour'] as const) look(way);
	return look('edges').some(({corners, votes}) => {
		const area = areaOf(corners);
		const isSmall = area < mostPrinted * shades.across.values.length && area > 6 * long * long;
		return (
			votes > 1 &&
			isSmall &&
			corners.every((corner, index) => turnOf(corner, corners[(index + 1) % 4], middle) > 0)
		);
	});
}

/** The ellipse with the second moments of a fence; undefined where the fence is no ellipse. */
export function roundFrom(fence: readonly Point[]): Round | undefined {
	const area = areaOf(fence);
	let [sx, sy, sxx, sxy, syy] = [0, 0, 0, 0, 0];
	const [fx, fy] = fence[0] ?? [0, 0];
	for (const [index, [px, py]] of fence.entries()) {
		const [nx, ny] = fence[(index + 1) % fence.length] ?? [fx, fy];
		const [x, y, u, v] = [px - fx, py - fy, nx - fx, ny - fy];
		const twice = x * v - u * y;
		sx += (twice * (x + u)) / 6;
		sy += (twice * (y + v)) / 6;
		sxx += (twice * (x * x + x * u + u * u)) / 12;
		syy += (twice * (y * y + y * v + v * v)) / 12;
		sxy += (twice * (2 * x * y + x * v + u * y + 2 * u * v)) / 24;
	}
	const [mx, my] = [sx / area, sy / area];
	const [xx, yy, xy] = [sxx / area - mx * mx, syy / area - my * my, sxy / area - mx * my];
	const middle: Point = [fx + mx, fy + my];
	const [mean, apart] = [(xx + yy) / 2, Math.hypot((xx - yy) / 2, xy)];
	const [long, short] = [2 * Math.sqrt(mean + apart), 2 * Math.sqrt(Math.max(0, mean - apart))];
	if (!(short > leastRound * long)) return undefined;
	const whole = xx * yy - xy * xy;
	const isRound = fence.every(([x, y]) => {
		const [dx, dy] = [x - middle[0], y - middle[1]];
		const far = Math.sqrt((yy * dx * dx - 2 * xy * dx * dy + xx * dy * dy) / whole) / 2;
		return Math.abs(far - 1) < Math.max(mostOff, finestPx / short);
	});
	return isRound ? {middle, long, short} : undefined;
}

function isSame(a: Round, b: Round): boolean {
	const apart = Math.hypot(a.middle[0] - b.middle[0], a.middle[1] - b.middle[1]);
	return apart < 0.3 * a.long && Math.abs(a.long / b.long - 1) < 0.25;
}

/** The photo as if seen from straight above, by a coin of the usual size. */
export function asIfFlat({middle: [x, y], long}: Round, {width, height}: Raster): Found {
	const perMm = (2 * long) / usualMm;
	const focalPx = 0.77 * Math.max(width, height);
	const viewAt = () => Float64Array.of(perMm, 0, x, 0, perMm, y, 0, 0, 1);
	const half = usualMm / 2;
	const corners = [
		[x - long, y - long],
		[x + long, y - long],
		[x + long, y + long],
		[x - long, y + long],
	] as const;
	return {
		// Whatever lies on the ground beside it is looked for, as beside a card.
		flat: {...card, longMm: usualMm, shortMm: usualMm},
		pose: {viewAt, misfit: 0, tilt: 0, distanceMm: focalPx / perMm, focalPx},
		placed: {corners, sides: []},
		halfMm: [half, half],
		score: 0,
		isGuess: true,
	};
}

/** Between what a case may be long that would be so long beside a coin of the usual size, in whole centimetres. */
export function aboutMm(lengthMm: number): readonly [number, number] {
	const [least, most] = [coinsMm[0] / usualMm / slack, (coinsMm[1] / usualMm) * slack];
	return [Math.max(10, Math.floor((lengthMm * least) / 10) * 10), Math.ceil((lengthMm * most) / 10) * 10];
}
