/** A photo seen from straight above: colours at even steps of a plane, in logarithms, so that shade is a difference. */
import type {Homography} from './homography.ts';
import {type Point, type Raster, readColour} from './raster.ts';

/** A part of a plane, in millimetres. */
export type Area = {
	readonly left: number;
	readonly top: number;
	readonly right: number;
	readonly bottom: number;
};

/** Colours on a grid of the plane. */
export type FlatView = {
	readonly width: number;
	readonly height: number;
	readonly stepMm: number;
	/** Where the grid's first point lies. */
	readonly from: Point;
	/** Logarithms of red, green and blue, point by point. */
	readonly logs: Float32Array;
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
		readonly covers?: ((point: Point) => boolean) | undefined;
	},
): FlatView {
	const {area, stepMm, covers} = grid;
	const width = Math.floor((area.right - area.left) / stepMm) + 1;
	const height = Math.floor((area.bottom - area.top) / stepMm) + 1;
	const logs = new Float32Array(width * height * 3);
	const known = new Uint8Array(width * height);
	const colour = new Float32Array(3);
	for (let row = 0; row < height; row += 1) {
		for (let column = 0; column < width; column += 1) {
			const x = area.left + column * stepMm;
			const y = area.top + row * stepMm;
			// Written out, since a point made for each of so many places would take as long again.
			const w = (view[6] ?? 0) * x + (view[7] ?? 0) * y + (view[8] ?? 0);
			const px = ((view[0] ?? 0) * x + (view[1] ?? 0) * y + (view[2] ?? 0)) / w;
			const py = ((view[3] ?? 0) * x + (view[4] ?? 0) * y + (view[5] ?? 0)) / w;
			if (!readColour(raster, px, py, colour)) continue;
			const at = row * width + column;
			known[at] = covers?.([x, y]) ? 0 : 1;
			for (let channel = 0; channel < 3; channel += 1) logs[at * 3 + channel] = logOf(colour[channel] ?? 0);
		}
	}
	return {width, height, stepMm, from: [area.left, area.top], logs, known};
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
export function gridPoint({from, stepMm}: FlatView, [x, y]: Point): Point {
	return [(x - from[0]) / stepMm, (y - from[1]) / stepMm];
}

/** A point of the grid in millimetres of the plane. */
export function planePoint({from, stepMm}: FlatView, [column, row]: Point): Point {
	return [from[0] + column * stepMm, from[1] + row * stepMm];
}
