import {expect, test} from 'vitest';
import {findAxis} from '../../src/capsule/axis.ts';
import {findBodies} from '../../src/capsule/bodies.ts';
import {shapeOf} from '../../src/capsule/looks.ts';
import {plainView} from './plain-view.ts';

const size = {width: 120, height: 80};
const view = plainView(size.width, size.height);

type Box = {
	readonly x: number;
	readonly y: number;
	readonly wide: number;
	readonly high: number;
	readonly odd: number;
};

/** Ground everywhere, then boxes, the later over the earlier. */
function drawn(...boxes: readonly Box[]) {
	const values = new Float32Array(size.width * size.height).fill(-4.4);
	for (const {x, y, wide, high, odd} of boxes) {
		for (let row = y; row < y + high; row += 1)
			values.fill(odd, row * size.width + x, row * size.width + x + wide);
	}
	return {...size, values};
}

const body = {x: 30, y: 25, wide: 50, high: 30, odd: 3};
const areaOf = ({on}: {readonly on: Uint8Array}) => on.reduce((sum, value) => sum + value, 0);

test('shine deep inside a body is of the body', () => {
	const [found] = findBodies(view, drawn(body, {x: 42, y: 36, wide: 24, high: 6, odd: -3}));
	expect(found && areaOf(found.body)).toBeGreaterThan(body.wide * body.high - 100);
});

test('the loop that two thin arms close beyond an end stays open', () => {
	const loop = {x: 80, y: 30, wide: 20, high: 20, odd: 3};
	const [found] = findBodies(view, drawn(body, loop, {...loop, x: 80, y: 32, wide: 18, high: 16, odd: -4.4}));
	expect(found && areaOf(found.body)).toBeLessThan(1510);
	const axis = found && findAxis(found, view);
	expect(axis?.lengthMm).toBeCloseTo(50, 0);
});

test('plain ground that thick horns close in is not filled', () => {
	const horns = {x: 80, y: 26, wide: 30, high: 28, odd: 3};
	const [found] = findBodies(view, drawn(body, horns, {x: 80, y: 34, wide: 20, high: 12, odd: -4.4}));
	expect(found && areaOf(found.body)).toBeLessThan(body.wide * body.high + 30 * 28 - 200);
});

test('two bodies lie apart, the broader first, each in a box of its own', () => {
	const found = findBodies(view, drawn({...body, x: 5}, {x: 75, y: 30, wide: 40, high: 16, odd: 3}));
	// Distances on the grid come out up to 4.5 % short.
	expect(found.map(({radiusMm}) => Math.round(radiusMm))).toEqual([14, 8]);
	expect(found.every(({grid}) => grid.width < size.width)).toBe(true);
});

test('two cases that touch at their corners are two bodies, and what joins them is of neither', () => {
	const one = {x: 10, y: 10, wide: 46, high: 28, odd: 3};
	const found = findBodies(view, drawn(one, {...one, x: 50, y: 32}));
	expect(found).toHaveLength(2);
	for (const each of found) {
		const axis = findAxis(each, view);
		expect(axis?.lengthMm).toBeCloseTo(46, -0.5);
		expect(axis?.widthMm).toBeCloseTo(28, -0.5);
	}
});

test('a small case that touches a large one is a body of its own, a thick horn is not', () => {
	const large = {x: 10, y: 10, wide: 60, high: 50, odd: 3};
	const neck = {x: 70, y: 30, wide: 8, high: 4, odd: 3};
	const found = findBodies(view, drawn(large, neck, {x: 76, y: 24, wide: 30, high: 18, odd: 3}));
	expect(found.map(({radiusMm}) => Math.round(radiusMm))).toEqual([24, 9]);
	const horned = findBodies(view, drawn(large, {x: 70, y: 12, wide: 34, high: 9, odd: 3}));
	expect(horned).toHaveLength(1);
});

test('a slim body without horns is long, a broad one with horns is broad, others are neither', () => {
	const shape = (...boxes: readonly Box[]) => {
		const [found] = findBodies(view, drawn(...boxes));
		const axis = found && findAxis(found, view);
		return axis && shapeOf(found, {axis, view, widthMm: axis.widthMm, lengthMm: axis.lengthMm});
	};
	const horn = {x: 80, y: 25, wide: 15, high: 5, odd: 3};
	const broad = {...body, y: 20, high: 36};
	expect(shape({...body, high: 18})).toBe('long');
	expect(shape(broad, {...horn, y: 20})).toBe('broad');
	expect(shape(broad)).toBeUndefined();
	expect(shape({...body, high: 18}, horn)).toBeUndefined();
});
