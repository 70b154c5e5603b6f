import {expect, test} from 'vitest';
import {fitPastShadows} from '../../src/capsule/flat-fit.ts';
import type {Corners} from '../../src/capsule/four-sided.ts';
import type {Raster} from '../../src/capsule/raster.ts';
import {movedPastShadows} from '../../src/capsule/shadow-edges.ts';
import {joinSides, placeSides} from '../../src/capsule/sides.ts';

type Colour = readonly [number, number, number];

/** A picture painted pixel by pixel, softened a little as by a lens. */
function painted(colourAt: (x: number, y: number) => Colour): Raster {
	const [width, height] = [200, 160];
	const rgb = new Uint8Array(width * height * 3);
	const offs = [-0.75, -0.45, -0.15, 0.15, 0.45, 0.75];
	for (let at = 0; at < width * height; at += 1) {
		const [x, y] = [at % width, Math.floor(at / width)];
		const sum = [0, 0, 0];
		for (const dx of offs)
			for (const dy of offs)
				for (const [channel, value] of colourAt(x + dx, y + dy).entries())
					sum[channel] = (sum[channel] ?? 0) + value;
		rgb.set(
			sum.map(value => value / offs.length ** 2),
			at * 3,
		);
	}
	return {width, height, rgb};
}

const table: Colour = [200, 180, 150];
const blue: Colour = [90, 110, 190];
const shade: Colour = [120, 108, 90];
const rough: Corners = [
	[42, 38],
	[162, 41],
	[161, 123],
	[38, 122],
];

const isInside = (x: number, y: number) => x > 40 && x < 160 && y > 40 && y < 120;

test('the sides of a rectangle are found to a tenth of a pixel from corners that are pixels off', () => {
	const raster = painted((x, y) => (isInside(x, y) ? blue : table));
	const placed = placeSides(raster, rough, {reachPx: 5, skip: 0.1});
	expect(placed?.sides.every(({seen}) => seen > 0.95)).toBe(true);
	for (const [index, [x, y]] of [
		[40, 40] as const,
		[160, 40] as const,
		[160, 120] as const,
		[40, 120] as const,
	].entries()) {
		const [px = 0, py = 0] = placed?.corners[index] ?? [];
		expect(Math.hypot(px - x, py - y)).toBeLessThan(0.1);
	}
});

test('a strong edge across a third of a side does not win against the side itself', () => {
	const isHorn = (x: number, y: number) => x > 60 && x < 95 && y > 20 && y < 60;
	const raster = painted((x, y) => (isHorn(x, y) ? [10, 10, 10] : isInside(x, y) ? blue : table));
	const placed = placeSides(raster, rough, {reachPx: 5, skip: 0.1});
	expect(placed?.corners[0][1]).toBeCloseTo(40, 0);
	expect(placed?.corners[1][1]).toBeCloseTo(40, 0);
});

test('nothing to see is no side', () => {
	const raster = painted(() => table);
	expect(placeSides(raster, rough, {reachPx: 5, skip: 0.1})).toBeUndefined();
});

test('more lines taken together see a side through noise that hides it from one', () => {
	let state = 1;
	const noise = () => {
		state = (state * 48271) % 2147483647;
		return (state / 2147483647 - 0.5) * 60;
	};
	const {rgb, ...size} = painted((x, y) => (isInside(x, y) ? [180, 160, 130] : table));
	const raster = {...size, rgb: rgb.map(value => Math.max(0, Math.min(255, value + noise())))};
	const scatter = (together: number) =>
		Math.max(
			...(placeSides(raster, rough, {reachPx: 4, skip: 0.1, together})?.sides ?? []).map(
				one => one.scatterPx,
			),
		);
	expect(scatter(5)).toBeLessThan(scatter(1));
});

/** Shade of so many pixels to the right and below. */
function shaded(thing: Colour, byPx: number): Raster {
	return painted((x, y) =>
		isInside(x, y) ? thing : isInside(x - byPx, y - byPx) || isInside(x - byPx, y) ? shade : table,
	);
}

test.each([
	['another colour', blue],
	['the same colour, brighter', [230, 207, 172]],
] as const)('a thing of %s ends where it ends, and not where its shadow does', (_, thing) => {
	const raster = shaded(thing, 4);
	const placed = placeSides(
		raster,
		[
			[40, 40],
			[164, 40],
			[164, 120],
			[40, 120],
		],
		{reachPx: 2, skip: 0.1},
	);
	expect(placed?.corners[1][0]).toBeGreaterThan(163);
	const moved = placed ? movedPastShadows(raster, placed) : [];
	const joined = joinSides(placed?.sides.map((side, index) => moved[index] ?? side) ?? []);
	expect(Math.abs((joined?.corners[1][0] ?? 0) - 160)).toBeLessThan(0.35);
});

test('sides without a shadow stay where they were found', () => {
	const raster = painted((x, y) => (isInside(x, y) ? blue : table));
	const placed = placeSides(raster, rough, {reachPx: 5, skip: 0.1});
	expect(placed && movedPastShadows(raster, placed)).toEqual([undefined, undefined, undefined, undefined]);
});

test('a dark thing that a camera has made crisp has no shadow along its edge', () => {
	const dark: Colour = [34, 31, 26];
	const isWithin = (x: number, y: number, px: number) =>
		x > 40 + px && x < 160 - px && y > 40 + px && y < 120 - px;
	const raster = painted((x, y) =>
		isInside(x, y) ? (isWithin(x, y, 2) ? dark : [14, 13, 11]) : isWithin(x, y, -2) ? [225, 203, 169] : table,
	);
	const placed = placeSides(raster, rough, {reachPx: 5, skip: 0.1});
	expect(placed && movedPastShadows(raster, placed)).toEqual([undefined, undefined, undefined, undefined]);
});

test('a side along the slanting edge of a shadow is turned back to the thing that throws it', () => {
	const shadeEnd = (y: number) => 160 + (y - 40) / 20;
	const raster = painted((x, y) =>
		isInside(x, y) ? blue : x >= 160 && x < shadeEnd(y) && y > 40 && y < 120 ? shade : table,
	);
	const placed = placeSides(raster, rough, {reachPx: 5, skip: 0.1});
	if (!placed) throw new Error('Expected four sides; got none');
	// The right side as it is found where the shadow is the plainer to see: from 160 above to 164 below.
	const size = Math.hypot(80, 4);
	const line = [80 / size, -4 / size, (160 * 80 - 40 * 4) / size] as const;
	const slanting = joinSides(placed.sides.map((side, index) => (index === 1 ? {...side, line} : side)));
	const moved = slanting && movedPastShadows(raster, slanting)[1];
	const straight = slanting && joinSides(slanting.sides.map((side, index) => (index === 1 && moved) || side));
	expect(slanting?.corners[2][0]).toBeCloseTo(164, 0);
	expect(Math.abs((straight?.corners[1][0] ?? 0) - 160)).toBeLessThan(0.6);
	expect(Math.abs((straight?.corners[2][0] ?? 0) - 160)).toBeLessThan(0.6);
});

test('a card whose dark stripe runs along its side is found where it lies', () => {
	const [wide, high] = [85.6 * 1.4, 53.98 * 1.4];
	const isOn = (x: number, y: number) => Math.abs(x - 100) < wide / 2 && Math.abs(y - 80) < high / 2;
	const isStripe = (y: number) => y - 80 + high / 2 > 3 && y - 80 + high / 2 < 12;
	const raster = painted((x, y) => (isOn(x, y) ? (isStripe(y) ? [40, 30, 30] : [170, 60, 60]) : table));
	const near: Corners = [
		[100 - wide / 2, 80 - high / 2],
		[100 + wide / 2, 80 - high / 2],
		[100 + wide / 2, 80 + high / 2],
		[100 - wide / 2, 80 + high / 2],
	];
	const placed = placeSides(raster, near, {reachPx: 3, skip: 0.1});
	const [found] = placed ? fitPastShadows(placed, {raster, isPaper: () => false}) : [];
	expect(found?.flat.kind).toBe('card');
	for (const [index, [x, y]] of near.entries()) {
		const [px = 0, py = 0] = found?.placed.corners[index] ?? [];
		expect(Math.hypot(px - x, py - y)).toBeLessThan(0.5);
	}
});

test('a card of 70 by 50 mm is taken for no other', () => {
	const isOn = (x: number, y: number) => Math.abs(x - 100) < 49 && Math.abs(y - 80) < 35;
	const raster = painted((x, y) => (isOn(x, y) ? blue : table));
	const placed = placeSides(
		raster,
		[
			[51, 45],
			[149, 45],
			[149, 115],
			[51, 115],
		],
		{reachPx: 3, skip: 0.1},
	);
	expect(placed?.sides.every(({seen}) => seen > 0.95)).toBe(true);
	expect(placed && fitPastShadows(placed, {raster, isPaper: () => false})).toEqual([]);
});
