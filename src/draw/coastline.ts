/** The coast of a stretch of the earth, cut out of the Natural Earth coastline (1:10 million, public domain). */
import {readFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import {z} from 'zod';

/**
 * A stretch of the earth by its edges in degrees on WGS 84. Across the date line `west` or `east` goes past 180, so
 * that `west` is always the smaller.
 */
export type Box = {
	readonly south: number;
	readonly west: number;
	readonly north: number;
	readonly east: number;
};

/** Rings of longitude and latitude, shores of land and of lakes alike: inside an odd number of them is land. */
export type Rings = readonly (readonly (readonly [longitude: number, latitude: number])[])[];

/** Land within a box. */
export type Coast = {readonly box: Box; readonly rings: Rings};

type Ring = Rings[number];
type Point = Ring[number];

const arcsOfPolygon = z.array(z.array(z.number().int()));
const landFile = z.object({
	transform: z.object({
		scale: z.tuple([z.number(), z.number()]),
		translate: z.tuple([z.number(), z.number()]),
	}),
	objects: z.object({
		land: z.object({geometries: z.array(z.object({arcs: z.array(arcsOfPolygon)}))}),
	}),
	// A schema for each of 400,000 points takes most of a second.
	arcs: z.custom<readonly (readonly Point[])[]>(isLines, 'expected arcs, each of pairs of whole numbers'),
});

/**
 * The coast of the whole earth. Reading it takes some 60 times as long as drawing a map of it, so cut out what a region
 * needs once, keep that and let this go.
 */
export function readEarth(): Coast {
	return {box: {south: -90, west: -180, north: 90, east: 180}, rings: readWorld()};
}

/** The part of a coast that lies in a smaller box. */
export function cutCoast({rings}: Coast, box: Box): Coast {
	const near = rings.flatMap(ring => {
		const bounds = boundsOf(ring);
		// A ring may go past 180 or a box may, and by different turns.
		return [-360, 0, 360]
			.filter(shift => overlaps(bounds, box, shift))
			.map(shift => ring.map(([longitude, latitude]): Point => [longitude + shift, latitude]));
	});
	return {box, rings: near.map(ring => clipRing(ring, box)).filter(ring => ring.length > 2)};
}

/** Reads the rings of the file (TopoJSON: lines shared, points as whole steps from the last). */
function readWorld(): Rings {
	const path = createRequire(import.meta.url).resolve('world-atlas/land-10m.json');
	const {arcs, objects, transform} = landFile.parse(JSON.parse(readFileSync(path, 'utf8')));
	const lines = arcs.map(steps => {
		let [across, up] = [0, 0];
		return steps.map(([right, higher]): Point => {
			across += right;
			up += higher;
			return [
				across * transform.scale[0] + transform.translate[0],
				up * transform.scale[1] + transform.translate[1],
			];
		});
	});
	// A line that is walked backwards is written as -1 - its number.
	const lineOf = (index: number) =>
		index < 0 ? (lines[-1 - index]?.toReversed() ?? []) : (lines[index] ?? []);
	const polygons = objects.land.geometries.flatMap(geometry => geometry.arcs);
	return polygons.flatMap(rings => rings.map(ring => unroll(ring.flatMap(index => lineOf(index).slice(1)))));
}

/**
 * Lets a ring that jumps from 180 to -180 degrees go on past 180: the file has land across the date line in one piece.
 * A ring once round the earth, the Antarctic, is closed over its pole.
 */
function unroll(ring: Ring): Ring {
	let turns = 0;
	const points = ring.map(([longitude, latitude], index): Point => {
		const step = longitude - (ring[index - 1] ?? [longitude])[0];
		if (Math.abs(step) > 180) turns -= Math.sign(step);
		return [longitude + 360 * turns, latitude];
	});
	const [first, last] = [points[0], points.at(-1)];
	if (!first || !last || Math.abs(last[0] - first[0]) < 180) return points;
	const pole = 90 * Math.sign(first[1]);
	return [...points, [last[0], pole], [first[0], pole]];
}

function isLines(value: unknown): boolean {
	const isPoint = (point: unknown) =>
		Array.isArray(point) && point.length === 2 && point.every(Number.isInteger);
	return Array.isArray(value) && value.every(line => Array.isArray(line) && line.every(isPoint));
}

function boundsOf(ring: Ring): Box {
	const box = {south: 90, west: 540, north: -90, east: -540};
	for (const [longitude, latitude] of ring) {
		box.south = Math.min(box.south, latitude);
		box.north = Math.max(box.north, latitude);
		box.west = Math.min(box.west, longitude);
		box.east = Math.max(box.east, longitude);
	}
	return box;
}

function overlaps(one: Box, other: Box, shift: number): boolean {
	return (
		one.south < other.north &&
		one.north > other.south &&
		one.west + shift < other.east &&
		one.east + shift > other.west
	);
}

/** Cuts a ring edge by edge (Sutherland and Hodgman 1974); parts that the box parts stay joined along its edge. */
function clipRing(ring: Ring, box: Box): Ring {
	const edges = [
		{axis: 0, at: box.west, sign: 1},
		{axis: 0, at: box.east, sign: -1},
		{axis: 1, at: box.south, sign: 1},
		{axis: 1, at: box.north, sign: -1},
	] as const;
	return edges.reduce<Ring>((left, {axis, at, sign}) => {
		const isIn = (point: Point) => (point[axis] - at) * sign >= 0;
		return left.flatMap((point, index) => {
			const last = left.at(index - 1) ?? point;
			if (isIn(point) === isIn(last)) return isIn(point) ? [point] : [];
			const share = (at - last[axis]) / (point[axis] - last[axis]);
			const crossing: Point = [
				last[0] + share * (point[0] - last[0]),
				last[1] + share * (point[1] - last[1]),
			];
			return isIn(point) ? [crossing, point] : [crossing];
		});
	}, ring);
}
