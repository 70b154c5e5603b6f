import {expect, test} from 'vitest';
import {type Counted, tallyOf} from '../../src/record/tally.ts';

type Made = Partial<Counted['draft']> & {readonly decision?: Counted['decision']};

const one = ({decision, ...draft}: Made): Counted => ({
	draft: {kind: 'egg-case', said: [], region: {id: 'testland'}, ...draft},
	...(decision ? {decision} : {}),
});

test('cases of one sure name are added up, and a name of several or none stands apart', () => {
	const tally = tallyOf([
		one({said: ['testa-prima'], count: 3}),
		one({said: ['testa-prima']}),
		one({said: ['testa-secunda'], count: 9}),
		one({said: ['testa-prima', 'testa-secunda'], count: 2}),
		one({count: 5}),
		one({kind: 'left-alive'}),
	]);
	expect(tally.kinds).toEqual([
		{region: 'testland', taxon: 'testa-secunda', cases: 9},
		{region: 'testland', taxon: 'testa-prima', cases: 4},
	]);
	expect(tally).toMatchObject({oneOfSeveral: 2, unnamed: 5, leftAlive: 1, cases: 21, finds: 6, unchecked: 6});
});

test("a verifier's word counts more than the key's", () => {
	const tally = tallyOf([
		one({said: ['testa-prima'], decision: {outcome: 'agreed'}}),
		one({said: ['testa-prima', 'testa-secunda'], decision: {outcome: 'other-name', name: 'testa-tertia'}}),
		one({said: ['testa-prima'], count: 2, decision: {outcome: 'higher-rank', name: 'Testa'}}),
		one({said: ['testa-prima'], count: 7, decision: {outcome: 'not-an-egg-case'}}),
	]);
	expect(tally.kinds).toEqual([
		{region: 'testland', taxon: 'testa-prima', cases: 1},
		{region: 'testland', taxon: 'testa-tertia', cases: 1},
	]);
	expect(tally).toMatchObject({oneOfSeveral: 2, cases: 4, finds: 3, unchecked: 0});
});

test('the same name in two regions is counted in each', () => {
	const kinds = tallyOf([
		one({said: ['testa-prima'], count: 2}),
		one({said: ['testa-prima'], region: {id: 'otherland'}}),
	]).kinds;
	expect(kinds).toEqual([
		{region: 'testland', taxon: 'testa-prima', cases: 2},
		{region: 'otherland', taxon: 'testa-prima', cases: 1},
	]);
});

test('nothing found is a tally of nothing', () => {
	expect(tallyOf([])).toMatchObject({kinds: [], cases: 0, finds: 0});
});
