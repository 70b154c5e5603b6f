import {join} from 'node:path';
import {expect, test} from 'vitest';
import {type Ranked, somethingElse} from '../../src/key/evidence.ts';
import {nothingObserved, type Observed} from '../../src/key/observed.ts';
import {readRegion} from '../../src/key/region.ts';
import {gainOfLook, isAnswerTo, tieBreak, widthWorthIt} from '../../src/key/tie-break.ts';

const region = readRegion(join(import.meta.dirname, '../../flows'), 'british-isles');

/** Two names that share all the probability. */
function between(one: string, other: string, share = 0.5): readonly Ranked[] {
	return [
		{taxon: one, probability: share},
		{taxon: other, probability: 1 - share},
	];
}

test('two equally probable names are parted by the character that tells them apart, by hand', () => {
	// Blade or none is seen in shares b and c of the two; slips at rate e turn a share s into (1-e)s + e(1-s).
	const error = region.key.characters['keel']?.error ?? 0;
	const seen = (share: number) => (1 - error) * share + error * (1 - share);
	const shares = ['raja-clavata', 'raja-montagui'].map(id =>
		seen(region.profiles.taxa[id]?.states['keel']?.['blade'] ?? 0),
	);
	const [blade = 0, other = 0] = shares;
	const expected = Math.max(blade, other) / 2 + Math.max(1 - blade, 1 - other) / 2 - 0.5;
	expect(gainOfLook(region, between('raja-clavata', 'raja-montagui'), 'keel')).toBeCloseTo(expected, 12);
});

test('nothing more is asked where the key and a likely ranking agree', () => {
	const ranking = between('raja-clavata', 'raja-montagui', 0.7);
	expect(tieBreak(region, {observed: nothingObserved, ranking, leaves: ['raja-clavata']})).toBeUndefined();
});

test('one more is asked where they disagree, and never of a part that is gone or was looked at', () => {
	const ranking = between('raja-clavata', 'raja-montagui', 0.7);
	const asked = tieBreak(region, {observed: nothingObserved, ranking, leaves: ['raja-montagui']});
	expect(asked).toEqual({kind: 'look', question: 'keel', character: 'keel'});
	const worn = {...nothingObserved, lost: ['sides'], seen: {}};
	const other = tieBreak(region, {observed: worn, ranking, leaves: ['raja-montagui']});
	expect(other === undefined || (other.kind === 'look' && other.character !== 'keel')).toBe(true);
	const looked = {...nothingObserved, seen: {keel: 'cant-tell'}};
	expect(tieBreak(region, {observed: looked, ranking, leaves: ['raja-montagui']})).not.toEqual(asked);
});

test('the width is wanted where it is expected to tell something, once, and with its sides there', () => {
	const [ranking, leaves] = [between('dipturus-batis', 'dipturus-intermedius'), ['dipturus-batis']];
	const asked = (observed: Observed) => widthWorthIt(region, {observed, ranking, leaves});
	expect(asked(nothingObserved)).toEqual({kind: 'width', question: 'width'});
	expect(asked({...nothingObserved, width: {kind: 'unknown'}})).toBeUndefined();
	expect(asked({...nothingObserved, lost: ['sides']})).toBeUndefined();
	const settled = between('dipturus-batis', 'dipturus-intermedius', 0.995);
	expect(widthWorthIt(region, {observed: nothingObserved, ranking: settled, leaves})).toBeUndefined();
});

test('nothing is asked where no answer could settle anything', () => {
	const seen = Object.fromEntries(Object.keys(region.key.characters).map(id => [id, 'cant-tell']));
	const observed = {...nothingObserved, seen, width: {kind: 'unknown'} as const};
	expect(
		tieBreak(region, {observed, ranking: between('raja-clavata', 'raja-montagui'), leaves: []}),
	).toBeUndefined();
	expect(
		tieBreak(region, {
			observed: nothingObserved,
			ranking: [{taxon: somethingElse, probability: 1}],
			leaves: [],
		}),
	).toBeUndefined();
});

test('a made-up state is no answer, cannot tell is one', () => {
	const asks = {kind: 'look', question: 'keel', character: 'keel'} as const;
	expect(isAnswerTo(region, asks, {...nothingObserved, seen: {keel: 'round'}})).toBe(false);
	expect(isAnswerTo(region, asks, {...nothingObserved, seen: {keel: 'cant-tell'}})).toBe(true);
});
