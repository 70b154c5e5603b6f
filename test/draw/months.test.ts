import {join} from 'node:path';
import {expect, test} from 'vitest';
import {drawMonths, type Month} from '../../src/draw/months.ts';
import {readTexts} from '../../src/text/text.ts';

const say = readTexts([join(import.meta.dirname, '../../src/text')]).in('en');
const from = (year: number, month: number, many: number): readonly Month[] =>
	Array.from({length: many}, (_, index) => ({
		year: year + Math.floor((month - 1 + index) / 12),
		month: ((month - 1 + index) % 12) + 1,
	}));
const chart = (months: readonly Month[], ...rows: readonly {label: string; counts: readonly number[]}[]) =>
	drawMonths({heading: 'Season', months, rows, say});
const heights = (svg: string) =>
	[...svg.matchAll(/<rect x="[\d.]+" y="[\d.]+" width="[\d.]+" height="([\d.]+)" fill="#cf9a55"/g)].map(
		match => Number(match[1]),
	);

test('the bars of all rows are in one scale', () => {
	const {svg} = chart(from(2026, 10, 3), {label: 'a', counts: [40, 20, 0]}, {label: 'b', counts: [10, 0, 4]});
	expect(heights(svg)).toEqual([150, 75, 37.5, 15]);
});

test('a season may go over the new year, and words name the month with most finds', () => {
	const {alt, plain} = chart(from(2026, 11, 4), {label: 'All', counts: [1, 2, 7, 0]});
	expect(alt).toBe('Season. All: 10 cases month by month, most in January 2027, with 7.');
	expect(plain).toBe('Season\nAll\nNovember 2026: 1\nDecember 2026: 2\nJanuary 2027: 7\nFebruary 2027: 0');
});

test('a row without a find says so beside rows that have some', () => {
	const {alt} = chart(from(2026, 1, 2), {label: 'a', counts: [1, 0]}, {label: 'b', counts: [0, 0]});
	expect(alt).toBe('Season. a: one case, in January 2026. b: none.');
});

test('a season without any find says so', () => {
	expect(chart(from(2026, 1, 2), {label: 'a', counts: [0, 0]}).alt).toBe('Season: Nothing found yet.');
});

test('numbers too wide for their month stand on end', () => {
	const counts = [1200, ...Array.from({length: 11}, () => 3)];
	expect(chart(from(2026, 1, 12), {label: 'a', counts}).svg).toContain('rotate(-90)');
	expect(chart(from(2026, 1, 12), {label: 'a', counts: counts.map(() => 30)}).svg).not.toContain('rotate');
});

test.each([
	['no month', [], [1], 'Expected 1 to 12 months in a chart; got 0'],
	['thirteen months', from(2026, 1, 13), [], 'Expected 1 to 12 months in a chart; got 13'],
	[
		'a month left out',
		[...from(2026, 1, 1), ...from(2026, 3, 1)],
		[1, 1],
		'Expected months one after another; got month 3 of 2026 as number 2',
	],
	['a count too few', from(2026, 1, 3), [1, 1], 'Expected 3 counts of "a"; got 1, 1'],
	['half a case', from(2026, 1, 2), [1, 1.5], 'Expected 2 counts of "a"; got 1, 1.5'],
])('%s is refused', (_, months, counts, message) => {
	expect(() => chart(months, {label: 'a', counts})).toThrow(message);
});
