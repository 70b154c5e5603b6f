import {expect, test} from 'vitest';
import {withBaysFilled} from '../../src/capsule/bays.ts';
import type {Grid} from '../../src/capsule/flat-view.ts';

const view: Grid = {width: 60, height: 40, stepMm: 1, from: [0, 0]};
const plain = -4.4;

/** A body of 30 by 20 mm in a box of its own, a bay of 8 by 6 mm open to above bitten out, told as given. */
function bitten(told: number) {
	const grid: Grid = {width: 40, height: 30, stepMm: 1, from: [10, 5]};
	const on = new Uint8Array(40 * 30);
	for (let y = 5; y < 25; y += 1) on.fill(1, y * 40 + 5, y * 40 + 35);
	for (let y = 5; y < 11; y += 1) on.fill(0, y * 40 + 15, y * 40 + 23);
	const values = new Float32Array(60 * 40).fill(plain);
	for (let y = 10; y < 16; y += 1) values.fill(told, y * 60 + 25, y * 60 + 33);
	const part = {grid, body: {width: 40, height: 30, on}};
	return withBaysFilled(part, {view, odd: {width: 60, height: 40, values}, plain});
}

const areaOf = (on: Uint8Array) => on.reduce((sum, value) => sum + value, 0);

test('a bay of shine, open to the outside and yet no bare ground, is of the body', () => {
	expect(areaOf(bitten(-2).body.on)).toBe(30 * 20);
});

test('a bay of bare ground stays open', () => {
	expect(areaOf(bitten(plain + 0.3).body.on)).toBe(30 * 20 - 8 * 6);
});
