import {expect, test} from 'vitest';
import {checkedRecord} from '../../src/record/checked-record.ts';
import {recordsToTell} from '../../src/record/exporting.ts';
import {statuses} from '../../src/record/for-export.ts';
import {higherToName, reasons, taxaToName, verificationFrom} from '../../src/record/verification.ts';
import type {Decision} from '../../src/store/decisions.ts';
import {keepDecision} from '../../src/store/decisions.ts';
import {keepDraft} from '../../src/store/drafts.ts';
import {openly} from './for-export.ts';
import {storeWithFinds} from './kept.ts';
import {draftWith, testland} from './made-up.ts';

const at = Date.UTC(2026, 4, 6, 18);
const decided = (said: Partial<Decision>): Decision => ({
	find: 1,
	person: 9,
	publicName: 'Wrack walker',
	at,
	version: 1,
	outcome: 'agreed',
	...said,
});
const from = (said: Partial<Decision>) => verificationFrom(decided(said), testland);

test('another name is told with its author and rank, by the name the verifier chose', () => {
	expect(from({outcome: 'other-name', name: 'Theca alba', reason: 'size', words: 'Far too small'})).toEqual({
		outcome: 'other-name',
		at,
		by: 'Wrack walker',
		remarks: 'its size; Far too small',
		name: {scientificName: 'Theca alba', scientificNameAuthorship: 'Nobody, 2000', taxonRank: 'species'},
	});
});

// ICZN, 4th edition, articles 29.2 and 5.1: names of families end in -IDAE, those of species are two words.
test.each([
	['Testidae', 'family'],
	['Testa', 'genus'],
] as const)('%s is told as a %s', (name, taxonRank) => {
	expect(from({outcome: 'higher-rank', name})).toMatchObject({name: {scientificName: name, taxonRank}});
});

test('a verifier without a name, or forgotten, is told by what they were', () => {
	expect(from({publicName: undefined})).toMatchObject({outcome: 'agreed', by: 'a verifier of the survey'});
	expect(from({person: undefined, publicName: undefined, outcome: 'not-an-egg-case'}).by).toBe(
		'a verifier of the survey',
	);
});

test('every reason that is offered is told, and no other', () => {
	for (const reason of reasons) expect(from({reason}).remarks).toMatch(/^i|^the/);
	expect(from({reason: 'made-up'}).remarks).toBeUndefined();
});

test('a kind that the key holds no more, or holds elsewhere, keeps the name it was given', () => {
	const told = from({outcome: 'other-name', name: 'Testa nulla'});
	expect(told).toMatchObject({name: {scientificName: 'Testa nulla', taxonRank: 'species'}});
});

test('kinds are offered by the ranking of the draft, then by name, and their genera and families alike', () => {
	const [first] = draftWith().ranking;
	expect(taxaToName(draftWith(), testland)[0]).toBe(first?.taxon);
	expect(taxaToName(draftWith(), testland).toSorted()).toEqual(
		Object.keys(testland.profiles.taxa).toSorted(),
	);
	expect(higherToName(draftWith(), testland).slice(0, 2)).toEqual(['Testa', 'Testidae']);
	expect(new Set(higherToName(draftWith(), testland)).size).toBe(5);
});

test('what is exported of a record is the newest decision', async () => {
	const db = await storeWithFinds(1);
	await keepDraft(db, {find: 1, person: 1, draft: draftWith(), now: 5});
	const exported = async () => {
		const told = [];
		const asked = {wanted: {statuses}, manner: openly, regionOf: () => testland};
		for await (const record of recordsToTell(db, asked)) told.push(record);
		return told[0];
	};
	expect((await exported())?.core.identificationVerificationStatus).toBe('unverified');
	const decide = (said: Parameters<typeof keepDecision>[1]['said'], now: number) =>
		keepDecision(db, {find: 1, person: 1, version: 1, said, now});
	await decide({outcome: 'not-an-egg-case'}, at);
	expect((await exported())?.core).toMatchObject({identificationVerificationStatus: 'rejected'});
	await decide({outcome: 'other-name', name: 'Theca alba', reason: 'coast'}, at + 1000);
	const all = (await exported())?.identifications ?? [];
	expect(all.map(({identificationVerificationStatus: status}) => status)).toEqual([
		'unverified',
		'rejected',
		'verified',
	]);
	expect(new Set(all.map(({identificationID}) => identificationID)).size).toBe(3);
	expect((await exported())?.core).toMatchObject({
		scientificName: 'Theca alba',
		taxonRank: 'species',
		identifiedBy: 'a verifier of the survey',
		dateIdentified: '2026-05-06T18:00:01.000Z',
		identificationVerificationStatus: 'verified',
		identificationRemarks: 'a verifier gave another name: the coast on which it lay',
		modified: '2026-05-06T18:00:01.000Z',
	});
});

test('a record passed on carries the name of the verifier and nothing of an earlier one', () => {
	const telling = {recordedAt: at - 5000, modifiedAt: at};
	const draft = draftWith();
	const named = checkedRecord(draft, testland, {
		...telling,
		verification: from({outcome: 'higher-rank', name: 'Testidae', reason: 'worn'}),
	});
	expect(named).toMatchObject({
		scientificName: 'Testidae',
		taxonRank: 'family',
		identifiedBy: 'Wrack walker',
		identificationVerificationStatus: 'verified',
		kingdom: 'Animalia',
	});
	expect(named.identificationQualifier).toBeUndefined();
	const none = checkedRecord(draft, testland, {...telling, verification: from({outcome: 'not-an-egg-case'})});
	expect(none.identificationVerificationStatus).toBe('rejected');
	for (const term of ['scientificName', 'taxonRank', 'kingdom', 'nomenclaturalCode'] as const)
		expect(none[term], term).toBeUndefined();
});
