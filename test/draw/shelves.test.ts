import fc from 'fast-check';
import {expect, test} from 'vitest';
import {placeOnPages} from '../../src/draw/shelves.ts';

const area = {xMm: 10, topMm: 20, widthMm: 180, heightMm: 200};
const cell = (widthMm: number, heightMm: number) => ({widthMm, heightMm, items: [], gapMm: 5});
const cells = fc.array(
	fc.record({
		widthMm: fc.double({min: 1, max: 180, noNaN: true}),
		heightMm: fc.double({min: 1, max: 200, noNaN: true}),
		items: fc.constant([]),
		gapMm: fc.constant(5),
	}),
	{minLength: 1, maxLength: 25},
);

test('no cell lies over another or over the edge, and none is lost', () => {
	fc.assert(
		fc.property(cells, all => {
			const pages = placeOnPages(all, cell(180, 10), area);
			expect(pages.flat()).toHaveLength(all.length + 1);
			for (const page of pages) {
				for (const [index, {cell: one, xMm, yMm}] of page.entries()) {
					expect(xMm).toBeGreaterThanOrEqual(10);
					expect(yMm).toBeGreaterThanOrEqual(20);
					expect(xMm + one.widthMm).toBeLessThan(190.001);
					expect(yMm + one.heightMm).toBeLessThan(220.001);
					for (const other of page.slice(index + 1)) {
						const isApart =
							other.xMm >= xMm + one.widthMm + 4.999 ||
							xMm >= other.xMm + other.cell.widthMm + 4.999 ||
							other.yMm >= yMm + one.heightMm + 4.999 ||
							yMm >= other.yMm + other.cell.heightMm + 4.999;
						expect(isApart).toBe(true);
					}
				}
			}
		}),
	);
});

test('the last cell stands on the last page, though an earlier one has room', () => {
	const pages = placeOnPages([cell(20, 20), cell(180, 190)], cell(180, 30), area);
	expect(pages.map(page => page.length)).toEqual([1, 1, 1]);
});

test('a low cell goes into the room under a small one', () => {
	const [page] = placeOnPages([cell(80, 50), cell(90, 190), cell(80, 60)], cell(80, 5), area);
	expect(page?.map(({xMm, yMm}) => [xMm, yMm])).toEqual([
		[10, 20],
		[95, 20],
		[10, 75],
		[10, 140],
	]);
});

test('a cell larger than a page is refused', () => {
	expect(() => placeOnPages([cell(181, 5)], cell(5, 5), area)).toThrow('at most 180 by 200 mm; got 181 by 5');
});
