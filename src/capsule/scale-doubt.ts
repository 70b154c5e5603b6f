/** How far off a length may be for what the corners of its reference, and the camera's focal length, may be off. */

import {type Found, poseOf} from './flat-fit.ts';
import type {Corners} from './four-sided.ts';
import {carry, inverse} from './homography.ts';
import {bendOf, straightened, straightenedCorners} from './lens.ts';
import {type Frame, focalSpread, type Pose, usualFocal} from './pose.ts';
import type {Point} from './raster.ts';

/** A length in the photo, and how high above the ground it lies. */
export type Stretch = {readonly px: readonly [Point, Point]; readonly heightMm: number};

/** One sigma of a corner in pixels, of the best ones and what a poor fit adds (tuned on 200 made-up cards by both makers). */
const [leastSigmaPx, fitSigmaPx] = [0.3, 0.22];

/**
 * One sigma of a length, as a share of it: each corner is moved across and down by what it may be off, and so is the focal
 * length, and the pose is found anew each time. The farther a case lies from a small card, the more it is.
 */
export function scaleSigma(
	{pose, placed, halfMm, flat}: Found,
	{px, heightMm}: Stretch,
	frame: Frame,
): number {
	const sigmaPx = leastSigmaPx + fitSigmaPx * Math.sqrt(pose.misfit);
	const lengthBy = (other: Pose) => lengthOf(px, other, heightMm - flat.thickMm);
	const whole = lengthBy(pose);
	const moved = [
		...[0, 1, 2, 3].flatMap(corner =>
			([0, 1] as const).map(way =>
				poseOf({corners: nudged(placed.corners, corner, {way, sigmaPx}), sides: placed.sides}, halfMm, frame),
			),
		),
		poseOf(placed, halfMm, {...frame, focalShare: usualFocal * Math.exp(focalSpread)}),
	];
	// Where no camera fits any more, nothing is known.
	const shares = moved.map(one => (one ? lengthBy(one) / whole - 1 : 1));
	return Math.hypot(...shares);
}

/** By how much a length has to be multiplied for what the lens bends; 1 beside a card, which is too small to tell. */
export function lensFactor(
	{pose, placed, halfMm, flat}: Found,
	{px, heightMm}: Stretch,
	frame: Frame,
): number {
	if (flat.kind === 'card') return 1;
	const bend = bendOf(placed, frame);
	const corners = straightenedCorners(placed.corners, bend, frame);
	const straight = poseOf({corners, sides: []}, halfMm, frame);
	if (!straight) return 1;
	const ends = [straightened(px[0], bend, frame), straightened(px[1], bend, frame)] as const;
	const overMm = heightMm - flat.thickMm;
	return lengthOf(ends, straight, overMm) / lengthOf(px, pose, overMm);
}

function lengthOf([from, to]: Stretch['px'], {viewAt}: Pose, overMm: number): number {
	const back = inverse(viewAt(overMm));
	const [[x, y], [u, v]] = [carry(back, from), carry(back, to)];
	return Math.hypot(u - x, v - y);
}

function nudged(
	corners: Corners,
	corner: number,
	{way, sigmaPx}: {readonly way: 0 | 1; readonly sigmaPx: number},
): Corners {
	const [a, b, c, d] = corners.map(([x, y], index): Point => {
		const by = index === corner ? sigmaPx : 0;
		return way === 0 ? [x + by, y] : [x, y + by];
	});
	return a && b && c && d ? [a, b, c, d] : corners;
}
