/** What is odd in groups: moves, absences, nobody in particular. Long, since each oddity is a journey of its own. */
import {expect, test, vi} from 'vitest';
import {bot, groups} from '../../src/room/people.ts';
import {anonymousAdministrator, hookedJourney} from '../support/hook.ts';
import {newestFind, replayed} from '../support/journey.ts';
import {begin, walkTo} from '../support/steps.ts';

// Updates that the room cannot make, shaped as the platform makes them (@grammyjs/types 5.0.0, message.d.ts).

vi.setConfig({testTimeout: 60_000});

const group = groups[0].id;
const chat = {id: group, type: 'supergroup', title: 'Beach walk'};
const command = [{type: 'bot_command', offset: 0, length: 5}];
const asTheGroup = {chat, from: anonymousAdministrator, sender_chat: chat};

type Hooked = Awaited<ReturnType<typeof hookedJourney>>;

function said({room}: Hooked): readonly string[] {
	return room
		.messages(group)
		.filter(({from}) => from === 'bot')
		.map(({text}) => text);
}

const platformIds = async ({db}: Hooked) =>
	(await db.selectFrom('person').select('platformId').execute()).map(({platformId}) => platformId);

test('an anonymous administrator is asked to go on as themselves, and is never a person', async () => {
	const journey = await hookedJourney();
	await journey.deliver({...asTheGroup, text: '/find', entities: command});
	expect(said(journey)).toEqual([expect.stringContaining('You write as the group itself')]);
	expect(await platformIds(journey)).toEqual([]);
	expect(await journey.db.selectFrom('find').select('id').execute()).toEqual([]);
	// A press comes from the real person behind it, and does what was written.
	const ada = journey.person('Ada', group);
	await ada.presses('Go on as myself');
	expect(await platformIds(journey)).toEqual([ada.id]);
	expect(ada.sees.text).toContain('First, stay safe');
	await ada.presses('I have read this, begin');
	expect(ada.sees.text).toContain('four corners');
	await journey.deliver({...asTheGroup, text: '/bowl', entities: command});
	await ada.presses('Go on as myself');
	expect(ada.sees.text).toContain('Nothing is soaking');
	// Words that no button can say lead back to where they are.
	await journey.deliver({...asTheGroup, text: '/say 62 mm', entities: [{...command[0], length: 4}]});
	await ada.presses('Go on as myself');
	expect(ada.sees.text).toContain('four corners');
	expect(await journey.db.selectFrom('find').select('id').execute()).toHaveLength(1);
	journey.check();
});

test('an anonymous administrator answers for a find like anybody else in the group, and is nobody', async () => {
	const journey = await hookedJourney();
	const {db, room} = journey;
	await begin(journey.person('Ada'));
	const ada = journey.person('Ada', group);
	await ada.sends('/find');
	await walkTo({db, person: ada}, 'where');
	const first = await newestFind(db, ada.id);
	const asked = ada.sees;
	await ada.sends('/find');
	const newer = ada.sees;
	const reply = {message_id: asked.id, date: 1, chat, from: bot, text: asked.text};
	await journey.deliver({...asTheGroup, text: 'Sennen', reply_to_message: reply});
	expect(said(journey).at(-1)).toMatch(/^No\. 2:\nWhich day/);
	expect((await trailOf(db, first.id)).at(-1)?.answer).toMatchObject({place: {name: 'Sennen'}});
	// Ada still sits at her second find.
	await ada.sends('/say Sennen');
	expect(ada.sees.text).toContain('Please press one of the buttons');
	await ada.presses('Yes, like that', {on: newer});
	await walkTo({db, person: ada}, 'where');
	expect(await platformIds(journey)).toEqual([ada.id]);
	// Where only she answers, the person behind it may only be Ada.
	await ada.sends('/onlyme');
	const second = room.messages(group).findLast(({text}) => text.includes('Where did you find it'));
	const other = {message_id: second?.id, date: 1, chat, from: bot, text: 'Where'};
	await journey.deliver({...asTheGroup, text: 'Sennen', reply_to_message: other});
	expect(said(journey).at(-1)).toContain('You write as the group itself');
	await ada.presses('Go on as myself');
	expect(ada.sees.text).toContain('Where did you find it');
	journey.check();
});

async function trailOf(db: Hooked['db'], find: number) {
	const {trail} = await db
		.selectFrom('find')
		.select('trail')
		.where('id', '=', find)
		.executeTakeFirstOrThrow();
	return replayed(trail).trail;
}

test('a channel that speaks is told so, and is never a person', async () => {
	const journey = await hookedJourney();
	const channel = {id: -1009, type: 'channel', title: 'News'};
	const from = {id: 136817688, is_bot: true, first_name: 'Channel', username: 'Channel_Bot'};
	await journey.deliver({chat, from, sender_chat: channel, text: '/find', entities: command});
	expect(said(journey)).toEqual([expect.stringContaining('not with channels')]);
	expect(await platformIds(journey)).toEqual([]);
});

test('what the group or its channel says to others is not answered', async () => {
	const journey = await hookedJourney();
	const channel = {id: -1009, type: 'channel', title: 'News'};
	const from = {id: 777000, is_bot: false, first_name: 'Telegram'};
	await journey.deliver({...asTheGroup, text: 'See you on the beach'});
	await journey.deliver({...asTheGroup, new_chat_title: 'Beach walk on Sunday'});
	await journey.deliver({
		chat,
		from,
		sender_chat: channel,
		is_automatic_forward: true,
		text: 'News of the day',
	});
	expect(said(journey)).toEqual([]);
	// Said to the bot, it is.
	const hello = {message_id: 1, date: 1, chat, from: bot, text: 'Hello'};
	await journey.deliver({...asTheGroup, text: 'SW 465 304', reply_to_message: hello});
	expect(said(journey)).toEqual([expect.stringContaining('You write as the group itself')]);
	journey.check();
});

test('a bot that is an administrator hears a whole group and answers only what is said to it', async () => {
	const journey = await hookedJourney();
	const ada = journey.person('Ada', group);
	await begin(journey.person('Ada'));
	await ada.sends('/find');
	await walkTo({db: journey.db, person: ada}, 'where');
	const before = said(journey).length;
	const from = {id: ada.id, is_bot: false, first_name: 'Ada'};
	await journey.deliver({chat, from, text: 'SW 465 304'});
	await journey.deliver({chat, from, new_chat_members: [{id: 5, is_bot: false, first_name: 'Cato'}]});
	await journey.deliver({chat, from, new_chat_title: 'Beach walk on Sunday'});
	await journey.deliver({chat, from, location: {latitude: 50.1, longitude: -5.5}});
	expect(said(journey)).toHaveLength(before);
	await ada.sends('SW 465 304');
	expect(said(journey).length).toBe(before + 1);
	journey.check();
});

const later = {
	error_code: 429,
	description: 'Too Many Requests: retry after 2',
	parameters: {retry_after: 2},
};
const oldGroup = {id: -4001, type: 'group', title: 'Beach walk'};
const newGroup = chat;
const movedTo = {chat: oldGroup, migrate_to_chat_id: newGroup.id};
const movedFrom = {chat: newGroup, sender_chat: newGroup, migrate_from_chat_id: oldGroup.id};

test.each([
	{order: 'old group first', messages: [movedTo, movedFrom]},
	{order: 'new group first', messages: [movedFrom, movedTo]},
	{order: 'told by the old group alone', messages: [movedTo]},
	{order: 'told by the new group alone', messages: [movedFrom]},
])('a find lives on in the supergroup that its group became ($order)', async ({messages}) => {
	const journey = await hookedJourney();
	const {db} = journey;
	const ada = journey.person('Ada', group);
	await begin(journey.person('Ada'));
	const person = {id: ada.id, is_bot: false, first_name: 'Ada'};
	// The room knows the group only as what it became, so the question waits unsent.
	journey.room.refuse({
		method: 'sendMessage',
		chat: oldGroup.id,
		times: 99,
		error: later,
	});
	const find = {chat: oldGroup, from: person, text: '/find', entities: command};
	await journey.handMessage(find);
	for (const message of messages) await journey.handMessage({from: anonymousAdministrator, ...message});
	await journey.settle();
	expect(ada.sees.text).toMatch(/^Ada, no\. 2:\nLook at what you found/);
	await walkTo({db, person: ada}, 'kept');
	const addresses = await db.selectFrom('chatAddress').select(['platformId', 'chat']).execute();
	const chats = new Map(addresses.map(({platformId, chat: own}) => [platformId, own]));
	expect(chats.get(oldGroup.id)).toBe(chats.get(newGroup.id));
	expect(await platformIds(journey)).toEqual([ada.id]);
	journey.check();
});

test('a message of the new group that comes before word of the move is put together with its past', async () => {
	const journey = await hookedJourney();
	const {db} = journey;
	await begin(journey.person('Ada'));
	const ada = journey.person('Ada', group);
	const person = {id: ada.id, is_bot: false, first_name: 'Ada'};
	journey.room.refuse({method: 'sendMessage', chat: oldGroup.id, times: 99, error: later});
	await journey.handMessage({chat: oldGroup, from: person, text: '/find', entities: command});
	await journey.handMessage({chat: newGroup, from: person, text: '/bowl', entities: command});
	await journey.handMessage({from: anonymousAdministrator, ...movedFrom});
	await journey.settle();
	expect(await db.selectFrom('chat').select('kind').where('kind', '=', 'group').execute()).toHaveLength(1);
	await walkTo({db, person: ada}, 'kept');
	journey.check();
});

test('what was found in a group is all there in the supergroup: bowl, saved finds and what only one answers for', async () => {
	const journey = await hookedJourney();
	const {db, room} = journey;
	await begin(journey.person('Ada'));
	const ada = journey.person('Ada', group);
	await ada.sends('/find');
	await walkTo({db, person: ada}, 'kept');
	await ada.presses('One more of this walk');
	await walkTo({db, person: ada}, 'soaking', {condition: person => person.presses('Dry and stiff')});
	await ada.sends('/onlyme');
	// All this was in the old group; in the new one there is a find, too, before word of the move.
	await db
		.updateTable('chatAddress')
		.set({platformId: oldGroup.id})
		.where('platformId', '=', group)
		.execute();
	await ada.sends('/find');
	await journey.deliver({from: anonymousAdministrator, ...movedTo});
	await ada.sends('/bowl');
	expect(said(journey).at(-1)).toMatch(/^In the bowl of this group:\n• No\. 3: since/);
	await ada.sends('/drafts');
	expect(said(journey).at(-1)).toContain('You have one saved find');
	await journey.forward(3 * 3_600_000);
	const ready = room.messages(group).findLast(({text}) => text.includes('Your bowl is ready'));
	if (!ready) throw new Error('Expected the bowl to ring in the new group');
	await journey.person('Ben', group).presses('Softer now', {on: ready});
	expect(room.callbackAnswers().at(-1)?.text).toContain('belongs to somebody else');
	await ada.presses('Softer now', {on: ready});
	await walkTo({db, person: ada}, 'egg-case');
	journey.check();
});

test('a member who leaves loses nothing, and the group goes on with their find', async () => {
	const journey = await hookedJourney();
	const {db} = journey;
	await begin(journey.person('Ben'));
	const ben = journey.person('Ben', group);
	const ada = journey.person('Ada', group);
	await ben.sends('/find');
	await walkTo({db, person: ben}, 'soaking', {condition: person => person.presses('Dry and stiff')});
	const left = {id: ben.id, is_bot: false, first_name: 'Ben'};
	const before = said(journey).length;
	await journey.deliver({chat, from: left, left_chat_member: left});
	expect(said(journey)).toHaveLength(before);
	await ada.sends('/bowl');
	await ada.presses('Open no. 2');
	await ada.presses('It is soft now');
	// Ben goes on where he is alone.
	const alone = journey.person('Ben');
	await alone.sends('/bowl');
	await alone.presses('Open no. 2');
	await alone.presses('Softer now');
	await walkTo({db, person: alone}, 'kept');
	await alone.sends('/drafts');
	expect(alone.sees.text).toContain('You have one saved find');
	journey.check();
});

test('a group that is told by a refusal to have moved gets its question under the new id', async () => {
	const journey = await hookedJourney();
	await begin(journey.person('Ada'));
	const ada = journey.person('Ada', group);
	const person = {id: ada.id, is_bot: false, first_name: 'Ada'};
	journey.room.refuse({
		method: 'sendMessage',
		chat: oldGroup.id,
		times: 1,
		error: {
			error_code: 400,
			description: 'Bad Request: group chat was upgraded to a supergroup chat',
			parameters: {migrate_to_chat_id: newGroup.id},
		},
	});
	await journey.deliver({chat: oldGroup, from: person, text: '/find', entities: command});
	expect(ada.sees.text).toMatch(/^Ada, no\. 2:\nLook at what you found/);
	await walkTo({db: journey.db, person: ada}, 'kept');
	journey.check();
});
