/** Fills bays in the outline of a body: shine or crust of nearly the ground's own colour that is open to the outside. */
import type {Body} from './bodies.ts';
import type {Grid} from './flat-view.ts';
import type {Field} from './raster.ts';
import {fenceRound, type Mask, partsOf, type Region, regionsOf, roomForRuns, turnOf} from './regions.ts';

/** What was told of each point of the view, and how the middle of bare ground was told. */
export type Seen = {readonly view: Grid; readonly odd: Field; readonly plain: number};

/** Smaller ones change nothing (our choice). */
const leastBayMm2 = 12;
/** How much less than bare ground a bay is told to be ground (tuned on photos by the second maker). */
const leastAbove = 0.8;

/** The same body with its bays filled but those of bare ground. */
export function withBaysFilled<Part extends Pick<Body, 'grid' | 'body'>>(
	part: Part,
	{view, odd, plain}: Seen,
): Part {
	const {grid, body} = part;
	const left = Math.round((grid.from[0] - view.from[0]) / grid.stepMm);
	const top = Math.round((grid.from[1] - view.from[1]) / grid.stepMm);
	const toldAt = (x: number, y: number) => odd.values[(top + y) * odd.width + left + x] ?? 0;
	const {labels, list} = regionsOf(baysOf(body), leastBayMm2 / grid.stepMm ** 2);
	const on = Uint8Array.from(body.on);
	for (const bay of list) {
		const places = placesOf(labels, grid.width, bay);
		const told = Float32Array.from(places, ([x, y]) => toldAt(x, y)).sort();
		if ((told[told.length >> 1] ?? plain) - plain < leastAbove) continue;
		for (const [x, y] of places) on[y * grid.width + x] = 1;
	}
	return {...part, body: {...body, on}};
}

type Place = readonly [x: number, y: number];

function placesOf(
	labels: Int32Array,
	width: number,
	{label, left, right, top, bottom}: Region,
): readonly Place[] {
	const places: Place[] = [];
	for (let y = top; y <= bottom; y += 1) {
		for (let x = left; x <= right; x += 1) if (labels[y * width + x] === label) places.push([x, y]);
	}
	return places;
}

/** What lies within the convex fence round a mask and is not of it. */
function baysOf(mask: Mask): Mask {
	const {width, height, on} = mask;
	const bays = new Uint8Array(on.length);
	const runs = roomForRuns(width, height);
	const [largest] = partsOf(mask, {leastArea: 1, of: 1, runs}).toSorted((a, b) => b.area - a.area);
	if (!largest) return {width, height, on: bays};
	const fence = fenceRound(runs, largest);
	const sides = fence.map((from, index) => [from, fence[(index + 1) % fence.length]] as const);
	for (let y = largest.top; y <= largest.bottom; y += 1) {
		for (let x = largest.left; x <= largest.right; x += 1) {
			const isInside = on[y * width + x] !== 1 && sides.every(([from, to]) => turnOf(from, to, [x, y]) > 0);
			if (isInside) bays[y * width + x] = 1;
		}
	}
	return {width, height, on: bays};
}
