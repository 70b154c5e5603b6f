import {expect, test} from 'vitest';
import {seeded} from '../../../src/key/random.ts';
import {makeShape} from './case-shape.ts';
import {distanceTo, makeStrands, nearestOf} from './case-strands.ts';

const seeds = Array.from({length: 40}, (_, seed) => seed);
const made = seeds.map(seed => makeShape({lengthMm: 25 + 3 * seed, level: 'hard'}, seeded(seed)));

test('a case ends at half its length on the middle line, at both ends', () => {
	for (const {lengthMm, inside} of made) {
		for (const end of [-1, 1]) {
			expect(inside(end * (lengthMm / 2 - 0.03), 0)).toBeGreaterThan(0);
			expect(inside(end * (lengthMm / 2 + 0.03), 0)).toBeLessThan(0);
		}
	}
});

test('its width is the greatest that can be walked across it in the middle four fifths', () => {
	for (const {lengthMm, widthMm, inside} of made) {
		const walk = (u: number, side: number) => {
			let v = 0;
			while (inside(u, side * (v + 1)) > 0) v += 1;
			while (inside(u, side * (v + 0.02)) > 0) v += 0.02;
			return v;
		};
		const places = Array.from({length: 41}, (_, at) => ((at - 20) / 50) * lengthMm);
		const greatest = Math.max(...places.map(u => walk(u, 1) + walk(u, -1)));
		expect(Math.abs(greatest - widthMm)).toBeLessThan(0.1 + 0.004 * widthMm);
	}
});

test('no horn, tendril or fibre covers the middle tenth of an end edge, unless it crosses beyond it', () => {
	for (const [seed, shape] of made.entries()) {
		const {horns} = makeStrands(shape, 'hard', seeded(seed));
		for (const end of [-1, 1]) {
			const roots = horns.filter(({ax}) => Math.abs(ax) < shape.lengthMm / 2);
			const off = roots.map(piece => distanceTo(piece, (end * shape.lengthMm) / 2, 0));
			expect(Math.min(99, ...off)).toBeGreaterThan(0.05 * shape.widthMm);
		}
	}
});

test('looking up the nearest piece by squares finds the same as looking at all of them', () => {
	const [shape] = made;
	if (!shape) throw new Error('Expected a shape');
	const {horns} = makeStrands(shape, 'clean', seeded(5));
	const nearest = nearestOf(horns);
	let found = 0;
	for (let u = -60; u < 60; u += 1.7) {
		for (let v = -40; v < 40; v += 1.7) {
			const least = Math.min(...horns.map(piece => distanceTo(piece, u, v)));
			if (least < 1.9) expect(nearest(u, v)?.off).toBeCloseTo(least, 9);
			if (least < 1.9) found += 1;
		}
	}
	expect(found).toBeGreaterThan(20);
});
