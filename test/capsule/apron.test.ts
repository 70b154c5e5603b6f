import {expect, test} from 'vitest';
import {findBand} from '../../src/capsule/apron.ts';
import type {Strip} from '../../src/capsule/strip.ts';
import {borderAt, drawStrip, paper} from '../support/drawn-strip.ts';

const brown = [110, 74, 40] as const;
const [inner, outer] = [borderAt(20), borderAt(24, {trust: 0.2})];
const borders = [inner, outer];

function bandOf(colour: readonly [number, number, number]) {
	const strip = drawStrip(
		[
			{toMm: 20, colour: brown},
			{toMm: 24, colour},
		],
		0.3,
	);
	return findBand(strip, {inner, borders}, 0.3);
}

test('a pale band with a tinge of the body’s brown is its apron', () => {
	expect(bandOf([215, 200, 170])).toMatchObject({border: outer, kind: 'apron'});
});

test('a grey band without a tinge may be a shadow', () => {
	expect(bandOf([paper[0] * 0.7, paper[1] * 0.7, paper[2] * 0.7])).toMatchObject({
		border: outer,
		kind: 'dark',
	});
});

test('bare paper between a body and an edge farther out is no band', () => {
	expect(bandOf(paper)).toBeUndefined();
});

test('a horn beyond bare paper is no apron', () => {
	const strip = drawStrip(
		[
			{toMm: 20, colour: brown},
			{toMm: 22.5, colour: paper},
			{toMm: 24, colour: brown},
		],
		0.2,
	);
	expect(findBand(strip, {inner, borders}, 0.3)).toBeUndefined();
});

/** The first so many lines of one strip, and the others of another. */
function firstLinesOf(some: Strip, count: number, others: Strip): Strip {
	const from = count * some.count * 3;
	const differences = Float32Array.of(
		...some.differences.subarray(0, from),
		...others.differences.subarray(from),
	);
	return {...others, differences};
}

test('a loop in which bare paper is seen on many lines is no apron, whatever its mean colour', () => {
	const loop = drawStrip(
		[
			{toMm: 20, colour: brown},
			{toMm: 22, colour: paper},
			{toMm: 24, colour: brown},
		],
		0.2,
	);
	const apron = drawStrip(
		[
			{toMm: 20, colour: brown},
			{toMm: 24, colour: [200, 185, 155]},
		],
		0.2,
	);
	expect(findBand(firstLinesOf(loop, 5, apron), {inner, borders}, 0.3)).toBeUndefined();
	expect(findBand(firstLinesOf(loop, 2, apron), {inner, borders}, 0.3)?.kind).toBe('apron');
});

test('a narrow band counts only when it is paler than the body and plainly of its tinge', () => {
	const narrow = borderAt(21.5);
	const kindOf = (colour: readonly [number, number, number]) => {
		const strip = drawStrip(
			[
				{toMm: 20, colour: brown},
				{toMm: 21.5, colour},
			],
			0.1,
		);
		return findBand(strip, {inner, borders: [inner, narrow]}, 0.2)?.kind;
	};
	expect(kindOf([200, 180, 140])).toBe('apron');
	expect(kindOf([170, 170, 167])).toBeUndefined();
	expect(kindOf([60, 40, 22])).toBeUndefined();
});

test('a band lighter than dark ground is an apron, since no shadow is', () => {
	const strip = drawStrip([{toMm: 20, colour: brown}], 0.2);
	const lighter = Float32Array.from(strip.differences, (value, at) => {
		const mm = strip.fromMm + (Math.floor(at / 3) % strip.count) * strip.stepMm;
		return at % 3 === 0 && mm > 20 && mm < 24 ? 0.4 : value;
	});
	expect(findBand({...strip, differences: lighter}, {inner, borders}, 0.3)?.kind).toBe('apron');
});

test('what is too faint to be an apron by itself is one when the other end has one like it', () => {
	const grey = [200, 200, 197] as const;
	const strip = drawStrip(
		[
			{toMm: 20, colour: brown},
			{toMm: 24, colour: grey},
		],
		0.3,
	);
	const faint = borderAt(24, {strength: 15});
	const kindOf = (like?: readonly [number, number, number]) =>
		findBand(strip, {inner, borders: [inner, faint], like}, 0.3)?.kind;
	expect(kindOf()).toBeUndefined();
	expect(kindOf([-0.2, 0.01, -0.01])).toBe('apron');
	expect(kindOf([-0.6, 0.1, -0.2])).toBeUndefined();
});
