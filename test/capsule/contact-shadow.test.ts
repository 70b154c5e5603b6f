import {expect, test} from 'vitest';
import {withoutShadow} from '../../src/capsule/contact-shadow.ts';
import {borderAt, drawStrip, paper} from '../support/drawn-strip.ts';

const brown = [90, 60, 36] as const;
const shaded = [paper[0] * 0.6, paper[1] * 0.6, paper[2] * 0.6] as const;
const mmPerPx = 0.3;

test('a dark stripe of the paper’s own colour at the foot of a body is not of the body', () => {
	const strip = drawStrip(
		[
			{toMm: 20, colour: brown},
			{toMm: 21, colour: shaded},
		],
		0.35,
	);
	const border = withoutShadow(strip, borderAt(20.6), mmPerPx);
	expect(border.at(0)).toBeGreaterThan(19.85);
	expect(border.at(0)).toBeLessThan(20.15);
	expect(border.insideMm).toBeCloseTo(20.6 - border.at(0), 6);
});

test('an edge without a shadow stays where it is', () => {
	const strip = drawStrip([{toMm: 20, colour: brown}], 0.35);
	expect(withoutShadow(strip, borderAt(20), mmPerPx).at(0)).toBe(20);
});

test('a narrow rim of a paler brown is of the body', () => {
	const strip = drawStrip(
		[
			{toMm: 20, colour: brown},
			{toMm: 21.2, colour: [170, 130, 80]},
		],
		0.35,
	);
	expect(withoutShadow(strip, borderAt(21.2), mmPerPx).at(0)).toBeCloseTo(21.2, 1);
});

test('where a shadow may fade away or not, the end is taken midway, and how far off it may be is told', () => {
	const fading = Array.from({length: 40}, (_, index) => {
		const light = 1 - 0.5 * Math.exp(-(index + 0.5) / 5);
		return {
			toMm: 20.1 + index / 10,
			colour: [paper[0] * light, paper[1] * light, paper[2] * light] as const,
		};
	});
	const strip = drawStrip([{toMm: 20, colour: brown}, ...fading], 0.7);
	const {at, unsureMm = 0, insideMm} = withoutShadow(strip, borderAt(20.2), 0.42);
	expect(unsureMm).toBeGreaterThan(0.1);
	expect(insideMm).toBe(unsureMm);
	expect(Math.abs(at(0) - 20)).toBeLessThan(unsureMm);
});

test('a dark grey apron, paler towards a shadow at its border, is no shadow itself', () => {
	const strip = drawStrip(
		[
			{toMm: 18, colour: brown},
			{toMm: 21.6, colour: [80, 80, 79]},
			{toMm: 24, colour: [110, 110, 108]},
			{toMm: 24.8, colour: [222, 222, 218]},
		],
		0.7,
	);
	expect(withoutShadow(strip, borderAt(24), 0.35).at(0)).toBe(24);
});
