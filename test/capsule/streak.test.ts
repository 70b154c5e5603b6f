import {expect, test} from 'vitest';
import {isRimOf} from '../../src/capsule/streak.ts';
import type {Strip} from '../../src/capsule/strip.ts';
import {borderAt, drawStrip} from '../support/drawn-strip.ts';

const brown = [90, 60, 36] as const;

/** Between 20 and 22 mm the first so many of nine lines are bare, the others of the body. */
function stripBareOn(lines: number): Strip {
	const strip = drawStrip([{toMm: 22, colour: brown}], 0.3);
	const ruled = Float32Array.from(strip.ruled, (_, at) => {
		const mm = strip.fromMm + (at % strip.count) * strip.stepMm;
		const isBare = mm > 22 || (mm > 20 && Math.floor(at / strip.count) < lines);
		return isBare ? -2.8 : 4;
	});
	return {...strip, ruled};
}

test('an edge with a rim of the body beyond it on many lines is that of a streak of shine', () => {
	expect(isRimOf(stripBareOn(4), borderAt(22), borderAt(20))).toBe(true);
});

test('a tendril with bare ground all along before it is no rim', () => {
	expect(isRimOf(stripBareOn(9), borderAt(22), borderAt(20))).toBe(false);
});

test('an edge seen on a part of the lines only is a streak’s, whatever lies between', () => {
	expect(isRimOf(stripBareOn(9), borderAt(22), borderAt(20, {seen: 0.8}))).toBe(true);
});

test('what lies farther out than a streak is wide, or is hardly to be trusted, is no rim', () => {
	expect(isRimOf(stripBareOn(4), borderAt(22), borderAt(17.5))).toBe(false);
	expect(isRimOf(stripBareOn(4), borderAt(22, {trust: 0.3}), borderAt(20))).toBe(false);
});

test('a rim that is itself seen on a part of the lines must be the likelier of the two', () => {
	const streak = borderAt(20, {seen: 0.65, score: 0.5});
	expect(isRimOf(stripBareOn(4), borderAt(22, {seen: 0.74, score: 0.6}), streak)).toBe(true);
	expect(isRimOf(stripBareOn(4), borderAt(22, {seen: 0.74, score: 0.4}), streak)).toBe(false);
});
