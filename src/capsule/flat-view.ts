/** A photo seen from straight above: tones at even steps of a plane, in logarithms, so that shade is a difference. */
import type {Homography} from './homography.ts';
import {type Point, type Raster, readColour} from './raster.ts';

/** A part of a plane, in millimetres. */
export type Area = {
	readonly left: number;
	readonly top: number;
	readonly right: number;
	readonly bottom: number;
};

/** Where the points of a grid lie in the plane. */
export type Grid = {
	readonly width: number;
	readonly height: number;
	readonly stepMm: number;
	/** Where the grid's first point lies. */
	readonly from: Point;
};

/** Tones on a grid of the plane. */
export type FlatView = Grid & {
	/** Light, red against green and blue against both, point by point. */
	readonly tones: Float32Array;
	/** 1 where the photo shows the point and nothing known lies on it. */
	readonly known: Uint8Array;
};

/** Below this a camera's numbers are noise. */
const darkest = 6;

/** Reads a photo along a grid; `covers` tells which points something known lies on, such as a card. */
export function flatten(
	raster: Raster,
	view: Homography,
	grid: {
		readonly area: Area;
		readonly stepMm: number;
		readonly covers?: ((xMm: number, yMm: number) => boolean) | undefined;
	},
): FlatView {
	const {area, stepMm, covers} = grid;
	const width = Math.floor((area.right - area.left) / stepMm) + 1;
	const height = Math.floor((area.bottom - area.top) / stepMm) + 1;
	const tones = new Float32Array(width * height * 3);
	const known = new Uint8Array(width * height);
	const colour = new Float32Array(3);
	const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = view;
	for (let at = 0, row = 0; row < height; row += 1) {
		const y = area.top + row * stepMm;
		const [acrossHere, downHere, farHere] = [b * y + c, e * y + f, h * y + i];
		for (let column = 0; column < width; column += 1, at += 1) {
			const x = area.left + column * stepMm;
			// Written out, since a point made for each of so many places would take as long again.
			const near = 1 / (g * x + farHere);
			if (!readColour(raster, (a * x + acrossHere) * near, (d * x + downHere) * near, colour)) continue;
			known[at] = covers?.(x, y) ? 0 : 1;
			writeTones(colour, 0, tones, at * 3);
		}
	}
	return {width, height, stepMm, from: [area.left, area.top], tones, known};
}

/** Writes light, red against green and blue against both of the colour at `at`, as logarithms, into `into` from `to` on. */
export function writeTones(colours: Float32Array, at: number, into: Float32Array, to: number): void {
	const red = logOf(colours[at] ?? 0);
	const green = logOf(colours[at + 1] ?? 0);
	const blue = logOf(colours[at + 2] ?? 0);
	into[to] = (red + green + blue) / 3;
	into[to + 1] = red - green;
	into[to + 2] = blue - (red + green) / 2;
}

/** Steps of a table to one of a channel: finer than any camera. */
const finePerStep = 16;
const logTable = Float32Array.from({length: 256 * finePerStep}, (_, at) =>
	Math.log(at / finePerStep + darkest),
);

/** The logarithm of a channel from 0 to 255, bounded where noise would rule. */
export function logOf(value: number): number {
	return logTable[Math.round(value * finePerStep)] ?? Math.log(255 + darkest);
}

/** A point of the plane in steps of the grid. */
export function gridPoint({from, stepMm}: Grid, [x, y]: Point): Point {
	return [(x - from[0]) / stepMm, (y - from[1]) / stepMm];
}

/** A point of the grid in millimetres of the plane. */
export function planePoint({from, stepMm}: Grid, [column, row]: Point): Point {
	return [from[0] + column * stepMm, from[1] + row * stepMm];
}
