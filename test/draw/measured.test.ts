import {expect, test} from 'vitest';
import {drawMarks} from '../../src/draw/measured.ts';

const size = {widthPx: 1000, heightPx: 800};
const length = {
	mm: 66.2,
	uncertaintyMm: 0.8,
	line: [
		[560, 400],
		[960, 400],
	],
} as const;

/** Plates as left, top, width and height. */
function platesIn(svg: string): readonly (readonly number[])[] {
	return [...svg.matchAll(/<rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"/g)].map(
		([, ...numbers]) => numbers.map(Number),
	);
}

test('a number stands beyond the end that has room for it, inside the photo and off the line', () => {
	const [plate = []] = platesIn(drawMarks({lengths: [length], title: 'x'}, size));
	const [left = 0, , wide = 0] = plate;
	expect(left).toBeGreaterThanOrEqual(0);
	expect(left + wide).toBeLessThan(560);
});

test('the outline lies under the lines, and what was not measured has a question mark of its own', () => {
	const outline = [
		[500, 300],
		[900, 300],
		[900, 500],
	] as const;
	const svg = drawMarks({lengths: [length], outline, unsure: [[100, 700]], title: 'x'}, size);
	const bare = drawMarks({lengths: [length], title: 'x'}, size);
	expect(svg.indexOf('M500 300L900 300L900 500Z')).toBeGreaterThan(0);
	expect(svg.indexOf('M500 300')).toBeLessThan(svg.indexOf('M560 400'));
	expect(platesIn(svg)).toHaveLength(platesIn(bare).length + 1);
});

test('two lengths are drawn with a plate each', () => {
	const second = {
		...length,
		mm: 71,
		line: [
			[300, 600],
			[700, 600],
		],
	} as const;
	const svg = drawMarks({lengths: [length, second], title: 'A & B'}, size);
	expect(platesIn(svg)).toHaveLength(2);
	expect(svg).toContain('<title>A &amp; B</title>');
});
