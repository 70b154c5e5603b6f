import {expect, test} from 'vitest';
import {between, byShare, normal, oneOf, seeded, xoshiro} from '../../src/key/random.ts';

test('the generator gives the published numbers', () => {
	// Blackman & Vigna 2018 define xoshiro128**; from the words 1, 2, 3, 4 the first two by hand:
	//   rotl(2 × 5, 7) × 9 = 1280 × 9 = 11520; then the second word is 2 ^ (3 ^ 1) = 0, which gives 0.
	// The others are those of the authors' own program, xoshiro128starstar.c 1.1, as test vectors hand them on.
	const next = xoshiro([1, 2, 3, 4]);
	expect(Array.from({length: 5}, next)).toEqual([11520, 0, 5927040, 70819200, 2031721883]);
});

test('the same seed gives the same run, another seed another', () => {
	const run = (seed: number) => Array.from({length: 20}, seeded(seed));
	expect(run(1)).toEqual(run(1));
	expect(run(1)).not.toEqual(run(2));
	expect(new Set([...run(0), ...run(1), ...run(2)]).size).toBe(60);
});

const count = 20_000;

test('numbers lie from 0 to below 1 and fill every tenth alike', () => {
	const tenths = new Array<number>(10).fill(0);
	const pick = seeded(7);
	for (let index = 0; index < count; index++) {
		const value = pick();
		expect(value >= 0 && value < 1).toBe(true);
		tenths[Math.floor(value * 10)] = (tenths[Math.floor(value * 10)] ?? 0) + 1;
	}
	// Four standard errors of a share of 0.1.
	for (const tenth of tenths) expect(Math.abs(tenth / count - 0.1)).toBeLessThan(4 * Math.sqrt(0.09 / count));
});

test('normal numbers have a mean of 0, a spread of 1 and the published tails', () => {
	const pick = seeded(8);
	const values = Array.from({length: count}, () => normal(pick));
	const mean = values.reduce((sum, value) => sum + value, 0) / count;
	const square = values.reduce((sum, value) => sum + value * value, 0) / count;
	expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(count));
	expect(Math.abs(square - 1)).toBeLessThan(4 * Math.sqrt(2 / count));
	// Abramowitz & Stegun 1964, table 26.1: P(1.96) = 0.97500.
	const beyond = values.filter(value => value > 1.96).length / count;
	expect(Math.abs(beyond - 0.025)).toBeLessThan(4 * Math.sqrt((0.025 * 0.975) / count));
});

test('a choice follows its shares, and a name with a share of 0 is never chosen', () => {
	const pick = seeded(9);
	const chosen = Array.from({length: count}, () =>
		byShare(pick, [
			['often', 3],
			['never', 0],
			['seldom', 1],
		]),
	);
	expect(chosen).not.toContain('never');
	const often = chosen.filter(name => name === 'often').length / count;
	expect(Math.abs(often - 0.75)).toBeLessThan(4 * Math.sqrt((0.75 * 0.25) / count));
});

test('a choice at the very end of the shares is the last that has one', () => {
	const almostOne = () => 1 - 2 ** -32;
	const shares = [
		['a', 0.1],
		['b', 0.2],
		['c', 0],
	] as const;
	expect(byShare(almostOne, shares)).toBe('b');
	expect(byShare(() => 0, shares)).toBe('a');
	expect(() => byShare(almostOne, [['a', 0]])).toThrow('Expected a name with a share above 0');
});

test('one of nothing cannot be chosen', () => {
	expect(() => oneOf(() => 0, [])).toThrow('Expected a list with something in it');
	expect(oneOf(() => 0.99, ['a', 'b'])).toBe('b');
	expect(between(() => 0.25, [10, 20])).toBe(12.5);
});
