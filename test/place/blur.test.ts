import fc from 'fast-check';
import geodesic from 'geographiclib-geodesic';
import {expect, test} from 'vitest';
import {type BlurSquare, blurSquare} from '../../src/place/blur.ts';

const spots = fc.record({
	latitude: fc.double({min: -90, max: 90, noNaN: true}),
	longitude: fc.double({min: -180, max: 180, noNaN: true}),
});
const shoreSpots = fc.record({
	latitude: fc.double({min: -70, max: 70, noNaN: true}),
	longitude: fc.double({min: -180, max: 180, noNaN: true}),
});
const sides = fc.constantFrom(100, 1000, 2000, 5000, 10_000, 50_000);
// Binary fractions may put a spot on an edge a hair to either side of it: a millimetre on the ground.
const hair = 1e-8;

test('the true spot lies in its square', () => {
	fc.assert(
		fc.property(spots, sides, (spot, sideM) => {
			const {south, north, west, east} = blurSquare(spot, sideM);
			expect(spot.latitude).toBeGreaterThanOrEqual(south - hair);
			expect(spot.latitude).toBeLessThanOrEqual(north + hair);
			expect(spot.longitude).toBeGreaterThanOrEqual(west - hair);
			expect(spot.longitude).toBeLessThanOrEqual(east + hair);
		}),
	);
});

test('every spot of a square gives that square, so many finds on one beach tell no more than one', () => {
	const share = fc.double({min: 0.001, max: 0.999, noNaN: true});
	fc.assert(
		fc.property(spots, sides, share, share, (spot, sideM, up, along) => {
			const square = blurSquare(spot, sideM);
			const other = {
				latitude: square.south + up * (square.north - square.south),
				longitude: square.west + along * (square.east - square.west),
			};
			expect(blurSquare(other, sideM)).toEqual(square);
		}),
	);
});

test('no side is shorter than was asked, and below 70 degrees none is over 4 in 100 longer', () => {
	fc.assert(
		fc.property(shoreSpots, sides, (spot, sideM) => {
			const square = blurSquare(spot, sideM);
			for (const lengthM of sidesOf(square)) {
				expect(lengthM).toBeGreaterThan(sideM * 0.9999);
				expect(lengthM).toBeLessThan(sideM * 1.04);
			}
		}),
	);
});

test('the poles and the date line have squares too', () => {
	expect(blurSquare({latitude: 90, longitude: 0}, 10_000).north).toBe(90);
	expect(blurSquare({latitude: -90, longitude: 180}, 10_000).south).toBe(-90);
	expect(blurSquare({latitude: 52, longitude: 180}, 10_000).east).toBe(180);
});

test.each([0, 9, 100_001, Number.NaN, -1000])('a side of %d metres is refused', sideM => {
	expect(() => blurSquare({latitude: 50, longitude: -5}, sideM)).toThrow(
		`Expected a side of 10 to 100000 metres to blur a place to; got ${sideM}`,
	);
});

test('a spot off the earth is refused', () => {
	expect(() => blurSquare({latitude: 91, longitude: 0}, 1000)).toThrow('got 91 and 0');
});

/** Lengths of the four sides on the ellipsoid, in metres. */
function sidesOf({south, north, west, east}: BlurSquare): readonly number[] {
	const between = (a: readonly [number, number], b: readonly [number, number]) =>
		geodesic.Geodesic.WGS84.Inverse(a[0], a[1], b[0], b[1]).s12 ?? Number.NaN;
	return [
		between([south, west], [north, west]),
		between([south, west], [south, east]),
		between([north, west], [north, east]),
	];
}
