import {join} from 'node:path';
import {expect, test} from 'vitest';
import {resultText} from '../../src/bot/result-screen.ts';
import {readFlow} from '../../src/find/flow.ts';
import {type ResultView, viewResult} from '../../src/find/result.ts';
import {readTexts} from '../../src/text/text.ts';
import {goingOn, talked} from '../support/walk.ts';

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
		fact: {taxon: 'raja-clavata', citation: 'Nobody 2000', page, fromMemory: false},
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

function resultIn(region: string, ...said: readonly string[]): string {
	const flow = readFlow(join(root, 'flows'), region);
	const whole = ['yes', 'empty', 'go-on', 'Long Strand', 'today', '1', 'go-on', 'soft', 'both'];
	let place = talked(flow, ...whole, ...said);
	while (place.ask.kind === 'look' || place.ask.kind === 'width') place = goingOn(flow, place, 'cant-tell');
	const {standing} = place.turn;
	if (!standing.found) throw new Error(`Expected a result; the find stands at "${place.ask.question}"`);
	const texts = readTexts(['src/text', 'flows', `flows/${region}`].map(folder => join(root, folder)));
	return resultText(viewResult(flow, standing, standing.found), texts.in('en'));
}

test('a size that somebody published is said to be published', () => {
	const text = resultIn('british-isles', '75 mm', 'broad', 'blade', 'even');
	expect(text).toContain('Published length 55 to 90 mm: it fits');
	expect(text).not.toContain('memory');
});

test('a size from memory is never said to be published', () => {
	// The small unkeeled hairy case: its sizes stand in the profiles as from memory.
	const text = resultIn('western-mediterranean', '44 mm', 'broad', 'none', 'hairy');
	expect(text).toContain('Length 36 to 52 mm, from memory and not yet checked in any source: it fits');
	expect(text).not.toMatch(/Published length 36 to 52/);
});

test('a fact from memory names no source', () => {
	const text = resultIn('north-east-pacific', '92 mm', 'screw');
	expect(text).toContain('(From memory: nobody has checked it in a source yet.)');
	expect(text).not.toContain('(Source:');
});

test('a range that holds one size says it once', () => {
	const said = ['92 mm', 'flat', 'hooks', 'narrow', 'none', 'alike'];
	expect(resultIn('north-east-pacific', ...said)).toContain('Published length 92 mm: it fits');
});
