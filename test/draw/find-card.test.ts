/** Cards of results: measured from their pixels, beside those that were looked at, and in words. */
import {existsSync, mkdirSync, readFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import process from 'node:process';
import sharp from 'sharp';
import {expect, test, vi} from 'vitest';
import {regionsIn} from '../../src/cli/regions.ts';
import {cardContent} from '../../src/draw/card-content.ts';
import {drawFindCard} from '../../src/draw/find-card.ts';
import {card, colours, contrast, lines} from '../../src/draw/palette.ts';
import type {DrawnFrom} from '../../src/draw/wanted.ts';
import {projectRoot} from '../../src/settings.ts';
import type {CallCard} from '../../src/store/picture.ts';
import {cardOf, drawnFrom, shortlist} from '../support/cards.ts';
import {differing} from '../support/differing.ts';

vi.setConfig({testTimeout: 60_000});

const sources = new Map(regionsIn(projectRoot()).map(id => [id, drawnFrom(id)] as const));
const folder = join(import.meta.dirname, 'golden', 'cards');
const widthPx = 240;
/** Of all pixels, this share may differ visibly: smoothing of edges is not the same on every machine. */
const tolerance = 0.01;

const cards: Readonly<Record<string, readonly [wanted: CallCard, aspect?: number]>> = {
	alone: [cardOf()],
	'with-photo': [cardOf({sure: 'very-likely', photo: {hash: 'ab'}}), 4 / 3],
	'with-tall-photo': [
		cardOf({
			names: [{taxon: 'scyliorhinus-canicula', percent: 76}],
			length: {mm: 55, plusMinusMm: 1, isLeast: true},
			photo: {hash: 'ab'},
		}),
		9 / 16,
	],
	worn: [cardOf({length: {mm: 60, plusMinusMm: 2, isLeast: true}, lost: ['horns', 'sides']})],
	shortlist: [cardOf({sure: 'shortlist', names: [...shortlist], photo: {hash: 'ab'}}), 4 / 3],
	'shortlist-unmeasured': [
		cardOf({
			region: 'western-mediterranean',
			sure: 'shortlist',
			names: [
				{taxon: 'raja-polystigma', percent: 50},
				{taxon: 'raja-miraletus', percent: 40},
			],
			length: undefined,
		}),
	],
	'not-published': [
		cardOf({region: 'north-east-pacific', names: [{taxon: 'heterodontus-francisci', percent: 91}]}),
	],
};

function draw(wanted: CallCard, aspect?: number) {
	return drawFindCard(cardContent(wanted, sourceOf(wanted.region), aspect));
}

function sourceOf(region: string): DrawnFrom {
	const from = sources.get(region);
	if (!from) throw new Error(`Expected a region to draw from; got "${region}"`);
	return from;
}

// `WRITE_GOLDEN=1 npx vitest run --dir test test/draw/find-card` draws them anew: look at each before it is kept.
test.each(Object.entries(cards))(
	'the card "%s" looks as it did when it was looked at',
	async (name, [wanted, aspect]) => {
		const {svg} = draw(wanted, aspect);
		expect(svg).not.toMatch(/<text|NaN|undefined|Infinity/);
		const drawn = await sharp(Buffer.from(svg)).resize({width: widthPx}).png().toBuffer();
		const file = join(folder, `${name}.png`);
		if (process.env['WRITE_GOLDEN'] === '1') {
			mkdirSync(folder, {recursive: true});
			writeFileSync(file, drawn);
		}
		expect(existsSync(file)).toBe(true);
		expect(await differing(drawn, readFileSync(file))).toBeLessThan(tolerance);
	},
);

test('a kind without its horns and blades is seen as a difference', async () => {
	const small = async (wanted: CallCard) =>
		sharp(Buffer.from(draw(wanted).svg))
			.resize({width: widthPx})
			.png()
			.toBuffer();
	const [whole, worn] = [await small(cardOf()), await small(cardOf({lost: ['horns', 'sides']}))];
	expect(await differing(whole, worn)).toBeGreaterThan(tolerance);
});

test.each([
	['as long as it was measured', {mm: 72, plusMinusMm: 1, isLeast: false}, 72],
	['as long as a larger one was measured', {mm: 88, plusMinusMm: 2, isLeast: false}, 88],
	// The middle of the published 55 to 90 mm.
	[
		'at a usual size where the measured length is only the least',
		{mm: 60, plusMinusMm: 1, isLeast: true},
		72.5,
	],
	['at a usual size where nothing was measured', undefined, 72.5],
] as const)('by the scale bar beside it a case is drawn %s, within 1 %%', async (_, length, expectedMm) => {
	const said: number[] = [];
	const content = cardContent(cardOf({length}), sourceOf('british-isles'), undefined);
	const {svg} = drawFindCard({...content, sayMm: mm => `${said.push(mm)} mm`});
	const perUnit = 4;
	const {data, info} = await sharp(Buffer.from(svg), {density: 72 * perUnit})
		.greyscale()
		.raw()
		.toBuffer({resolveWithObject: true});
	const isInk = (x: number, y: number) => (data[(y * info.width + x) * info.channels] ?? 255) < 110;
	const column = (card.widthUnits / 2) * perUnit;
	const rows = Array.from({length: info.height}, (__, y) => y);
	// Down the middle: words end above the case, then its two aprons' borders, then the bar.
	const inks = rows.filter(y => y > 130 * perUnit && y < 700 * perUnit && isInk(column, y));
	const runs = inks.reduce<number[][]>((all, y) => {
		const last = all.at(-1);
		if (last && y - (last.at(-1) ?? 0) <= 1) last.push(y);
		else all.push([y]);
		return all;
	}, []);
	const middles = runs.map(run => ((run[0] ?? 0) + (run.at(-1) ?? 0)) / 2);
	const bar = barOf(isInk, info, perUnit);
	const body = middles.filter(y => y < bar.y - 20 * perUnit);
	const longPx = (body.at(-1) ?? 0) - (body[0] ?? 0);
	// The last length that was worded is the one that stands there.
	const mm = (longPx / bar.longPx) * (said.at(-1) ?? 0);
	expect(Math.abs(mm / expectedMm - 1)).toBeLessThan(0.01);
});

/** The bar: the longest level line with an end mark on both sides. */
function barOf(
	isInk: (x: number, y: number) => boolean,
	{width, height}: {readonly width: number; readonly height: number},
	perUnit: number,
): {readonly y: number; readonly longPx: number} {
	for (let y = 540 * perUnit; y < height; y++) {
		const xs = Array.from({length: width - 80 * perUnit}, (_, x) => x + 40 * perUnit).filter(x =>
			isInk(x, y),
		);
		const [first] = xs;
		if (first === undefined) continue;
		let last = first;
		while (isInk(last + 1, y)) last++;
		// Its end marks reach twelve units over and under it.
		const isMarked = [first + perUnit, last - perUnit].every(
			x => isInk(x, y - 9 * perUnit) && isInk(x, y + 9 * perUnit),
		);
		if (last - first > 100 * perUnit && isMarked) {
			return {y, longPx: last - first + 1 - lines.plain * perUnit};
		}
	}
	throw new Error('Expected a scale bar below the drawing; found none');
}

test('the card of every kind keeps its words and figures off its edges', async () => {
	expect(sources.size).toBeGreaterThan(1);
	for (const [id, from] of sources) {
		const all = Object.keys(from.region.profiles.taxa).map(taxon => ({taxon, percent: 99}));
		const fours = all.flatMap((_, index) => (index % 4 === 0 ? [all.slice(index, index + 4)] : []));
		const wanted = [
			...all.map(name => cardOf({region: id, sure: 'very-likely', names: [name], lost: ['horns', 'aprons']})),
			...fours.map(names => cardOf({region: id, sure: 'shortlist', names})),
		];
		for (const one of wanted) await expectFreeEdges(one);
	}
});

async function expectFreeEdges(wanted: CallCard): Promise<void> {
	const {svg, widthUnits} = draw(wanted);
	const {data, info} = await sharp(Buffer.from(svg), {density: 36})
		.removeAlpha()
		.raw()
		.toBuffer({resolveWithObject: true});
	const strips = [...between(9, 20), ...between(widthUnits - 20, widthUnits - 9)];
	for (const x of strips.map(unit => Math.round(unit / 2))) {
		for (let y = 20; y < info.height - 20; y++) {
			// Dotted lines between names may reach the margin; letters are darker.
			const isFree = (data[(y * info.width + x) * info.channels] ?? 0) > 150;
			if (!isFree)
				throw new Error(`Expected nothing at ${x * 2}, ${y * 2} of ${JSON.stringify(wanted.names)}`);
		}
	}
}

test('a card says in words all that it shows', () => {
	const [, said] = /<title>([^<]*)<\/title>/.exec(draw(...(cards['shortlist'] ?? [cardOf()])).svg) ?? [];
	expect(said).toContain('your photo and small drawings');
	expect(said).toContain('Undulate ray: Raja undulata, about 45 in 100. Published: 72 to 89 mm.');
	expect(said).toContain('Yours: 72 mm, give or take 1');
	expect(said).toContain('And one other that fits.');
	expect(said).toContain('Larkin Sands');
	const [, memory] =
		/<title>([^<]*)<\/title>/.exec(draw(...(cards['shortlist-unmeasured'] ?? [cardOf()])).svg) ?? [];
	expect(memory).toContain('36 to 52 mm, from memory');
	expect(memory).not.toContain('Published: 36');
});

test('a card without its photo says nothing of one', () => {
	const {svg, photoAt} = draw(cardOf({photo: {hash: 'ab'}}));
	expect(photoAt).toBeUndefined();
	expect(svg).not.toContain('photo');
});

test('a kind that its region does not have is refused', () => {
	expect(() => draw(cardOf({names: [{taxon: 'nobody', percent: 90}]}))).toThrow('got "nobody"');
});

test('the letters of a card are of the sizes that are legible on a small phone', () => {
	for (const name of ['find-card', 'card-rows', 'card-figures', 'length-scale', 'scale-bar']) {
		const code = readFileSync(join(projectRoot(), 'src/draw', `${name}.ts`), 'utf8');
		expect(code).not.toMatch(/\bsize: ?[\d.]/);
	}
});

test.each([
	['what was measured on the card', colours.mark, colours.card, 4.5],
	['bars on the card by their edge', colours.ink, colours.card, 3],
	['the mark across a bar from memory', colours.mark, colours.white, 3],
])('%s stands out enough (WCAG 2.2, 1.4.3 and 1.4.11)', (_, one, other, least) => {
	expect(contrast(one, other)).toBeGreaterThanOrEqual(least);
});

function between(from: number, to: number): readonly number[] {
	return Array.from({length: to - from}, (_, index) => from + index);
}
