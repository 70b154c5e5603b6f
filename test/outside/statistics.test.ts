import {expect, test} from 'vitest';
import {binsOf, brierOf, calibrationError} from '../../src/cli/proof-figures.ts';
import {exactRanking} from '../../src/key/exact-ranking.ts';
import {nothingObserved} from '../../src/key/observed.ts';
import {keySchema, profilesSchema, type Region} from '../../src/key/region.ts';
import {sizeDensity, spreadOf} from '../../src/key/size-share.ts';

/**
 * Z(x), the density of the standard normal distribution: Abramowitz & Stegun 1964, Handbook of
 * Mathematical Functions, table 26.1. From memory to ten places; each is e^(−x²/2) / √(2π).
 */
const densities: readonly (readonly [x: number, density: number])[] = [
	[0, 0.3989422804],
	[0.5, 0.3520653268],
	[1, 0.2419707245],
	[1.5, 0.1295175957],
	[2, 0.0539909665],
	[2.5, 0.0175283005],
	[3, 0.0044318484],
];
const possible = [20, 300] as const;

test.each(densities)(
	'the density of a length %s spreads from the middle agrees with the published table',
	(x, density) => {
		// A spread of 3 mm and an uncertainty of 4 mm make one of 5 mm, and the density a fifth of the table's.
		const measure = {range: [54, 66] as [number, number], mean: 60, sd: 3, source: 'nobody'};
		const at = (mm: number) => sizeDensity(measure, {kind: 'exact', mm, uncertaintyMm: 4}, possible);
		expect(at(60 + 5 * x) * 5).toBeCloseTo(density, 9);
		expect(at(60 - 5 * x) * 5).toBeCloseTo(density, 9);
	},
);

test('a middle and a spread that nobody published are those of the range', () => {
	// Two spreads to either side hold 95.45 in 100 of a normal curve (table 26.1: 2 × 0.9772498681 − 1).
	const {mean, sd} = spreadOf({range: [40, 80], source: 'nobody'});
	expect([mean - 2 * sd, mean + 2 * sd]).toEqual([40, 80]);
});

/**
 * The breast screening example of Eddy 1982 (Probabilistic reasoning in clinical medicine, in Kahneman,
 * Slovic & Tversky: Judgment under uncertainty), from memory as it is widely told: 1 in 100 has the
 * disease, 79.2 in 100 of these test positive, and 9.6 in 100 of the others. A positive test means
 *   0.01 × 0.792 / (0.01 × 0.792 + 0.99 × 0.096) = 0.00792 / 0.10296 = 0.0769, not quite 8 in 100.
 */
function screening(): Region {
	const taxon = (howCommon: string, positive: number) => ({
		...{scientificName: 'Made up', authorship: 'Nobody', family: 'Nobody', rank: 'species', howCommon},
		states: {sign: {positive, negative: 1 - positive}},
		described: {source: 'nobody'},
		fact: {source: 'nobody'},
	});
	return {
		id: 'made-up',
		folder: '',
		version: '',
		key: keySchema.parse({
			begins: 'sign',
			possibleMm: {length: [...possible], width: [10, 180]},
			characters: {sign: {needs: [], states: ['positive', 'negative'], error: 0}},
			questions: {sign: {look: 'sign', options: {positive: {leads: 'ill'}, negative: {leads: 'well'}}}},
			moved: [],
			howCommon: {often: 99, seldom: 1},
			somethingElse: 0,
		}),
		profiles: profilesSchema.parse({
			sources: {nobody: {citation: 'Nobody'}},
			taxa: {ill: taxon('seldom', 0.792), well: taxon('often', 0.096)},
		}),
	};
}

test('the exact ranking gives the published answer to a published question', () => {
	const ranking = exactRanking(screening())({...nothingObserved, seen: {sign: 'positive'}}, false);
	const ill = ranking.find(({taxon}) => taxon === 'ill')?.probability;
	expect(ill).toBeCloseTo(0.00792 / 0.10296, 12);
	expect(ill).toBeCloseTo(0.0769, 4);
});

test('the Brier score is that of its definition', () => {
	/*
	 * Brier 1950 (Monthly Weather Review 78: 1-3) sums over all classes. Three classes at 0.7, 0.2 and 0.1:
	 *   the first true:  0.3² + 0.2² + 0.1² = 0.09 + 0.04 + 0.01 = 0.14
	 *   the third true:  0.7² + 0.2² + 0.9² = 0.49 + 0.04 + 0.81 = 1.34
	 */
	const ranking = [
		{taxon: 'a', probability: 0.7},
		{taxon: 'b', probability: 0.2},
		{taxon: 'c', probability: 0.1},
	];
	expect(brierOf(ranking, 'a')).toBeCloseTo(0.14, 12);
	expect(brierOf(ranking, 'c')).toBeCloseTo(1.34, 12);
});

test('the expected calibration error is that of its definition', () => {
	/*
	 * Ten bins of equal width (Naeini, Cooper & Hauskrecht 2015, AAAI: Obtaining well calibrated probabilities
	 * using Bayesian binning; from memory). Ten claims at 0.8, seven right, and ten at 0.6, seven right:
	 *   10/20 × |0.8 − 0.7| + 10/20 × |0.6 − 0.7| = 0.05 + 0.05 = 0.1
	 */
	const claims = [0.8, 0.6].flatMap(probability =>
		Array.from({length: 10}, (_, index) => ({probability, isRight: index < 7})),
	);
	expect(calibrationError(binsOf(claims))).toBeCloseTo(0.1, 12);
});
