/** The areas of the western Mediterranean against towns on its shores. */
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {readRegion} from '../../src/key/region.ts';

const {key, profiles} = readRegion(join(import.meta.dirname, '../../flows'), 'western-mediterranean');

type Ring = readonly (readonly [longitude: number, latitude: number])[];

test('only areas of the region are called usual', () => {
	const usual = Object.values(profiles.taxa).flatMap(({coast}) => coast?.usual ?? []);
	expect(usual.filter(area => !Object.hasOwn(key.areas, area))).toEqual([]);
	expect(Object.keys(key.areas).filter(area => !usual.includes(area))).toEqual([]);
});

// Towns on the shore, longitude and latitude in degrees: common knowledge of the map, from memory.
const shores: readonly (readonly [town: string, longitude: number, latitude: number, area: string])[] = [
	['Málaga', -4.42, 36.72, 'alboran'],
	['Ceuta', -5.31, 35.89, 'alboran'],
	['Melilla', -2.94, 35.29, 'alboran'],
	['Cartagena', -0.98, 37.6, 'balearic'],
	['Valencia', -0.33, 39.46, 'balearic'],
	['Barcelona', 2.19, 41.38, 'balearic'],
	['Palma', 2.65, 39.57, 'balearic'],
	['Perpignan beach', 3.04, 42.7, 'lions-liguria'],
	['Marseille', 5.37, 43.3, 'lions-liguria'],
	['Genoa', 8.93, 44.4, 'lions-liguria'],
	['Livorno', 10.3, 43.55, 'lions-liguria'],
	['Ajaccio', 8.74, 41.92, 'sardinia-tyrrhenian'],
	['Cagliari', 9.11, 39.21, 'sardinia-tyrrhenian'],
	['Ostia', 12.28, 41.73, 'sardinia-tyrrhenian'],
	['Naples', 14.25, 40.83, 'sardinia-tyrrhenian'],
	['Palermo', 13.37, 38.12, 'sardinia-tyrrhenian'],
	['Oran', -0.65, 35.71, 'algeria'],
	['Algiers', 3.06, 36.78, 'algeria'],
	['Annaba', 7.77, 36.9, 'algeria'],
	['Bizerte', 9.87, 37.27, 'sicily-channel'],
	['Sfax', 10.77, 34.73, 'sicily-channel'],
	['Gela', 14.25, 37.06, 'sicily-channel'],
	['Valletta', 14.51, 35.9, 'sicily-channel'],
];

test.each(shores)('%s (%d, %d) lies in the area %s and in no other', (_, longitude, latitude, area) => {
	expect(areasOf(longitude, latitude)).toEqual([area]);
});

// Cádiz, Bordeaux, Venice, Athens: other seas.
test.each([
	[-6.29, 36.53],
	[-0.58, 44.84],
	[12.33, 45.44],
	[23.7, 37.94],
])('a place at %d, %d lies in no area of the region', (longitude, latitude) => {
	expect(areasOf(longitude, latitude)).toEqual([]);
});

// Where the lines between areas run through open sea: 0.1 degrees to either side of a corner.
test.each([
	[4.6, 38.2],
	[5, 41.6],
	[7.5, 42.6],
	[8.6, 38.1],
	[10.5, 38.1],
	[0, 37.2],
])('no hole and no overlap is left around the corner at %d, %d', (longitude, latitude) => {
	for (const [east, north] of [
		[0.1, 0.03],
		[0.03, -0.1],
		[-0.1, -0.03],
		[-0.03, 0.1],
	] as const) {
		expect(areasOf(longitude + east, latitude + north)).toHaveLength(1);
	}
});

function areasOf(longitude: number, latitude: number): readonly string[] {
	return Object.entries(key.areas)
		.filter(([, {ring}]) => holds(ring, [longitude, latitude]))
		.map(([id]) => id);
}

/** A ring holds a place when a line to the east meets its border an odd number of times. */
function holds(ring: Ring, [longitude, latitude]: Ring[number]): boolean {
	const met = ring.filter(([x, y], index) => {
		const [nextX, nextY] = ring[(index + 1) % ring.length] ?? [x, y];
		return y > latitude !== nextY > latitude && longitude < x + ((latitude - y) / (nextY - y)) * (nextX - x);
	});
	return met.length % 2 === 1;
}
