/** Our statistics against jstat 1.9.6, which nobody here wrote, and Bayes' rule against a textbook. */
import {join} from 'node:path';
import jstat from 'jstat';
import {expect, test} from 'vitest';
import {rank, somethingElse} from '../../src/key/evidence.ts';
import {nothingObserved} from '../../src/key/observed.ts';
import {
	keySchema,
	type Measure,
	profilesSchema,
	type Region,
	readRegion,
	type Taxon,
} from '../../src/key/region.ts';
import {sizeDensity, spreadOf, upperTail} from '../../src/key/size-share.ts';

const flows = join(import.meta.dirname, '../../flows');
const regions = ['british-isles', 'north-east-pacific', 'western-mediterranean'].map(id =>
	readRegion(flows, id),
);

/** Every published size of every region. */
const measures = regions.flatMap(({id, key, profiles}) =>
	Object.entries(profiles.taxa).flatMap(([taxon, {lengthMm, widthMm}]) =>
		[
			{name: `length of ${taxon} (${id})`, measure: lengthMm, possible: key.possibleMm.length},
			{name: `width of ${taxon} (${id})`, measure: widthMm, possible: key.possibleMm.width},
		].flatMap(({name, measure, possible}) => (measure ? [[name, measure, possible] as const] : [])),
	),
);

test('every size that is published in a region is held against the library', () => {
	// 13 + 10 + 17 kinds with sizes, each with a length and a width.
	expect(measures).toHaveLength(80);
});

// jstat.normal.pdf; only the order of the arithmetic may differ: a billionth of the value, or the smallest
// number there is.
test.each(measures)('the density of the %s is that of the library, wherever it is measured', (...row) => {
	const [, measure, possible] = row;
	const {mean, sd} = spreadOf(measure);
	for (let mm = possible[0]; mm <= possible[1]; mm += 1) {
		for (const uncertaintyMm of [0.5, 1, 5]) {
			const ours = sizeDensity(measure, {kind: 'exact', mm, uncertaintyMm}, possible);
			const theirs = jstat.normal.pdf(mm, mean, Math.sqrt(sd ** 2 + uncertaintyMm ** 2));
			expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(1e-9 * theirs + Number.MIN_VALUE);
		}
	}
});

// jstat.normal.cdf; Abramowitz & Stegun 7.1.26, which is ours, promises 1.5e-7 for the error function and half
// of it for a tail.
test('the upper tail is that of the library from eight spreads below to eight above', () => {
	for (let step = -800; step <= 800; step++) {
		const z = step / 100;
		expect(Math.abs(upperTail(z) - jstat.normal.cdf(-z, 0, 1))).toBeLessThan(7.5e-8);
	}
});

// The density of a mixture is the sum of its parts by their weights (the law of total probability): here a
// kind's bell curve and something else, alike over all possible sizes. Tolerance: a billionth.
test.each([
	[0.005, 40],
	[0.005, 62],
	[0.02, 60],
	[0.3, 95],
	[0.3, 250],
])(
	'of a mixture with %d of something else, the share of the kind at %d mm is that of the library',
	(...row) => {
		const [other, mm] = row;
		const lengthMm = {range: [54, 66], mean: 60, sd: 4, source: 'nobody'} satisfies Measure;
		const region = regionOf({
			shares: {only: {weight: 1, states: {positive: 1}}},
			states: ['positive', 'negative'],
			somethingElse: other,
			lengthMm,
		});
		const ranking = rank(region, {...nothingObserved, length: {kind: 'exact', mm, uncertaintyMm: 3}});
		const kind = (1 - other) * jstat.normal.pdf(mm, 60, 5);
		const rest = other * jstat.uniform.pdf(mm, 20, 300);
		expect(shareOf(ranking, 'only')).toBeCloseTo(kind / (kind + rest), 9);
		expect(shareOf(ranking, somethingElse)).toBeCloseTo(rest / (kind + rest), 9);
	},
);

/**
 * The doctor and three diseases of Grinstead & Snell 1997, Introduction to Probability, 2nd edition (American
 * Mathematical Society), section 4.1, the example on Bayes' formula; from memory: of 10,000 patients so many have
 * each disease and so many of these each result of two tests. What the memory is worth is proved by the sums.
 */
const patients = {
	first: {
		weight: 3215,
		states: {'plus-plus': 2110, 'plus-minus': 301, 'minus-plus': 704, 'minus-minus': 100},
	},
	second: {
		weight: 2125,
		states: {'plus-plus': 396, 'plus-minus': 132, 'minus-plus': 1187, 'minus-minus': 410},
	},
	third: {weight: 4660, states: {'plus-plus': 510, 'plus-minus': 3568, 'minus-plus': 73, 'minus-minus': 509}},
};

test('the counts of the textbook add up', () => {
	const diseases = Object.values(patients);
	expect(sum(diseases.map(({weight}) => weight))).toBe(10_000);
	for (const {weight, states} of diseases) expect(sum(Object.values(states))).toBe(weight);
});

// Its table of results, printed to three places; from memory for the first two rows, worked out from the counts
// for the others.
test.each([
	['plus-plus', {first: 0.7, second: 0.131, third: 0.169}],
	['plus-minus', {first: 0.075, second: 0.033, third: 0.892}],
	['minus-plus', {first: 0.358, second: 0.604, third: 0.037}],
	['minus-minus', {first: 0.098, second: 0.402, third: 0.5}],
] as const)('the ranking after the tests say %s is that of the textbook', (result, printed) => {
	const region = regionOf({shares: patients, states: Object.keys(patients.first.states), somethingElse: 0});
	const ranking = rank(region, {...nothingObserved, seen: {sign: result}});
	const tested = sum(Object.values(patients).map(({states}) => states[result]));
	for (const disease of ['first', 'second', 'third'] as const) {
		const share = shareOf(ranking, disease);
		expect(Math.abs(share - printed[disease])).toBeLessThan(0.0005);
		expect(share).toBeCloseTo(patients[disease].states[result] / tested, 12);
	}
	expect(shareOf(ranking, somethingElse)).toBe(0);
});

type MadeUp = {
	/** Of each kind its weight, and of its states the weights among each other. */
	readonly shares: Readonly<Record<string, {readonly weight: number; readonly states: Weights}>>;
	readonly states: readonly string[];
	readonly somethingElse: number;
	readonly lengthMm?: Measure;
};
type Weights = Readonly<Record<string, number>>;

/** A region with one sign that is seen without error. */
function regionOf({shares, states, somethingElse, lengthMm}: MadeUp): Region {
	const kinds = Object.keys(shares);
	const taxa = Object.entries(shares).map(([id, kind]) => [id, taxonOf(id, kind.states, lengthMm)] as const);
	const howCommon = Object.entries(shares).map(([id, {weight}]) => [`as-${id}`, weight] as const);
	const options = states.map((state, index) => [state, {leads: kinds[index] ?? kinds[0]}] as const);
	return {
		id: 'made-up',
		folder: '',
		version: '',
		key: keySchema.parse({
			begins: 'sign',
			possibleMm: {length: [20, 300], width: [10, 180]},
			characters: {sign: {needs: [], states, error: 0}},
			questions: {sign: {look: 'sign', options: Object.fromEntries(options)}},
			moved: [],
			howCommon: Object.fromEntries(howCommon),
			somethingElse,
		}),
		profiles: profilesSchema.parse({
			sources: {nobody: {citation: 'Nobody', fromMemory: true}},
			taxa: Object.fromEntries(taxa),
		}),
	};
}

function taxonOf(id: string, weights: Weights, lengthMm: Measure | undefined) {
	const all = sum(Object.values(weights));
	const shares = Object.entries(weights).map(([state, weight]) => [state, weight / all] as const);
	return {
		...{scientificName: 'Made up', authorship: 'Nobody', family: 'Nobody', rank: 'species'},
		...(lengthMm ? {lengthMm} : {}),
		howCommon: `as-${id}`,
		states: {sign: Object.fromEntries(shares)},
		described: {source: 'nobody'},
		fact: {source: 'nobody'},
	} satisfies Partial<Taxon>;
}

function sum(numbers: readonly number[]): number {
	return numbers.reduce((total, one) => total + one, 0);
}

function shareOf(ranking: ReturnType<typeof rank>, id: string): number {
	const found = ranking.find(({taxon}) => taxon === id);
	if (!found) throw new Error(`Expected "${id}" in the ranking`);
	return found.probability;
}
