import {join} from 'node:path';
import {expect, test} from 'vitest';
import {resultOf} from '../../src/bot/day-result.ts';
import type {Facts} from '../../src/find/facts.ts';
import {readShelves} from '../../src/program.ts';
import {projectRoot} from '../../src/settings.ts';
import {beginDay, publishDay} from '../../src/store/days.ts';
import {keepDraft} from '../../src/store/drafts.ts';
import {noteGuest} from '../../src/store/guests.ts';
import {chooseSharing} from '../../src/store/sharing.ts';
import {storeWithFinds} from '../record/kept.ts';
import {draftWith, placed} from '../record/made-up.ts';
import {exampleDay} from '../survey/days.ts';

const shelves = readShelves(join(projectRoot(), 'flows'), 'british-isles');
const house = {shelves, region: 'british-isles'};
const afterwards = exampleDay.endsAt + 3_600_000;
/** A kilometre from the pin of the example day. */
const there = placed('50.108, -5.533');

/** The example day, with one find of person 1 for each of these facts. */
async function scene(...finds: readonly Partial<Facts>[]) {
	const db = await storeWithFinds(finds.length);
	for (const [index, change] of finds.entries()) {
		const draft = draftWith({date: exampleDay.date, place: there, count: 1, ...change});
		const id = `3f0d2c1e-6c1a-4d0b-9a77-0b1f5a2c9e${String(index + 10)}`;
		const body = {
			...draft,
			id,
			region: {id: 'british-isles', version: 'x'},
			said: ['raja-clavata'],
			ranking: [],
		};
		await db
			.updateTable('find')
			.set({uuid: id})
			.where('id', '=', index + 1)
			.execute();
		await keepDraft(db, {find: index + 1, person: 1, draft: body, now: afterwards});
	}
	const row = await db.transaction().execute(async tx => {
		const begun = await beginDay(tx, {uuid: 'd', code: 'c', person: 1, region: 'british-isles', now: 1});
		const {startsAt, endsAt} = exampleDay;
		const body = JSON.stringify(exampleDay);
		return publishDay(tx, {day: begun.id, body, region: 'british-isles', startsAt, endsAt, now: 1});
	});
	return {db, result: (day = exampleDay) => resultOf(house, db, {row, day}), row};
}

test('finds of that date within reach of the pin are of the day, and no others', async () => {
	const {result} = await scene(
		{count: 3},
		{place: placed('50.2, -5.3')},
		{date: '2026-05-01'},
		{date: '2026-05-03'},
		{place: {kind: 'named', name: 'Example Cove'}},
	);
	expect(await result()).toMatchObject({
		finds: 1,
		cases: 3,
		finders: 1,
		minutes: 180,
		kinds: [{taxon: 'raja-clavata', cases: 3}],
		places: [{kind: 'point', latitude: 50.108, longitude: -5.533, count: 3}],
	});
});

test('a place that has only a name counts for those who said that they come', async () => {
	const {db, row, result} = await scene({place: {kind: 'named', name: 'Example Cove'}});
	await db
		.transaction()
		.execute(tx => noteGuest(tx, {day: row.id, person: 1, chat: 1, answer: 'coming', party: 4, now: 1}));
	expect(await result()).toMatchObject({finds: 1, heads: 4, places: []});
});

test('a day that goes on past midnight has two dates', async () => {
	const {result} = await scene({date: '2026-05-02'}, {date: '2026-05-03'});
	const night = {...exampleDay, startsAt: Date.UTC(2026, 4, 2, 21), endsAt: Date.UTC(2026, 4, 3, 0)};
	expect(await result(night)).toMatchObject({finds: 2});
});

test('somebody who wants their places hidden stands in a square on the map', async () => {
	const {db, result} = await scene({});
	await chooseSharing(db, 1, {coarseM: 10_000});
	const {places} = await result();
	expect(places).toHaveLength(1);
	const [square] = places;
	if (square?.kind !== 'square') throw new Error('Expected the place to be hidden');
	expect(square.north - square.south).toBeGreaterThan(0.08);
	expect(JSON.stringify(places)).not.toContain('50.108');
});
