import findZone from '@photostructure/tz-lookup';
import {z} from 'zod';
import {readPoint} from './coordinates.ts';
import {type Degrees, datumErrorM, gridOf, toDegrees, toGrid} from './grid.ts';
import {type GridSquare, readSquare, squareRing, writeSquare} from './grid-square.ts';

/** Checks a spot on its way in from a stored column. */
export const spotSchema = z.object({
	kind: z.literal('spot'),
	/** WGS 84 degrees, six decimals; for a grid square its centre. */
	latitude: z.number().min(-90).max(90),
	longitude: z.number().min(-180).max(180),
	/** Radius of the circle that holds the true spot, in whole metres, rounded up; never 0. */
	uncertaintyM: z.number().int().positive(),
	how: z.enum(['pin', 'photo', 'grid', 'coordinates']),
	/** As written, single spaces, capitals for a grid reference; together with `system`, absent for a pin or a photo's position. */
	verbatim: z.string().max(200).optional(),
	system: z.enum(['EPSG:4326', 'EPSG:27700', 'EPSG:29903']).optional(),
	/** Side of the grid square in metres; only for `grid`. */
	sideM: z.number().positive().optional(),
	/** IANA name of the time zone at the spot. */
	zone: z.string().min(1),
});

const namedSchema = z.object({kind: z.literal('named'), name: z.string().min(1).max(200)});

/** Checks a place on its way in from a stored column. */
export const placeSchema = z.discriminatedUnion('kind', [spotSchema.readonly(), namedSchema.readonly()]);

/** Where a case lay: a spot on the map with how sure it is, or only a name. */
export type Place = z.infer<typeof placeSchema>;

/** A spot on the map with how sure it is. */
export type Spot = Readonly<z.infer<typeof spotSchema>>;

/** What a text says about a place; `heard` is the text as it was taken, to show back. */
export type PlaceRead =
	| {readonly kind: 'place'; readonly place: Place}
	| {
			readonly kind: 'refused';
			readonly why:
				| 'odd-digits'
				| 'uneven-digits'
				| 'no-such-square'
				| 'too-many-digits'
				| 'off-the-earth'
				| 'half-a-pair'
				| 'too-long'
				| 'empty';
			readonly heard: string;
	  };

// Common practice for a spot given by hand or by phone; a smaller radius would promise too much.
const leastRadiusM = 10;
// Georeferencing Best Practices (Chapman and Wieczorek 2020): the accuracy a phone shows holds about half the time,
// so it is doubled; 30 m where none is recorded (Darwin Core, comments on coordinateUncertaintyInMeters).
const unknownRadiusM = 30;

/** Reads a grid reference, coordinates or a geo URI; any other text is kept as the name of a place. */
export function readPlace(text: string): PlaceRead {
	const heard = onOneLine(text);
	if (heard === '') return {kind: 'refused', why: 'empty', heard};
	if (heard.length > 200)
		return {kind: 'refused', why: 'too-long', heard: Array.from(heard).slice(0, 60).join('')};
	const square = readSquare(heard);
	if (square.kind === 'refused') return {...square, heard};
	if (square.kind === 'square')
		return {kind: 'place', place: placeFromSquare(square.square, square.verbatim)};
	const point = readPoint(heard);
	if (point.kind === 'refused') return {...point, heard};
	if (point.kind === 'other') return {kind: 'place', place: {kind: 'named', name: heard}};
	const uncertaintyM = Math.max(leastRadiusM, wholeMetres(point.radiusM));
	const written = {how: 'coordinates', verbatim: heard, system: 'EPSG:4326'} as const;
	return {kind: 'place', place: {kind: 'spot', ...located(point.point), uncertaintyM, ...written}};
}

/** A position as a phone gives it: WGS 84 degrees, and the radius in metres that the phone shows, if it does. */
export type Fix = {
	readonly latitude: number;
	readonly longitude: number;
	readonly accuracyM?: number | undefined;
};

/** The place of a pin sent from a phone. Throws off the earth. */
export function placeFromPin(fix: Fix): Spot {
	return placeFromFix(fix, 'pin');
}

/** The place that a camera wrote into a photo. Throws off the earth. */
export function placeFromPhoto(fix: Fix): Spot {
	return placeFromFix(fix, 'photo');
}

function placeFromFix(fix: Fix, how: 'pin' | 'photo'): Spot {
	const shown = fix.accuracyM;
	const uncertaintyM =
		shown === undefined ? unknownRadiusM : Math.max(leastRadiusM, wholeMetres(2 * Math.max(0, shown)));
	return {kind: 'spot', ...located(fix), uncertaintyM, how};
}

/**
 * The British or Irish grid reference of a spot: a 100 m square where the spot is known that well, else the smallest
 * of the 1 km and 10 km squares that does not promise more than is known. Off both islands it is `undefined`.
 */
export function gridReference(place: Place): string | undefined {
	if (place.kind === 'named') return undefined;
	const grid = gridSystem(place.system) ?? gridOf(place, place.zone);
	const sideM = [100, 1000, 10_000].find(side => place.uncertaintyM <= side);
	return grid && sideM !== undefined ? writeSquare(grid, toGrid(grid, place), sideM) : undefined;
}

/**
 * The grid square of a place as a closed ring of longitude and latitude on WGS 84, counter-clockwise from the
 * south-west corner; `undefined` for places that were not given as a square.
 */
export function footprint(
	place: Place,
): readonly (readonly [longitude: number, latitude: number])[] | undefined {
	if (place.kind === 'named' || place.sideM === undefined) return undefined;
	const grid = gridSystem(place.system);
	if (!grid) return undefined;
	const side = place.sideM;
	const centre = toGrid(grid, place);
	const east = Math.floor(centre.east / side) * side;
	const north = Math.floor(centre.north / side) * side;
	return squareRing({grid, corner: {east, north}, sideM: side});
}

function placeFromSquare(square: GridSquare, verbatim: string): Place {
	const half = square.sideM / 2;
	const centre = {east: square.corner.east + half, north: square.corner.north + half};
	return {
		kind: 'spot',
		...located(toDegrees(square.grid, centre)),
		uncertaintyM: wholeMetres(half * Math.SQRT2 + datumErrorM[square.grid]),
		how: 'grid',
		verbatim,
		system: square.grid,
		sideM: square.sideM,
	};
}

function located(degrees: Degrees) {
	const latitude = rounded(degrees.latitude, 6);
	const longitude = rounded(degrees.longitude, 6);
	if (!(Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180)) {
		throw new Error(`Expected a latitude and a longitude on the earth; got ${latitude} and ${longitude}`);
	}
	return {latitude, longitude, zone: findZone(latitude, longitude)};
}

/** The grid that a place was given in, if it was given in one. */
export function gridSystem(system: string | undefined) {
	return system === 'EPSG:27700' || system === 'EPSG:29903' ? system : undefined;
}

// Map apps wrap copied coordinates in invisible direction marks.
function onOneLine(text: string): string {
	return text
		.replace(/[\u200B\u200E\u200F\u202A-\u202E\u2060\u2066-\u2069\uFEFF]/g, '')
		.replace(/[\p{Cc}\p{Z}]+/gu, ' ')
		.trim();
}

// Without the small step back, 10.000000001 from binary fractions would become 11.
function wholeMetres(metres: number): number {
	return Math.ceil(metres - 1e-6);
}

function rounded(value: number, decimals: number): number {
	return Number(value.toFixed(decimals)) + 0;
}
