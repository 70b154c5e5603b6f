import {expect, test} from 'vitest';
import {storeWithFinds} from '../record/kept.ts';
import {columnsNaming} from '../support/traces.ts';

// Whoever adds a column that names a person, a private chat or a find: let `store/forget.ts` and `store/held.ts` know
// it, then write it down here.
test('every column that names a person is known to those who forget and who tell what is held', async () => {
	expect(await columnsNaming(await storeWithFinds(0), 'person')).toEqual([
		'decision.person',
		'draft.person',
		'find.person',
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
		'chat_address.chat',
		'find.chat',
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
