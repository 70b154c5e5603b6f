import {expect, test} from 'vitest';
import type {Verification} from '../../src/record/for-export.ts';
import {guarded, hash, openly, recordWith, savedAt, told} from './for-export.ts';
import {placed, shares, testland} from './made-up.ts';

const at = Date.UTC(2026, 4, 6, 18);

test('a record of which nothing is to be hidden tells the place as it was given', () => {
	const {core, point} = told(recordWith({note: 'By the blue hut'}));
	expect(core).toMatchObject({
		verbatimCoordinates: 'SW 465 304',
		coordinateUncertaintyInMeters: 75,
		occurrenceRemarks: expect.stringContaining('By the blue hut'),
	});
	expect(core.dataGeneralizations).toBeUndefined();
	expect(point).toEqual({latitude: 50.119892, longitude: -5.546958});
});

test('a place its finder wants hidden is told as a square, and the record says why', () => {
	const {core, point} = told(recordWith({}, {coarseM: 1000}));
	expect(core).toMatchObject({
		coordinateUncertaintyInMeters: 711,
		dataGeneralizations:
			'place given as a square of about 1 km, SW 46 30 (British National Grid), as its finder wishes',
		informationWithheld: 'name of the finder | exact place, as its finder wishes | photos',
		georeferenceRemarks: 'centre of the square that hides the place',
	});
	expect(point).not.toEqual({latitude: 50.119892, longitude: -5.546958});
});

test('a protected kind hides its place, and the record names the law', () => {
	expect(told(recordWith(), guarded).core).toMatchObject({
		coordinateUncertaintyInMeters: 7078,
		dataGeneralizations: expect.stringContaining('SW 4 3 (British National Grid), since Testa minor'),
		informationWithheld: expect.stringContaining('protected by Made-up Act 2000, Schedule 1'),
	});
});

test('of two squares the larger one hides the place, and both reasons are told', () => {
	const {core} = told(recordWith({}, {coarseM: 100_000}), guarded);
	expect(core.dataGeneralizations).toContain('100 km, SW (British National Grid)');
	expect(core.dataGeneralizations).toContain('as its finder wishes; since Testa minor is protected');
});

test('nothing of a hidden place is left anywhere in what is told of it', () => {
	const verification: Verification = {outcome: 'agreed', at, remarks: 'I know the blue hut'};
	for (const place of [placed('SW 46512 30412'), placed('50.11989, -5.54695'), placed('Blue Hut Cove')]) {
		const earlier = [verification];
		const record = recordWith({note: 'below the blue hut', place}, {coarseM: 10_000, verification, earlier});
		const {region: _, ...all} = told(record);
		const text = JSON.stringify(all).toLowerCase();
		for (const trace of ['465', '304', '50.1198', '5.5469', 'blue hut']) expect(text).not.toContain(trace);
		expect(text).toContain('note of the finder | remarks of the verifier');
	}
});

test('a place with only a name is left out where it is to be hidden', () => {
	const {core, point, where} = told(recordWith({place: placed('Blue Hut Cove')}, {coarseM: 1000}));
	expect(core.verbatimLocality).toBeUndefined();
	expect(core.informationWithheld).toContain('name of the place, as its finder wishes');
	expect([point, where]).toEqual([undefined, undefined]);
});

test('a square that is as large as the wish stays as it was given', () => {
	const {core} = told(recordWith({place: placed('SW 43')}, {coarseM: 10_000}));
	expect(core).toMatchObject({
		verbatimCoordinates: 'SW 43',
		informationWithheld: 'name of the finder | photos',
	});
	expect(core.dataGeneralizations).toBeUndefined();
});

test('an export for the keeper alone shows every place as it is known', () => {
	const {core} = told(recordWith({}, {coarseM: 1000}), guarded, {...openly, isExact: true});
	expect(core).toMatchObject({verbatimCoordinates: 'SW 465 304', informationWithheld: 'name of the finder'});
});

test('a kind that is only one of several that it may be hides the place as well', () => {
	const ranking = shares({'testa-major': 0.55, 'testa-minor': 0.4});
	const record = recordWith();
	const shortlist = {...record, draft: {...record.draft, said: ['testa-major'], ranking: [...ranking]}};
	expect(told(shortlist, guarded).core.dataGeneralizations).toContain('Testa minor is protected');
	const {draft} = shortlist;
	const other = {...shortlist, draft: {...draft, ranking: [...shares({'testa-major': 0.95})]}};
	expect(told(other, guarded).core.dataGeneralizations).toBeUndefined();
});

test('a verifier who names another kind decides whether the place is hidden', () => {
	const name = {scientificName: 'Testa major', taxonRank: 'species'} as const;
	const away = recordWith({}, {verification: {outcome: 'other-name', at, name}});
	expect(told(away, guarded).core.dataGeneralizations).toBeUndefined();
	const genus = {scientificName: 'Testa', taxonRank: 'genus'} as const;
	const higher = recordWith({}, {verification: {outcome: 'higher-rank', at, name: genus}});
	expect(told(higher, guarded).core.dataGeneralizations).toContain('Testa minor is protected');
});

test('the finder is named by the chosen name, and otherwise not at all', () => {
	expect(told(recordWith({}, {publicName: 'Shell Seeker'})).core).toMatchObject({
		recordedBy: 'Shell Seeker',
		rightsHolder: 'Shell Seeker',
		identifiedBy: 'Shell Seeker',
		informationWithheld: undefined,
	});
	const {core, pictures} = told(recordWith());
	expect([core.recordedBy, core.rightsHolder, core.identifiedBy]).toEqual([undefined, undefined, undefined]);
	expect(pictures[0]?.row).toMatchObject({creator: undefined, rightsHolder: undefined});
});

test('a record that nobody looked at is told as unverified, with its doubt', () => {
	const {core, status, identifications} = told(recordWith({doubt: true}));
	expect(core).toMatchObject({identificationVerificationStatus: 'unverified', identificationQualifier: '?'});
	expect([status, identifications.length]).toEqual(['unverified', 1]);
});

test('a verifier who agrees takes the doubt away and stands as the one who named it', () => {
	const verification: Verification = {outcome: 'agreed', at, by: 'Checker', remarks: 'two photos'};
	const {core, identifications} = told(recordWith({doubt: true}, {verification, publicName: 'Seeker'}));
	expect(core).toMatchObject({
		scientificName: 'Testa minor',
		identificationQualifier: undefined,
		identificationVerificationStatus: 'verified',
		identifiedBy: 'Checker',
		dateIdentified: '2026-05-06T18:00:00.000Z',
		identificationRemarks: 'a verifier agreed with the name: two photos',
		modified: '2026-05-06T18:00:00.000Z',
		recordedBy: 'Seeker',
	});
	expect(identifications.map(({identifiedBy}) => identifiedBy)).toEqual(['Seeker', 'Checker']);
});

test('another name by a verifier counts, and nothing of the finder’s name stays but what they were told', () => {
	const name = {scientificName: 'Theca alba', taxonRank: 'species'} as const;
	const {
		core,
		identifications,
		name: counts,
	} = told(recordWith({}, {verification: {outcome: 'other-name', at, name}}));
	expect(core).toMatchObject({
		scientificName: 'Theca alba',
		scientificNameAuthorship: undefined,
		verbatimIdentification: 'very likely: Testa minor',
	});
	expect(counts).toBe('Theca alba');
	expect(identifications[0]).toMatchObject({scientificName: 'Testa minor'});
});

test('what is no egg case keeps no name of an animal', () => {
	const {core, name} = told(recordWith({}, {verification: {outcome: 'not-an-egg-case', at}}));
	expect(core).toMatchObject({
		scientificName: undefined,
		taxonRank: undefined,
		kingdom: undefined,
		nomenclaturalCode: undefined,
		identificationVerificationStatus: 'rejected',
	});
	expect(name).toBeUndefined();
});

test('a photo carries the licence, and one not kept yet is left out', () => {
	expect(told(recordWith({}, {publicName: 'Seeker'})).pictures).toEqual([
		{
			hash: 'ab'.repeat(32),
			row: {
				type: 'StillImage',
				format: 'image/jpeg',
				creator: 'Seeker',
				license: openly.licence,
				rightsHolder: 'Seeker',
			},
		},
	]);
});

test('what is counted by place is the square of 10 km, a larger one where hidden, or the name', () => {
	expect(told(recordWith()).where).toBe('SW 4 3');
	expect(told(recordWith({}, {coarseM: 1000})).where).toBe('SW 4 3');
	expect(told(recordWith({}, {coarseM: 100_000})).where).toBe('SW');
	expect(told(recordWith({place: placed('Sandy Cove')})).where).toBe('Sandy Cove');
});

test('the last change is that of the record or of the name, whichever is later', () => {
	expect(told(recordWith()).changedAt).toBe(savedAt + 1000);
	expect(told(recordWith({}, {verification: {outcome: 'agreed', at}})).changedAt).toBe(at);
});

test('photos of a hidden place stay out, since they may show it, and the record says so', () => {
	const hidden = told(recordWith({}, {coarseM: 1000}));
	expect(hidden.pictures).toEqual([]);
	expect(String(hidden.core.informationWithheld)).toContain('photos');
	expect(JSON.stringify(hidden)).not.toContain(hash);
	expect(told(recordWith({}, {coarseM: 1000}), testland, {...openly, isExact: true}).pictures).toHaveLength(
		1,
	);
});
