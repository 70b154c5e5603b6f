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
