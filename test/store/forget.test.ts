import {expect, test} from 'vitest';
import {storeWithFinds} from '../record/kept.ts';
import {columnsOfPeople} from '../support/traces.ts';

// Whoever adds a table that names people: let `forgetPerson` and `heldOn` know it, then write it down here.
test('every column that names a person is known to those who forget and who tell what is held', async () => {
	const db = await storeWithFinds(0);
	expect(await columnsOfPeople(db)).toEqual([
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
