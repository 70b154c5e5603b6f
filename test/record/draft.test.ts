import {expect, test} from 'vitest';
import {type Facts, lowerBoundOf, noFacts, observedFrom} from '../../src/find/facts.ts';
import type {Trail} from '../../src/find/trail.ts';
import type {Found} from '../../src/key/follow.ts';
import {type DraftSource, draftFrom, draftSchema} from '../../src/record/draft.ts';
import {measurementsOf} from '../../src/record/measurements.ts';
import {
	draftWith,
	foundWith,
	placed,
	shares,
	soakedFacts,
	sureRanking,
	testland,
	typed,
	uuid,
} from './made-up.ts';

test('what a conversation knows of a find goes into its draft as it is', () => {
	const facts: Facts = soakedFacts;
	const found: Found | undefined = foundWith(facts, sureRanking);
	const trail: Trail = [{question: 'count', answer: {kind: 'count', count: 3}, at: 7}];
	// The types above are those of a conversation: this line does not compile once they no longer fit.
	const source: DraftSource = {
		uuid,
		region: testland,
		facts,
		found,
		trail,
		zone: 'Europe/Paris',
		language: 'fr',
	};
	expect(draftFrom(source)).toMatchObject({
		id: uuid,
		region: {id: 'testland', version: '0123456789ab'},
		kind: 'egg-case',
		foundOn: '2026-05-02',
		zone: 'Europe/Paris',
		place: {kind: 'spot', verbatim: 'SW 465 304'},
		count: 3,
		lost: [],
		aprons: 'both',
		seen: [{character: 'rim', state: 'sharp'}],
		said: ['testa-minor'],
		leaves: ['testa-minor'],
		sure: 'very-likely',
		doubt: false,
		trail,
		language: 'fr',
	});
});

test('a draft is the same after it was stored as text and read back', () => {
	for (const draft of [
		draftWith(),
		draftWith({soak: 'dry', aprons: 'incomplete', note: 'Ålesund 🦈', place: placed('Sandy Cove')}),
		draftWith({lives: true, count: undefined, soak: undefined, bowl: undefined, length: undefined}),
	]) {
		expect(draftSchema.parse(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
	}
});

test('the hours in the bowl run from its beginning to its end, and only for a soaked case', () => {
	expect(draftWith().soak).toEqual({state: 'soaked', hours: 22.5});
	expect(draftWith({soak: 'damp'}).soak).toEqual({state: 'damp', hours: undefined});
	expect(draftWith({bowl: undefined}).soak).toEqual({state: 'soaked', hours: undefined});
	const bowl = {startedAt: 0, dueAt: 7_200_000, zone: 'UTC'};
	expect(draftWith({bowl}).soak).toEqual({state: 'soaked', hours: undefined});
});

test('a size counts as the ranking took it, with the reasons beside it', () => {
	expect(draftWith().length).toEqual({
		mm: 62,
		plusMinusMm: 1,
		typed: '62 mm',
		method: 'typed',
		countsAs: 'exact',
		because: [],
	});
	for (const soak of ['dry', 'damp', 'soaked'] as const)
		for (const aprons of ['both', 'incomplete', 'unknown'] as const)
			for (const lost of [[], ['sides'], ['horns']]) {
				const facts = {...soakedFacts, soak, aprons, lost};
				const {length, width} = draftWith(facts);
				const observed = observedFrom(facts);
				expect(length?.countsAs).toBe(observed.length?.kind);
				expect(length?.because).toEqual(lowerBoundOf(facts));
				expect(width?.countsAs).toBe(observed.width?.kind);
				expect(width?.countsAs === 'at-least').toBe((width?.because.length ?? 0) > 0);
			}
});

test('a size that could not be measured is not in the draft', () => {
	const draft = draftWith({length: 'unmeasured', width: undefined});
	expect([draft.length, draft.width]).toEqual([undefined, undefined]);
});

test('the eight best names are kept to four decimals, what no profile holds without a name', () => {
	const many = Array.from({length: 12}, (_, place) => ({taxon: `t${place}`, probability: 1 / 12}));
	expect(draftWith({}, many).ranking).toHaveLength(8);
	expect(draftWith({}, shares({'testa-minor': 0.123456, 'testa-major': 0.5})).ranking).toEqual([
		{taxon: 'testa-major', scientificName: 'Testa major', probability: 0.5},
		{taxon: 'something-else', scientificName: undefined, probability: 0.3765},
		{taxon: 'testa-minor', scientificName: 'Testa minor', probability: 0.1235},
	]);
});

test('a case left alive has neither soak nor size nor name', () => {
	const draft = draftWith({lives: true, count: undefined});
	expect(draft).toMatchObject({kind: 'left-alive', sure: 'unknown', ranking: [], said: [], seen: []});
	expect([draft.soak, draft.length, draft.width, draft.count]).toEqual([
		undefined,
		undefined,
		undefined,
		undefined,
	]);
});

test('a photo has its hash once it is kept', () => {
	const hash = 'ab'.repeat(32);
	const source = {uuid, region: testland, facts: soakedFacts, found: undefined, trail: [], zone: 'UTC'};
	const draft = draftFrom({...source, language: 'en', photoHashes: new Map([[5, hash]])});
	expect(draft.photos).toEqual([
		{id: 4, hash: undefined},
		{id: 5, hash},
	]);
});

test('a find without a day or a place makes no draft, and the error says which', () => {
	const source = {uuid, region: testland, found: undefined, trail: [], zone: 'UTC', language: 'en'};
	expect(() => draftFrom({...source, facts: noFacts})).toThrow('lacks day and place');
	expect(() => draftFrom({...source, facts: {...soakedFacts, date: undefined}})).toThrow('lacks day');
	expect(() => draftFrom({...source, facts: {...soakedFacts, length: typed(3), place: undefined}})).toThrow(
		'lacks place',
	);
});

test('several lengths of one photo are each told, after the middle of them', () => {
	const length = (mm: number) => ({mm, uncertaintyMm: 0.8, method: 'photo', reference: 'a4'}) as const;
	const draft = draftWith({count: 3, length: length(64), each: [length(58), length(64), length(71)]});
	expect(draftSchema.parse(JSON.parse(JSON.stringify(draft))).lengths).toHaveLength(3);
	const rows = measurementsOf(draft).filter(({measurementType}) =>
		measurementType.startsWith('capsule length'),
	);
	expect(rows.map(({measurementValue}) => measurementValue)).toEqual(['64.0', '58.0', '64.0', '71.0']);
	expect(rows[0]?.measurementRemarks).toContain('middle length of 3 cases on one photo');
	expect(rows[3]).toMatchObject({
		measurementID: `urn:uuid:${uuid}#length-3`,
		measurementAccuracy: '0.8',
		measurementRemarks: expect.stringContaining('case 3 of 3 on one photo; scale from an A4 sheet'),
	});
	expect(new Set(rows.map(({measurementID}) => measurementID)).size).toBe(4);
});
