/** Faults in the borders of a region's areas: too few points, crossings, longitude and latitude mixed up. */
import {type Checkable, inKey, type Remark} from './checkable.ts';
import type {Fault} from './yaml.ts';

type Point = readonly [longitude: number, latitude: number];
type Ring = readonly Point[];
type Found = Remark & {readonly point?: number};

/** A point so many degrees from the middle of its border is looked at twice … */
const farDegrees = 10;
/** … and taken for mixed up when, turned round, it would lie so many times nearer. */
const muchNearer = 3;

/** Every fault in a border; of each area only the first, since one slip causes several. */
export function checkAreas(checkable: Checkable): readonly Fault[] {
	const rings = Object.entries(checkable.region.key.areas).map(([id, {ring}]) => ({id, ring}));
	return rings.flatMap(({id, ring}) => {
		const others = rings.filter(other => other.id !== id).map(other => other.ring);
		const found =
			repeated(id, ring) ??
			mixedUp(id, ring) ??
			crossed(id, ring) ??
			empty(id, ring) ??
			astray(id, ring, others);
		if (!found) return [];
		const {point, what, todo} = found;
		const path = point === undefined ? ['areas', id, 'ring'] : ['areas', id, 'ring', point];
		return [inKey(checkable, path, {what, todo})];
	});
}

function repeated(id: string, ring: Ring): Found | undefined {
	const point = ring.findIndex((one, index) => ring.findIndex(other => isSame(one, other)) < index);
	const [here] = ring.slice(point);
	if (point < 0 || !here) return undefined;
	const first = ring.findIndex(other => isSame(here, other));
	const todo = 'Write each point once, at least three; the border closes by itself.';
	return {point, what: `Point ${point + 1} of the area "${id}" is point ${first + 1} again.`, todo};
}

/** One point with its latitude written first. */
function mixedUp(id: string, ring: Ring): Found | undefined {
	const middle = middleOf(ring);
	const point = ring.findIndex(here => {
		const away = distance(here, middle);
		return away > farDegrees && away > muchNearer * distance(turned(here), middle);
	});
	const [here] = ring.slice(point);
	if (point < 0 || !here) return undefined;
	const what = `Point ${point + 1} of the area "${id}", [${here.join(', ')}], lies far from the others.`;
	return {point, what, todo: `Write longitude first: [${turned(here).join(', ')}].`};
}

function crossed(id: string, ring: Ring): Found | undefined {
	for (const [point, from] of ring.entries()) {
		const side = [from, ring[(point + 1) % ring.length] ?? from] as const;
		// Sides that follow each other share a point, the last and the first among them.
		for (let other = point + 2; other < ring.length - (point === 0 ? 1 : 0); other++) {
			const start = ring[other] ?? from;
			if (!meet(side, [start, ring[(other + 1) % ring.length] ?? start])) continue;
			return {
				point,
				what: `The border of the area "${id}" crosses itself: ${sideName(point, ring)} and ${sideName(other, ring)}.`,
				todo: 'Walk round the area one way and write the points in that order.',
			};
		}
	}
	return undefined;
}

function empty(id: string, ring: Ring): Found | undefined {
	const [first, second] = ring;
	if (first && second && ring.some(point => turn(first, second, point) !== 0)) return undefined;
	const what = `The points of the area "${id}" lie on one line.`;
	return {what, todo: 'Write at least three that hold something between them.'};
}

/** A whole border far from every other of its region. */
function astray(id: string, ring: Ring, others: readonly Ring[]): Found | undefined {
	const isNear = (border: Ring) => others.some(other => gap(border, other) <= farDegrees);
	if (others.length === 0 || isNear(ring)) return undefined;
	const what = `The area "${id}" lies over ${farDegrees} degrees from every other area.`;
	const todo = isNear(ring.map(turned))
		? 'Write longitude first in each point, then latitude: turned round, it lies beside the others.'
		: 'Compare its points with a map: longitude first, west and south with a minus.';
	return {what, todo};
}

function sideName(point: number, ring: Ring): string {
	return `the side from point ${point + 1} to ${((point + 1) % ring.length) + 1}`;
}

function isSame([east, north]: Point, [otherEast, otherNorth]: Point): boolean {
	return east === otherEast && north === otherNorth;
}

function turned([east, north]: Point): Point {
	return [north, east];
}

/** The point in the middle of each axis, which one slip does not move far. */
function middleOf(ring: Ring): Point {
	const at = (axis: 0 | 1) =>
		ring.map(point => point[axis]).sort((one, other) => one - other)[Math.floor(ring.length / 2)] ?? 0;
	return [at(0), at(1)];
}

/** In degrees, as on a flat map; good enough to tell a neighbour from another ocean. */
function distance([east, north]: Point, [otherEast, otherNorth]: Point): number {
	return Math.hypot(around(east - otherEast), north - otherNorth);
}

/** The nearest two points of two borders. */
function gap(one: Ring, other: Ring): number {
	return Math.min(...one.flatMap(point => other.map(there => distance(point, there))));
}

function around(degrees: number): number {
	return Math.min(Math.abs(degrees), 360 - Math.abs(degrees));
}

function meet([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean {
	const [atC, atD, atA, atB] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
	if (atC !== atD && atA !== atB) return true;
	return (
		(atC === 0 && isBetween(a, b, c)) ||
		(atD === 0 && isBetween(a, b, d)) ||
		(atA === 0 && isBetween(c, d, a)) ||
		(atB === 0 && isBetween(c, d, b))
	);
}

/** To which side of the line from `a` to `b` a point lies: 1, -1, or 0 on it. */
function turn(a: Point, b: Point, point: Point): number {
	return Math.sign((b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0]));
}

function isBetween(a: Point, b: Point, [east, north]: Point): boolean {
	return (
		Math.min(a[0], b[0]) <= east &&
		east <= Math.max(a[0], b[0]) &&
		Math.min(a[1], b[1]) <= north &&
		north <= Math.max(a[1], b[1])
	);
}
