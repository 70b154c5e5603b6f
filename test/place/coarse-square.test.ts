import {expect, test} from 'vitest';
import {type CoarseSideM, coarseSquare} from '../../src/place/coarse-square.ts';
import {placeFromPin, readPlace} from '../../src/place/place.ts';

function spotOf(text: string) {
	const read = readPlace(text);
	if (read.kind !== 'place' || read.place.kind !== 'spot') throw new Error(`Expected a spot from "${text}"`);
	return read.place;
}

function squareOf(text: string, sideM: CoarseSideM) {
	const square = coarseSquare(spotOf(text), sideM);
	if (!square) throw new Error(`Expected a square round "${text}"`);
	return square;
}

test.each([
	['SW 465 304', 1000, 'SW 46 30', 'British National Grid'],
	['SW 465 304', 10_000, 'SW 4 3', 'British National Grid'],
	['SW 465 304', 100_000, 'SW', 'British National Grid'],
	['O 159 346', 10_000, 'O 1 3', 'Irish Grid'],
	['41.2345, 9.5678', 1000, '41.23 to 41.24, 9.56 to 9.57', 'degrees, WGS 84'],
	['41.2345, 9.5678', 10_000, '41.2 to 41.3, 9.5 to 9.6', 'degrees, WGS 84'],
	['-33.9, 18.4', 100_000, '-34 to -33, 18 to 19', 'degrees, WGS 84'],
] as const)('%s is hidden in a square of %d m as %s', (text, sideM, name, system) => {
	expect(squareOf(text, sideM)).toMatchObject({name, system});
});

test('every spot of a square is told as the same square, whatever its digits', () => {
	const {uncertaintyM: _, ...one} = squareOf('SW 401 301', 10_000);
	const {uncertaintyM: __, ...other} = squareOf('SW 49987 39912', 10_000);
	expect(other).toEqual(one);
});

// Half the diagonal of 10 km is 7071.07 m, of which the grid's scale may hide 2.83 m; the datum error is 3.5 m.
test('a smaller square of the same grid needs no more than half the diagonal and the datum error', () => {
	expect(squareOf('SW 465 304', 10_000).uncertaintyM).toBe(7078);
});

test('any other spot adds its own radius, since it may reach over the edge of the square', () => {
	const pin = placeFromPin({latitude: 50.119892, longitude: -5.546958, accuracyM: 50});
	if (pin.kind !== 'spot') throw new Error('Expected a spot');
	expect(coarseSquare(pin, 10_000)?.uncertaintyM).toBe(7178);
});

test('a spot that was given as a square at least as large is left as it is', () => {
	expect(coarseSquare(spotOf('SW 43'), 10_000)).toBeUndefined();
	expect(coarseSquare(spotOf('SW 43'), 1000)).toBeUndefined();
	expect(coarseSquare(spotOf('SW 43'), 100_000)).toBeDefined();
});

test('a spot on the edge of two cells of degrees lies in the upper one', () => {
	expect(squareOf('40.29, 9.57', 1000).name).toBe('40.29 to 40.3, 9.57 to 9.58');
});

test('the cells of degrees end at the pole and at the line of the date', () => {
	expect(squareOf('90.0, 180.0', 100_000).name).toBe('89 to 90, 179 to 180');
});

test('the ring is closed and holds its centre', () => {
	for (const text of ['SW 465 304', '41.2345, 9.5678']) {
		const {ring, centre} = squareOf(text, 10_000);
		expect(ring.at(-1)).toEqual(ring[0]);
		const east = ring.map(([longitude]) => longitude);
		const north = ring.map(([, latitude]) => latitude);
		expect(centre.longitude).toBeGreaterThan(Math.min(...east));
		expect(centre.longitude).toBeLessThan(Math.max(...east));
		expect(centre.latitude).toBeGreaterThan(Math.min(...north));
		expect(centre.latitude).toBeLessThan(Math.max(...north));
	}
});
