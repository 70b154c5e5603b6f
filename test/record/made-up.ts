/** A made-up region and a made-up find in it, for tests of records. */
import type {Length} from '../../src/capsule/length.ts';
import {type Facts, noFacts, observedFrom} from '../../src/find/facts.ts';
import {conclude} from '../../src/key/conclude.ts';
import type {Ranked} from '../../src/key/evidence.ts';
import type {Found} from '../../src/key/follow.ts';
import type {Region, Taxon} from '../../src/key/region.ts';
import {type Place, readPlace} from '../../src/place/place.ts';
import {type Draft, draftFrom} from '../../src/record/draft.ts';

export const uuid = '3f0d2c1e-6c1a-4d0b-9a77-0b1f5a2c9e01';

function taxon(scientificName: string, family: string): Taxon {
	const measure = {range: [40, 80], source: 'made-up'} satisfies Taxon['lengthMm'];
	return {
		scientificName,
		authorship: 'Nobody, 2000',
		family,
		rank: 'species',
		leaveIt: false,
		howCommon: 'common',
		lengthMm: measure,
		widthMm: measure,
		notUsed: [],
		states: {},
		described: {source: 'made-up'},
		fact: {source: 'made-up'},
		silent: [],
		lookalikes: [],
	};
}

export const testland: Region = {
	id: 'testland',
	folder: 'nowhere',
	version: '0123456789ab',
	key: {
		begins: 'rim',
		possibleMm: {length: [20, 300], width: [10, 180]},
		characters: {rim: {needs: [], states: ['sharp', 'dull'], error: 0.1}},
		questions: {},
		areas: {},
		elsewhere: 0.05,
		moved: [],
		howCommon: {common: 1},
		somethingElse: 0.02,
	},
	profiles: {
		sources: {'made-up': {citation: 'Nobody 2000', fromMemory: false}},
		taxa: {
			'testa-minor': taxon('Testa minor', 'Testidae'),
			'testa-major': taxon('Testa major', 'Testidae'),
			'theca-alba': taxon('Theca alba', 'Testidae'),
			'arca-nigra': taxon('Arca nigra', 'Arcidae'),
		},
	},
};

export function placed(text: string): Place {
	const read = readPlace(text);
	if (read.kind !== 'place') throw new Error(`Expected a place from "${text}"; got ${read.why}`);
	return read.place;
}

export function typed(mm: number): Length {
	return {mm, uncertaintyMm: 1, typed: `${mm} mm`, method: 'typed'};
}

/** An egg case soaked for twenty-two and a half hours, whole and measured. */
export const soakedFacts: Facts = {
	...noFacts,
	photos: [4, 5],
	place: placed('SW 465 304'),
	date: '2026-05-02',
	count: 3,
	soak: 'soaked',
	bowl: {
		startedAt: Date.UTC(2026, 4, 2, 12),
		dueAt: Date.UTC(2026, 4, 3, 7),
		endedAt: Date.UTC(2026, 4, 3, 10, 30),
		zone: 'Europe/London',
	},
	aprons: 'both',
	length: typed(62),
	width: typed(41),
	seen: {rim: 'sharp'},
};

export function foundWith(facts: Facts, ranking: readonly Ranked[]): Found {
	const leaves = ranking[0]?.taxon === 'something-else' ? [] : ['testa-minor'];
	return {observed: observedFrom(facts), leaves, ranking, conclusion: conclude(ranking, leaves)};
}

/** A ranking from shares in the order of the names; what is left belongs to something else. */
export function shares(given: Readonly<Record<string, number>>): readonly Ranked[] {
	const named = Object.entries(given).map(([name, probability]) => ({taxon: name, probability}));
	const rest = 1 - named.reduce((sum, {probability}) => sum + probability, 0);
	return [...named, {taxon: 'something-else', probability: rest}].sort(
		(one, other) => other.probability - one.probability,
	);
}

export const sureRanking = shares({'testa-minor': 0.95, 'testa-major': 0.03});

/** The draft of the facts above, with some of them changed. */
export function draftWith(change: Partial<Facts> = {}, ranking: readonly Ranked[] = sureRanking): Draft {
	const facts = {...soakedFacts, ...change};
	return draftFrom({
		uuid,
		region: testland,
		facts,
		found: facts.lives ? undefined : foundWith(facts, ranking),
		trail: [{question: 'egg-case', answer: {kind: 'option', option: 'yes'}, at: 1}],
		zone: 'Europe/London',
		language: 'en',
	});
}
