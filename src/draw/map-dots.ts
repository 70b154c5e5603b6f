/** Dots on a map, those that would cover each other gathered into one. */
import {widthOfWords} from './lettering.ts';
import type {MapFrame, MapPlace} from './map-frame.ts';
import {letters} from './palette.ts';

/** A dot where it is drawn, for one or more places. */
export type Dot = {readonly x: number; readonly y: number; readonly radius: number; readonly count: number};

const smallest = 15;
const largest = 56;

/** The dots of places, largest first; the area of a dot follows its count, as far as its number still fits into it. */
export function gathered(
	points: readonly Extract<MapPlace, {kind: 'point'}>[],
	frame: MapFrame,
): readonly Dot[] {
	let spots = nearSummed(points, frame).toSorted((a, b) => b.count - a.count);
	for (;;) {
		const dots = withRadius(spots);
		const joined = joinFirst(dots);
		if (!joined) return dots;
		spots = joined.toSorted((a, b) => b.count - a.count);
	}
}

type Spot = Omit<Dot, 'radius'>;

/** A beach with hundreds of finds is one spot from the start, since joining looks at each pair. */
function nearSummed(points: readonly Extract<MapPlace, {kind: 'point'}>[], frame: MapFrame): readonly Spot[] {
	const cells = new Map<string, Spot>();
	for (const {longitude, latitude, count} of points) {
		const [x, y] = frame.project(longitude, latitude);
		const cell = `${Math.round(x / smallest)} ${Math.round(y / smallest)}`;
		const there = cells.get(cell) ?? {x, y, count: 0};
		cells.set(cell, {...there, count: there.count + count});
	}
	return [...cells.values()];
}

function withRadius(spots: readonly Spot[]): readonly Dot[] {
	const most = Math.max(...spots.map(({count}) => count));
	return spots.map(spot => {
		if (spot.count < 2) return {...spot, radius: smallest};
		const room = widthOfWords(String(spot.count), {size: letters.small, weight: 'bold'}) / 2 + 10;
		return {
			...spot,
			radius: Math.max(room, largest * Math.sqrt(spot.count / most) * Math.min(1, most / 12 + 0.4)),
		};
	});
}

/** Joins the first two dots of which one covers the middle of the other; `undefined` when there are none. */
function joinFirst(dots: readonly Dot[]): readonly Spot[] | undefined {
	for (const [index, one] of dots.entries()) {
		const other = dots
			.slice(index + 1)
			.find(({x, y}) => Math.hypot(x - one.x, y - one.y) < one.radius + smallest / 2);
		if (!other) continue;
		const count = one.count + other.count;
		const middle = (a: number, b: number) => (a * one.count + b * other.count) / count;
		return [
			...dots.filter(dot => dot !== one && dot !== other),
			{x: middle(one.x, other.x), y: middle(one.y, other.y), count},
		];
	}
	return undefined;
}
