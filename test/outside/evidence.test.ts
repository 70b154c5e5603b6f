import {expect, test} from 'vitest';
import {rank} from '../../src/key/evidence.ts';
import {nothingObserved} from '../../src/key/observed.ts';
import {keySchema, profilesSchema, type Region} from '../../src/key/region.ts';
import {upperTail} from '../../src/key/size-share.ts';

/**
 * P(x), the share of the standard normal distribution up to x: Abramowitz & Stegun 1964, Handbook of
 * Mathematical Functions, table 26.1 (pages from memory: 966-972). Typed from memory to ten places and
 * compared with an integration of the density by Simpson's rule.
 */
const normalTable: readonly (readonly [x: number, share: number])[] = [
	[0, 0.5],
	[0.5, 0.6914624613],
	[0.8, 0.7881446014],
	[1, 0.8413447461],
	[1.2, 0.8849303298],
	[1.5, 0.9331927987],
	[1.96, 0.9750021049],
	[2, 0.9772498681],
	[2.5, 0.9937903347],
	[3, 0.998650102],
	[4, 0.9999683288],
];

test.each(normalTable)('the upper tail at %s agrees with the published table on both sides', (x, share) => {
	// 7.1.26 of the same book promises 1.5e-7 for the error function, half of it for the tail.
	expect(Math.abs(upperTail(x) - (1 - share))).toBeLessThan(7.5e-8);
	expect(Math.abs(upperTail(-x) - share)).toBeLessThan(7.5e-8);
});

test('the upper tail never rises and stays a probability', () => {
	const tails = Array.from({length: 161}, (_, index) => upperTail(index / 10 - 8));
	for (const [index, tail] of tails.entries()) {
		expect(tail).toBeGreaterThanOrEqual(0);
		expect(tail).toBeLessThanOrEqual(1);
		expect(tail).toBeLessThanOrEqual(tails[index - 1] ?? 1);
	}
});

/**
 * Two made-up species and the arithmetic of Bayes' rule by hand.
 *
 * alpha is found three times as often as beta: priors 3/4 and 1/4. Lengths 60 and 70 mm, both with a
 * spread of 3 mm; the measurement is 66 mm, give or take 4 mm, so both spread to √(3² + 4²) = 5 mm.
 * The rim is seen blunt; it is blunt in 0.1 of alpha and 0.8 of beta, and people slip once in ten times:
 *   P(seen blunt | alpha) = 0.9 × 0.1 + 0.1 × 0.9 = 0.18
 *   P(seen blunt | beta)  = 0.9 × 0.8 + 0.1 × 0.2 = 0.74
 * The bell curves at 66 mm, without the factor 1/(5 √2π) that both share:
 *   alpha  z = (66 − 60)/5 = 1.2    e^(−0.72) = 0.486752
 *   beta   z = (66 − 70)/5 = −0.8   e^(−0.32) = 0.726149
 */
function twoSpecies(somethingElse: number): Region {
	const taxon = (mean: number, howCommon: string, blunt: number) => ({
		...{scientificName: 'Made up', authorship: 'Nobody', family: 'Nobody', rank: 'species', howCommon},
		lengthMm: {range: [mean - 6, mean + 6], mean, sd: 3, source: 'nobody'},
		widthMm: {range: [20, 40], source: 'nobody'},
		states: {rim: {blunt, sharp: 1 - blunt}},
		described: {source: 'nobody'},
		fact: {source: 'nobody'},
	});
	return {
		id: 'made-up',
		folder: '',
		version: '',
		key: keySchema.parse({
			begins: 'rim',
			possibleMm: {length: [20, 300], width: [10, 180]},
			characters: {rim: {needs: [], states: ['blunt', 'sharp'], error: 0.1}},
			questions: {rim: {look: 'rim', options: {blunt: {leads: 'beta'}, sharp: {leads: 'alpha'}}}},
			moved: [],
			howCommon: {often: 3, seldom: 1},
			somethingElse,
		}),
		profiles: profilesSchema.parse({
			sources: {nobody: {citation: 'Nobody'}},
			taxa: {alpha: taxon(60, 'often', 0.1), beta: taxon(70, 'seldom', 0.8)},
		}),
	};
}

const length = {kind: 'exact', mm: 66, uncertaintyMm: 4} as const;
const blunt = {...nothingObserved, length, seen: {rim: 'blunt'}};

function shares(region: Region, observed: Parameters<typeof rank>[1]): Readonly<Record<string, number>> {
	return Object.fromEntries(rank(region, observed).map(({taxon, probability}) => [taxon, probability]));
}

test('two species are weighed as by hand', () => {
	// alpha: 0.75 × 0.18 × 0.486752 = 0.0657115, beta: 0.25 × 0.74 × 0.726149 = 0.1343376
	// alpha: 0.0657115 / 0.2000491 = 0.328477, beta: 0.671523
	const {alpha, beta, 'something-else': other} = shares(twoSpecies(0), blunt);
	expect(alpha).toBeCloseTo(0.328477, 5);
	expect(beta).toBeCloseTo(0.671523, 5);
	expect(other).toBe(0);
});

test('something else is weighed as by hand', () => {
	// Both species as above, times 0.98 and 1/(5 √2π) = 0.0797885:
	// alpha 0.00513822, beta 0.01050423. Something else: 0.02 × 1/2 (two states) × 1/280 mm = 0.0000357143
	// Sum 0.01567816; shares 0.327731, 0.669991 and 0.002278
	const {alpha, beta, 'something-else': other} = shares(twoSpecies(0.02), blunt);
	expect(alpha).toBeCloseTo(0.327731, 4);
	expect(beta).toBeCloseTo(0.669991, 4);
	expect(other).toBeCloseTo(0.002278, 5);
});

test('a lower bound is weighed by the tails of the published table', () => {
	// Table 26.1: P(1.2) = 0.884930, P(0.8) = 0.788145.
	// alpha: 0.75 × (1 − 0.884930) = 0.0863025, beta: 0.25 × 0.788145 = 0.1970363; alpha's share 0.304588
	const {alpha} = shares(twoSpecies(0), {...nothingObserved, length: {...length, kind: 'at-least'}});
	expect(alpha).toBeCloseTo(0.304588, 5);
});
