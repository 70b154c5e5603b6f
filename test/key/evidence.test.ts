import {join} from 'node:path';
import fc from 'fast-check';
import {expect, test} from 'vitest';
import {type Ranked, rank, somethingElse, stateShare} from '../../src/key/evidence.ts';
import {cantTell, nothingObserved, type Observed} from '../../src/key/observed.ts';
import {readRegion} from '../../src/key/region.ts';
import {spreadOf} from '../../src/key/size-share.ts';

const region = readRegion(join(import.meta.dirname, '../../flows'), 'british-isles');
const {key, profiles} = region;
const taxa = Object.entries(profiles.taxa);
/** The species with the longest cases of the region. */
const largest = taxa.toSorted(
	([, one], [, other]) => (other.lengthMm?.range[1] ?? 0) - (one.lengthMm?.range[1] ?? 0),
)[0]?.[0];

const withLength = (kind: 'exact' | 'at-least', mm: number, uncertaintyMm = 1): Observed => ({
	...nothingObserved,
	length: {kind, mm, uncertaintyMm},
});
const shareOf = (ranking: readonly Ranked[], taxon: string | undefined) =>
	ranking.find(entry => entry.taxon === taxon)?.probability ?? Number.NaN;

const sizeArbitrary = ([low, high]: readonly [number, number]) =>
	fc.option(
		fc.record({
			kind: fc.constantFrom('exact' as const, 'at-least' as const),
			mm: fc.double({min: low, max: high - 0.1, noNaN: true}),
			uncertaintyMm: fc.double({min: 0, max: 15, noNaN: true}),
		}),
		{nil: undefined},
	);

const observedArbitrary: fc.Arbitrary<Observed> = fc.record({
	seen: fc
		.record(
			Object.fromEntries(
				Object.entries(key.characters).map(([id, {states}]) => [
					id,
					fc.constantFrom(undefined, cantTell, ...states),
				]),
			),
		)
		.map(answers =>
			Object.fromEntries(
				Object.entries(answers).flatMap(([id, state]) => (state === undefined ? [] : [[id, state]])),
			),
		),
	length: sizeArbitrary(key.possibleMm.length),
	width: sizeArbitrary(key.possibleMm.width),
	lost: fc.constant([]),
});

test('whatever is observed, the probabilities sum to 1 and stand best first', () => {
	fc.assert(
		fc.property(observedArbitrary, observed => {
			const ranking = rank(region, observed);
			const sum = ranking.reduce((total, {probability}) => total + probability, 0);
			expect(Math.abs(sum - 1)).toBeLessThan(1e-9);
			const sorted = ranking.toSorted((one, other) => other.probability - one.probability);
			expect(ranking.map(({probability}) => probability)).toEqual(sorted.map(({probability}) => probability));
			expect(ranking.map(({taxon}) => taxon).sort()).toEqual(
				[...taxa.map(([id]) => id), somethingElse].sort(),
			);
		}),
		{numRuns: 300},
	);
});

test('before anything is seen the ranking is what the profiles say of how common each taxon is', () => {
	const ranking = rank(region, nothingObserved);
	const weight = (id: string) => key.howCommon[profiles.taxa[id]?.howCommon ?? ''] ?? Number.NaN;
	const common = taxa.reduce((sum, [id]) => sum + weight(id), 0);
	for (const [id] of taxa) {
		expect(shareOf(ranking, id)).toBeCloseTo((weight(id) / common) * (1 - key.somethingElse), 12);
	}
	expect(shareOf(ranking, somethingElse)).toBeCloseTo(key.somethingElse, 12);
});

test('an answer that cannot be told weighs nothing', () => {
	const seen = Object.fromEntries(Object.keys(key.characters).map(id => [id, cantTell]));
	expect(rank(region, {...nothingObserved, seen})).toEqual(rank(region, nothingObserved));
});

test('a size that could not be measured weighs nothing', () => {
	const unknown = {kind: 'unknown'} as const;
	expect(rank(region, {...nothingObserved, length: unknown, width: unknown})).toEqual(
		rank(region, nothingObserved),
	);
});

test.each([20, 25, 290, 300, 1000])('something else wins for a case of exactly %s mm', mm => {
	expect(rank(region, withLength('exact', mm))[0]?.taxon).toBe(somethingElse);
});

test('something else wins for a case that is far too wide for its length', () => {
	const observed = {...withLength('exact', 60), width: {kind: 'exact', mm: 150, uncertaintyMm: 1} as const};
	expect(rank(region, observed)[0]?.taxon).toBe(somethingElse);
});

test('a lower bound never makes the largest species less likely', () => {
	const prior = shareOf(rank(region, nothingObserved), largest);
	for (let mm = 20; mm <= 220; mm += 5) {
		// The tail is an approximation that is off by less than 1.5e-7.
		expect(shareOf(rank(region, withLength('at-least', mm)), largest), `${mm} mm`).toBeGreaterThan(
			prior - 1e-6,
		);
	}
});

test('up to its own smallest size, each larger lower bound makes the largest species more likely', () => {
	const smallest = profiles.taxa[largest ?? '']?.lengthMm?.range[0] ?? Number.NaN;
	let before = 0;
	for (let mm = 20; mm <= smallest; mm += 5) {
		const share = shareOf(rank(region, withLength('at-least', mm)), largest);
		expect(share, `${mm} mm`).toBeGreaterThan(before - 1e-6);
		before = share;
	}
	expect(before).toBeGreaterThan(0.1);
});

test('a short length rules out the largest species, the same length as a lower bound does not', () => {
	expect(shareOf(rank(region, withLength('exact', 60)), largest)).toBeLessThan(1e-6);
	const prior = shareOf(rank(region, nothingObserved), largest);
	expect(shareOf(rank(region, withLength('at-least', 60)), largest)).toBeGreaterThan(prior);
});

test('a measurement that is less sure moves the ranking less', () => {
	const at = (uncertaintyMm: number) =>
		shareOf(rank(region, withLength('exact', 62, uncertaintyMm)), largest);
	expect(at(1)).toBeLessThan(at(10));
	expect(at(10)).toBeLessThan(at(40));
});

test('the shares of what people report for a character sum to 1 for every taxon', () => {
	for (const [id, taxon] of taxa) {
		for (const [character, {states}] of Object.entries(key.characters)) {
			const sum = states.reduce((total, state) => total + stateShare(region, taxon, {character, state}), 0);
			expect(sum, `${character} of ${id}`).toBeCloseTo(1, 6);
		}
	}
});

test('a taxon that says nothing of a character has all its states alike', () => {
	const [, taxon] = taxa[0] ?? [];
	if (!taxon) throw new Error('Expected a taxon');
	const silent = {...taxon, states: {}};
	expect(stateShare(region, silent, {character: 'keel', state: 'blade'})).toBeCloseTo(0.5, 12);
});

test('a range without mean and spread is read as its middle and a quarter of its width', () => {
	expect(spreadOf({range: [40, 80], source: 'x'})).toEqual({mean: 60, sd: 10});
	expect(spreadOf({range: [40, 80], mean: 55, sd: 4, source: 'x'})).toEqual({mean: 55, sd: 4});
});
