/** Charts and maps as they are seen: beside pictures that were looked at, on a narrow phone, by any eyes. */
import {existsSync, mkdirSync, readFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import process from 'node:process';
import sharp from 'sharp';
import {expect, test} from 'vitest';
import {drawBars} from '../../src/draw/bars.ts';
import type {Chart} from '../../src/draw/chart.ts';
import {readEarth} from '../../src/draw/coastline.ts';
import {capitalHeight} from '../../src/draw/lettering.ts';
import {drawMap} from '../../src/draw/map.ts';
import {drawMonths} from '../../src/draw/months.ts';
import {card, colours, contrast, letters} from '../../src/draw/palette.ts';
import {readTexts} from '../../src/text/text.ts';
import {differing} from '../support/differing.ts';
import {cellAt} from './squares.ts';

const say = readTexts([join(import.meta.dirname, '../../src/text')]).in('en');
const folder = join(import.meta.dirname, 'golden', 'charts');
const widthPx = 240;
/** Of all pixels, this share may differ visibly: smoothing of edges is not the same on every machine. */
const tolerance = 0.01;

const drawing = {
	svg: '<path d="M-9 -15H9V15H-9Z" fill="#cf9a55"/>',
	box: {left: -20, top: -20, right: 20, bottom: 20},
};
const charts: Readonly<Record<string, () => Chart>> = {
	bars: () =>
		drawBars({
			heading: 'Finds of spring 2026',
			bars: [
				{label: 'First kind', scientificName: 'Testa prima', count: 112, drawing},
				{label: 'Second kind', scientificName: 'Testa secunda', count: 57, drawing},
				{label: 'Third kind, or one much like it that has a longer name', count: 3, drawing},
			],
			say,
		}),
	months: () =>
		drawMonths({
			heading: 'Winter 2026',
			months: [10, 11, 12].map(month => ({year: 2026, month})),
			rows: [
				{label: 'First kind', counts: [3, 20, 44]},
				{label: 'Second kind', counts: [0, 12, 5]},
			],
			say,
		}),
	map: () =>
		drawMap({
			heading: 'Where they lay',
			places: [
				{kind: 'point', latitude: 50.12, longitude: -5.47, count: 12},
				{kind: 'point', latitude: 50.08, longitude: -5.7, count: 1},
				{kind: 'square', ...cellAt(50.26, -5.24), count: 4},
			],
			coast: readEarth(),
			say,
		}),
	nothing: () => drawBars({heading: 'Finds of spring 2026', bars: [], say}),
};

// `WRITE_GOLDEN=1 npx vitest run --dir test test/draw/charts-seen` draws them anew: look at each before it is kept.
test.each(Object.entries(charts))(
	'the chart of %s looks as it did when it was looked at',
	async (name, draw) => {
		const file = join(folder, `${name}.png`);
		const drawn = await sharp(Buffer.from(draw().svg)).resize({width: widthPx}).png().toBuffer();
		if (process.env['WRITE_GOLDEN'] === '1') {
			mkdirSync(folder, {recursive: true});
			writeFileSync(file, drawn);
		}
		expect(existsSync(file)).toBe(true);
		expect(await differing(drawn, readFileSync(file))).toBeLessThan(tolerance);
	},
);

test('a number changed is seen as a difference', async () => {
	const bars = (count: number) =>
		drawBars({
			heading: 'Finds',
			bars: [
				{label: 'a', count: 40},
				{label: 'b', count},
			],
			say,
		});
	const [one, other] = await Promise.all(
		[20, 30].map(count =>
			sharp(Buffer.from(bars(count).svg))
				.resize({width: widthPx})
				.png()
				.toBuffer(),
		),
	);
	expect(await differing(one ?? Buffer.of(), other ?? Buffer.of())).toBeGreaterThan(tolerance);
});

test('the smallest capitals of a chart are 11 pixels high on a phone 320 pixels wide', () => {
	expect(
		Math.min(...Object.values(letters)) * capitalHeight * (320 / card.widthUnits),
	).toBeGreaterThanOrEqual(11);
	for (const name of ['bars', 'months', 'map', 'map-dots', 'map-scale', 'chart']) {
		const code = readFileSync(join(import.meta.dirname, `../../src/draw/${name}.ts`), 'utf8');
		// Every size of letters comes from the palette.
		expect(code).not.toMatch(/\bsize: ?[\d.]/);
	}
});

test.each([
	['words on the card', colours.ink, colours.card],
	['second words on the card', colours.quiet, colours.card],
	['numbers in dots', colours.white, colours.mark],
	['numbers in squares', colours.mark, colours.white],
])('%s stand out by 4.5 to 1 (WCAG 2.2, 1.4.3)', (_, one, other) => {
	expect(contrast(one, other)).toBeGreaterThanOrEqual(4.5);
});

test.each([
	['dots on the sea', colours.mark, colours.sea],
	['dots on land', colours.mark, colours.land],
	['the edge of a bar on the card', colours.ink, colours.card],
	['the coast beside the sea', colours.quiet, colours.sea],
])('%s stand out by 3 to 1 (WCAG 2.2, 1.4.11)', (_, one, other) => {
	expect(contrast(one, other)).toBeGreaterThanOrEqual(3);
});
