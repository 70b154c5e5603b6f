import {expect, test} from 'vitest';
import {type Place, placeFromPin} from '../../src/place/place.ts';
import {shownPlace} from '../../src/place/shown-place.ts';

const pin = placeFromPin({latitude: 50.12345, longitude: -5.54321});
const beach: Place = {kind: 'named', name: 'Larkin Sands'};

test('a place is shown as it was told where nothing is to be hidden', () => {
	expect(shownPlace(pin, [])).toEqual({kind: 'as-told', place: pin});
	expect(shownPlace(beach, [])).toEqual({kind: 'as-told', place: beach});
});

test('a spot is shown by the largest square asked for', () => {
	// The grid reference of 10 km that holds the spot: two letters, one digit east and one north.
	expect(shownPlace(pin, [1000, 10_000])).toMatchObject({kind: 'square', square: {name: 'SW 4 3'}});
	expect(shownPlace(pin, [100_000, 1000])).toMatchObject({kind: 'square', square: {name: 'SW'}});
});

test('the name of a place is not shown where places are hidden', () => {
	expect(shownPlace(beach, [1000])).toBeUndefined();
});
