import {join} from 'node:path';
import {expect, test} from 'vitest';
import {resultText} from '../../src/bot/result-screen.ts';
import type {ResultView} from '../../src/find/result.ts';
import {readTexts} from '../../src/text/text.ts';

const root = join(import.meta.dirname, '../..');
const say = readTexts(['src/text', 'flows', 'flows/british-isles'].map(folder => join(root, folder))).in(
	'en',
);

function citing(page: string | undefined): ResultView {
	return {
		sure: 'very-likely',
		names: [{taxon: 'raja-clavata', scientificName: 'Raja clavata', percent: 95}],
		also: [],
		elsePercent: undefined,
		seenFor: [],
		seenAgainst: [],
		length: undefined,
		width: undefined,
		unusual: [],
		settles: undefined,
		fact: {taxon: 'raja-clavata', citation: 'Nobody 2000', page},
		leaveIt: undefined,
		doubt: false,
	};
}

test.each([
	['267-268', 'Nobody 2000, p. 267-268'],
	['abstract', 'Nobody 2000, abstract'],
	[undefined, 'Nobody 2000'],
])('the source of a fact on page "%s" reads "%s"', (page, source) => {
	expect(resultText(citing(page), say)).toContain(`(Source: ${source})`);
});
