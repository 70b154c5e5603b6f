import {expect, test} from 'vitest';
import {seeded} from '../../../src/key/random.ts';
import {type Camera, holdCamera, seenAt} from './framing.ts';

/** Straight down from 480 mm at a focal length of 960 pixels: two pixels to a millimetre of the table. */
const straightDown: Camera = {
	stand: {
		widthPx: 1280,
		heightPx: 960,
		focalShare: 0.75,
		tilt: 0,
		azimuth: 0,
		roll: 0,
		aimMm: [10, 20],
		distanceMm: 480,
	},
	bend: 0,
	enlarged: 1,
};

test('a camera straight above shows a millimetre as its focal length over its distance', () => {
	expect(seenAt(straightDown, [10, 20], 0)).toEqual([640, 480]);
	const [x, y] = seenAt(straightDown, [60, -30], 0);
	expect([x, y]).toEqual([expect.closeTo(740, 6), expect.closeTo(380, 6)]);
});

test('what lies 4 mm higher is seen 480/476 times as far from the middle', () => {
	const [x, y] = seenAt(straightDown, [60, -30], 4);
	expect(x).toBeCloseTo(640 + (100 * 480) / 476, 6);
	expect(y).toBeCloseTo(480 - (100 * 480) / 476, 6);
});

test('an enlarged photo shows the same at a multiple of its pixels', () => {
	const [x, y] = seenAt({...straightDown, enlarged: 3}, [60, -30], 0);
	expect([x, y]).toEqual([expect.closeTo(2220, 6), expect.closeTo(1140, 6)]);
});

test('a lens bends as its rule says: seen from the bent place, the straight one is the bend farther out', () => {
	const bend = 0.03;
	const [x, y] = seenAt({...straightDown, bend}, [250, 150], 0);
	const [dx, dy] = [x - 640, y - 480];
	const stretch = 1 + (bend * (dx * dx + dy * dy)) / (640 * 640 + 480 * 480);
	expect(dx * stretch).toBeCloseTo(2 * 240, 4);
	expect(dy * stretch).toBeCloseTo(2 * 130, 4);
	expect(Math.hypot(dx, dy)).toBeLessThan(Math.hypot(480, 260));
});

test.each([
	['clean', 0, 10],
	['normal', 0, 25],
	['hard', 0, 35],
] as const)('a %s camera sees every point that it must, tilted by %i to %i degrees', (level, least, most) => {
	const points = [
		[-105, -148.5],
		[105, -148.5],
		[105, 148.5],
		[-105, 148.5],
	] as const;
	for (let seed = 0; seed < 60; seed += 1) {
		const camera = holdCamera({points, level, isTilted: false, margin: [0.02, 0.06]}, seeded(seed));
		const {widthPx, heightPx, tilt} = camera.stand;
		expect(tilt).toBeGreaterThanOrEqual(least);
		expect(tilt).toBeLessThanOrEqual(most);
		for (const point of points) {
			const [x, y] = seenAt({...camera, bend: 0, enlarged: 1}, point, 0);
			expect(x > 0 && y > 0 && x < widthPx && y < heightPx, `seed ${seed}`).toBe(true);
		}
	}
});
