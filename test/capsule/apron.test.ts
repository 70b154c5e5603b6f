import {expect, test} from 'vitest';
import {findBand} from '../../src/capsule/apron.ts';
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
	expect(bandOf([215, 200, 170])).toEqual({border: outer, kind: 'apron'});
});

test('a grey band without a tinge may be a shadow', () => {
	expect(bandOf([paper[0] * 0.7, paper[1] * 0.7, paper[2] * 0.7])).toEqual({border: outer, kind: 'dark'});
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
