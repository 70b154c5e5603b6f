import {expect, test} from 'vitest';
import {type Axis, between, findAxis} from '../../src/capsule/axis.ts';
import type {Grid} from '../../src/capsule/flat-view.ts';
import {regionsOf} from '../../src/capsule/regions.ts';

const grid: Grid = {width: 120, height: 70, stepMm: 1, from: [0, 0]};

/** A body of 80 by 40 mm about the middle of the grid; `isGone` takes parts out of it. */
function bodyWithout(isGone: (x: number, y: number) => boolean) {
	const on = Uint8Array.from({length: grid.width * grid.height}, (_, at) => {
		const [x, y] = [at % grid.width, Math.floor(at / grid.width)];
		return x >= 20 && x < 100 && y >= 15 && y < 55 && !isGone(x, y) ? 1 : 0;
	});
	return {grid, body: {width: grid.width, height: grid.height, on}};
}

function axisOf(seen: ReturnType<typeof bodyWithout>): Axis {
	const regions = regionsOf(seen.body, 1);
	const [region] = regions.list;
	if (!region) throw new Error('Expected a region in a body drawn by hand; there is none');
	const depth = {...seen.body, values: new Float32Array(seen.body.on.length)};
	const axis = findAxis({...seen, whole: {regions, region, depth}}, grid);
	if (!axis) throw new Error('Expected an axis of a body drawn by hand; there is none');
	return axis;
}

test('a corner that is not seen turns the axis, and true flanks turn it back', () => {
	const seen = bodyWithout((x, y) => x > 60 && y > 40);
	const rough = axisOf(seen);
	// The true flanks lie 15 and 55 mm down: how far from the axis is worked out along it.
	const down = (u: number) => rough.middle[1] + u * rough.along[1];
	const [left, right] = rough.along[0] > 0 ? [14.5, 54.5] : [54.5, 14.5];
	const axis = between(
		rough,
		[
			u => Math.abs(down(u) - left) / Math.abs(rough.along[0]),
			u => Math.abs(right - down(u)) / Math.abs(rough.along[0]),
		],
		seen,
	);
	expect(Math.abs(rough.along[1])).toBeGreaterThan(0.03);
	expect(Math.abs(axis.along[1])).toBeLessThan(0.01);
	expect(axis.widthMm).toBeCloseTo(40, 0);
	expect(axis.middle[1]).toBeCloseTo(34.5, 0);
});

test('a nearly square body that spreads from corner to corner lies along its sides all the same', () => {
	const cut = 8;
	const isCorner = (x: number, y: number) => x - 20 + y - 15 < cut || 60 - x + 54 - y < cut;
	const {along, symmetry} = axisOf(bodyWithout((x, y) => x > 60 || isCorner(x, y)));
	expect(Math.abs(along[1])).toBeLessThan(0.1);
	expect(symmetry).toBeGreaterThan(0.88);
});
