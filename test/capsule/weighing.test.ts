import {expect, test} from 'vitest';
import {makeScales} from '../../src/capsule/weighing.ts';

test('a line through points is found, each right side for itself, and again after clearing', () => {
	const scales = makeScales(2, 2);
	for (const slope of [3, 5]) {
		scales.clear();
		for (const x of [0, 1, 2, 7]) {
			scales.row.set([1, x]);
			scales.add(1, 2 + slope * x, -x);
		}
		expect([...(scales.unknowns(0) ?? [])].map(value => Math.round(value * 1e9) / 1e9)).toEqual([2, slope]);
		expect(scales.unknowns(1)?.[1]).toBeCloseTo(-1, 9);
	}
});

test('a heavier point pulls more: the mean of 0 and 10 at weights 1 and 3 is 7.5', () => {
	const scales = makeScales(1, 1);
	scales.row.set([1]);
	scales.add(1, 0);
	scales.add(3, 10);
	expect(scales.unknowns(0)?.[0]).toBeCloseTo(7.5, 9);
});

test('rows that do not tell all unknowns tell none', () => {
	const scales = makeScales(2, 1);
	scales.row.set([1, 4]);
	scales.add(1, 1);
	expect(scales.unknowns(0)).toBeUndefined();
	expect(scales.unknowns(0, 1)?.[0]).toBeCloseTo(1, 9);
});
