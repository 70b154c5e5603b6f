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
