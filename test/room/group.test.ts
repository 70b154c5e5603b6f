import {expect, test} from 'vitest';
import {call, scene} from './scene.ts';

const group = -1001000000001;

test('in a group the bot hears commands meant for it and replies to it, and nothing else (privacy_mode)', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	await call(room, 'sendMessage', {chat_id: group, text: 'Hello all'});
	const heard = [
		ada.sends('/count', {chat: group}),
		ada.sends('/count@pursekey_bot', {chat: group}),
		ada.sends('a small one', {chat: group, replyTo: 1}),
		ada.presses('x', {chat: group, messageId: 1}),
	];
	const unheard = [
		ada.sends('look at this', {chat: group}),
		ada.sends('@pursekey_bot what is it', {chat: group}),
		ada.sends('/count@other_bot', {chat: group}),
		ada.sends('look /count', {chat: group}),
		ada.sends('mine too', {chat: group, replyTo: 2}),
		ada.location(56.3, -2.8, {chat: group}),
	];
	expect(heard.filter(one => one.updateId === undefined)).toEqual([]);
	expect(unheard.filter(one => one.updateId !== undefined)).toEqual([]);
	expect(room.messages(group)).toHaveLength(10);
});

test('numbers of messages rise in each chat by themselves', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	expect([ada.sends('a').messageId, ada.sends('b').messageId]).toEqual([1, 2]);
	expect(ada.sends('/a', {chat: group}).messageId).toBe(1);
});

test('a bot taken out of a group cannot write there until it is brought back', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	ada.removesBot(group);
	const sent = await call(room, 'sendMessage', {chat_id: group, text: 'x'});
	expect(sent).toMatchObject({
		error_code: 403,
		description: 'Forbidden: bot was kicked from the supergroup chat',
	});
	expect(ada.sends('/count', {chat: group}).updateId).toBeUndefined();
	ada.addsBot(group);
	expect(await call(room, 'leaveChat', {chat_id: group})).toMatchObject({ok: true});
	const {result} = await call(room, 'getUpdates');
	expect(result).toMatchObject([
		{my_chat_member: {new_chat_member: {status: 'kicked'}}},
		{my_chat_member: {new_chat_member: {status: 'member'}}},
		{message: {new_chat_members: [{username: 'pursekey_bot'}]}},
		{my_chat_member: {new_chat_member: {status: 'left'}}},
	]);
});

test('a link to a known person names that person', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	const text = `<a href="tg://user?id=${ada.id}">Ada</a>, a photo please`;
	await call(room, 'sendMessage', {chat_id: group, text, parse_mode: 'HTML'});
	expect(room.messages(group).at(-1)?.entities).toMatchObject([{type: 'text_mention', user: {id: ada.id}}]);
});
