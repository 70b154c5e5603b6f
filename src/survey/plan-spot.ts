/** The place of a plan: a spot on the map, since the clocks and the finds of a day hang on it. */
import {type Place, placeFromPin, readPlace} from '../place/place.ts';
import type {PlanAnswer, PlanEvent} from './plan.ts';

/** A larger square than this holds more than one beach. */
const coarsestM = 1500;

/** Reads a pin, grid reference or coordinates; a name alone is refused, as is a square that is too large. */
export function findSpot(event: PlanEvent): PlanAnswer | {readonly message: string} {
	if (event.kind === 'option') return {message: 'plan-want-spot'};
	if (event.kind === 'pin') return spotOf(placeFromPin(event));
	const read = readPlace(event.text);
	return read.kind === 'place' ? spotOf(read.place) : {message: 'plan-want-spot'};
}

function spotOf(place: Place): PlanAnswer | {readonly message: string} {
	if (place.kind === 'named') return {message: 'plan-want-spot'};
	if (place.uncertaintyM > coarsestM) return {message: 'plan-coarse-spot'};
	const {latitude, longitude, zone} = place;
	return {kind: 'spot', latitude, longitude, zone};
}
