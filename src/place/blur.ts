/** Places made coarse: a square of a fixed grid that says no more than that the spot lies somewhere in it. */
import type {Degrees} from './grid.ts';

/** A square of the grid by its edges in degrees on WGS 84; `sideM` is the side that was asked for. */
export type BlurSquare = {
	readonly south: number;
	readonly west: number;
	readonly north: number;
	readonly east: number;
	readonly sideM: number;
};

// WGS 84 (EPSG:4326): a degree of latitude is shortest at the equator, and a degree of longitude is nowhere shorter
// than this length times the cosine of the latitude. So no square is smaller than was asked for.
const leastMetresNorth = 110_574;
const leastMetresEast = 111_319;

/**
 * The square of about `sideM` metres in which a spot lies; every spot in it gives the very same square, so that
 * neither many exports nor many finds tell more. Its sides are never shorter than `sideM`. Throws when the side is not
 * 10 m to 100 km or the spot is off the earth.
 */
export function blurSquare({latitude, longitude}: Degrees, sideM: number): BlurSquare {
	if (!(sideM >= 10 && sideM <= 100_000)) {
		throw new Error(`Expected a side of 10 to 100000 metres to blur a place to; got ${sideM}`);
	}
	if (!(Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180)) {
		throw new Error(`Expected a latitude and a longitude on the earth; got ${latitude} and ${longitude}`);
	}
	// Rows are counted from the pole, a whole number of them, so that none is cut short.
	const rows = Math.max(1, Math.floor((180 * leastMetresNorth) / sideM));
	const row = cellOf((latitude + 90) / 180, rows);
	const south = -90 + row.from * 180;
	const north = -90 + row.to * 180;
	const narrowest = Math.cos((Math.max(Math.abs(south), Math.abs(north)) * Math.PI) / 180);
	const columns = Math.max(1, Math.floor((360 * leastMetresEast * narrowest) / sideM));
	const column = cellOf((longitude + 180) / 360, columns);
	return {south, north, west: -180 + column.from * 360, east: -180 + column.to * 360, sideM};
}

/** The part of 0 to 1 that holds a share; the last part holds 1 itself. */
function cellOf(share: number, parts: number): {readonly from: number; readonly to: number} {
	const index = Math.min(parts - 1, Math.floor(share * parts));
	return {from: index / parts, to: (index + 1) / parts};
}
