import {expect, test} from 'vitest';
import {hashName, occurrenceFrom} from '../../src/record/darwin-core.ts';
import {messageFor} from '../../src/record/webhook.ts';
import {draftWith, placed, shares, testland, uuid} from './made-up.ts';

const times = {recordedAt: Date.UTC(2026, 4, 3, 10, 40), modifiedAt: Date.UTC(2026, 4, 6, 18, 2, 11)};

function toldAs(...[change, ranking]: Parameters<typeof draftWith>) {
	return occurrenceFrom(draftWith(change, ranking), testland, times);
}

test('a soaked and measured find tells what, when and how many', () => {
	expect(toldAs()).toMatchObject({
		occurrenceID: `urn:uuid:${uuid}`,
		basisOfRecord: 'HumanObservation',
		occurrenceStatus: 'detected',
		organismQuantity: 3,
		organismQuantityType: 'egg cases',
		vitality: 'notAssessed',
		eventDate: '2026-05-02',
		habitat: 'strandline',
		identificationVerificationStatus: 'unverified',
		informationWithheld: 'name of the finder',
		modified: '2026-05-06T18:02:11.000Z',
	});
});

test('licence, finder and country are left out as long as none is agreed or known', () => {
	for (const term of ['license', 'recordedBy', 'countryCode']) expect(toldAs()).not.toHaveProperty(term);
});

test('a reader that still wants "present" gets it', () => {
	const told = occurrenceFrom(draftWith(), testland, {...times, occurrenceStatus: 'present'});
	expect(told).toMatchObject({occurrenceStatus: 'present'});
});

test.each([
	['a very likely name', {'testa-minor': 0.95}, 'Testa minor', 'species', undefined],
	['a likely name', {'testa-minor': 0.8, 'testa-major': 0.15}, 'Testa minor', 'species', 'cf.'],
	['two names of one genus', {'testa-minor': 0.5, 'testa-major': 0.48}, 'Testa', 'genus', undefined],
	['two genera of one family', {'testa-minor': 0.5, 'theca-alba': 0.48}, 'Testidae', 'family', undefined],
	['two families', {'testa-minor': 0.5, 'arca-nigra': 0.48}, 'Chondrichthyes', 'class', undefined],
	['none of ours', {'testa-minor': 0.2}, 'Chondrichthyes', 'class', undefined],
])('%s is told at the lowest rank that is sure', (_, ranking, scientificName, taxonRank, qualifier) => {
	expect(toldAs({}, shares(ranking))).toMatchObject({
		scientificName,
		taxonRank,
		identificationQualifier: qualifier,
	});
});

test('what the finder was told stands beside the name', () => {
	expect(toldAs()).toMatchObject({
		verbatimIdentification: 'very likely: Testa minor',
		scientificNameAuthorship: 'Nobody, 2000',
	});
	expect(toldAs({}, shares({'testa-minor': 0.5, 'arca-nigra': 0.48}))).toMatchObject({
		verbatimIdentification: 'shortlist: Testa minor; Arca nigra',
	});
	expect(toldAs({}, shares({'testa-minor': 0.2}))).toMatchObject({verbatimIdentification: 'unknown'});
});

test('a name that a later key no longer holds is told no finer than any egg case', () => {
	const {'testa-minor': _, ...taxa} = testland.profiles.taxa;
	const later = {...testland, profiles: {...testland.profiles, taxa}};
	expect(occurrenceFrom(draftWith(), later, times)).toMatchObject({
		scientificName: 'Chondrichthyes',
		verbatimIdentification: 'very likely: Testa minor',
	});
});

test('a finder who doubts that it is an egg case puts a question mark to any name', () => {
	const told = toldAs({doubt: true});
	expect(told).toMatchObject({scientificName: 'Testa minor', identificationQualifier: '?'});
	expect(told).toMatchObject({occurrenceRemarks: expect.stringContaining('could not say for sure')});
});

test('the sizes point to the soak state they were measured in', () => {
	const ids = ['soak-state', 'soak-duration', 'length', 'width'].map(what => `urn:uuid:${uuid}#${what}`);
	const parentMeasurementID = ids[0];
	expect(toldAs()).toMatchObject({
		measurements: [
			{measurementID: ids[0], measurementType: 'soak state', measurementValue: 'soaked'},
			{
				measurementID: ids[1],
				parentMeasurementID,
				measurementType: 'soak duration',
				measurementValue: '22.5',
				measurementUnit: 'h',
			},
			{
				measurementID: ids[2],
				parentMeasurementID,
				measurementType: 'capsule length without horns',
				measurementValue: '62.0',
				measurementUnit: 'mm',
				measurementAccuracy: '1.0',
				measurementRemarks: 'typed as "62 mm"',
			},
			{
				measurementID: ids[3],
				parentMeasurementID,
				measurementType: 'capsule width with keels',
				measurementValue: '41.0',
			},
		],
	});
});

test('a size measured dry or without its aprons says that it is a lower bound, and why', () => {
	const {measurements} = {measurements: [], ...toldAs({soak: 'dry', aprons: 'incomplete', width: undefined})};
	expect(measurements).toHaveLength(2);
	expect(measurements[1]).toMatchObject({
		measurementRemarks:
			'typed as "62 mm"; counts as a lower bound: it was not soaked soft, and a dry case is smaller, an apron is not known to be whole',
	});
});

test('a case whose looks were taken over from a like one says so, and that its length is its own', () => {
	const said = 'taken over from a like case of the same bowl; its length was measured';
	expect(toldAs({alike: 7})).toMatchObject({occurrenceRemarks: expect.stringContaining(said)});
	expect(toldAs({})).toMatchObject({occurrenceRemarks: expect.not.stringContaining('taken over')});
});

test('a case left alive says so and holds no soak, size or habitat', () => {
	const told = toldAs({lives: true, count: undefined, note: 'Under a ledge'});
	expect(told).toMatchObject({
		occurrenceRemarks: expect.stringMatching(/^Left where it was.*Note of the finder: Under a ledge$/),
		vitality: 'uncertain',
		scientificName: 'Chondrichthyes',
		measurements: [],
		habitat: undefined,
		organismQuantity: undefined,
		organismQuantityType: undefined,
		verbatimIdentification: undefined,
	});
});

test('ranking, states and lost parts are readable JSON', () => {
	const told = {dynamicProperties: '', ...toldAs({lost: ['horns']})};
	expect(JSON.parse(told.dynamicProperties)).toMatchObject({
		ranking: [{name: 'Testa minor', probability: 0.95}, {name: 'Testa major'}, {name: 'something-else'}],
		seen: {rim: 'sharp'},
		lost: ['horns'],
	});
});

test('a photo is named by its bytes, and one not kept yet is left out', () => {
	const hash = 'ab'.repeat(32);
	const draft = {...draftWith(), photos: [{id: 4}, {id: 5, hash}]};
	expect(occurrenceFrom(draft, testland, times)).toMatchObject({
		multimedia: [{type: 'StillImage', format: 'image/jpeg', identifier: hashName(hash)}],
	});
});

test('a withdrawn record keeps its name for ever and nothing of the find', () => {
	expect(occurrenceFrom(draftWith(), testland, {...times, withdrawn: true})).toEqual({
		occurrenceID: `urn:uuid:${uuid}`,
		modified: '2026-05-06T18:02:11.000Z',
		informationWithheld: 'withdrawn by its finder; earlier copies are to be erased',
	});
});

test('another region than the one of the draft is an error', () => {
	expect(() => occurrenceFrom(draftWith(), {...testland, id: 'elsewhere'}, times)).toThrow(
		'Expected region "testland"',
	);
});

// Standard Webhooks 1.0.0 advises bodies under about 20 kB.
test('the longest record stays under 20 kB', () => {
	const many = Object.keys(testland.profiles.taxa).map(taxon => ({taxon, probability: 0.125}));
	const draft = {
		...draftWith({note: '🦈'.repeat(4096), place: placed('SW 465 304')}, [...many, ...many]),
		photos: Array.from({length: 500}, (_, id) => ({id, hash: 'ab'.repeat(32)})),
		seen: Array.from({length: 24}, (_, place) => ({
			character: `character-number-${place}`,
			state: 'cant-tell',
		})),
		trail: Array.from({length: 2000}, () => ({question: 'long', answer: 'longer'})),
	};
	const data = occurrenceFrom(draft, testland, times);
	const body = messageFor({type: 'record.submitted', at: times.recordedAt, data});
	expect(Buffer.byteLength(body)).toBeLessThan(20_000);
	expect(body).toContain('🦈…');
});
