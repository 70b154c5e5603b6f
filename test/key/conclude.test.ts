import {expect, test} from 'vitest';
import {conclude} from '../../src/key/conclude.ts';
import {type Ranked, somethingElse} from '../../src/key/evidence.ts';

const ranked = (...shares: readonly (readonly [string, number])[]): readonly Ranked[] =>
	shares.map(([taxon, probability]) => ({taxon, probability}));

test.each([
	[0.9, 'very-likely'],
	[0.89, 'likely'],
	[0.7, 'likely'],
	[0.69, 'shortlist'],
])('a best name at %s is said to be %s', (probability, sure) => {
	expect(conclude(ranked(['one', probability], ['two', 1 - probability]), []).sure).toBe(sure);
});

test('a shortlist stops once it holds 97.5 in 100, and never names something else', () => {
	const ranking = ranked(['one', 0.5], [somethingElse, 0.3], ['two', 0.15], ['three', 0.03], ['four', 0.02]);
	const {names, elsePossible} = conclude(ranking, []);
	expect(names.map(({taxon}) => taxon)).toEqual(['one', 'two', 'three']);
	expect(elsePossible).toBe(true);
});

test('beside a likely name stands what else is possible, until all that is said holds 97.5 in 100', () => {
	const ranking = ranked(['one', 0.92], ['two', 0.05], ['three', 0.02], [somethingElse, 0.01]);
	expect(conclude(ranking, ['one'])).toEqual({
		sure: 'very-likely',
		names: [ranking[0]],
		also: [ranking[1], ranking[2]],
		elsePossible: false,
	});
	expect(conclude(ranked(['one', 0.98], ['two', 0.02]), []).also).toEqual([]);
});

test('something else is possible from a tenth on, whatever the names hold', () => {
	expect(conclude(ranked(['one', 0.9], [somethingElse, 0.1]), []).elsePossible).toBe(true);
	expect(conclude(ranked(['one', 0.98], [somethingElse, 0.02]), []).elsePossible).toBe(false);
});

test('nothing is named where something else is the best, and what comes nearest stands beside it', () => {
	const ranking = ranked([somethingElse, 0.6], ['one', 0.4]);
	expect(conclude(ranking, [])).toEqual({
		sure: 'unknown',
		names: [],
		also: [ranking[1]],
		elsePossible: true,
	});
});

test('a key that led to another name makes a shortlist of both', () => {
	const ranking = ranked(['one', 0.98], ['two', 0.01], ['three', 0.01]);
	expect(conclude(ranking, ['three'])).toMatchObject({
		sure: 'shortlist',
		names: [ranking[0], ranking[2]],
		also: [],
	});
	expect(conclude(ranking, ['one']).sure).toBe('very-likely');
	expect(conclude(ranking, ['two', 'three', 'four', 'five']).sure).toBe('very-likely');
});

test('where something else ranks first the name the key led to is still said', () => {
	const ranking = ranked([somethingElse, 0.7], ['one', 0.3]);
	expect(conclude(ranking, ['one'])).toMatchObject({sure: 'shortlist', names: [ranking[1]]});
});
