import sharp from 'sharp';
import {expect, test, vi} from 'vitest';
import type {Reading} from '../../src/capsule/judged.ts';
import {measurePhoto, tellBetween} from '../../src/capsule/measure.ts';
import {inventPhoto, type Wish} from '../support/photos/invent.ts';
import {shoot} from '../support/photos/shoot.ts';

// A photo is drawn pixel by pixel: two seconds alone and many times that beside other tests.
vi.setConfig({testTimeout: 120_000});

async function photograph(wish: Wish) {
	const {scene, cases, pick} = await inventPhoto(wish);
	return {bytes: await shoot(scene, pick), cases};
}

async function measured(wish: Wish) {
	const {bytes, cases} = await photograph(wish);
	const outcome = await measurePhoto(bytes);
	if (outcome.kind === 'declined') throw new Error(`Expected a length; got ${outcome.why}`);
	const [first] = outcome.cases;
	if (!first) throw new Error('Expected a case; got none');
	return {outcome, first, truth: cases[0]};
}

test.each(['a4', 'sheet', 'card'] as const)(
	'a case is measured by the %s that lies with it, within 3 %%',
	async reference => {
		const {outcome, first, truth} = await measured({seed: 3, reference, level: 'clean'});
		expect(outcome).toMatchObject({kind: 'measured', reference});
		expect(Math.abs(first.lengthMm / (truth?.lengthMm ?? 0) - 1)).toBeLessThan(0.03);
		// How often intervals hold the truth is the trial's to say: one photo in ten may miss.
		const [from, to] = first.lengthIntervalMm;
		expect((to - from) / 2 / first.lengthMm).toBeLessThan(0.02);
	},
);

test('a case is as long without its horns as with them, within 1 %', async () => {
	const wish = {seed: 11, reference: 'a4', level: 'clean'} as const;
	const [whole, worn] = [await measured(wish), await measured({...wish, isHornless: true})];
	expect(Math.abs(whole.first.lengthMm / worn.first.lengthMm - 1)).toBeLessThan(0.01);
});

test('the ends of the line stand in pixels of the photo as it was sent, whatever its size', async () => {
	const {bytes} = await photograph({seed: 4, reference: 'a4', level: 'clean'});
	const twice = await sharp(bytes)
		.rotate()
		.resize({width: 2560})
		.jpeg({quality: 95})
		.toBuffer({resolveWithObject: true});
	const [one, other] = [await measurePhoto(bytes), await measurePhoto(twice.data)];
	if (one.kind === 'declined' || other.kind === 'declined') throw new Error('Expected two lengths');
	const [width = 1] = [(await sharp(bytes).rotate().toBuffer({resolveWithObject: true})).info.width];
	const x = one.cases[0]?.lengthLinePx[0][0] ?? 0;
	expect(await measurePhoto(bytes, 'card'), 'asked for a card').toMatchObject({why: 'other-reference'});
	const scaled = other.cases[0]?.lengthLinePx[0][0] ?? 0;
	expect(Math.abs(scaled - (x * 2560) / width)).toBeLessThan(6);
});

test.each([
	[{seed: 1, reference: 'none', level: 'clean'}, ['no-reference']],
	[{seed: 1, reference: 'letter', level: 'clean'}, ['letter']],
	[{seed: 2, reference: 'a4', level: 'clean', subject: 'nothing'}, ['no-case']],
	[{seed: 2, reference: 'a4', level: 'clean', isCut: true}, ['no-reference', 'cut-off']],
	[{seed: 118002, reference: 'a4', level: 'clean', blurPx: 5}, ['blurred']],
	[{seed: 2, reference: 'a4', level: 'clean', subject: 'stone'}, ['odd-shape', 'unclear-ends', 'no-case']],
] as const)('a photo that cannot be measured is declined with its reason: %o', async (wish, reasons) => {
	const {bytes} = await photograph(wish);
	const outcome = await measurePhoto(bytes);
	expect(reasons).toContain(outcome.kind === 'declined' ? outcome.why : outcome);
});

test('beside a coin a case gets a class of size that holds its length, and no length', async () => {
	const {bytes, cases} = await photograph({seed: 612000, reference: 'coin', level: 'clean'});
	const outcome = await measurePhoto(bytes);
	expect(outcome).toMatchObject({kind: 'declined', why: 'coin'});
	const [from, to] = (outcome.kind === 'declined' && outcome.aboutMm) || [0, 0];
	expect([from % 10, to % 10]).toEqual([0, 0]);
	expect(cases[0]?.lengthMm).toBeGreaterThan(from);
	expect(cases[0]?.lengthMm).toBeLessThan(to);
});

test('a sheet of Letter is named also where A4 is asked for', async () => {
	const {bytes} = await photograph({seed: 613004, reference: 'letter', level: 'clean'});
	expect(await measurePhoto(bytes, 'a4')).toMatchObject({kind: 'declined', why: 'letter'});
});

test('two near readings of a case in a tray are told as one that lies between and holds both', () => {
	const reading = (lengthMm: number): Reading => ({
		lengthMm,
		lengthIntervalMm: [lengthMm - 1, lengthMm + 1],
		lines: {
			length: [
				[0, 0],
				[lengthMm, 0],
			],
		},
		outline: [],
	});
	expect(tellBetween([reading(40), reading(42)])).toMatchObject({
		lengthMm: 41,
		lengthIntervalMm: [39, 43],
		lines: {
			length: [
				[0, 0],
				[41, 0],
			],
		},
	});
	expect(tellBetween([reading(40), reading(44)])).toBeUndefined();
});
