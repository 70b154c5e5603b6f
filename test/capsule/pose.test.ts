import {expect, test} from 'vitest';
import {carry} from '../../src/capsule/homography.ts';
import {findPose} from '../../src/capsule/pose.ts';
import type {Point} from '../../src/capsule/raster.ts';
import {through, viewOfPlane} from '../support/photos/camera.ts';

const frame = {width: 1280, height: 960};
const a4: readonly Point[] = [
	[-148.5, -105],
	[148.5, -105],
	[148.5, 105],
	[-148.5, 105],
];

function seenBy(stand: {readonly tilt: number; readonly focalShare: number}, corners = a4) {
	const place = {
		widthPx: 1280,
		heightPx: 960,
		azimuth: 40,
		roll: -25,
		aimMm: [5, -8] as const,
		distanceMm: 480,
	};
	const view = viewOfPlane({...place, ...stand}, 0);
	return corners.map((mm, index) => {
		const [x, y] = through(view, mm);
		return {mm: a4[index] ?? mm, px: [x - 0.5, y - 0.5] as const, sigmaPx: 0.7};
	});
}

test('from straight above, a sheet of 297 mm over 594 pixels is as far as the focal length says', () => {
	const px: readonly Point[] = a4.map(([x, y]) => [639.5 + 2 * x, 479.5 + 2 * y]);
	const pose = findPose(
		a4.map((mm, index) => ({mm, px: px[index] ?? mm, sigmaPx: 0.7})),
		frame,
	);
	// Two pixels a millimetre: the distance is half the focal length, 0.77 of the long side by default.
	expect(pose?.distanceMm).toBeCloseTo((0.77 * 1280) / 2, 3);
	expect(pose?.tilt).toBeLessThan(0.01);
});

test.each([
	{tilt: 3, focalShare: 0.77},
	{tilt: 18, focalShare: 0.7},
	{tilt: 33, focalShare: 0.85},
])('a camera tilted by $tilt degrees is found again', stand => {
	const pose = findPose(seenBy(stand), frame);
	expect(Math.abs((pose?.tilt ?? 0) - stand.tilt)).toBeLessThan(0.6);
	expect(pose?.misfit).toBeLessThan(1);
});

test('a plane nearer to the camera shows a millimetre larger, in the proportion of the distances', () => {
	const pose = findPose(seenBy({tilt: 0, focalShare: 0.77}), frame);
	const long = (heightMm: number) => {
		const view = pose?.viewAt(heightMm) ?? new Float64Array(9);
		const [[ax, ay], [bx, by]] = [carry(view, [0, 0]), carry(view, [100, 0])];
		return Math.hypot(bx - ax, by - ay);
	};
	expect(long(4) / long(0)).toBeCloseTo(480 / 476, 4);
});

test('a sheet of Letter does not fit where A4 is expected', () => {
	const letter = a4.map(([x, y]): Point => [Math.sign(x) * 139.7, Math.sign(y) * 107.95]);
	expect(findPose(seenBy({tilt: 15, focalShare: 0.77}, letter), frame)?.misfit ?? 99).toBeGreaterThan(12);
});
