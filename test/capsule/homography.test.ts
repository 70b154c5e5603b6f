import {expect, test} from 'vitest';
import {carry, homographyOf, inverse} from '../../src/capsule/homography.ts';
import type {Point} from '../../src/capsule/raster.ts';
import {solve} from '../../src/capsule/solve.ts';

const square: readonly Point[] = [
	[0, 0],
	[1, 0],
	[1, 1],
	[0, 1],
];

test('a square carried to a shifted and doubled one carries its middle along', () => {
	const view = homographyOf(
		square.map(([x, y]) => [
			[x, y],
			[10 + 2 * x, 20 + 2 * y],
		]),
	);
	const [x, y] = carry(view, [0.5, 0.5]);
	expect(x).toBeCloseTo(11, 9);
	expect(y).toBeCloseTo(21, 9);
});

test('the middle of a square seen aslant lies where its diagonals cross', () => {
	// A trapezium with corners at 0, 0; 6, 0; 4, 2; 2, 2: its diagonals cross at 3, 1.5.
	const seen: readonly Point[] = [
		[0, 0],
		[6, 0],
		[4, 2],
		[2, 2],
	];
	const view = homographyOf(square.map((point, index) => [point, seen[index] ?? point]));
	const [x, y] = carry(view, [0.5, 0.5]);
	expect(x).toBeCloseTo(3, 9);
	expect(y).toBeCloseTo(1.5, 9);
	const [u, v] = carry(inverse(view), [3, 1.5]);
	expect(u).toBeCloseTo(0.5, 9);
	expect(v).toBeCloseTo(0.5, 9);
});

test('fewer than four points are no homography', () => {
	expect(() =>
		homographyOf([
			[
				[0, 0],
				[0, 0],
			],
		]),
	).toThrow('at least four');
});

test('the line nearest to three points in a row and one beside it is the one worked out by hand', () => {
	// Heights 0, 0, 0, 4 at 0, 1, 2, 3: slope 1.2, height -0.8 at 0.
	const [start, slope] =
		solve(
			[
				[1, 0],
				[1, 1],
				[1, 2],
				[1, 3],
			],
			[0, 0, 0, 4],
		) ?? [];
	expect(start).toBeCloseTo(-0.8, 9);
	expect(slope).toBeCloseTo(1.2, 9);
});

test('equations that leave an unknown open have no answer', () => {
	expect(
		solve(
			[
				[1, 1],
				[2, 2],
			],
			[1, 2],
		),
	).toBeUndefined();
});
