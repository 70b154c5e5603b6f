/** The pictures of kinds and questions as they are seen: beside those that were looked at, on a narrow phone, by any eyes. */
import {existsSync, readdirSync, readFileSync} from 'node:fs';
import {join} from 'node:path';
import sharp from 'sharp';
import {describe, expect, test} from 'vitest';
import {keptFolder, keptWidthPx, namedPictures, smallPng} from '../../src/cli/pictures-command.ts';
import {regionsIn} from '../../src/cli/regions.ts';
import {drawChoices} from '../../src/draw/choices.ts';
import {capitalHeight} from '../../src/draw/lettering.ts';
import {card, colours, contrast, letters} from '../../src/draw/palette.ts';
import type {Wanted} from '../../src/draw/title.ts';
import {drawWanted, titleOf} from '../../src/draw/wanted.ts';
import {readRegion} from '../../src/key/region.ts';
import {plainShape, withParts} from '../../src/key/shape.ts';
import {readTexts} from '../../src/text/text.ts';
import {differing} from '../support/differing.ts';

const root = join(import.meta.dirname, '../..');
const folder = join(root, keptFolder);
/** Of all pixels, this share may differ visibly: smoothing of edges is not the same on every machine. */
const tolerance = 0.01;

const sources = regionsIn(root).map(id => ({
	region: readRegion(join(root, 'flows'), id),
	say: readTexts([join(root, 'src/text'), join(root, 'flows'), join(root, 'flows', id)]).in('en'),
}));
const kept = sources.flatMap(from => namedPictures(from, true));
const all = sources.flatMap(from => namedPictures(from, false));

// `npm run pictures -- --write` draws them anew: look at each before it is kept.
test.each(kept)('$name looks as it did when it was looked at', async ({name, wanted, from}) => {
	const file = join(folder, `${name}.png`);
	expect(existsSync(file)).toBe(true);
	const drawn = await smallPng(drawWanted(wanted, from).svg, keptWidthPx);
	expect(await differing(drawn, readFileSync(file))).toBeLessThan(tolerance);
});

test('no kept picture is left over', () => {
	const names = new Set(kept.map(({name}) => `${name}.png`));
	expect(readdirSync(folder).filter(file => !names.has(file))).toEqual([]);
});

test('a kind without its horns is seen as a difference', async () => {
	const [one] = kept;
	if (!one) throw new Error('Expected a kept picture; there is none');
	const bare: Wanted = one.wanted.kind === 'taxon' ? {...one.wanted, lost: ['horns']} : one.wanted;
	const drawn = await smallPng(drawWanted(bare, one.from).svg, keptWidthPx);
	expect(await differing(drawn, readFileSync(join(folder, `${one.name}.png`)))).toBeGreaterThan(tolerance);
});

describe.each(all)('$name', ({wanted, from}) => {
	const drawn = drawWanted(wanted, from);

	test('stands on an opaque light card and holds no letters that need a font', async () => {
		expect(drawn.svg).not.toContain('<text');
		expect(drawn.svg).not.toMatch(/NaN|undefined|Infinity/);
		const png = sharp(Buffer.from(drawn.svg), {density: 72});
		const {data, info} = await png.ensureAlpha().raw().toBuffer({resolveWithObject: true});
		const alphas = new Set(data.filter((_, index) => index % info.channels === 3));
		expect([...alphas]).toEqual([255]);
		expect(data.subarray(0, 3).toString('hex')).toBe(colours.card.slice(1));
	});

	test('says in words what it shows', () => {
		const title = titleOf(wanted, from);
		expect(title.length).toBeGreaterThan(30);
		expect(title).not.toMatch(/[{}]|undefined/);
		expect(drawn.svg).toContain('<title>');
		if (wanted.kind !== 'choices') return;
		for (const state of wanted.options)
			expect(title).toContain(from.say.say(`seen-${wanted.character}-${state}`));
	});
});

test('the smallest capitals are 11 pixels high on a phone 320 pixels wide', () => {
	const smallest = Math.min(...Object.values(letters));
	expect(smallest * capitalHeight * (320 / card.widthUnits)).toBeGreaterThanOrEqual(11);
	for (const name of ['choices', 'part', 'measuring', 'taxon', 'around', 'around-parts', 'around-soak']) {
		// Every size of letters comes from the palette.
		expect(readFileSync(join(root, 'src/draw', `${name}.ts`), 'utf8')).not.toMatch(/\bsize: ?[\d.]/);
	}
});

test.each([
	['words on the card', colours.ink, colours.card],
	['second words on the card', colours.quiet, colours.card],
	['rings and marks on the card', colours.mark, colours.card],
	['crosses on the card', colours.wrong, colours.card],
	['outlines on the case', colours.ink, colours.capsule],
])('%s stand out by 4.5 to 1 (WCAG 2.2, 1.4.3)', (_, one, other) => {
	expect(contrast(one, other)).toBeGreaterThanOrEqual(4.5);
});

test('black on white stands out by 21 to 1, as published (WCAG 2.2, contrast ratio)', () => {
	expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
	expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
});

test('two options of every question differ in grey as they do in colour', async () => {
	for (const {wanted, from} of all) {
		if (wanted.kind !== 'choices' || wanted.options.length !== 2) continue;
		const {svg} = drawWanted(wanted, from);
		const {data, info} = await sharp(Buffer.from(svg), {density: 72})
			.greyscale()
			.raw()
			.toBuffer({resolveWithObject: true});
		// The figures alone: without the letters above and the words below.
		const [top, bottom] = [90, Math.round(info.height - 130)];
		let different = 0;
		for (let y = top; y < bottom; y++) {
			for (let x = 30; x < 340; x++) {
				const [one, other] = [
					data[(y * info.width + x) * info.channels] ?? 0,
					data[(y * info.width + x + 348) * info.channels] ?? 0,
				];
				if (Math.abs(one - other) > 40) different++;
			}
		}
		expect(different, wanted.character).toBeGreaterThan(250);
	}
});

test('one option or five are refused', () => {
	const choice = {label: 'x', shape: withParts(plainShape)};
	const draw = (count: number) => () =>
		drawChoices({choices: Array.from({length: count}, () => choice), sight: {}, title: 'x'});
	expect(draw(1)).toThrow('Expected two to four options to draw; got 1');
	expect(draw(5)).toThrow('got 5');
	expect(draw(4)).not.toThrow();
});

test('what a region does not have is refused with what it has', () => {
	const [from] = sources;
	if (!from) throw new Error('Expected a region; there is none');
	const of = {region: from.region.id, language: 'en'};
	expect(() => drawWanted({kind: 'part', ...of, character: 'wings'}, from)).toThrow('there is none');
	expect(() => drawWanted({kind: 'taxon', ...of, taxon: 'nobody', lost: []}, from)).toThrow('nobody');
});
