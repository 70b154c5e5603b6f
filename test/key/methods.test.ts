import {join} from 'node:path';
import {expect, test} from 'vitest';
import type {Conclusion} from '../../src/key/conclude.ts';
import {type Ranked, somethingElse} from '../../src/key/evidence.ts';
import {exactRanking} from '../../src/key/exact-ranking.ts';
import {allSaid, comparer, firstSaid, methodNames, nearestByLength} from '../../src/key/methods.ts';
import {drawFind, type SimulatedFind, sharesOf} from '../../src/key/model.ts';
import type {Named} from '../../src/key/name.ts';
import {nothingObserved, type Observed} from '../../src/key/observed.ts';
import {between, seeded} from '../../src/key/random.ts';
import {readRegion} from '../../src/key/region.ts';
import {sizeTable} from '../../src/key/size-table.ts';
import {typicalSpecimens} from '../../src/key/specimen.ts';
import {followStrictly} from '../../src/key/strict-key.ts';

const region = readRegion(join(import.meta.dirname, '../../flows'), 'british-isles');
const taxa = Object.entries(region.profiles.taxa);
const sized = (mm: number, kind: 'exact' | 'at-least' = 'exact') => ({kind, mm, uncertaintyMm: 1});
/** Always the first or always the last of what may be guessed. */
const firstPick = () => 0;
const lastPick = () => 1 - 2 ** -32;

function typical(id: string, more: Partial<Observed> = {}): Observed {
	const taxon = region.profiles.taxa[id];
	if (!taxon) throw new Error(`Expected a profile of ${id}`);
	const {seen, lengthMm = 0, widthMm = 0} = typicalSpecimens(taxon).middle;
	return {seen, length: sized(lengthMm), width: sized(widthMm), lost: [], ...more};
}

test.each(taxa.map(([id]) => id))('the strict key leads a middling specimen of %s to its name', id => {
	expect(followStrictly(region, typical(id), firstPick).name).toBe(id);
});

test('the strict key asks once for each thing on its one way', () => {
	const {asked} = followStrictly(region, typical('raja-clavata'), firstPick);
	expect(asked).toEqual(['outline', 'keel', 'taper']);
});

test('the strict key guesses where a state cannot be told', () => {
	const {seen} = typical('raja-clavata');
	const unsure = typical('raja-clavata', {seen: {...seen, outline: 'cant-tell'}, length: sized(60)});
	expect(followStrictly(region, unsure, firstPick).name).toBe('galeus-melastomus');
	expect(followStrictly(region, unsure, lastPick).name).toBe('raja-clavata');
});

test('the strict key guesses where a part is lost and does not count it as asked', () => {
	const {seen} = typical('raja-clavata');
	const worn = typical('raja-clavata', {
		seen: {...seen, keel: 'cant-tell', edge: 'cant-tell'},
		lost: ['sides'],
	});
	const first = followStrictly(region, worn, firstPick);
	expect(first).toEqual({name: 'raja-clavata', asked: ['outline', 'taper']});
	expect(followStrictly(region, worn, lastPick).name).not.toBe('raja-clavata');
});

test('the strict key guesses where a length lies across a border, and reads a lower bound at its face', () => {
	// 67 mm is a border of the key; 66.5 mm, give or take 1 mm, lies across it.
	const across = typical('amblyraja-radiata', {length: sized(66.5)});
	expect(followStrictly(region, across, firstPick).name).toBe('amblyraja-radiata');
	expect(followStrictly(region, across, lastPick).name).not.toBe('amblyraja-radiata');
	const atLeast = typical('amblyraja-radiata', {length: sized(60, 'at-least')});
	expect(followStrictly(region, atLeast, lastPick).name).toBe('amblyraja-radiata');
	const unknown = typical('amblyraja-radiata', {length: {kind: 'unknown'}});
	expect(followStrictly(region, unknown, lastPick).name).not.toBe('amblyraja-radiata');
});

test('the nearest length is that of the published middle, and a guess where nothing was measured', () => {
	// Published means: 201.4 mm and 106.4 mm (gordon2016, p. 261 and 272-273).
	expect(nearestByLength(region, {...nothingObserved, length: sized(200)}, firstPick)).toBe(
		'dipturus-intermedius',
	);
	expect(nearestByLength(region, {...nothingObserved, length: sized(106)}, firstPick)).toBe(
		'scyliorhinus-stellaris',
	);
	expect(nearestByLength(region, nothingObserved, firstPick)).toBe(taxa[0]?.[0]);
	expect(nearestByLength(region, nothingObserved, lastPick)).toBe(taxa.at(-1)?.[0]);
});

const ranked = (...shares: readonly (readonly [string, number])[]): readonly Ranked[] =>
	shares.map(([taxon, probability]) => ({taxon, probability}));
const named = (ranking: readonly Ranked[], said: Partial<Conclusion>): Named => ({
	asked: [],
	leaves: [],
	observed: nothingObserved,
	ranking,
	conclusion: {sure: 'shortlist', names: [], also: [], elsePossible: false, ...said},
});

test('what is possible beside the names counts as said, and something else where it is given a word or nothing is named', () => {
	const ranking = ranked(['a', 0.9], ['b', 0.1]);
	const [names, also] = [ranking.slice(0, 1), ranking.slice(1)];
	expect(allSaid(named(ranking, {names, also}))).toEqual(['a', 'b']);
	expect(allSaid(named(ranking, {names, elsePossible: true}))).toEqual(['a', somethingElse]);
	expect(allSaid(named(ranking, {sure: 'unknown', also}))).toEqual(['b', somethingElse]);
	expect([firstSaid(named(ranking, {names, also})), firstSaid(named(ranking, {}))]).toEqual([
		'a',
		somethingElse,
	]);
});

test.each([
	{isDry: false, lost: []},
	{isDry: true, lost: ['aprons']},
	{isDry: true, lost: ['sides']},
])(
	'all pairs of readings of each kind sum to 1 ($isDry, $lost)',
	shrunk => {
		const [low, high] = region.key.possibleMm.length;
		const [narrow, wide] = region.key.possibleMm.width;
		for (const id of [somethingElse, 'raja-brachyura', 'galeus-melastomus']) {
			const chance = sizeTable(region, id, shrunk);
			let [pairs, lengths] = [0, 0];
			for (let length = low; length <= high; length++) {
				lengths += chance({length, width: undefined});
				for (let width = narrow; width <= wide; width++) pairs += chance({length, width});
			}
			expect(pairs).toBeCloseTo(1, 6);
			expect(lengths).toBeCloseTo(1, 6);
			expect(chance({length: undefined, width: undefined})).toBe(1);
		}
	},
	60_000,
);

/** Finds drawn as everywhere, but sorted by what was read. */
function drawn(count: number, seed: number): readonly SimulatedFind[] {
	const pick = seeded(seed);
	return Array.from({length: count}, () =>
		drawFind(region, pick, between(pick, [0, 1]) < 0.5 ? 'worn' : 'broken'),
	);
}

test('readings come as often as the summed chances say', () => {
	const id = 'raja-brachyura';
	const own = drawn(60_000, 4).filter(({taxon, readMm}) => taxon === id && readMm);
	for (const isDry of [false, true]) {
		const same = own.filter(
			find => find.isDry === isDry && !find.lost.includes('sides') && find.lost.includes('aprons'),
		);
		const chance = sizeTable(region, id, {isDry, lost: ['aprons']});
		for (const [from, to] of [
			[60, 69],
			[70, 79],
			[80, 99],
		] as const) {
			let share = 0;
			for (let length = from; length <= to; length++) share += chance({length, width: undefined});
			const seen =
				same.filter(({readMm}) => readMm && readMm.length >= from && readMm.length <= to).length /
				same.length;
			const error = Math.sqrt((share * (1 - share)) / same.length);
			expect(Math.abs(seen - share), `${from} to ${to} mm, ${isDry}`).toBeLessThan(4 * error);
		}
	}
}, 60_000);

test('before anything is answered the exact ranking is how often each kind comes', () => {
	const ranking = exactRanking(region)(nothingObserved, false);
	for (const [taxon, share] of sharesOf(region)) {
		expect(ranking.find(entry => entry.taxon === taxon)?.probability).toBeCloseTo(share, 12);
	}
});

test('one answer is weighed as by hand', () => {
	// Bayes' rule: share × (0.9 × state + 0.1 × (1 − state)) for a character with two states and a slip in ten.
	const character = 'net';
	expect(region.key.characters[character]?.error).toBe(0.1);
	const weights = sharesOf(region).map(([taxon, share]) => {
		const state = region.profiles.taxa[taxon]?.states[character]?.['net'] ?? 0.5;
		return [taxon, share * (0.9 * state + 0.1 * (1 - state))] as const;
	});
	const total = weights.reduce((sum, [, weight]) => sum + weight, 0);
	const ranking = exactRanking(region)({...nothingObserved, seen: {[character]: 'net'}}, false);
	for (const [taxon, weight] of weights) {
		expect(ranking.find(entry => entry.taxon === taxon)?.probability).toBeCloseTo(weight / total, 12);
	}
});

test('the best possible is right as often as it says, and no other method is right more often', () => {
	const compare = comparer(region, seeded(11));
	const finds = drawn(1500, 10);
	const compared = finds.map(compare);
	const right = (of: (index: number) => string | undefined) =>
		finds.filter(({taxon}, index) => of(index) === taxon).length / finds.length;
	const best = right(index => compared[index]?.firsts.best);
	const said = compared.reduce((sum, {best: [top]}) => sum + (top?.probability ?? 0), 0) / finds.length;
	expect(Math.abs(best - said)).toBeLessThan(4 * Math.sqrt((best * (1 - best)) / finds.length));
	for (const method of methodNames) {
		// Chance may favour another by a little.
		expect(
			right(index => compared[index]?.firsts[method]),
			method,
		).toBeLessThan(best + 0.02);
	}
	expect(right(index => compared[index]?.firsts.ours)).toBeGreaterThan(
		right(index => compared[index]?.firsts.strict),
	);
	expect(finds.slice(0, 50).map(comparer(region, seeded(11)))).toEqual(compared.slice(0, 50));
}, 120_000);
