// Contains OS data © Crown copyright and database rights 2016; the OSTN15 developer pack is licensed under the
// OSI BSD licence, as its guide says. The worked examples of the guide are given here as a public test suite quotes
// them.
import fc from 'fast-check';
import geographic from 'geographiclib-geodesic';
import proj4 from 'proj4';
import {expect, test} from 'vitest';
import {type Degrees, datumErrorM, type GridPoint, toDegrees, toGrid} from '../../src/place/grid.ts';
import {readSquare, writeSquare} from '../../src/place/grid-square.ts';
import {footprint, gridReference, type Place, readPlace} from '../../src/place/place.ts';

const britain = 'EPSG:27700';
const ireland = 'EPSG:29903';

// OSGB36 degrees on their own datum, with the published Helmert values of the OS guide (signs turned for towgs84).
const osgb36 = proj4(
	'+proj=longlat +ellps=airy +towgs84=446.448,-125.157,542.06,0.1502,0.247,0.8421,-20.4894 +no_defs',
	'EPSG:4326',
);

function fromOsgb36(latitude: number, longitude: number): Degrees {
	const [east = Number.NaN, north = Number.NaN] = osgb36.forward([longitude, latitude]);
	return {latitude: north, longitude: east};
}

function gridDistanceM(one: GridPoint, other: GridPoint): number {
	return Math.hypot(one.east - other.east, one.north - other.north);
}

function groundDistanceM(one: Degrees, other: Degrees): number {
	const {s12} = geographic.Geodesic.WGS84.Inverse(
		one.latitude,
		one.longitude,
		other.latitude,
		other.longitude,
	);
	return s12 ?? Number.NaN;
}

function spot(text: string): Extract<Place, {kind: 'spot'}> {
	const read = readPlace(text);
	if (read.kind !== 'place' || read.place.kind !== 'spot') throw new Error(`Expected a spot from "${text}"`);
	return read.place;
}

test('the projection agrees with annex C of the OS guide to a centimetre', () => {
	// OS, A guide to coordinate systems in Great Britain, v3.6 (2020), annex C: 52°39′27.2531″N 1°43′4.5177″E (OSGB36).
	const found = toGrid(britain, fromOsgb36(52.657570306, 1.717921583));
	expect(gridDistanceM(found, {east: 651409.903, north: 313177.27})).toBeLessThan(0.01);
});

test('the projection agrees with the transverse Mercator example of EPSG guidance note 7-2', () => {
	// EPSG guidance note 7-2: 50.5 N, 0.5 E on OSGB36 is 577274.99 E, 69740.50 N.
	const found = toGrid(britain, fromOsgb36(50.5, 0.5));
	expect(gridDistanceM(found, {east: 577274.99, north: 69740.5})).toBeLessThan(0.02);
});

test('the datum shift agrees with annex D of the OS guide to two centimetres', () => {
	// OS guide v3.6, annex D: ETRS89 53°36′43.1653″N 1°39′51.9920″W to 422297.792 E, 412878.741 N; height left out here.
	const from = {latitude: 53 + 36 / 60 + 43.1653 / 3600, longitude: -(1 + 39 / 60 + 51.992 / 3600)};
	expect(gridDistanceM(toGrid(britain, from), {east: 422297.792, north: 412878.741})).toBeLessThan(0.02);
});

// OSTN15 developer pack, TestInput and TestOutput: ETRS89 degrees, National Grid metres. The pack's exact shift grid
// is not used here, so points differ by the Helmert error: 3.5 m (95 %) by the OS guide, more at the far edges.
const britishPoints = [
	['TP04 St Catherine’s Point', 50.57563665, -1.2978227724, 449816.371, 75335.861, 3.5],
	['TP07 North Foreland', 51.3744702555, 1.44454730409, 639821.835, 169565.858, 3.5],
	['TP09 Lambeth', 51.4893656495, -0.1199255718, 530624.974, 178388.464, 3.5],
	['TP17 Point Lynas', 53.4162851604, -4.28918069756, 247958.971, 393492.909, 3.5],
	['TP21 Isle of Man', 54.0866631808, -4.63452168212, 227778.33, 468847.388, 3.5],
	['TP28 Mallaig', 57.0060669605, -5.8283669185, 167634.202, 797067.144, 3.5],
	['TP29 Girdle Ness', 57.1390251896, -2.04856030746, 397160.491, 805349.736, 3.5],
	['TP33 Butt of Lewis', 58.515603613, -6.26091455533, 151968.652, 966483.78, 3.5],
	['TP35 Orkney', 59.0374387119, -3.21454001115, 330398.323, 1017347.016, 3.5],
	['TP38 Fair Isle', 59.5347079449, -1.62516966058, 421300.525, 1072147.239, 3.5],
	['TP40 Foula', 60.1330809166, -2.07382822798, 395999.668, 1138728.951, 3.5],
	['TP01 Scilly', 49.9222639373, -6.29977752014, 91492.146, 11318.804, 5],
	['TP02 Lizard', 49.9600613782, -5.20304609998, 170370.718, 11572.405, 5],
	['TP31 St Kilda', 57.8135183841, -8.57854456076, 9587.909, 899448.996, 5],
	['TP32 Flannan Isles', 58.2126224718, -7.59255560556, 71713.132, 938516.404, 5],
] as const;

test.each(britishPoints)(
	'%s lies within the Helmert error of its published figures, both ways',
	(...point) => {
		const [, latitude, longitude, east, north, withinM] = point;
		expect(gridDistanceM(toGrid(britain, {latitude, longitude}), {east, north})).toBeLessThan(withinM);
		expect(groundDistanceM(toDegrees(britain, {east, north}), {latitude, longitude})).toBeLessThan(withinM);
	},
);

// OSNI, OSGM15 test files (Irish Grid to ETRS89) in the same pack; stated accuracy of the Helmert: 1 m.
const irishPoints = [
	['NI_IG_1', 54.313798227, -7.637259225, 223657.156, 340618.902],
	['NI_IG_2', 54.750670376, -6.321415188, 308131.471, 390483.856],
	['NI_IG_10', 54.205798756, -6.629026347, 289507.735, 329405.008],
] as const;

test.each(irishPoints)('Irish test point %s lies within the stated metre, both ways', (...point) => {
	const [, latitude, longitude, east, north] = point;
	expect(gridDistanceM(toGrid(ireland, {latitude, longitude}), {east, north})).toBeLessThan(
		datumErrorM[ireland],
	);
	expect(groundDistanceM(toDegrees(ireland, {east, north}), {latitude, longitude})).toBeLessThan(1);
});

test('a reference is moved to WGS 84, not left 124 m away on the old datum', () => {
	// OSTN15 test point TP09, Lambeth. Its WGS 84 degrees taken for OSGB36 miss it by 123.8 m on the grid.
	const published = {latitude: 51.4893656495, longitude: -0.1199255718};
	expect(groundDistanceM(spot('TQ 30624 78388'), published)).toBeLessThan(3.5);
	const forgotten = toGrid(britain, fromOsgb36(published.latitude, published.longitude));
	expect(gridDistanceM(forgotten, {east: 530624.974, north: 178388.464})).toBeCloseTo(123.8, 1);
});

// South-west corners: the grid's false origin; OS guide annex C; a public page on the grid (SP 36 83); OSTN15 test
// points TP09, TP35, TP31; arithmetic (HP). Irish: the Spire of Dublin and G 03 05 on public pages; OSNI NI_IG_2.
const corners = [
	['SV 00000 00000', 0, 0, 1],
	['TG 51409 13177', 651409, 313177, 1],
	['SP 36 83', 436000, 283000, 1000],
	['TQ 30624 78388', 530624, 178388, 1],
	['HY 30398 17347', 330398, 1017347, 1],
	['NF 09587 99448', 9587, 899448, 1],
	['HP 6 1', 460000, 1210000, 10000],
	['V 00000 00000', 0, 0, 1],
	['O 15904 34671', 315904, 234671, 1],
	['G 03 05', 103000, 305000, 1000],
	['J 08131 90483', 308131, 390483, 1],
] as const;

test.each(corners)('%s names the square with its published corner', (reference, east, north, sideM) => {
	const read = readSquare(reference);
	expect(read).toMatchObject({kind: 'square', square: {corner: {east, north}, sideM}});
	if (read.kind === 'square') expect(writeSquare(read.square.grid, {east, north}, sideM)).toBe(reference);
});

// South-west corners in kilometres, worked out by hand from the five by five lettering.
test.each([
	['HL', 0, 1200],
	['JW', 600, 1000],
	['NA', 0, 900],
	['OV', 500, 500],
	['SE', 400, 400],
	['SW', 100, 0],
	['TA', 500, 400],
	['TW', 600, 0],
	['A', 0, 400],
	['E', 400, 400],
	['J', 300, 300],
	['Z', 400, 0],
])('square %s begins %i km east and %i km north', (letters, east, north) => {
	expect(readSquare(`${letters} 00 00`)).toMatchObject({
		square: {corner: {east: east * 1000, north: north * 1000}},
	});
});

test('exactly the 91 squares of 700 by 1300 km are British', () => {
	const alphabet = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];
	const pairs = alphabet.flatMap(first => alphabet.map(second => `${first}${second} 00 00`));
	expect(pairs.filter(pair => readSquare(pair).kind === 'square')).toHaveLength(91);
});

// Half diagonal (guide value: 1, 7, 71, 707 m for these sides: Georeferencing Quick Reference Guide, Zermoglio et al.
// 2020, doi 10.35035/e09p-h128) plus the Helmert error of 3.5 m, rounded up.
test.each([
	['SW 46512 30412', 5],
	['SW 4651 3041', 11],
	['SW 465 304', 75],
	['SW 46 30', 711],
	['SW43J', 1418],
	['SW43NE', 3540],
	['SW 4 3', 7075],
])('%s is known to %i m', (reference, uncertaintyM) => {
	expect(spot(reference).uncertaintyM).toBe(uncertaintyM);
});

// Half the last digit in both axes at 51.5 N: 6.6, 66 and 656 m for four, three and two decimals (computed with
// GeographicLib); never under our 10 m.
test.each([
	['51.50000, -1.00000', 10],
	['51.5000, -1.0000', 10],
	['51.500, -1.000', 66],
	['51.50, -1.00', 656],
])('coordinates written %s are known to %i m', (text, uncertaintyM) => {
	expect(spot(text).uncertaintyM).toBe(uncertaintyM);
});

test('the radius of written coordinates is the way to the corner that the digits leave open', () => {
	fc.assert(
		fc.property(fc.integer({min: -84, max: 84}), fc.integer({min: -179, max: 178}), (latitude, longitude) => {
			const place = spot(`${latitude}.00, ${longitude}.00`);
			const corner = {latitude: latitude + 0.005, longitude: longitude + 0.005};
			const wayM = groundDistanceM(place, corner);
			expect(Math.abs(wayM - place.uncertaintyM)).toBeLessThan(1.5);
		}),
		{numRuns: 60},
	);
});

const references = fc
	.tuple(
		fc.constantFrom('SW', 'SX', 'TG', 'TQ', 'NY', 'NG', 'HY', 'HU', 'SV', 'G', 'O', 'V', 'J'),
		fc.integer({min: 0, max: 999}),
		fc.integer({min: 0, max: 999}),
	)
	.map(([letters, east, north]) => {
		const cut = (value: number) => String(value).padStart(3, '0');
		return `${letters} ${cut(east)} ${cut(north)}`;
	});

test('a reference read and written again is the same', () => {
	fc.assert(
		fc.property(references, reference => {
			expect(gridReference(spot(reference))).toBe(reference);
		}),
		{numRuns: 100},
	);
});

test('the circle of a square holds its corners and its sides are a hundred metres on the ground', () => {
	fc.assert(
		fc.property(references, reference => {
			const place = spot(reference);
			const ring = (footprint(place) ?? []).map(([longitude, latitude]) => ({latitude, longitude}));
			expect(ring).toHaveLength(5);
			expect(ring[0]).toEqual(ring[4]);
			for (const [index, corner] of ring.slice(0, 4).entries()) {
				expect(groundDistanceM(place, corner)).toBeLessThan(place.uncertaintyM);
				// At its western edge the British grid stretches the ground by 1 part in 600, elsewhere both do less.
				const next = ring[index + 1] ?? corner;
				expect(Math.abs(groundDistanceM(corner, next) - 100)).toBeLessThan(0.18);
			}
		}),
		{numRuns: 60},
	);
});

test('degrees taken to a grid and back move by less than a centimetre', () => {
	const degrees = fc.record({
		latitude: fc.double({min: 50, max: 60.8, noNaN: true}),
		longitude: fc.double({min: -8, max: 1.7, noNaN: true}),
	});
	fc.assert(
		fc.property(degrees, fc.constantFrom(britain, ireland), (from, grid) => {
			expect(groundDistanceM(toDegrees(grid, toGrid(grid, from)), from)).toBeLessThan(0.01);
		}),
		{numRuns: 100},
	);
});
