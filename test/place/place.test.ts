import fc from 'fast-check';
import {expect, test} from 'vitest';
import {
	footprint,
	gridReference,
	type Place,
	placeFromPin,
	placeSchema,
	readPlace,
} from '../../src/place/place.ts';

function placeOf(text: string): Place {
	const read = readPlace(text);
	if (read.kind !== 'place') throw new Error(`Expected a place from "${text}"; it was refused: ${read.why}`);
	return read.place;
}

test.each(['SW 465 304', 'sw465304', 'Sw 465304', ' SW  465  304. ', 'Grid ref: SW 465 304', 'SW 46 5 30 4'])(
	'the grid reference written "%s" is the same square',
	text => {
		expect(placeOf(text)).toMatchObject({
			kind: 'spot',
			latitude: 50.119892,
			longitude: -5.546958,
			how: 'grid',
			system: 'EPSG:27700',
			sideM: 100,
			zone: 'Europe/London',
		});
	},
);

test('a grid reference is kept as written, in capitals with single spaces', () => {
	expect(placeOf(' sw  465 304 ')).toMatchObject({verbatim: 'SW 465 304'});
	expect(placeOf('o1590434671')).toMatchObject({verbatim: 'O1590434671', system: 'EPSG:29903'});
});

test('a letter O among the digits counts as a nought', () => {
	expect(placeOf('SW 465 3O4')).toMatchObject({kind: 'spot', latitude: 50.119892, longitude: -5.546958});
});

test('a tetrad and a quadrant lie inside their ten kilometre square', () => {
	expect(placeOf('SW43A')).toMatchObject({sideM: 2000});
	expect(placeOf('SW43SW')).toMatchObject({sideM: 5000});
	// E is the top of the first column, and V the bottom of the last.
	expect(footprint(placeOf('SW43E'))?.[0]).toEqual(footprint(placeOf('SW 40 38'))?.[0]);
	expect(footprint(placeOf('SW43V'))?.[0]).toEqual(footprint(placeOf('SW 48 30'))?.[0]);
	expect(footprint(placeOf('SW43NE'))?.[0]).toEqual(footprint(placeOf('SW 45 35'))?.[0]);
});

test.each([
	['TQ123', 'odd-digits'],
	['TQ 337 80560', 'uneven-digits'],
	['SW 46 53 04', 'uneven-digits'],
	['IA12', 'no-such-square'],
	['AA12', 'no-such-square'],
	['TZ12', 'no-such-square'],
	['WV 583 544', 'no-such-square'],
	['SU123456789012', 'too-many-digits'],
	['50.123', 'half-a-pair'],
	['50,5', 'half-a-pair'],
	['50.1°N', 'half-a-pair'],
	['50.1N 5.2N', 'half-a-pair'],
	['50 30.5N', 'half-a-pair'],
	['50.1 - 5.2', 'half-a-pair'],
	['lat 50.1', 'half-a-pair'],
	['geo:50.1', 'half-a-pair'],
	['geo:0,0?q=50.1,-5.2', 'half-a-pair'],
	['91.5, 5.2', 'off-the-earth'],
	['50.5, -181.2', 'off-the-earth'],
	['315904, 234671', 'off-the-earth'],
	["50°61.5'N 5°10.5'W", 'off-the-earth'],
	['50.1N -5.2E', 'off-the-earth'],
	['geo:50.1,-5.5;crs=nad27', 'off-the-earth'],
	[' \n', 'empty'],
])('"%s" is refused: %s', (text, why) => {
	expect(readPlace(text)).toMatchObject({kind: 'refused', why});
});

test('a refusal shows what was heard, and only the beginning of a very long text', () => {
	expect(readPlace(' TQ  123 ')).toEqual({kind: 'refused', why: 'odd-digits', heard: 'TQ 123'});
	expect(readPlace('a'.repeat(201))).toEqual({kind: 'refused', why: 'too-long', heard: 'a'.repeat(60)});
	expect(placeOf('a'.repeat(200))).toEqual({kind: 'named', name: 'a'.repeat(200)});
});

test.each([
	'Sandy Cove 2',
	'St Ives',
	'West 5',
	'N5',
	'V 1 2',
	'A30',
	'Km 12',
	'No 5',
	'TR18 4AA',
	'SW',
	'Beach at 5.30',
	'Plage de l’Ouest',
	'https://example.org/@50.1,-5.2',
])('"%s" stays the name of a place', text => {
	expect(placeOf(text)).toEqual({kind: 'named', name: text});
});

test('a name comes on one line, without invisible marks', () => {
	expect(placeOf(' Sandy\n\tCove\u0000 \u202A2\u202C ')).toEqual({kind: 'named', name: 'Sandy Cove 2'});
});

test.each([
	[undefined, 30],
	[0, 10],
	[4.9, 10],
	[12.3, 25],
	[1500, 3000],
])('a pin with a shown accuracy of %s m is known to %i m', (accuracyM, uncertaintyM) => {
	// Doubled after Georeferencing Best Practices (2020): the shown radius holds about half the time.
	const pin = {latitude: 50.1234567, longitude: -5.6543217, ...(accuracyM === undefined ? {} : {accuracyM})};
	expect(placeFromPin(pin)).toEqual({
		kind: 'spot',
		latitude: 50.123457,
		longitude: -5.654322,
		uncertaintyM,
		how: 'pin',
		zone: 'Europe/London',
	});
});

test('a pin that is not on the earth is an error that says so', () => {
	expect(() => placeFromPin({latitude: 95, longitude: 0})).toThrow('on the earth; got 95 and 0');
	expect(() => placeFromPin({latitude: Number.NaN, longitude: 0})).toThrow('on the earth');
});

test.each([
	['Land’s End side of Cornwall', 50.066, -5.715, 'SW'],
	['Pembrokeshire', 51.88, -5.3, 'SM'],
	['Islay', 55.6, -6.3, 'NR'],
	['Kintyre', 55.3, -5.8, 'NR'],
	['Isle of Man', 54.08, -4.63, 'SC'],
	['Fair Head', 55.22, -6.15, 'D'],
	['Ards', 54.49, -5.44, 'J'],
	['Kerry', 51.88, -10.3, 'V'],
])('a pin in %s gets its letters from the grid used there', (_where, latitude, longitude, letters) => {
	const reference = gridReference(placeFromPin({latitude, longitude, accuracyM: 5})) ?? '';
	expect(reference).toMatch(new RegExp(`^${letters} \\d{3} \\d{3}$`));
});

test('a grid reference promises no more than is known', () => {
	const pin = {latitude: 50.12, longitude: -5.547};
	expect(gridReference(placeFromPin({...pin, accuracyM: 50}))).toBe('SW 465 304');
	expect(gridReference(placeFromPin({...pin, accuracyM: 51}))).toBe('SW 46 30');
	expect(gridReference(placeFromPin({...pin, accuracyM: 501}))).toBe('SW 4 3');
	expect(gridReference(placeOf('50, -5'))).toBeUndefined();
});

test('off both islands, or with a name only, there is no grid reference', () => {
	expect(gridReference(placeFromPin({latitude: 50.95, longitude: 1.85}))).toBeUndefined();
	expect(gridReference(placeFromPin({latitude: 49.2, longitude: -2.1}))).toBeUndefined();
	expect(gridReference(placeFromPin({latitude: -33.9, longitude: 18.4}))).toBeUndefined();
	expect(gridReference({kind: 'named', name: 'Sandy Cove'})).toBeUndefined();
});

test('only a place given as a square has a footprint', () => {
	expect(footprint(placeFromPin({latitude: 50.12, longitude: -5.55}))).toBeUndefined();
	expect(footprint({kind: 'named', name: 'Sandy Cove'})).toBeUndefined();
	const ring = footprint(placeOf('O 159 346')) ?? [];
	expect(ring).toHaveLength(5);
	const turns = ring.slice(1).map(([x, y], index) => {
		const [fromX = 0, fromY = 0] = ring[index] ?? [];
		return (x - fromX) * (y + fromY);
	});
	// Negative twice the area, by the trapezium rule: counter-clockwise.
	expect(turns.reduce((sum, part) => sum + part, 0)).toBeLessThan(0);
});

test('every text is read without an error and what it gives passes through storage unchanged', () => {
	const figures = fc.string({unit: fc.constantFrom(...'0159NSEWOswXx .,;:/-−°\'"()geo:lat'), maxLength: 24});
	fc.assert(
		fc.property(fc.oneof(figures, fc.string({unit: 'grapheme'})), text => {
			const read = readPlace(text);
			if (read.kind === 'refused') return;
			expect(placeSchema.parse(JSON.parse(JSON.stringify(read.place)))).toEqual(read.place);
			expect(() => [gridReference(read.place), footprint(read.place)]).not.toThrow();
		}),
		{numRuns: 400},
	);
});
