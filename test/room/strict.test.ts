import {get} from 'node:http';
import {expect, test} from 'vitest';
import {readHtml} from '../../src/room/html.ts';
import {png} from './picture.ts';
import {call, scene} from './scene.ts';

test('the bot cannot write to strangers, to those who never wrote, or to those who block it', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	const send = () => call(room, 'sendMessage', {chat_id: ada.id, text: 'Hello'});
	expect(await call(room, 'sendMessage', {chat_id: 1, text: 'x'})).toMatchObject({
		description: 'Bad Request: chat not found',
	});
	expect(await send()).toMatchObject({
		error_code: 403,
		description: "Forbidden: bot can't initiate conversation with a user",
	});
	ada.sends('/start');
	expect(await send()).toMatchObject({ok: true});
	ada.blocks();
	expect(await send()).toMatchObject({
		error_code: 403,
		description: 'Forbidden: bot was blocked by the user',
	});
	expect(() => ada.sends('Hello')).toThrow('unblock');
	ada.unblocks();
	expect(await send()).toMatchObject({ok: true});
});

test('an edit that changes nothing is refused, and one without buttons takes them away', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	ada.sends('/start');
	const reply_markup = {inline_keyboard: [[{text: 'Yes', callback_data: 'y'}]]};
	await call(room, 'sendMessage', {chat_id: ada.id, text: 'Alive?', reply_markup});
	const edit = {chat_id: ada.id, message_id: 2, text: '<b></b>Alive?', parse_mode: 'HTML'};
	const same = await call(room, 'editMessageText', {...edit, reply_markup});
	expect(same.description).toContain('message is not modified');
	expect(await call(room, 'editMessageText', edit)).toMatchObject({ok: true});
	expect(room.messages(ada.id).at(-1)).toMatchObject({buttons: [], edited: true, text: 'Alive?'});
	const again = await call(room, 'editMessageReplyMarkup', {chat_id: ada.id, message_id: 2});
	expect(again.description).toContain('message is not modified');
});

test('the bot cannot edit what is not its own, not there, or without words', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	const {messageId} = ada.photo(png(30, 20));
	const photo = room.messages(ada.id)[0]?.photo?.fileId;
	await call(room, 'sendPhoto', {chat_id: ada.id, photo});
	const edit = (message_id: number) =>
		call(room, 'editMessageText', {chat_id: ada.id, message_id, text: 'x'});
	expect((await edit(messageId)).description).toBe("Bad Request: message can't be edited");
	expect((await edit(99)).description).toBe('Bad Request: message to edit not found');
	expect((await edit(2)).description).toBe('Bad Request: there is no text in the message to edit');
});

test('a message can be deleted within 48 hours, and others only in private', async () => {
	const {room, forward} = await scene();
	const ada = room.person('Ada');
	ada.sends('A place');
	const group = -1001000000001;
	ada.sends('/x', {chat: group});
	const remove = (chat_id: number, message_id: number) => call(room, 'deleteMessage', {chat_id, message_id});
	expect(await remove(ada.id, 1)).toMatchObject({ok: true});
	expect((await remove(ada.id, 1)).description).toBe('Bad Request: message to delete not found');
	expect((await remove(group, 1)).description).toBe("Bad Request: message can't be deleted");
	await call(room, 'sendMessage', {chat_id: group, text: 'Hello'});
	forward(49 * 3_600_000);
	expect((await remove(group, 2)).description).toBe("Bad Request: message can't be deleted");
});

test('a press is answered once, within a minute', async () => {
	const {room, forward} = await scene();
	const ada = room.person('Ada');
	ada.sends('/start');
	const first = ada.presses('anything at all', {messageId: 1});
	const late = ada.presses('x', {messageId: 40, inaccessible: true});
	const answer = (callback_query_id: string) => call(room, 'answerCallbackQuery', {callback_query_id});
	expect(await answer(first.queryId)).toMatchObject({ok: true});
	forward(61_000);
	for (const id of [first.queryId, late.queryId, 'never']) {
		expect((await answer(id)).description).toContain('query is too old');
	}
});

test('a keyboard may ask for a place in private only', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	ada.sends('/start');
	const asking = {text: 'Where?', reply_markup: {keyboard: [[{text: 'Here', request_location: true}]]}};
	expect(await call(room, 'sendMessage', {chat_id: ada.id, ...asking})).toMatchObject({ok: true});
	const group = await call(room, 'sendMessage', {chat_id: -1001000000001, ...asking});
	expect(group.description).toBe('Bad Request: location can be requested in private chats only');
	expect(room.messages(ada.id).at(-1)?.keyboard).toEqual([[{text: 'Here', requestLocation: true}]]);
});

test('markup becomes text and marks, counted without tags', () => {
	const read = readHtml('<b>Keel <i>&amp;</i></b> <a href="https://a.test/?x=1&amp;y=2">here</a> 1 &lt; 2');
	expect(read.text).toBe('Keel & here 1 < 2');
	expect(read.entities).toEqual([
		{type: 'bold', offset: 0, length: 6},
		{type: 'italic', offset: 5, length: 1},
		{type: 'text_link', offset: 7, length: 4, url: 'https://a.test/?x=1&y=2'},
	]);
});

for (const broken of ['<b>open', 'close</b>', '<b><i>crossed</b></i>', '<h1>big</h1>', '5 < 6', '<b']) {
	test(`broken markup is refused: ${broken}`, async () => {
		const {room} = await scene();
		const ada = room.person('Ada');
		ada.sends('/start');
		const sent = await call(room, 'sendMessage', {chat_id: ada.id, text: broken, parse_mode: 'HTML'});
		expect(sent).toMatchObject({ok: false, error_code: 400});
		expect(sent.description).toContain("can't parse entities");
	});
}

test('an unknown method, a wrong token and another site are turned away', async () => {
	const {room} = await scene();
	expect(await call(room, 'sendFlowers')).toMatchObject({error_code: 404, description: 'Not Found'});
	const stranger = await fetch(`${room.url}/botwrong/getMe`);
	expect(stranger.status).toBe(401);
	const elsewhere = await fetch(`${room.url}/bot${room.token}/getMe`, {
		headers: {origin: 'https://evil.test'},
	});
	expect(elsewhere.status).toBe(403);
	const own = await fetch(`${room.url}/bot${room.token}/getme`);
	expect(own.status).toBe(200);
});

test('calls may come as a form', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	ada.sends('/start');
	const reply_markup = JSON.stringify({inline_keyboard: [[{text: 'Yes', callback_data: 'y'}]]});
	const body = new URLSearchParams({chat_id: String(ada.id), text: 'Alive?', reply_markup});
	await fetch(`${room.url}/bot${room.token}/sendMessage`, {method: 'POST', body});
	expect(room.messages(ada.id).at(-1)).toMatchObject({text: 'Alive?', buttons: [[{text: 'Yes', data: 'y'}]]});
});

test('a request that names another host is turned away, and the page may load only its own parts', async () => {
	const {room} = await scene();
	const status = await new Promise(resolve => {
		get(`${room.url}/bot${room.token}/getMe`, {headers: {host: 'evil.test'}}, response => {
			response.resume();
			resolve(response.statusCode);
		});
	});
	expect(status).toBe(403);
	const page = await fetch(room.url);
	expect(page.headers.get('content-security-policy')).toContain("default-src 'none'; script-src 'self'");
});
