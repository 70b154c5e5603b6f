import {expect, test} from 'vitest';
import {gatherPoints} from '../../src/capsule/principal.ts';

test('points on a slope of three in four have their axis along it, and nothing across', () => {
	const {add, principal} = gatherPoints();
	for (const step of [-2, -1, 0, 1, 2]) add(10 + 4 * step, 20 + 3 * step, 1);
	const {middle, along, longSquare, wideSquare} = principal();
	expect(middle).toEqual([10, 20]);
	expect(along[0]).toBeCloseTo(0.8, 12);
	expect(along[1]).toBeCloseTo(0.6, 12);
	// Distances of 10, 5, 0, 5 and 10: by hand.
	expect(longSquare).toBeCloseTo(50, 9);
	expect(wideSquare).toBeCloseTo(0, 9);
});

test('a point that weighs three is three points', () => {
	const [one, many] = [gatherPoints(), gatherPoints()];
	one.add(0, 0, 3);
	one.add(8, 2, 1);
	for (const [x, y] of [
		[0, 0],
		[0, 0],
		[0, 0],
		[8, 2],
	] as const)
		many.add(x, y, 1);
	expect(one.principal()).toEqual(many.principal());
});

test('a square of points has its middle, and as much on both ways', () => {
	const {add, principal} = gatherPoints();
	for (const [x, y] of [
		[0, 0],
		[2, 0],
		[2, 2],
		[0, 2],
	] as const)
		add(x, y, 1);
	expect(principal()).toMatchObject({middle: [1, 1], longSquare: 1, wideSquare: 1});
});

test('no points have no axis', () => {
	expect(() => gatherPoints().principal()).toThrow('at least one point');
});
