/** A measured length against those of kinds: where the bars stand, and how the picture looks. */
import {existsSync, mkdirSync, readFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import process from 'node:process';
import sharp from 'sharp';
import {expect, test} from 'vitest';
import {drawLengths, type LengthsWanted, lengthsTitle} from '../../src/draw/lengths.ts';
import {readRegion} from '../../src/key/region.ts';
import {readTexts} from '../../src/text/text.ts';
import {differing} from '../support/differing.ts';

const flows = join(import.meta.dirname, '../../flows');
const region = readRegion(flows, 'british-isles');
const say = readTexts([join(import.meta.dirname, '../../src/text'), flows, join(flows, 'british-isles')]).in(
	'en',
);
const file = join(import.meta.dirname, 'golden', 'charts', 'lengths.png');
const wanted: LengthsWanted = {
	kind: 'lengths',
	region: 'british-isles',
	language: 'en',
	taxa: ['raja-clavata', 'raja-montagui', 'dipturus-batis'],
	mm: 66,
	plusMinusMm: 1,
	countsAs: 'exact',
};

/** The bars of kinds, from left to right edge, in the order of their rows. */
function barsIn(svg: string): readonly (readonly [number, number])[] {
	return [...svg.matchAll(/<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)"[^>]*rx="5"/g)].map(
		([, x, width]) => [Number(x), Number(x) + Number(width)] as const,
	);
}

function markIn(svg: string): number {
	return Number(/<path d="M([\d.]+) [\d.]+V/.exec(svg)?.[1]);
}

test('the mark lies inside the bar of every kind whose published lengths hold it, and outside of the others', () => {
	const holding = Object.entries(region.profiles.taxa).filter(([, {lengthMm}]) => lengthMm !== undefined);
	let inside = 0;
	for (const [taxon, {lengthMm}] of holding) {
		const [low = 0, high = 0] = lengthMm?.range ?? [];
		const {svg} = drawLengths({...wanted, taxa: [taxon]}, {region, say});
		const [bar = [0, 0]] = barsIn(svg);
		const isInside = markIn(svg) >= bar[0] && markIn(svg) <= bar[1];
		expect(isInside, taxon).toBe(66 >= low && 66 <= high);
		inside += isInside ? 1 : 0;
	}
	expect(inside).toBeGreaterThan(2);
	expect(inside).toBeLessThan(holding.length);
});

test('all bars share one scale', () => {
	const {svg} = drawLengths(wanted, {region, say});
	const bars = barsIn(svg);
	const ranges = wanted.taxa.map(taxon => region.profiles.taxa[taxon]?.lengthMm?.range ?? [0, 0]);
	const unitsPerMm = bars.map(([left, right], row) => {
		const [low = 0, high = 0] = ranges[row] ?? [];
		return (right - left) / (high - low);
	});
	expect(bars).toHaveLength(3);
	for (const scale of unitsPerMm) expect(scale).toBeCloseTo(unitsPerMm[0] ?? 0, 6);
});

test('the picture says in words what it shows, also of a kind without a published length', () => {
	expect(lengthsTitle(wanted, {region, say})).toMatch(/^Measured: 66 mm ± 1\. .*: \d+ to \d+ mm\./);
	const bare = {
		...region,
		profiles: {
			...region.profiles,
			taxa: Object.fromEntries(
				Object.entries(region.profiles.taxa).map(([id, taxon]) => [id, {...taxon, lengthMm: undefined}]),
			),
		},
	};
	const least: LengthsWanted = {...wanted, countsAs: 'at-least'};
	expect(lengthsTitle(least, {region: bare, say})).toContain('at least 66 mm');
	expect(lengthsTitle(least, {region: bare, say})).toContain('no length is published');
	expect(barsIn(drawLengths(least, {region: bare, say}).svg)).toEqual([]);
});

// `WRITE_GOLDEN=1 npx vitest run --dir test test/draw/lengths` draws it anew: look at it before it is kept.
test('lengths side by side look as they did when they were looked at', async () => {
	const drawn = await sharp(Buffer.from(drawLengths(wanted, {region, say}).svg))
		.resize({width: 240})
		.png()
		.toBuffer();
	if (process.env['WRITE_GOLDEN'] === '1') {
		mkdirSync(join(file, '..'), {recursive: true});
		writeFileSync(file, drawn);
	}
	expect(existsSync(file)).toBe(true);
	expect(await differing(drawn, readFileSync(file))).toBeLessThan(0.01);
});
