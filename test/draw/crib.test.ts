import {readdirSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test, vi} from 'vitest';
import {cribKinds} from '../../src/cli/crib-kinds.ts';
import {type CribKind, cribPages, cribWords} from '../../src/draw/crib.ts';
import {writePdf} from '../../src/draw/pdf.ts';
import {readRegion} from '../../src/key/region.ts';
import {readTexts} from '../../src/text/text.ts';
import {readPdf, sizeOf} from './read-pdf.ts';

// A PDF written and read back takes half a second alone and many times that beside other tests.
vi.setConfig({testTimeout: 60_000});

const root = join(import.meta.dirname, '../..');
const flows = join(root, 'flows');
const say = readTexts([join(root, 'src/text')]).in('en');
const regions = readdirSync(flows, {withFileTypes: true}).flatMap(entry =>
	entry.isDirectory() && entry.name !== 'pictures' ? [entry.name] : [],
);
const pointsPerMm = 72 / 25.4;

/** A made-up kind drawn as a plain rectangle. */
function kind(wide: number, high: number, more: Partial<CribKind> = {}): CribKind {
	const box = {left: -wide / 2, top: -high / 2, right: wide / 2, bottom: high / 2};
	const svg = `<path d="M${box.left} ${box.top}H${box.right}V${box.bottom}H${box.left}Z" fill="#cf9a55"/>`;
	return {label: `Made-up ${wide} by ${high}`, scientificName: 'Testa ficta', drawing: {svg, box}, ...more};
}

async function readCrib(kinds: readonly CribKind[]) {
	const pages = cribPages({heading: 'Cases', kinds, say});
	return readPdf(await writePdf({title: 'Cases', language: 'en', pages, now: 0}));
}

const wordsOf = ({pages}: Awaited<ReturnType<typeof readCrib>>) =>
	pages.map(({words}) =>
		words
			.map(({words}) => words)
			.join(' ')
			.replace(/\s+/g, ' '),
	);

test('a case is as large on paper as it is, within 0.5 in 100', async () => {
	const {pages} = await readCrib([kind(62, 21.8)]);
	const errors = (pages[0]?.paths ?? []).map(sizeOf).map(([width, height]) => {
		const [wide, high] = [width / pointsPerMm / 62, height / pointsPerMm / 21.8];
		return Math.max(Math.abs(wide - 1), Math.abs(high - 1));
	});
	expect(Math.min(...errors)).toBeLessThan(0.005);
});

test('every page has a ruler of 100 mm and says what it is for', async () => {
	const read = await readCrib(Array.from({length: 8}, () => kind(100, 150)));
	expect(read.pages.length).toBeGreaterThan(4);
	for (const [index, words] of wordsOf(read).entries()) {
		expect(words).toContain('If this is not 100 mm long, print at 100 %.');
		const ruler = read.pages[index]?.paths.find(path => path.length > 200) ?? [];
		expect(Math.abs(sizeOf(ruler)[0] / (100 * pointsPerMm) - 1)).toBeLessThan(0.005);
	}
});

test('a case larger than the page is drawn at half size and says so', async () => {
	const read = await readCrib([kind(120, 240)]);
	expect(wordsOf(read)[0]).toContain('Drawn at half size');
	const sizes = (read.pages[0]?.paths ?? [])
		.map(sizeOf)
		.map(([width, height]) => [width, height].map(Math.round));
	expect(sizes).toContainEqual([Math.round(60 * pointsPerMm), Math.round(120 * pointsPerMm)]);
	expect(wordsOf(await readCrib([kind(120, 140)]))[0]).not.toContain('half size');
});

test('a case too large even at half size is refused by name', () => {
	expect(() => cribPages({heading: 'Cases', kinds: [kind(500, 100)], say})).toThrow(
		'Expected a drawing of "Made-up 500 by 100" that fits',
	);
	expect(() => cribPages({heading: 'Cases', kinds: [], say})).toThrow('at least one kind');
});

test('sizes are written with their sources, and a size that nobody published is called a guess', async () => {
	const length = {range: [50.2, 74], middle: 62, citation: 'A. Author 1999.'} as const;
	const read = await readCrib([
		kind(60, 20, {length}),
		kind(50, 20, {length, width: {...length, citation: 'B. 2001.'}}),
	]);
	const [words] = wordsOf(read);
	expect(words).toContain('50 to 74 mm long, here 62 [1]');
	expect(words).toContain('No width is published');
	expect(words).toContain('50 to 74 mm wide, here 62 [2]');
	expect(words).toContain('[1] A. Author 1999. [2] B. 2001.');
	expect(cribWords([kind(60, 20, {length})], say)).toBe(
		'Made-up 60 by 20 (Testa ficta): 50 to 74 mm long, here 62 [1] No width is published: the width drawn is a guess.',
	);
});

test.each(regions)('the sheet of %s has every kind of the region, each with a drawing', async name => {
	const ours = readTexts([join(root, 'src/text'), flows, join(flows, name)]).in('en');
	const region = readRegion(flows, name);
	const kinds = cribKinds(region, ours);
	const pages = cribPages({heading: 'Cases', kinds, say: ours});
	const read = await readPdf(await writePdf({title: 'Cases', language: 'en', pages, now: 0}));
	const all = wordsOf(read).join(' ');
	const taxa = Object.entries(region.profiles.taxa);
	for (const [id, {scientificName}] of taxa) {
		expect(all).toContain(scientificName);
		expect(read.alts).toContain(`The egg case of ${ours.say(`taxon-${id}`)}, seen from above`);
	}
	expect(kinds).toHaveLength(taxa.length);
	expect(read.isTagged).toBe(true);
});
