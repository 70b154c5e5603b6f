/** A strip of the photo read from a body outwards, line beside line. */
import type {Axis} from './axis.ts';
import {fromAxis} from './axis.ts';
import type {FlatView} from './flat-view.ts';
import {gridPoint, writeTones} from './flat-view.ts';
import type {Ground} from './ground.ts';
import type {Homography} from './homography.ts';
import {type Raster, readColour} from './raster.ts';
import type {Oddness} from './telling.ts';

/** All that is needed to look at a body again in the full photo. */
export type Sight = {
	readonly raster: Raster;
	/** From the plane at the height of the body's outline to pixels. */
	readonly view: Homography;
	readonly flat: FlatView;
	readonly ground: Ground;
	readonly oddness: Oddness;
	/** Oddness by the rule for shadows alone. */
	readonly rule: Oddness;
	readonly mmPerPx: number;
};

/** Where to read: from one of the four sides of a body, over which part of it, between which distances from its middle. */
export type Reach = {
	readonly side: 'end' | 'flank';
	readonly way: -1 | 1;
	/** Where each line starts along the side, in millimetres from the axis or the middle. */
	readonly places: readonly number[];
	/** Outwards from the middle, in millimetres. */
	readonly fromMm: number;
	readonly toMm: number;
};

/** What was read, line by line, each line from the inside outwards. */
export type Strip = {
	readonly places: readonly number[];
	readonly fromMm: number;
	readonly stepMm: number;
	/** Samples of each line. */
	readonly count: number;
	/** Red, green and blue; noise is less, since neighbouring lines are blended. */
	readonly colours: Float32Array;
	/** How rather each sample is of something lying there than of ground: as learnt, and by the rule for shadows. */
	readonly learnt: Float32Array;
	readonly ruled: Float32Array;
	/** Light, red and blue of each sample, as they differ from bare ground. */
	readonly differences: Float32Array;
};

/** Reads a strip; undefined when the photo does not show all of it. */
export function readStrip(sight: Sight, axis: Axis, reach: Reach): Strip | undefined {
	const stepMm = Math.max(0.14, 0.5 * sight.mmPerPx);
	const count = Math.ceil((reach.toMm - reach.fromMm) / stepMm) + 1;
	const {places, fromMm} = reach;
	const raw = new Float32Array(places.length * count * 3);
	const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = sight.view;
	for (const [line, place] of places.entries()) {
		const {x, y, dx, dy} = lineOf(axis, reach, place);
		for (let index = 0; index < count; index += 1) {
			const s = fromMm + index * stepMm;
			const [px, py] = [x + s * dx, y + s * dy];
			const w = g * px + h * py + i;
			const at = (line * count + index) * 3;
			if (!readColour(sight.raster, (a * px + b * py + c) / w, (d * px + e * py + f) / w, raw, at))
				return undefined;
		}
	}
	const colours = blend(raw, places.length, count * 3);
	return {places, fromMm, stepMm, count, colours, ...oddIn(sight, colours, {axis, reach, stepMm, count})};
}

/** Where a line begins, in the plane, and its step of one millimetre. */
function lineOf(axis: Axis, {side, way}: Reach, place: number): Record<'x' | 'y' | 'dx' | 'dy', number> {
	const [ax, ay] = axis.along;
	const [x, y] = fromAxis(axis, side === 'end' ? [0, place] : [place, 0]);
	return side === 'end' ? {x, y, dx: way * ax, dy: way * ay} : {x, y, dx: -way * ay, dy: way * ax};
}

/** Neighbouring lines, read side by side, are one line with less noise. */
function blend(raw: Float32Array, lines: number, wide: number): Float32Array {
	const blended = new Float32Array(raw.length);
	for (let line = 0; line < lines; line += 1) {
		const [first, last] = [Math.max(0, line - 1), Math.min(lines - 1, line + 1)];
		const share = 1 / (last - first + 1);
		for (let other = first; other <= last; other += 1) {
			const [to, from] = [line * wide, other * wide];
			for (let at = 0; at < wide; at += 1)
				blended[to + at] = (blended[to + at] ?? 0) + share * (raw[from + at] ?? 0);
		}
	}
	return blended;
}

function oddIn(
	{flat, ground, oddness, rule}: Sight,
	colours: Float32Array,
	{axis, reach, stepMm, count}: {axis: Axis; reach: Reach; stepMm: number; count: number},
): Pick<Strip, 'learnt' | 'ruled' | 'differences'> {
	const [learnt, ruled] = [new Float32Array(colours.length / 3), new Float32Array(colours.length / 3)];
	const differences = new Float32Array(colours.length);
	const tones = new Float32Array(3);
	for (const [line, place] of reach.places.entries()) {
		const {x, y, dx, dy} = lineOf(axis, reach, place);
		const start = gridPoint(flat, [x + reach.fromMm * dx, y + reach.fromMm * dy]);
		const step = stepMm / flat.stepMm;
		for (let index = 0; index < count; index += 1) {
			const at = line * count + index;
			writeTones(colours, at * 3, tones, 0);
			ground.differ(
				tones,
				0,
				start[0] + index * step * dx,
				start[1] + index * step * dy,
				differences,
				at * 3,
			);
			const light = differences[at * 3] ?? 0;
			const red = differences[at * 3 + 1] ?? 0;
			const blue = differences[at * 3 + 2] ?? 0;
			learnt[at] = oddness(light, red, blue);
			ruled[at] = rule(light, red, blue);
		}
	}
	return {learnt, ruled, differences};
}
