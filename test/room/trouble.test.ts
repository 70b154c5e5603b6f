import {expect, test} from 'vitest';
import {call, scene} from './scene.ts';

test('a call is refused as often as asked, with what it was asked to say', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	const ben = room.person('Ben');
	for (const person of [ada, ben]) person.sends('/start');
	const error = {
		error_code: 429,
		description: 'Too Many Requests: retry after 7',
		parameters: {retry_after: 7},
	};
	room.refuse({method: 'sendMessage', chat: ada.id, times: 1, error});
	const send = (chat_id: number) => call(room, 'sendMessage', {chat_id, text: 'x'});
	expect(await send(ben.id)).toMatchObject({ok: true});
	expect(await send(ada.id)).toMatchObject({ok: false, ...error});
	expect(await send(ada.id)).toMatchObject({ok: true});
	expect(room.calls().map(one => [one.method, one.chat])).toEqual([
		['sendMessage', ben.id],
		['sendMessage', ada.id],
		['sendMessage', ada.id],
	]);
});

test('a connection breaks before or after the deed', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	ada.sends('/start');
	const send = (text: string) => call(room, 'sendMessage', {chat_id: ada.id, text});
	room.dropConnection({method: 'sendMessage', times: 1, when: 'before'});
	await expect(send('never')).rejects.toThrow();
	room.dropConnection({method: 'sendMessage', times: 1, when: 'after'});
	await expect(send('arrives')).rejects.toThrow();
	expect(await send('plain')).toMatchObject({ok: true});
	expect(room.messages(ada.id).map(message => message.text)).toEqual(['/start', 'arrives', 'plain']);
});

test('too many messages are refused until the time named has gone by (per_chat, per_group, bulk)', async () => {
	const {room, forward} = await scene({limits: true});
	const ada = room.person('Ada');
	ada.sends('/start');
	const send = (chat_id: number) => call(room, 'sendMessage', {chat_id, text: 'x'});
	for (let count = 0; count < 5; count += 1) expect(await send(ada.id)).toMatchObject({ok: true});
	expect(await send(ada.id)).toMatchObject({error_code: 429, parameters: {retry_after: 5}});
	forward(5000);
	expect(await send(ada.id)).toMatchObject({ok: true});
	const group = -1001000000001;
	for (let count = 0; count < 20; count += 1) {
		expect(await send(group)).toMatchObject({ok: true});
		forward(1000);
	}
	expect(await send(group)).toMatchObject({error_code: 429, parameters: {retry_after: 40}});
	const people = Array.from({length: 31}, (_, at) => room.person(`Person ${at}`));
	for (const person of people) person.sends('/start');
	const answers = [];
	for (const person of people) answers.push(await send(person.id));
	expect(answers.map(answer => answer.ok)).toEqual([...Array.from({length: 30}, () => true), false]);
});
