import {expect, test} from 'vitest';
import {forgetPerson} from '../../src/store/forget.ts';
import {storeWithFinds} from '../record/kept.ts';
import {columnsNaming, tracesInTables} from '../support/traces.ts';

// Whoever adds a column that names a person, a private chat or a find: let `store/forget.ts` and `store/held.ts` know
// it, then write it down here.
test('every column that names a person is known to those who forget and who tell what is held', async () => {
	expect(await columnsNaming(await storeWithFinds(0), 'person')).toEqual([
		'audience.coordinator',
		'audience.person',
		'day.person',
		'decision.person',
		'delivery.person',
		'draft.person',
		'find.person',
		'guest.person',
		'invitation.invited_by',
		'invitation.used_by',
		'letter.person',
		'parcel.person',
		'review.claimed_by',
		'role.granted_by',
		'role.person',
		'seat.person',
	]);
});

test('every column that names a chat or a find is known to those who forget', async () => {
	const db = await storeWithFinds(0);
	expect(await columnsNaming(db, 'chat')).toEqual([
		'audience.chat',
		'chat_address.chat',
		'delivery.chat',
		'find.chat',
		'guest.chat',
		'outbox.chat',
		'parcel.chat',
		'seat.chat',
		'sorting.chat',
	]);
	expect(await columnsNaming(db, 'find')).toEqual([
		'decision.find',
		'draft.find',
		'find.bowl',
		'letter.find',
		'outbox.find',
		'photo.find',
		'reminder.find',
		'review.find',
		'seat.find',
	]);
});

test('a coordinator who leaves takes wishes and answers along; days people were told of stay, with nobody to ask', async () => {
	const db = await storeWithFinds(0);
	const body = JSON.stringify({title: 'Shore day', contact: 'Ask at the red door'});
	const times = {startsAt: 1, endsAt: 2, createdAt: 0, changedAt: 0, turn: 1, region: 'testland'};
	for (const [code, state] of [
		['a', 'planned'],
		['b', 'published'],
	] as const) {
		const plan = '{"contact":"Ask at the red door"}';
		await db
			.insertInto('day')
			.values({uuid: code, code, person: 1, state, plan, body, ...times})
			.execute();
	}
	await db
		.insertInto('broadcast')
		.values({
			day: 2,
			kind: 'announced',
			urgency: 1,
			state: 'done',
			dueAt: 0,
			uselessAt: 9,
			body: `{"day":${body}}`,
			createdAt: 0,
		})
		.execute();
	await db
		.insertInto('delivery')
		.values({broadcast: 1, chat: 1, person: 1, state: 'sent', hearsAt: 0, notBefore: 0})
		.execute();
	await db
		.insertInto('audience')
		.values({chat: 1, person: 1, kind: 'coordinator', coordinator: 1, createdAt: 0})
		.execute();
	await db
		.insertInto('guest')
		.values({day: 2, person: 1, chat: 1, answer: 'coming', party: 3, isTold: 1, answeredAt: 0})
		.execute();
	await db.insertInto('seat').values({chat: 1, person: 1, ear: 'plan', day: 1}).execute();
	await db.transaction().execute(tx => forgetPerson(tx, {person: 1, kept: [], now: 5}));
	expect(await tracesInTables(db, ['red door'])).toEqual([]);
	expect(await db.selectFrom('day').select(['code', 'person', 'plan']).execute()).toEqual([
		{code: 'b', person: null, plan: null},
	]);
	expect(await db.selectFrom('delivery').select(['person']).execute()).toEqual([{person: null}]);
	for (const table of ['audience', 'guest', 'seat', 'person'] as const)
		expect([table, await db.selectFrom(table).selectAll().execute()]).toEqual([table, []]);
});
