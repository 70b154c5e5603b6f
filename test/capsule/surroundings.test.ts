import {expect, test} from 'vitest';
import type {Corners} from '../../src/capsule/four-sided.ts';
import type {Raster} from '../../src/capsule/raster.ts';
import {standsAlone} from '../../src/capsule/surroundings.ts';

type Colour = readonly [number, number, number];

function painted(colourAt: (x: number, y: number) => Colour): Raster {
	const [width, height] = [240, 200];
	const rgb = new Uint8Array(width * height * 3);
	for (let at = 0; at < width * height; at += 1)
		rgb.set(colourAt(at % width, Math.floor(at / width)), at * 3);
	return {width, height, rgb};
}

const outline: Corners = [
	[50, 60],
	[190, 60],
	[190, 148],
	[50, 148],
];
const isInside = (x: number, y: number) => x > 50 && x < 190 && y > 60 && y < 148;
const brown: Colour = [90, 60, 35];
const table: Colour = [200, 190, 175];
/** Lit from the left, and with some grain. */
const ground = (x: number, y: number): Colour => {
	const light = 1.05 - x / 1200 + 0.02 * Math.sin(3 * x + 7 * y);
	return [table[0] * light, table[1] * light, table[2] * light];
};
const isHorn = (x: number, y: number) => y > 50 && y < 60 && (Math.abs(x - 44) < 6 || Math.abs(x - 196) < 6);

test('a card on a table stands alone, also where one corner meets something', () => {
	const bare = painted((x, y) => (isInside(x, y) ? brown : ground(x, y)));
	expect(standsAlone(bare, outline)).toBe(true);
	const met = painted((x, y) => (isInside(x, y) || (isHorn(x, y) && x < 100) ? brown : ground(x, y)));
	expect(standsAlone(met, outline)).toBe(true);
});

test('a body with horns at two corners is no card', () => {
	const horned = painted((x, y) => (isInside(x, y) || isHorn(x, y) ? brown : ground(x, y)));
	expect(standsAlone(horned, outline)).toBe(false);
});

test('a stripe of a larger card does not stand alone', () => {
	const stripe = painted((x, y) => (isInside(x, y) ? brown : y < 60 ? [60, 80, 160] : ground(x, y)));
	expect(standsAlone(stripe, outline)).toBe(false);
});
