import {join} from 'node:path';
import fc from 'fast-check';
import geographic from 'geographiclib-geodesic';
import {expect, test} from 'vitest';
import {readEarth} from '../../src/draw/coastline.ts';
import {drawMap, mapBox} from '../../src/draw/map.ts';
import {gathered} from '../../src/draw/map-dots.ts';
import {frameAround, type MapPlace} from '../../src/draw/map-frame.ts';
import {drawScale} from '../../src/draw/map-scale.ts';
import {colours} from '../../src/draw/palette.ts';
import {readTexts} from '../../src/text/text.ts';
import {pixelsOf} from './pixels.ts';
import {cellAt} from './squares.ts';

const say = readTexts([join(import.meta.dirname, '../../src/text')]).in('en');
const coast = readEarth();
const point = (latitude: number, longitude: number, count = 1) =>
	({kind: 'point', latitude, longitude, count}) as const;
const square = (latitude: number, longitude: number, count = 1) =>
	({kind: 'square', ...cellAt(latitude, longitude), count}) as const;
const mapOf = (...places: readonly MapPlace[]) => drawMap({heading: 'Finds', places, coast, say});
const circles = (svg: string) => svg.match(/<circle /g)?.length ?? 0;

test('land is land and sea is sea', async () => {
	// Corners of a map of the Irish Sea; positions of towns and sea from memory.
	const places = [point(51.7, -9), point(55, -2)];
	const frame = frameAround(places, 672);
	const drawn = mapOf(...places);
	const colourAt = await pixelsOf(drawn.svg);
	const top = Number(/<svg x="24" y="([\d.]+)"/.exec(drawn.svg)?.[1]);
	const colourOf = (longitude: number, latitude: number) => {
		const [x, y] = frame.project(longitude, latitude);
		return colourAt(24 + x, top + y);
	};
	expect(colourOf(-7.9, 53.4)).toBe(colours.land);
	expect(colourOf(-2.5, 53)).toBe(colours.land);
	expect(colourOf(-5.3, 53.6)).toBe(colours.sea);
	expect(colourOf(-6.5, 51.4)).toBe(colours.sea);
});

test('a length on a map of a country is true within 0.3 in 100', () => {
	const spread = [point(50, -8), point(58, 0)];
	const {project, metresPerUnit} = frameAround(spread, 672);
	const spots = fc.record({
		latitude: fc.double({min: 50, max: 58, noNaN: true}),
		longitude: fc.double({min: -8, max: 0, noNaN: true}),
	});
	fc.assert(
		fc.property(spots, spots, (one, other) => {
			const trueM =
				geographic.Geodesic.WGS84.Inverse(one.latitude, one.longitude, other.latitude, other.longitude).s12 ??
				0;
			fc.pre(trueM > 1000);
			const [x1, y1] = project(one.longitude, one.latitude);
			const [x2, y2] = project(other.longitude, other.latitude);
			expect(Math.abs((Math.hypot(x1 - x2, y1 - y2) * metresPerUnit) / trueM - 1)).toBeLessThan(0.003);
		}),
	);
});

test('the scale bar is as long as it says', () => {
	const places = [point(50.1, -5.6), point(50.3, -5.1)];
	const bar = /id="scale-bar" d="M([\d.]+) [\d.]+V[\d.]+H([\d.]+)/.exec(mapOf(...places).svg) ?? [];
	const lengthM = (Number(bar[2]) - Number(bar[1])) * frameAround(places, 672).metresPerUnit;
	expect(lengthM / 10_000).toBeCloseTo(1, 3);
});

test('the scale bar stands in a corner without finds, and where every corner has some, at the bottom left', () => {
	const frame = frameAround([point(50, -6), point(51, -5)], 672);
	const [right, bottom] = [frame.widthUnits - 40, frame.heightUnits - 40];
	const at = (x: number, y: number) => ({x, y, radius: 15});
	const corners = [at(40, bottom), at(right, bottom), at(40, 40), at(right, 40)];
	const where = (count: number) => {
		const [, x, y] =
			/id="scale-bar" d="M([\d.]+) ([\d.]+)/.exec(drawScale(frame, corners.slice(0, count), say)) ?? [];
		return [Number(x) > frame.widthUnits / 2, Number(y) < frame.heightUnits / 2];
	};
	expect([0, 1, 2, 3, 4].map(where)).toEqual([
		[false, false],
		[true, false],
		[false, true],
		[true, true],
		[false, false],
	]);
});

test('finds are drawn over the scale bar, never under it', () => {
	const {svg} = mapOf(point(50.1, -5.5, 3));
	expect(svg.indexOf('scale-bar')).toBeLessThan(svg.indexOf('<circle'));
});

test('a blurred place is drawn as its square, and two spots of one square cannot be told apart', () => {
	const here = mapOf(square(50.201, -5.201));
	const {south, east} = square(50.201, -5.201);
	const there = mapOf(square(south + 0.001, east - 0.001));
	expect(circles(here.svg)).toBe(0);
	expect(here.svg).toContain('stroke-dasharray');
	expect(there.svg === here.svg).toBe(true);
	expect(there.plain).toBe(here.plain);
});

test('every place lies inside the map', () => {
	const places = fc.array(
		fc.record({
			kind: fc.constant('point' as const),
			latitude: fc.double({min: -60, max: 70, noNaN: true}),
			longitude: fc.double({min: -30, max: 30, noNaN: true}),
			count: fc.integer({min: 1, max: 999}),
		}),
		{minLength: 1, maxLength: 30},
	);
	fc.assert(
		fc.property(places, found => {
			const frame = frameAround(found, 672);
			for (const {longitude, latitude} of found) {
				const [x, y] = frame.project(longitude, latitude);
				expect(x).toBeGreaterThan(0);
				expect(x).toBeLessThan(frame.widthUnits);
				expect(y).toBeGreaterThan(0);
				expect(y).toBeLessThan(frame.heightUnits);
			}
		}),
	);
});

test('dots that would cover each other become one, and no case is lost', () => {
	const found = Array.from({length: 300}, (_, index) =>
		point(50 + (index % 17) / 40, -5 - (index % 23) / 30, 1 + (index % 3)),
	);
	const dots = gathered(found, frameAround(found, 672));
	expect(dots.length).toBeLessThan(120);
	expect(dots.reduce((sum, {count}) => sum + count, 0)).toBe(found.reduce((sum, {count}) => sum + count, 0));
	for (const [index, one] of dots.entries()) {
		for (const other of dots.slice(index + 1)) {
			expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(one.radius);
		}
	}
});

test('a map may lie across the date line', () => {
	const frame = frameAround([point(52, 179), point(52, -179)], 672);
	expect(frame.box.east - frame.box.west).toBeLessThan(5);
	expect(circles(mapOf(point(52, 179), point(52, -179)).svg)).toBe(2);
});

test('a coast that ends inside the map is refused, since sea would be drawn for land', () => {
	const places = [point(50.1, -5.5)];
	const short = {...coast, box: {south: 50, west: -6, north: 50.2, east: -5.6}};
	expect(() => drawMap({heading: 'Finds', places, coast: short, say})).toThrow('Expected a coast that holds');
	expect(mapBox(places)?.east).toBeGreaterThan(-5.6);
});

test('places on both sides of the earth are refused', () => {
	expect(() => frameAround([point(50, -70), point(50, 60)], 672)).toThrow('within 120 degrees');
});

test('words say what the map shows, and how many cases lie where', () => {
	const {alt, plain, svg} = mapOf(point(50.1, -5.5, 3), point(50.2, -5.2), square(50.3, -5.3, 2));
	expect(alt).toBe('Finds. A map with 6 cases at 2 places, one square hides the place of some.');
	expect(plain).toContain('50.1000, -5.5000: 3 cases\n50.2000, -5.2000: one case\nsomewhere from 50.');
	expect(svg).toContain(`<title>${alt}</title>`);
});

test('without a find the picture says so', () => {
	expect(mapOf().alt).toBe('Finds: Nothing found yet.');
	expect(mapBox([])).toBeUndefined();
});
