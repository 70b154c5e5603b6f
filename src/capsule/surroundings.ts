/** What lies just outside each side of a card: the same ground on all four, or it is only a part of something. */

import {logOf} from './flat-view.ts';
import {type Corners, middleOf} from './four-sided.ts';
import {median} from './median.ts';
import {type Point, type Raster, readColour} from './raster.ts';

/** Logarithms by which one side's ground may differ from the others': in light, for shade and grain, and in colour. */
const mostLight = 0.55;
const mostColour = 0.3;

/** Whether the ground outside is alike on all sides; a stripe of a larger card is not. */
export function standsAlone(raster: Raster, corners: Corners): boolean {
	const middle = middleOf(corners);
	const sides = corners.map((from, index) =>
		outsideOf(raster, [from, corners[(index + 1) % 4] ?? from], middle),
	);
	return [0, 1, 2].every(channel => {
		const values = sides.map(side => side[channel] ?? 0);
		const usual =
			(values.toSorted((a, b) => a - b)[1] ?? 0) / 2 + (values.toSorted((a, b) => a - b)[2] ?? 0) / 2;
		return values.every(value => Math.abs(value - usual) < (channel === 0 ? mostLight : mostColour));
	});
}

/** The middle light and colour along a line a little outside a side. */
function outsideOf(raster: Raster, [from, to]: readonly [Point, Point], middle: Point): readonly number[] {
	const colour = new Float32Array(3);
	const found: [number[], number[], number[]] = [[], [], []];
	for (let share = 0.08; share < 0.93; share += 0.04) {
		const at: Point = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
		const out = 1.13;
		const [x, y] = [middle[0] + out * (at[0] - middle[0]), middle[1] + out * (at[1] - middle[1])];
		if (!readColour(raster, x, y, colour)) continue;
		const [red, green, blue] = [logOf(colour[0] ?? 0), logOf(colour[1] ?? 0), logOf(colour[2] ?? 0)];
		found[0].push((red + green + blue) / 3);
		found[1].push(red - green);
		found[2].push(blue - (red + green) / 2);
	}
	return found.map(median);
}
