import {createRequire} from 'node:module';
import type {Converter} from 'proj4';

/** The two national grids that people read off maps here, by EPSG code: British National Grid and Irish Grid. */
export type Grid = 'EPSG:27700' | 'EPSG:29903';

/** Metres east and north of a grid's origin. */
export type GridPoint = {readonly east: number; readonly north: number};

/** Degrees on WGS 84. */
export type Degrees = {readonly latitude: number; readonly longitude: number};

// Projection constants: Ordnance Survey guide to coordinate systems, annex A, and the EPSG register. The seven
// datum values are the published Helmert ones with every sign turned, because `towgs84` goes the other way.
const definitions: Readonly<Record<Grid, string>> = {
	'EPSG:27700':
		'+proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000 +ellps=airy ' +
		'+towgs84=446.448,-125.157,542.06,0.1502,0.247,0.8421,-20.4894 +units=m +no_defs',
	'EPSG:29903':
		'+proj=tmerc +lat_0=53.5 +lon_0=-8 +k=1.000035 +x_0=200000 +y_0=250000 +ellps=mod_airy ' +
		'+towgs84=482.5,-130.6,564.6,-1.042,-0.214,-0.631,8.15 +units=m +no_defs',
};

/**
 * How far a point may shift between a grid and WGS 84, in metres: the stated error of the Helmert transformation,
 * 3.5 m (95 %) in the Ordnance Survey guide and 1 m for the Irish Grid.
 */
export const datumErrorM: Readonly<Record<Grid, number>> = {'EPSG:27700': 3.5, 'EPSG:29903': 1};

/** The WGS 84 degrees of a grid point. */
export function toDegrees(grid: Grid, point: GridPoint): Degrees {
	const [longitude = Number.NaN, latitude = Number.NaN] = converterOf(grid).inverse([
		point.east,
		point.north,
	]);
	return {latitude, longitude};
}

/** The grid point of WGS 84 degrees; far from the grid's own country the figures mean nothing. */
export function toGrid(grid: Grid, degrees: Degrees): GridPoint {
	const [east = Number.NaN, north = Number.NaN] = converterOf(grid).forward([
		degrees.longitude,
		degrees.latitude,
	]);
	return {east, north};
}

const converters = new Map<Grid, Converter>();

// Reading a definition takes ten times as long as using it, and an export converts a hundred thousand places.
function converterOf(grid: Grid): Converter {
	const known = converters.get(grid);
	if (known) return known;
	const made = openProjections()(definitions[grid]);
	converters.set(grid, made);
	return made;
}

/** Loading it is a twentieth of a start, and many a day nobody reads a grid reference. */
function openProjections(): typeof import('proj4') {
	return createRequire(import.meta.url)('proj4');
}

// A line down the sea between the two islands, drawn by us and up to the end of Ireland at 55.5: from this latitude
// north, Ireland lies west of this longitude. Needed because both grids also cover the other side's coast.
const betweenTheIslands: readonly {readonly from: number; readonly longitude: number}[] = [
	{from: 55, longitude: -5.95},
	{from: 54, longitude: -5.3},
	{from: 52.5, longitude: -5.7},
	{from: 51, longitude: -5.8},
];

const britishZone = /^(?:Europe\/(?:London|Isle_of_Man)|Etc\/.*)$/;

/** The grid whose maps people use at a spot in this time zone, or `undefined` off both islands. */
export function gridOf(degrees: Degrees, zone: string): Grid | undefined {
	if (zone === 'Europe/Dublin') return 'EPSG:29903';
	if (!britishZone.test(zone)) return undefined;
	const line = betweenTheIslands.find(part => degrees.latitude >= part.from);
	return line && degrees.longitude < line.longitude && degrees.latitude < 55.5 ? 'EPSG:29903' : 'EPSG:27700';
}
