import fc from 'fast-check';
import {expect, test} from 'vitest';
import {formatMm, type LengthUnit, lengthSchema, readLength} from '../../src/capsule/length.ts';

const possibleMm = [20, 300] as const;

function read(text: string, unit?: LengthUnit) {
	return readLength(text, {possibleMm, unit});
}

test.each([
	['62', 62, 1],
	['62mm', 62, 1],
	['62 mm.', 62, 1],
	['６２ mm', 62, 1],
	['62.5 mm', 62.5, 1],
	['62 millimetres', 62, 1],
	['62 millimeters', 62, 1],
	['it is 62 mm long', 62, 1],
	['62mm-long', 62, 1],
	['Length: 62 mm', 62, 1],
	['62 mm in length', 62, 1],
	['6.2 cm', 62, 1],
	['6,2 cm', 62, 1],
	['6cm', 60, 5],
	['6.0 cm', 60, 1],
	['six cm', 60, 5],
	['six and a half cm', 65, 2.5],
	['6 ½ cm', 65, 2.5],
	['6 cm 2 mm', 62, 1],
	['6 cm and 2 mm', 62, 1],
])('"%s" is %d mm, give or take %d', (text, mm, uncertaintyMm) => {
	expect(read(text)).toEqual({kind: 'length', length: {mm, uncertaintyMm, typed: text, method: 'typed'}});
});

test.each([
	['about 6 cm', 60, 10],
	['~62', 62, 3],
	['ca 62 mm', 62, 3],
	['ca. 62 mm', 62, 3],
	['approx. 6.5cm', 65, 3],
	['62-ish', 62, 3],
	['6ish cm', 60, 10],
	['62 mm or so', 62, 3],
	['environ 6 centimètres', 60, 10],
])('"%s" is %d mm but less sure, give or take %d', (text, mm, uncertaintyMm) => {
	expect(read(text)).toMatchObject({kind: 'length', length: {mm, uncertaintyMm}});
});

test.each([
	['60-62 mm', 61, 1],
	['60 – 66', 63, 3],
	['between 60 and 62 mm', 61, 1],
	['60mm to 62mm', 61, 1],
	['62 - 60 mm', 61, 1],
	['5 or 6 cm', 55, 5],
	['5 cm - 60 mm', 55, 5],
	['62 ± 2 mm', 62, 2],
	['6.2 cm +/- 3 mm', 62, 3],
])(
	'two ends of one measurement, "%s", give its middle of %d mm and half the way, %d',
	(text, mm, uncertaintyMm) => {
		expect(read(text)).toMatchObject({kind: 'length', length: {mm, uncertaintyMm}});
	},
);

test('two ends far apart are not one measurement', () => {
	expect(read('40-80 mm')).toEqual({kind: 'refused', why: 'range', typed: '40-80 mm'});
});

test.each([
	'62 x 38 mm',
	'62 × 38',
	'62 by 38 mm',
	'62mm/38mm',
	'62, 38 mm',
	'62 38',
	'62 mm long, 38 mm wide',
])('"%s" holds several lengths', text => {
	expect(read(text)).toEqual({kind: 'refused', why: 'several', typed: text});
});

test.each([
	'',
	'0',
	'0 mm',
	'-62',
	'Infinity',
	'NaN',
	'1e3',
	'12.5.24',
	'🙂',
	'62 🙂',
	'big',
	'5 m',
	'> 62',
	'38 mm wide',
])('"%s" is not a length', text => {
	expect(read(text)).toEqual({kind: 'refused', why: 'not-a-number', typed: text});
});

test('a very long text is refused and only its beginning is kept', () => {
	const found = read(`62 mm ${'🙂'.repeat(5000)}`);
	expect(found).toMatchObject({kind: 'refused', why: 'not-a-number'});
	if (found.kind === 'refused') expect(found.typed.length).toBeLessThanOrEqual(60);
});

test('without a unit, the only unit that gives a possible length is taken', () => {
	expect(read('62')).toMatchObject({length: {mm: 62}});
	expect(readLength('6.2', {possibleMm: [20, 100]})).toMatchObject({length: {mm: 62, uncertaintyMm: 1}});
	expect(readLength('9', {possibleMm: [150, 300]})).toMatchObject({length: {mm: 228.6}});
});

test('without a unit, several units that give a possible length are asked about', () => {
	expect(read('6.2')).toEqual({kind: 'which-unit', value: 6.2, units: ['cm', 'in'], typed: '6.2'});
	expect(read('25')).toEqual({kind: 'which-unit', value: 25, units: ['mm', 'cm'], typed: '25'});
	expect(read('2 3/8')).toMatchObject({kind: 'which-unit', value: 2.375, units: ['cm', 'in']});
});

test('the unit of a button settles a bare number, and a written unit is stronger', () => {
	expect(read('6.2', 'cm')).toMatchObject({length: {mm: 62}});
	expect(read('6.2', 'in')).toMatchObject({length: {mm: 157.5}});
	expect(read('62 mm', 'cm')).toMatchObject({length: {mm: 62}});
	expect(read('62', 'cm')).toEqual({kind: 'refused', why: 'too-long', typed: '62', mm: 620});
});

test.each([
	['3 mm', 'too-short', 3],
	['500 mm', 'too-long', 500],
	['300.1 mm', 'too-long', 300.1],
	['900', 'too-long', 900],
	// No unit helps; inches come nearest.
	['0.5', 'too-short', 12.7],
] as const)('"%s" is %s at %d mm', (text, why, mm) => {
	expect(read(text)).toEqual({kind: 'refused', why, typed: text, mm});
});

test('the shortest and the longest possible length are possible', () => {
	expect(read('20 mm')).toMatchObject({length: {mm: 20}});
	expect(read('300 mm')).toMatchObject({length: {mm: 300}});
});

test('where only a gap fits no unit, the nearest reading is judged', () => {
	expect(readLength('7', {possibleMm: [90, 110]})).toMatchObject({why: 'too-short', mm: 70});
	expect(readLength('5', {possibleMm: [90, 110]})).toMatchObject({why: 'too-long', mm: 127});
});

test('a length is shown with one decimal at most', () => {
	expect([62, 62.5, 62.04, 62.06, 0.05].map(formatMm)).toEqual(['62', '62.5', '62', '62.1', '0.1']);
});

test('any whole number of millimetres comes back as it was typed', () => {
	fc.assert(
		fc.property(
			fc.integer({min: 20, max: 300}),
			fc.constantFrom('mm', ' mm', ' MM', ' mm long'),
			(mm, unit) => {
				expect(read(`${mm}${unit}`)).toMatchObject({length: {mm, uncertaintyMm: 1}});
				expect(read(`${(mm / 10).toFixed(1)} cm`)).toMatchObject({length: {mm, uncertaintyMm: 1}});
			},
		),
	);
});

test('every text is read without an error, and a length passes through storage unchanged', () => {
	const figures = fc.string({unit: fc.constantFrom(...'012569.,/- xmcin"~½ab±'), maxLength: 16});
	fc.assert(
		fc.property(fc.oneof(figures, fc.string({unit: 'grapheme'})), text => {
			const found = read(text);
			if (found.kind !== 'length') return;
			expect(lengthSchema.parse(JSON.parse(JSON.stringify(found.length)))).toEqual(found.length);
			expect(found.length.mm).toBeGreaterThanOrEqual(possibleMm[0]);
			expect(found.length.mm).toBeLessThanOrEqual(possibleMm[1]);
			expect(found.length.uncertaintyMm).toBeGreaterThanOrEqual(1);
		}),
		{numRuns: 600},
	);
});
