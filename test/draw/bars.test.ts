import {join} from 'node:path';
import {expect, test} from 'vitest';
import {type Bar, drawBars} from '../../src/draw/bars.ts';
import {readTexts} from '../../src/text/text.ts';

const say = readTexts([join(import.meta.dirname, '../../src/text')]).in('en');
const barsOf = (...bars: readonly Bar[]) => drawBars({heading: 'Tally', bars, say});
const widths = (svg: string) =>
	[...svg.matchAll(/<rect x="[\d.]+" y="[\d.]+" width="([\d.]+)" height="24"/g)].map(match =>
		Number(match[1]),
	);
const many = Array.from({length: 23}, (_, index) => ({label: `Kind ${index}`, count: 23 - index}));

test('the largest bar comes first and the others are in its scale', () => {
	const {svg, plain} = barsOf(
		{label: 'Few', count: 10},
		{label: 'Many', count: 40},
		{label: 'Some', count: 20},
	);
	const [many = 0, some = 0, few = 0] = widths(svg);
	expect(some / many).toBeCloseTo(0.5, 3);
	expect(few / many).toBeCloseTo(0.25, 3);
	expect(plain).toBe('Tally\nMany: 40\nSome: 20\nFew: 10');
});

test('kinds found equally often stand in the order of their names', () => {
	expect(barsOf({label: 'b', count: 1}, {label: 'É', count: 1}, {label: 'a', count: 1}).plain).toBe(
		'Tally\na: 1\nb: 1\nÉ: 1',
	);
});

test('of more than twenty kinds twenty are drawn, and how many more there are is said', () => {
	const {svg, plain, alt} = barsOf(...many);
	expect(widths(svg)).toHaveLength(20);
	expect(plain.split('\n')).toHaveLength(24);
	expect(alt).toBe('Tally. 276 cases of 23 kinds as bars, most first: Kind 0 with 23.');
	expect(barsOf(...many.slice(0, 20)).heightUnits).toBeLessThan(barsOf(...many).heightUnits);
});

test('the picture of twenty kinds is one that a chat takes', () => {
	const {widthUnits, heightUnits} = barsOf(...many);
	// The Bot API wants width and height of a photo within a ratio of 20 and 10000 pixels together (sendPhoto).
	expect(heightUnits / widthUnits).toBeLessThan(20);
	expect((1080 / widthUnits) * (heightUnits + widthUnits)).toBeLessThan(10_000);
});

test('no bar and no count passes the edge of the card', () => {
	const {svg, widthUnits} = barsOf({label: 'Many', count: 123_456}, {label: 'x'.repeat(20), count: 1});
	for (const match of svg.matchAll(/<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)" height="24"/g)) {
		expect(Number(match[1]) + Number(match[2])).toBeLessThan(widthUnits - 24);
	}
	const xs = [...svg.matchAll(/[MLQ ](-?[\d.]+) -?[\d.]+/g)].map(match => Number(match[1]));
	expect(Math.max(...xs)).toBeLessThan(widthUnits - 20);
});

test('a kind of which none was found is left out, and a tally of nothing says so', () => {
	expect(barsOf({label: 'a', count: 2}, {label: 'b', count: 0}).plain).toBe('Tally\na: 2');
	expect(barsOf({label: 'b', count: 0}).alt).toBe('Tally: Nothing found yet.');
});

test('a small drawing is fitted beside its bar', () => {
	const drawing = {svg: '<path d="M0 0"/>', box: {left: -20, right: 20, top: -30, bottom: 30}};
	expect(barsOf({label: 'a', count: 2, drawing}).svg).toMatch(
		/<svg x="24" y="[\d.]+" width="92" height="92" viewBox="-20 -30 40 60"><path d="M0 0"\/><\/svg>/,
	);
});
