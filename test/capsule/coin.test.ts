import {expect, test} from 'vitest';
import {aboutMm, asIfFlat, findRound, roundFrom} from '../../src/capsule/coin.ts';
import {carry} from '../../src/capsule/homography.ts';
import type {Point, Raster} from '../../src/capsule/raster.ts';

function ring(points: number, [a, b]: Point, turn = 0): readonly Point[] {
	return Array.from({length: points}, (_, index): Point => {
		const angle = (index / points) * 2 * Math.PI;
		const [x, y] = [a * Math.cos(angle), b * Math.sin(angle)];
		return [50 + x * Math.cos(turn) - y * Math.sin(turn), 30 + x * Math.sin(turn) + y * Math.cos(turn)];
	});
}

test('an ellipse is told with its middle and both its axes, however it is turned', () => {
	const round = roundFrom(ring(60, [20, 18], 0.7));
	expect(round?.middle[0]).toBeCloseTo(50, 6);
	expect(round?.middle[1]).toBeCloseTo(30, 6);
	// Sixty straight sides lie a little inside the ellipse.
	expect(round?.long).toBeCloseTo(20, 0);
	expect(round?.short).toBeCloseTo(18, 0);
});

test.each([
	['a square', ring(4, [20, 20])],
	['a hexagon', ring(6, [20, 20])],
	['a slim ellipse', ring(60, [20, 12])],
])('%s is no coin', (_, fence) => {
	expect(roundFrom(fence)).toBeUndefined();
});

/** Discs of so many pixels across on a light table. */
function discs(...middles: readonly Point[]): Raster {
	const [width, height] = [640, 480];
	const rgb = new Uint8Array(width * height * 3).fill(200);
	for (let at = 0; at < width * height; at += 1) {
		const [x, y] = [at % width, Math.floor(at / width)];
		if (middles.some(([mx, my]) => Math.hypot(x - mx, y - my) < 24)) rgb.fill(90, at * 3, at * 3 + 3);
	}
	return {width, height, rgb};
}

test('one disc is found in pixels of the whole photo, two are none', () => {
	const round = findRound(discs([300, 200]));
	expect(Math.abs((round?.middle[0] ?? 0) - 600)).toBeLessThan(2);
	expect(Math.abs((round?.middle[1] ?? 0) - 400)).toBeLessThan(2);
	// A class of size is all that comes of it: an eighth is near enough.
	expect(Math.abs((round?.long ?? 0) / 48 - 1)).toBeLessThan(0.125);
	expect(findRound(discs([300, 200], [100, 300]))).toBeUndefined();
	expect(findRound(discs())).toBeUndefined();
});

test('a disc that is printed on a card is none', () => {
	const {rgb, ...size} = discs([300, 200]);
	const printed = rgb.map((value, at) => {
		const [x, y] = [Math.floor(at / 3) % size.width, Math.floor(at / 3 / size.width)];
		return value === 200 && x > 200 && x < 400 && y > 140 && y < 265 ? 150 : value;
	});
	expect(findRound({...size, rgb: printed})).toBeUndefined();
});

test('a coin of the usual 23 mm gives its own width as 23 mm', () => {
	const {pose} = asIfFlat(
		{middle: [100, 80], long: 46, short: 46},
		{width: 1280, height: 960, rgb: new Uint8Array(0)},
	);
	const [[left], [right]] = [carry(pose.viewAt(0), [-11.5, 0]), carry(pose.viewAt(0), [11.5, 0])];
	expect(right - left).toBeCloseTo(92, 6);
});

test('a class of size is in whole centimetres and holds what the smallest and the largest coin would say', () => {
	const [from, to] = aboutMm(69);
	expect(from).toBeLessThanOrEqual((69 * 16) / 23);
	expect(to).toBeGreaterThanOrEqual((69 * 30) / 23);
	expect([from % 10, to % 10]).toEqual([0, 0]);
});
