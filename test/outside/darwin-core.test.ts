import {createHash} from 'node:crypto';
import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {hashName, occurrenceFrom} from '../../src/record/darwin-core.ts';
import {placeTerms} from '../../src/record/place-terms.ts';
import {draftWith, placed, shares, testland} from '../record/made-up.ts';

// Darwin Core, names of the recommended terms; source and licence are in the head of the file.
const terms = new Set(
	readFileSync(join(import.meta.dirname, 'darwin-core-terms.txt'), 'utf8')
		.split('\n')
		.filter(line => line !== '' && !line.startsWith('#')),
);
// DCMI Metadata Terms, used by the simple multimedia extension beside Darwin Core's own `type`.
const dublinCore = new Set(['identifier', 'format']);
const lists = new Set(['measurements', 'multimedia']);

const told = [
	draftWith(),
	draftWith({place: placed('Sandy Cove'), soak: 'dry', note: 'torn', doubt: true}),
	draftWith(
		{place: placed('50.1199, -5.547'), aprons: 'unknown'},
		shares({'testa-minor': 0.5, 'arca-nigra': 0.4}),
	),
	draftWith({lives: true, count: undefined}),
].map(draft => ({...draft, photos: [{id: 1, hash: 'ab'.repeat(32)}]}));
const times = {recordedAt: 0, modifiedAt: 0};

test('every name in a record is a term of Darwin Core', () => {
	for (const draft of told) {
		const names = Object.keys(occurrenceFrom(draft, testland, times)).filter(name => !lists.has(name));
		expect(names.length).toBeGreaterThan(15);
		expect(names.filter(name => !terms.has(name))).toEqual([]);
	}
	const gone = occurrenceFrom(draftWith(), testland, {...times, withdrawn: true});
	expect(Object.keys(gone).filter(name => !terms.has(name))).toEqual([]);
});

test('every name in a measurement is a term of Darwin Core, in a photo of Darwin Core or Dublin Core', () => {
	const records = told.map(draft => ({
		measurements: [],
		multimedia: [],
		...occurrenceFrom(draft, testland, times),
	}));
	const measured = records.flatMap(({measurements}) => measurements.flatMap(row => Object.keys(row)));
	expect(measured.length).toBeGreaterThan(20);
	expect(measured.filter(name => !terms.has(name))).toEqual([]);
	const pictured = records.flatMap(({multimedia}) => multimedia.flatMap(row => Object.keys(row)));
	expect(pictured.length).toBe(3 * told.length);
	expect(pictured.filter(name => !terms.has(name) && !dublinCore.has(name))).toEqual([]);
});

// Centre and radius of SW 465 304: Ordnance Survey transformation as in test/outside/place.test.ts; half the diagonal
// of 100 m is 70.7 m, with the datum error 75 m. The standard's own comment gives pi / 2 = 1.5708 for a square in its
// smallest circle; with 75 m for 70.7 m it is pi * 75 * 75 / 10000 = 1.7671, by hand.
test('a 100 m square is told as its centre, its radius, itself and how well the circle fits', () => {
	expect(placeTerms(placed('sw465304'))).toMatchObject({
		decimalLatitude: 50.119892,
		decimalLongitude: -5.546958,
		geodeticDatum: 'EPSG:4326',
		coordinateUncertaintyInMeters: 75,
		verbatimCoordinates: 'SW465304',
		verbatimCoordinateSystem: 'British National Grid reference',
		verbatimSRS: 'EPSG:27700',
		footprintSRS: 'EPSG:4326',
		pointRadiusSpatialFit: 1.7671,
	});
});

// OGC Simple Features, well-known text: longitude before latitude, the ring closed by its first corner.
test('the square is a closed ring in well-known text that holds its centre', () => {
	const {footprintWKT, decimalLatitude, decimalLongitude} = placeTerms(placed('SW 465 304'));
	const ring = /^POLYGON \(\((.+)\)\)$/.exec(footprintWKT ?? '')?.[1]?.split(', ') ?? [];
	expect(ring).toHaveLength(5);
	expect(ring[4]).toBe(ring[0]);
	const east = ring.map(corner => Number(corner.split(' ')[0]));
	const north = ring.map(corner => Number(corner.split(' ')[1]));
	expect(decimalLongitude).toBeGreaterThan(Math.min(...east));
	expect(decimalLongitude).toBeLessThan(Math.max(...east));
	expect(decimalLatitude).toBeGreaterThan(Math.min(...north));
	expect(decimalLatitude).toBeLessThan(Math.max(...north));
});

// Darwin Core, comments on coordinateUncertaintyInMeters: zero is not a valid value.
test('a named place has no point, and no point has a radius of nothing', () => {
	expect(placeTerms(placed('Sandy Cove'))).toEqual({
		verbatimLocality: 'Sandy Cove',
		georeferenceVerificationStatus: 'requires georeference',
	});
	for (const text of ['50.1199, -5.547', 'SW 46512 30412', 'O 159 346'])
		expect(placeTerms(placed(text)).coordinateUncertaintyInMeters).toBeGreaterThanOrEqual(1);
});

// RFC 6920, section 8.1: the name of "Hello World!".
test('bytes are named as RFC 6920 names them', () => {
	const hash = createHash('sha256').update('Hello World!').digest('hex');
	expect(hashName(hash)).toBe('ni:///sha-256;f4OxZX_x_FO5LcGBSKHWXfwtSx-j1ncoSt3SABJtkGk');
});
