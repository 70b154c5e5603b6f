import {expect, test} from 'vitest';
import {depthOf} from '../../src/capsule/depth.ts';
import {fourOf} from '../../src/capsule/four-sided.ts';
import {
	areaOf,
	convexHull,
	fenceRound,
	type Mask,
	partsOf,
	regionsOf,
	roomForRuns,
} from '../../src/capsule/regions.ts';

function drawn(...rows: readonly string[]): Mask {
	const width = rows[0]?.length ?? 0;
	return {width, height: rows.length, on: Uint8Array.from(rows.join(''), dot => (dot === '#' ? 1 : 0))};
}

test('parts that touch by their sides are one, by their corners two', () => {
	const {list} = regionsOf(drawn('##..', '.##.', '...#', '#..#'), 1);
	expect(list.map(({area}) => area).toSorted()).toEqual([1, 2, 4]);
});

test('two arms that meet further down are one part', () => {
	const {list} = regionsOf(drawn('#...#', '#...#', '#####'), 1);
	expect(list).toEqual([{label: 1, area: 9, left: 0, top: 0, right: 4, bottom: 2}]);
});

test('the fence round a part runs along the outside of its pixels, also where it is hollow', () => {
	const runs = roomForRuns(5, 4);
	const fences = (...rows: readonly string[]) =>
		partsOf(drawn(...rows), {leastArea: 2, of: 1, runs}).map(part => fenceRound(runs, part));
	expect(fences('.....', '.##..', '.##..', '.....').map(areaOf)).toEqual([4]);
	const [fence = []] = fences('.###.', '.#.#.', '.#.##', '.....');
	expect(fence).toEqual([
		[0.5, -0.5],
		[3.5, -0.5],
		[4.5, 1.5],
		[4.5, 2.5],
		[0.5, 2.5],
	]);
	// The room is used again: nothing of the mask before is left in it.
	expect(fences('##...', '.....', '...##', '.....').map(areaOf)).toEqual([2, 2]);
});

test('a fence with one corner cut off becomes the square it was', () => {
	const corners = fourOf(
		convexHull([
			[0, 0],
			[100, 0],
			[100, 90],
			[90, 100],
			[0, 100],
		]),
	);
	expect(corners?.some(([x, y]) => Math.hypot(x - 100, y - 100) < 1e-9)).toBe(true);
	expect(corners && areaOf(corners)).toBeCloseTo(10_000, 6);
});

test('the middle of a band of five is the third step from its outside', () => {
	const {values} = depthOf(drawn('.....', '#####', '#####', '#####', '#####', '#####', '.....'));
	expect([...values].map(Math.round)[3 * 5 + 2]).toBe(3);
});

test('beyond the border a mask ends, unless it is said to go on', () => {
	const mask = drawn('###', '###', '###');
	expect(Math.max(...depthOf(mask).values)).toBeLessThan(2);
	expect(Math.min(...depthOf(mask, true).values)).toBeGreaterThan(100);
});
