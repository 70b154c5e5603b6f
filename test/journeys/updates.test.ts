import {expect, test, vi} from 'vitest';
import {hookedJourney} from '../support/hook.ts';
import {beginJourney, newestFind} from '../support/journey.ts';
import {begin, newestDraft, walkTo} from '../support/steps.ts';

vi.setConfig({testTimeout: 60_000});

const command = [{type: 'bot_command', offset: 0, length: 5}];

test('an update that is delivered twice counts once', async () => {
	const journey = await beginJourney();
	const {room, db, ada} = journey;
	await begin(ada);
	room.deliverTwice(true);
	await ada.presses('Yes, like that');
	const seen = ada.all.length;
	await ada.deed(room.repeatLast);
	expect((await newestFind(db, ada.id)).trail).toHaveLength(1);
	expect(ada.all).toHaveLength(seen);
	await ada.sends('/find');
	expect(await db.selectFrom('find').select('id').execute()).toHaveLength(2);
	journey.check();
});

test('the same press again under a new number, as after a lost line, counts once and is answered quietly', async () => {
	const journey = await beginJourney();
	const {room, db, ada} = journey;
	await begin(ada);
	const first = ada.sees;
	await ada.presses('Yes, like that');
	const seen = ada.all.length;
	await ada.presses('Yes, like that', {on: {...first}});
	expect((await newestFind(db, ada.id)).trail).toHaveLength(1);
	expect(ada.all).toHaveLength(seen);
	expect(room.callbackAnswers()).toHaveLength(3);
	journey.check();
});

test('a press that comes again much later shows the present question', async () => {
	const journey = await beginJourney();
	const {clock, db, ada} = journey;
	await begin(ada);
	const first = ada.sees;
	await ada.presses('Yes, like that');
	clock.forward(3_600_000);
	const {trail} = await newestFind(db, ada.id);
	await ada.presses('Yes, like that', {on: {...first}});
	expect((await newestFind(db, ada.id)).trail).toEqual(trail);
	expect(ada.sees.text).toContain('Is anything still living in it?');
	journey.check();
});

test('an update with a lower number than any before is taken, after a gap in the numbering', async () => {
	const journey = await hookedJourney();
	const {hand, db, settle, person} = journey;
	const ada = person('Ada');
	await begin(ada);
	const {id, name} = ada.room;
	const chat = {id, type: 'private', first_name: name};
	const from = {id, is_bot: false, first_name: name};
	const find = {message_id: 900, date: 1, chat, from, text: '/find', entities: command};
	expect(await hand({update_id: 999_999_999, message: find})).toBe(200);
	expect(await hand({update_id: 5, message: {...find, message_id: 901}})).toBe(200);
	expect(await hand({update_id: 5, message: {...find, message_id: 901}})).toBe(200);
	await settle();
	// One at the beginning, one for each of the two.
	expect(await db.selectFrom('find').select('id').execute()).toHaveLength(3);
	journey.check();
});

/** Spoils the trail of Ada's newest find, so that whatever is done with it fails. */
async function poison({db, ada}: Awaited<ReturnType<typeof beginJourney>>): Promise<() => Promise<void>> {
	const {id, trail} = await newestFind(db, ada.id);
	const spoil = (text: string) => db.updateTable('find').set({trail: text}).where('id', '=', id).execute();
	await spoil('[{"question":"egg-case", broken');
	return async () => {
		await spoil(JSON.stringify(trail));
	};
}

test('an update that makes us fail is set aside once, and the person hears how to go on', async () => {
	const journey = await beginJourney();
	const {room, db, ada, errors} = journey;
	await begin(ada);
	const heal = await poison(journey);
	const answered = room.callbackAnswers().length;
	await ada.presses('Yes, like that');
	expect(ada.sees.text).toContain('Something went wrong on my side');
	expect(room.callbackAnswers()).toHaveLength(answered + 1);
	const aside = await db.selectFrom('aside').selectAll().execute();
	expect(aside).toHaveLength(1);
	expect(errors).toMatchObject([{what: 'update set aside', updateId: aside[0]?.updateId}]);
	expect(room.pendingUpdates()).toBe(0);
	// Should it come again, it is neither tried nor apologised for again.
	const seen = ada.all.length;
	await ada.deed(room.repeatLast);
	expect(ada.all).toHaveLength(seen);
	expect(errors).toHaveLength(1);
	await heal();
	await ada.presses('Go on with it');
	expect(ada.sees.text).toContain('four corners');
	await walkTo({db, person: ada}, 'kept');
	expect((await newestDraft(db, ada)).status).toBe('draft');
	expect(errors).toHaveLength(1);
});

test('after an update that was set aside the next one of the chat is handled, and other chats notice nothing', async () => {
	const journey = await beginJourney();
	const {db, ada, person, errors} = journey;
	const ben = person('Ben');
	await begin(ada);
	await begin(ben);
	await poison(journey);
	// Both at once: Ada's update fails, Ben's and Ada's next do not.
	const press = ada.sees.buttons[0]?.[0]?.data ?? '';
	ada.room.presses(press, {messageId: ada.sees.id});
	ben.room.presses(ben.sees.buttons[0]?.[0]?.data ?? '', {messageId: ben.sees.id});
	await ada.sends('/help');
	expect(ada.sees.text).toContain('What I can do');
	expect((await newestFind(db, ben.id)).standing.at.id).toBe('alive');
	expect(ben.all.some(({text}) => text.includes('Something went wrong'))).toBe(false);
	expect(errors).toHaveLength(1);
	// A find that cannot be mended is left for a new one.
	await ada.sends('/find');
	await walkTo({db, person: ada}, 'kept');
	expect(errors).toHaveLength(1);
});

test('what people wrote is not in the log of a failure', async () => {
	const journey = await beginJourney();
	const {db, ada, errors} = journey;
	await begin(ada);
	await walkTo({db, person: ada}, 'when', {where: person => person.sends('Secret Cove')});
	const {id, trail} = await newestFind(db, ada.id);
	const broken = JSON.stringify(trail).replace('"Secret Cove"', 'Secret Cove');
	await db.updateTable('find').set({trail: broken}).where('id', '=', id).execute();
	await ada.presses('Today');
	expect(errors).toHaveLength(1);
	expect(JSON.stringify(errors)).not.toContain('Secret');
	expect(JSON.stringify(await db.selectFrom('aside').selectAll().execute())).not.toContain('Secret');
});
