import fc from 'fast-check';
import geographic from 'geographiclib-geodesic';
import {expect, test} from 'vitest';
import {z} from 'zod';
import {coarseSquare} from '../../src/place/coarse-square.ts';
import {distanceM} from '../../src/place/distance.ts';
import {toDegrees} from '../../src/place/grid.ts';
import {placeFromPin} from '../../src/place/place.ts';

// Karney's geodesic, by GeographicLib. The radius is what a reader relies on, so it may never be too small.
test('a hidden spot always lies within the radius round the centre of its square', () => {
	const spots = fc.record({
		latitude: fc.double({min: -89, max: 89, noNaN: true}),
		longitude: fc.double({min: -180, max: 180, noNaN: true}),
		isBritish: fc.boolean(),
		sideM: fc.constantFrom(1000 as const, 10_000 as const, 100_000 as const),
	});
	fc.assert(
		fc.property(spots, ({latitude, longitude, isBritish, sideM}) => {
			const there = isBritish
				? {latitude: 50 + Math.abs(latitude) / 10, longitude: longitude / 40 - 3}
				: {latitude, longitude};
			const spot = placeFromPin({...there, accuracyM: 5});
			if (spot.kind !== 'spot') throw new Error('Expected a spot');
			const square = coarseSquare(spot, sideM);
			if (!square) throw new Error('Expected a square');
			expect(geodesicM(spot, square.centre) + spot.uncertaintyM).toBeLessThanOrEqual(square.uncertaintyM);
		}),
		{numRuns: 2000},
	);
});

// The corners are farthest off; the grid's own metre is up to 0.04 % shorter than the ground's near its middle.
test('a spot in the very corner of its square lies within the radius as well', () => {
	const britain = [0, 1, 2, 3, 4, 5, 6].flatMap(east =>
		[0, 1, 2, 3, 4, 5, 6, 7, 8].map(north =>
			toDegrees('EPSG:27700', {east: east * 100_000 + 2, north: north * 100_000 + 2}),
		),
	);
	const elsewhere = [-88, -45.9, -0.1, 0, 30, 44, 71, 88].flatMap(latitude =>
		[0.000001, 0.999999].map(part => ({latitude: Math.floor(latitude) + part, longitude: 120 + part})),
	);
	for (const there of [...britain, ...elsewhere])
		for (const sideM of [1000, 10_000, 100_000] as const) {
			const spot = placeFromPin({...there, accuracyM: 5});
			const square = spot.kind === 'spot' ? coarseSquare(spot, sideM) : undefined;
			if (spot.kind !== 'spot' || !square) throw new Error('Expected a spot in a square');
			expect(geodesicM(spot, square.centre) + spot.uncertaintyM).toBeLessThanOrEqual(square.uncertaintyM);
		}
});

test('distances are within 0.6 % of the geodesic', () => {
	const degrees = {
		latitude: fc.double({min: -80, max: 80, noNaN: true}),
		longitude: fc.double({min: -170, max: 170, noNaN: true}),
	};
	const step = fc.record({
		north: fc.double({min: -0.5, max: 0.5, noNaN: true}),
		east: fc.double({min: -0.5, max: 0.5, noNaN: true}),
	});
	fc.assert(
		fc.property(fc.record(degrees), step, (one, {north, east}) => {
			const other = {latitude: one.latitude + north, longitude: one.longitude + east};
			const geodesic = geodesicM(one, other);
			expect(Math.abs(distanceM(one, other) - geodesic)).toBeLessThanOrEqual(0.006 * geodesic + 0.001);
		}),
	);
});

type Point = {readonly latitude: number; readonly longitude: number};

function geodesicM(one: Point, other: Point): number {
	const {s12} = geographic.Geodesic.WGS84.Inverse(
		one.latitude,
		one.longitude,
		other.latitude,
		other.longitude,
	);
	return z.number().parse(s12);
}
