/** Where a find lay, in Darwin Core terms. */
import {footprint, type Place, type Spot} from '../place/place.ts';

/** Darwin Core terms of a place: a point with its radius, the square it was given as, and the text as written. */
export type PlaceTerms = {
	readonly decimalLatitude?: number | undefined;
	readonly decimalLongitude?: number | undefined;
	readonly geodeticDatum?: 'EPSG:4326' | undefined;
	/** Metres, never 0: Darwin Core does not allow it. */
	readonly coordinateUncertaintyInMeters?: number | undefined;
	readonly verbatimCoordinates?: string | undefined;
	readonly verbatimCoordinateSystem?: string | undefined;
	readonly verbatimSRS?: string | undefined;
	readonly footprintWKT?: string | undefined;
	readonly footprintSRS?: 'EPSG:4326' | undefined;
	readonly pointRadiusSpatialFit?: number | undefined;
	readonly georeferenceRemarks?: string | undefined;
	readonly georeferenceVerificationStatus: 'requires verification' | 'requires georeference';
	readonly verbatimLocality?: string | undefined;
};

const systems = {
	'EPSG:4326': 'degrees',
	'EPSG:27700': 'British National Grid reference',
	'EPSG:29903': 'Irish Grid reference',
} as const;
const ways = {
	pin: 'position sent from a phone',
	photo: 'position in the metadata of a photo, confirmed by the finder',
	grid: 'centre of the grid square that was typed',
	coordinates: 'coordinates as typed',
} as const;

/** The terms of a place; the country is left out, since nobody was asked for it. */
export function placeTerms(place: Place): PlaceTerms {
	if (place.kind === 'named')
		return {verbatimLocality: place.name, georeferenceVerificationStatus: 'requires georeference'};
	return {
		decimalLatitude: degrees(place.latitude),
		decimalLongitude: degrees(place.longitude),
		geodeticDatum: 'EPSG:4326',
		coordinateUncertaintyInMeters: Math.max(1, place.uncertaintyM),
		verbatimCoordinates: place.verbatim,
		verbatimCoordinateSystem: place.system && systems[place.system],
		verbatimSRS: place.system,
		...squareTerms(place),
		georeferenceRemarks: ways[place.how],
		georeferenceVerificationStatus: 'requires verification',
	};
}

function squareTerms(place: Spot): Partial<PlaceTerms> {
	const ring = footprint(place);
	if (!ring || place.sideM === undefined) return {};
	const circle = Math.PI * place.uncertaintyM ** 2;
	return {
		footprintWKT: ringText(ring),
		footprintSRS: 'EPSG:4326',
		// The area of the circle over that of the square (Darwin Core, comments on pointRadiusSpatialFit).
		pointRadiusSpatialFit: Number((circle / place.sideM ** 2).toFixed(4)),
	};
}

/** A closed ring of longitude and latitude as a polygon in well-known text, six decimals. */
export function ringText(ring: readonly (readonly [longitude: number, latitude: number])[]): string {
	const corners = ring.map(([longitude, latitude]) => `${degrees(longitude)} ${degrees(latitude)}`);
	return `POLYGON ((${corners.join(', ')}))`;
}

function degrees(value: number): number {
	return Number(value.toFixed(6)) + 0;
}
