import {expect, test} from 'vitest';
import {isNear} from '../../src/capsule/four-sided.ts';
import {outlinesOfPieces} from '../../src/capsule/piece-outlines.ts';
import type {Point, Raster} from '../../src/capsule/raster.ts';
import {shadesOf} from '../../src/capsule/shades.ts';

type Colour = readonly [number, number, number];

/** A small picture, softened a little; a card lies about its middle, turned by `turn`. */
function pictured(turn: number, colourAt: (at: Point, onCard: Point | undefined) => Colour): Raster {
	const [width, height] = [240, 180];
	const rgb = new Uint8Array(width * height * 3);
	const offs = [-0.5, 0, 0.5];
	for (let at = 0; at < width * height; at += 1) {
		const sum = [0, 0, 0];
		for (const dx of offs)
			for (const dy of offs) {
				const [x, y] = [(at % width) + dx, Math.floor(at / width) + dy];
				const [u, v] = turned([x - 120, y - 90], -turn);
				const onCard: Point | undefined = Math.abs(u) < 42.8 && Math.abs(v) < 27 ? [u, v] : undefined;
				for (const [channel, value] of colourAt([x, y], onCard).entries())
					sum[channel] = (sum[channel] ?? 0) + value;
			}
		rgb.set(
			sum.map(value => value / offs.length ** 2),
			at * 3,
		);
	}
	return {width, height, rgb};
}

function turned([x, y]: Point, turn: number): Point {
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	return [x * c - y * s, x * s + y * c];
}

function isFound(raster: Raster, turn: number, among: number): boolean {
	const [a, b, c, d] = (
		[
			[-42.8, -27],
			[42.8, -27],
			[42.8, 27],
			[-42.8, 27],
		] as const
	).map(([u, v]): Point => {
		const [x, y] = turned([u, v], turn);
		return [x + 120, y + 90];
	});
	if (!a || !b || !c || !d) return false;
	const outlines = outlinesOfPieces(shadesOf(raster)).slice(0, among);
	return outlines.some(({corners}) => isNear(corners, [a, b, c, d], 3));
}

const table: Colour = [200, 190, 175];
const white: Colour = [225, 224, 222];
const red: Colour = [170, 50, 50];

test('a card with a pattern that runs off its edges is found', () => {
	const isSpot = ([u, v]: Point) => Math.hypot(u - 38, v + 20) < 18 || Math.hypot(u + 10, v - 27) < 14;
	const raster = pictured(0.3, (_, onCard) => (onCard ? (isSpot(onCard) ? red : white) : table));
	expect(isFound(raster, 0.3, 3)).toBe(true);
});

test('a card half in shade is found, and the edge of the shade is no side of it', () => {
	const raster = pictured(-0.2, ([x, y], onCard) => {
		const light = x + 0.6 * y < 170 ? 0.5 : 1;
		const [r, g, b] = onCard ? white : table;
		return [r * light, g * light, b * light];
	});
	expect(isFound(raster, -0.2, 6)).toBe(true);
});

test('a card on striped cloth is found', () => {
	const raster = pictured(0.5, ([x, y], onCard) =>
		onCard ? [90, 110, 190] : (x + 2 * y) % 40 < 8 ? [120, 120, 160] : table,
	);
	expect(isFound(raster, 0.5, 12)).toBe(true);
});

test('where nothing has straight sides there is no outline', () => {
	const raster = pictured(0, ([x, y]) => (Math.hypot(x - 120, y - 90) < 50 ? red : table));
	expect(outlinesOfPieces(shadesOf(raster))).toEqual([]);
});
