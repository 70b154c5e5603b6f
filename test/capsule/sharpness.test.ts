import {expect, test} from 'vitest';
import type {Point, Raster} from '../../src/capsule/raster.ts';
import {blurOf} from '../../src/capsule/sharpness.ts';

const size = {width: 240, height: 200};
const corners: readonly Point[] = [
	[60, 50],
	[180, 50],
	[180, 150],
	[60, 150],
];

/** A white sheet on dark ground, blurred by a bell curve; its upper side bows out by `bowPx` in the middle. */
function sheet(sigmaPx: number, {bowPx = 0, isShaded = false, lightest = 220} = {}): Raster {
	const rgb = new Uint8Array(size.width * size.height * 3);
	for (let y = 0; y < size.height; y += 1) {
		for (let x = 0; x < size.width; x += 1) {
			const top = 50 - bowPx * (1 - ((x - 120) / 60) ** 2);
			const inside = Math.min(y - top, 150 - y, x - 60, 180 - x);
			// The logistic curve of this width passes 0.159 and 0.841 where the bell curve's sum does.
			const share = 1 / (1 + Math.exp((-1.666 * inside) / sigmaPx));
			const shade = isShaded && x > 180 ? 0.4 * Math.exp((180 - x) / 8) : 0;
			rgb.fill(
				Math.round((40 + (lightest - 40) * share) * (1 - shade)),
				(y * size.width + x) * 3,
				(y * size.width + x) * 3 + 3,
			);
		}
	}
	return {...size, rgb};
}

test.each([1, 2.5, 5, 8])('blur of %f pixels is told within a fifth', sigmaPx => {
	const told = blurOf(sheet(sigmaPx), corners);
	expect(told / sigmaPx).toBeGreaterThan(0.8);
	expect(told / sigmaPx).toBeLessThan(1.2);
});

test('neither a bowed side nor a shadow beside another passes for blur', () => {
	expect(blurOf(sheet(1, {bowPx: 4}), corners)).toBeLessThan(1.3);
	expect(blurOf(sheet(1, {isShaded: true}), corners)).toBeLessThan(1.3);
});

test('an outline too faint to be seen tells of no blur', () => {
	expect(blurOf(sheet(6, {lightest: 44}), corners)).toBe(0);
});
