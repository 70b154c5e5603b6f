import {readFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import opentype from 'opentype.js';
import {expect, test} from 'vitest';
import {drawWords} from '../../src/draw/lettering.ts';

test('letters are whole wherever they stand', () => {
	const faulty = Array.from({length: 3000}, (_, index) => index * 1.3 + 0.1 * (index % 7)).filter(
		y =>
			!/^<path d="[-Mmlqcz0-9. ]+" fill="#[0-9a-f]{6}"\/>$/.test(drawWords('Kind 8', {size: 38, x: 24, y})),
	);
	expect(faulty).toEqual([]);
});

test('the points of letters lie where the font puts them, without an error that adds up', () => {
	const bytes = readFileSync(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'));
	const font = opentype.parse(new Uint8Array(bytes).buffer, {lowMemory: true});
	for (const letter of ['&', '8', 'g', 'W', '%']) {
		const own = drawWords(letter, {size: 34, x: 100, y: 200});
		const theirs = font.charToGlyph(letter).getPath(100, 200, 34).commands;
		const expected = theirs.flatMap(({type, x, y}) =>
			type === 'Z' || x === undefined || y === undefined ? [] : [[x, y]],
		);
		const got = endsOf(own);
		expect(got).toHaveLength(expected.length);
		for (const [index, [x = 0, y = 0]] of expected.entries()) {
			expect(Math.abs((got[index]?.[0] ?? 0) - x)).toBeLessThan(0.02);
			expect(Math.abs((got[index]?.[1] ?? 0) - y)).toBeLessThan(0.02);
		}
	}
});

/** Where each step of a path ends. */
function endsOf(svg: string): readonly (readonly [number, number])[] {
	const [, d = ''] = /d="([^"]*)"/.exec(svg) ?? [];
	let [x, y] = [0, 0];
	let begun: readonly [number, number] = [0, 0];
	return [...d.matchAll(/([Mmlqcz])([^Mmlqcz]*)/g)].flatMap(([, type = '', rest = '']) => {
		if (type === 'z') {
			[x, y] = begun;
			return [];
		}
		const numbers = rest.trim().split(/\s+/).map(Number);
		const [across = 0, down = 0] = numbers.slice(-2);
		[x, y] = type === 'M' ? [across, down] : [x + across, y + down];
		if (type.toLowerCase() === 'm') begun = [x, y];
		return [[x, y] as const];
	});
}
