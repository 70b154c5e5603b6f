/** A place told no finer than it may be, in Darwin Core terms. */
import {coarseSquare} from '../place/coarse-square.ts';
import type {Place} from '../place/place.ts';
import {type PlaceTerms, placeTerms, ringText} from './place-terms.ts';
import type {Hiding} from './protection.ts';

/** Every term of a place by name, so that a term added later cannot pass by here unseen. */
export type EveryPlaceTerm = {readonly [Term in keyof Required<PlaceTerms>]: PlaceTerms[Term]};

/** The terms of a hidden place, with what was made coarser and what was left out. */
export type HiddenPlace = {
	readonly terms: EveryPlaceTerm;
	readonly dataGeneralizations: string | undefined;
	readonly withheld: readonly string[];
};

const nothing: EveryPlaceTerm = {
	decimalLatitude: undefined,
	decimalLongitude: undefined,
	geodeticDatum: undefined,
	coordinateUncertaintyInMeters: undefined,
	verbatimCoordinates: undefined,
	verbatimCoordinateSystem: undefined,
	verbatimSRS: undefined,
	footprintWKT: undefined,
	footprintSRS: undefined,
	pointRadiusSpatialFit: undefined,
	georeferenceRemarks: undefined,
	georeferenceVerificationStatus: 'requires georeference',
	verbatimLocality: undefined,
};

/** Hides a place in its square; the name of a place that is only named is left out, since it may be as exact. */
export function hiddenPlace(place: Place, {sideM, because}: Hiding): HiddenPlace {
	const why = because.join('; ');
	if (place.kind === 'named')
		return {terms: nothing, dataGeneralizations: undefined, withheld: [`name of the place, ${why}`]};
	const square = coarseSquare(place, sideM);
	// It was given as a square at least as large: there is nothing finer to hide.
	if (!square)
		return {terms: {...nothing, ...placeTerms(place)}, dataGeneralizations: undefined, withheld: []};
	const circle = Math.PI * square.uncertaintyM ** 2;
	const size = sideM === 100_000 ? '100 km' : sideM === 10_000 ? '10 km' : '1 km';
	return {
		terms: {
			...nothing,
			decimalLatitude: square.centre.latitude,
			decimalLongitude: square.centre.longitude,
			geodeticDatum: 'EPSG:4326',
			coordinateUncertaintyInMeters: square.uncertaintyM,
			footprintWKT: ringText(square.ring),
			footprintSRS: 'EPSG:4326',
			pointRadiusSpatialFit: Number((circle / square.areaM2).toFixed(4)),
			georeferenceRemarks: 'centre of the square that hides the place',
			georeferenceVerificationStatus: 'requires verification',
		},
		dataGeneralizations: `place given as a square of about ${size}, ${square.name} (${square.system}), ${why}`,
		withheld: [`exact place, ${why}`],
	};
}
