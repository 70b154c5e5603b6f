import {setTimeout as pause} from 'node:timers/promises';
import {expect, test} from 'vitest';
import {z} from 'zod';
import type {Room} from '../../src/room/server.ts';
import {call, scene} from './scene.ts';

const batchSchema = z.array(z.looseObject({update_id: z.number()}));

async function poll(room: Room, parameters: object = {}): Promise<readonly number[]> {
	const answer = await call(room, 'getUpdates', parameters);
	return batchSchema.parse(answer.result).map(update => update.update_id);
}

test('updates come again until a higher offset confirms them (ack_polling)', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	ada.sends('one');
	ada.sends('two');
	const [one, two] = await poll(room);
	expect(two).toBe((one ?? 0) + 1);
	expect(await poll(room)).toEqual([one, two]);
	expect(await poll(room, {offset: two, limit: 1})).toEqual([two]);
	expect(room.pendingUpdates()).toBe(1);
	expect(await poll(room, {offset: (two ?? 0) + 1})).toEqual([]);
	await room.idle();
	expect(room.pendingUpdates()).toBe(0);
});

test('a waiting call hears of an update at once', async () => {
	const {room} = await scene();
	const waiting = poll(room, {timeout: 30});
	await pause(50);
	room.person('Ada').sends('hello');
	expect(await waiting).toHaveLength(1);
});

test('a second getUpdates ends the first with a conflict (409)', async () => {
	const {room} = await scene();
	const first = call(room, 'getUpdates', {timeout: 30});
	await pause(50);
	const second = poll(room, {timeout: 30});
	expect(await first).toMatchObject({ok: false, error_code: 409});
	room.person('Ada').sends('hello');
	expect(await second).toHaveLength(1);
});

test('getUpdates does not work beside a webhook (exclusive)', async () => {
	const {room} = await scene();
	const waiting = call(room, 'getUpdates', {timeout: 30});
	await pause(50);
	await call(room, 'setWebhook', {url: 'http://127.0.0.1:9/hook'});
	expect(await waiting).toMatchObject({error_code: 409});
	expect(await call(room, 'getUpdates')).toMatchObject({error_code: 409});
	await call(room, 'deleteWebhook');
	expect(await call(room, 'getUpdates')).toMatchObject({ok: true});
});

test('each update comes two times under one id when that is switched on, and one comes again on demand', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	room.deliverTwice(true);
	const {updateId} = ada.sends('hello');
	expect(await poll(room)).toEqual([updateId, updateId]);
	expect(await poll(room, {offset: (updateId ?? 0) + 1})).toEqual([]);
	room.repeatLast();
	expect(await poll(room, {offset: (updateId ?? 0) + 1})).toEqual([updateId]);
	expect(await poll(room, {offset: (updateId ?? 0) + 1})).toEqual([]);
});

test('a kind of update that was not asked for does not come (allowed_updates)', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	await poll(room, {allowed_updates: ['callback_query']});
	expect(ada.sends('hello').updateId).toBeUndefined();
	expect(ada.presses('x', {messageId: 1}).updateId).toBeDefined();
});

test('a person who blocks the bot, edits or presses is heard of in the words of the platform', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	ada.sends('57 mm');
	ada.edits(1, '75 mm');
	ada.presses('any', {messageId: 9, inaccessible: true});
	ada.location(56.34, -2.79, {accuracyM: 12});
	ada.blocks();
	const {result} = await call(room, 'getUpdates');
	expect(result).toMatchObject([
		{
			message: {
				text: '57 mm',
				chat: {id: ada.id, type: 'private'},
				from: {first_name: 'Ada', language_code: 'en'},
			},
		},
		{edited_message: {message_id: 1, text: '75 mm'}},
		{callback_query: {data: 'any', message: {message_id: 9, date: 0}}},
		{message: {location: {latitude: 56.34, longitude: -2.79, horizontal_accuracy: 12}}},
		{my_chat_member: {old_chat_member: {status: 'member'}, new_chat_member: {status: 'kicked'}}},
	]);
});
