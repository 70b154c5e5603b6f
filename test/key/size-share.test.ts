import {expect, test} from 'vitest';
import type {Taxon} from '../../src/key/region.ts';
import {factorOf, type Shortening, stepsBetween} from '../../src/key/shrink.ts';
import {flatShare, sizeDensity, sizeShare} from '../../src/key/size-share.ts';

const measure = {range: [80, 120] as [number, number], mean: 100, sd: 5, source: 'x'};
const taxon: Taxon = {
	...{scientificName: 'Ova ficta', authorship: '', family: 'Ovidae', rank: 'species', howCommon: 'common'},
	...{leaveIt: false, lengthMm: measure, notUsed: [], states: {}, silent: [], lookalikes: []},
	described: {source: 'x'},
	fact: {source: 'x'},
};
const possibleMm = [20, 300] as const;
const short = (mm: number, ...shortBy: Shortening[]) =>
	sizeShare(taxon, {measure, sized: {kind: 'at-least', mm, uncertaintyMm: 1, shortBy}, possibleMm});

test('the share of a dry size is the mean of its densities at every drying from 0.85 to 1', () => {
	const fine = stepsBetween([0.85, 1], 2000).map(factor =>
		sizeDensity(
			{...measure, mean: 100 * factor, sd: 5 * factor},
			{kind: 'exact', mm: 90, uncertaintyMm: 1},
			possibleMm,
		),
	);
	const expected = fine.reduce((sum, one) => sum + one, 0) / fine.length;
	expect(short(90, 'dry')).toBeCloseTo(expected, 3);
});

test('shares of all shortened sizes add up to one', () => {
	for (const because of [['dry'], ['aprons'], ['dry', 'aprons'], ['sides']] as const) {
		let sum = 0;
		for (let mm = 20; mm < 200; mm += 0.5) sum += short(mm, ...because) * 0.5;
		expect(sum, because.join()).toBeCloseTo(1, 6);
	}
});

test('a case half as long as its kind is not explained by drying, by torn sides neither', () => {
	expect(short(50, 'dry')).toBeLessThan(1e-6);
	expect(short(50, 'sides')).toBeLessThan(1e-6);
});

test('large aprons explain two fifths, small ones a tenth, and aprons that nobody could judge anything between', () => {
	const large = {...taxon, largeAprons: true};
	expect([factorOf(large, 'aprons'), factorOf(taxon, 'aprons')]).toEqual([
		[0.6, 0.9],
		[0.9, 1],
	]);
	expect(factorOf(large, 'perhaps-aprons')).toEqual([0.6, 1]);
	const sized = {kind: 'at-least', mm: 65, uncertaintyMm: 1, shortBy: ['aprons']} as const;
	expect(sizeShare(large, {measure, sized, possibleMm})).toBeGreaterThan(short(65, 'aprons') * 1000);
});

test('where nothing was published every possible size fits alike, and a bound without a reason leaves the upper tail', () => {
	const sized = {kind: 'at-least', mm: 90, uncertaintyMm: 1, shortBy: ['dry']} as const;
	expect(sizeShare(taxon, {measure: undefined, sized, possibleMm})).toBeCloseTo(1 / 280, 12);
	expect(flatShare(possibleMm, {kind: 'at-least', mm: 160, uncertaintyMm: 1})).toBeCloseTo(0.5, 12);
	expect(
		sizeShare(taxon, {measure, sized: {kind: 'at-least', mm: 100, uncertaintyMm: 1}, possibleMm}),
	).toBeCloseTo(0.5, 6);
});
