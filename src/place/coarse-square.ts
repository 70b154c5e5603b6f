/** A spot told no finer than the square of a public grid that holds it. */
import {metresPerDegree} from './coordinates.ts';
import {type Degrees, datumErrorM, type Grid, gridOf, toDegrees, toGrid} from './grid.ts';
import {squareRing, writeSquare} from './grid-square.ts';
import {gridSystem, type Spot} from './place.ts';

/** How coarse: the side of the square in metres; off the national grids 0.01, 0.1 or 1 degree. */
export type CoarseSideM = 1000 | 10_000 | 100_000;

/** A square that hides a spot; `uncertaintyM` is the radius round its centre, in whole metres, that holds the spot. */
export type CoarseSquare = {
	readonly name: string;
	readonly system: 'British National Grid' | 'Irish Grid' | 'degrees, WGS 84';
	/** The centre in WGS 84 degrees, six decimals. */
	readonly centre: Degrees;
	readonly uncertaintyM: number;
	readonly areaM2: number;
	/** Longitude and latitude, closed, counter-clockwise. */
	readonly ring: readonly (readonly [longitude: number, latitude: number])[];
};

const gridNames = {'EPSG:27700': 'British National Grid', 'EPSG:29903': 'Irish Grid'} as const;
// Near the middle of the British grid its metre is 0.04 % short of the ground's: scale 0.9996012717 there.
const groundPerGrid = 1 / 0.9996;
const cellsPerDegree: Readonly<Record<CoarseSideM, number>> = {1000: 100, 10000: 10, 100000: 1};

/** The square that hides a spot; `undefined` when the spot was itself given as a square no smaller. */
export function coarseSquare(spot: Spot, sideM: CoarseSideM): CoarseSquare | undefined {
	if (spot.sideM !== undefined && spot.sideM >= sideM) return undefined;
	const grid = gridSystem(spot.system) ?? gridOf(spot, spot.zone);
	return (grid && gridSquare(spot, grid, sideM)) ?? degreeSquare(spot, sideM);
}

function gridSquare(spot: Spot, grid: Grid, sideM: CoarseSideM): CoarseSquare | undefined {
	const point = toGrid(grid, spot);
	const name = writeSquare(grid, point, sideM);
	if (name === undefined) return undefined;
	const corner = {
		east: Math.floor(point.east / sideM) * sideM,
		north: Math.floor(point.north / sideM) * sideM,
	};
	const centre = toDegrees(grid, {east: corner.east + sideM / 2, north: corner.north + sideM / 2});
	// A smaller square of the same grid lies in the large one as a whole; any other spot may reach over its edge.
	const isNested = spot.system === grid && spot.sideM !== undefined && sideM % spot.sideM === 0;
	const radiusM =
		sideM * Math.SQRT1_2 * groundPerGrid + datumErrorM[grid] + (isNested ? 0 : spot.uncertaintyM);
	return {
		name,
		system: gridNames[grid],
		centre: {latitude: rounded(centre.latitude), longitude: rounded(centre.longitude)},
		uncertaintyM: Math.ceil(radiusM),
		areaM2: sideM ** 2,
		ring: squareRing({grid, corner, sideM}),
	};
}

function degreeSquare(spot: Spot, sideM: CoarseSideM): CoarseSquare {
	const cells = cellsPerDegree[sideM];
	const south = cellOf(spot.latitude, cells, 90);
	const west = cellOf(spot.longitude, cells, 180);
	const north = rounded(south + 1 / cells);
	const east = rounded(west + 1 / cells);
	// Degrees eastwards are longest at the edge nearer the equator, northwards at the one nearer the pole.
	const edges = [metresPerDegree(south), metresPerDegree(north)];
	const heightM = Math.max(...edges.map(edge => edge.north)) / cells;
	const widthM = Math.max(...edges.map(edge => edge.east)) / cells;
	return {
		name: `${south} to ${north}, ${west} to ${east}`,
		system: 'degrees, WGS 84',
		centre: {latitude: rounded((south + north) / 2), longitude: rounded((west + east) / 2)},
		uncertaintyM: Math.ceil(Math.hypot(heightM, widthM) / 2 + spot.uncertaintyM),
		areaM2: heightM * widthM,
		ring: [
			[west, south],
			[east, south],
			[east, north],
			[west, north],
			[west, south],
		],
	};
}

/** The lower edge of the cell that holds a value; the last cell ends at `end`. */
function cellOf(value: number, cells: number, end: number): number {
	// Six decimals first: 0.29 times 100 is a little less than 29 in binary.
	const cell = Math.floor(Number((value * cells).toFixed(6)));
	return rounded(Math.min(cell, end * cells - 1) / cells);
}

function rounded(value: number): number {
	return Number(value.toFixed(6)) + 0;
}
