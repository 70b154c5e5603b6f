import {existsSync, mkdirSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test, vi} from 'vitest';
import {deskScene, say} from './desk.ts';

vi.setConfig({testTimeout: 60_000});

const tooMany = (seconds: number) => ({
	error_code: 429,
	description: `Too Many Requests: retry after ${seconds}`,
	parameters: {retry_after: seconds},
});

test('messages of one chat arrive in the order they were written', async () => {
	const {put, pump, said, ada} = await deskScene();
	const texts = ['one', 'two', 'three', 'four', 'five'];
	for (const text of texts) await put(ada.chat, say(text));
	await pump();
	expect(said(ada.person)).toEqual(texts);
});

test('a chat that is told to wait waits that long, in order, and others go on', async () => {
	const {put, pump, said, room, clock, ada, ben} = await deskScene();
	room.refuse({method: 'sendMessage', chat: ada.person.id, times: 1, error: tooMany(7)});
	for (const text of ['one', 'two', 'three']) await put(ada.chat, say(text));
	for (const text of ['first', 'second']) await put(ben.chat, say(text));
	await pump();
	expect(said(ada.person)).toEqual([]);
	expect(said(ben.person)).toEqual(['first', 'second']);
	clock.forward(6999);
	await pump();
	expect(said(ada.person)).toEqual([]);
	clock.forward(1);
	await pump();
	expect(said(ada.person)).toEqual(['one', 'two', 'three']);
});

test('when two chats are told to wait everything waits, until one of them may go again', async () => {
	const {put, pump, said, room, clock, ada, ben} = await deskScene();
	const cato = room.person('Cato');
	cato.sends('/start');
	room.refuse({method: 'sendMessage', chat: ada.person.id, times: 1, error: tooMany(5)});
	room.refuse({method: 'sendMessage', chat: ben.person.id, times: 1, error: tooMany(9)});
	await put(ada.chat, say('to Ada'));
	await put(ben.chat, say('to Ben'));
	await pump();
	const sent = room.calls().length;
	await put(ada.chat, say('more to Ada'));
	await pump();
	clock.forward(4999);
	await pump();
	expect(room.calls()).toHaveLength(sent);
	clock.forward(1);
	await pump();
	expect(said(ada.person)).toEqual(['to Ada', 'more to Ada']);
	expect(said(ben.person)).toEqual([]);
	clock.forward(4000);
	await pump();
	expect(said(ben.person)).toEqual(['to Ben']);
});

test.each(['Forbidden: bot was blocked by the user', 'Forbidden: user is deactivated'])(
	'a chat that answers "%s" is gone: what waits for it is given up',
	async description => {
		const {put, pump, said, states, room, db, ada, ben} = await deskScene();
		room.refuse({
			method: 'sendMessage',
			chat: ada.person.id,
			times: 1,
			error: {error_code: 403, description},
		});
		for (const text of ['one', 'two']) await put(ada.chat, say(text));
		await put(ben.chat, say('three'));
		await pump();
		expect(said(ada.person)).toEqual([]);
		expect(said(ben.person)).toEqual(['three']);
		expect(await states()).toEqual(['failed', 'failed', 'sent']);
		const gone = await db.selectFrom('chat').select('id').where('goneAt', 'is not', null).execute();
		expect(gone).toEqual([{id: ada.chat}]);
	},
);

test('a connection that breaks before the call leads to one message', async () => {
	const {put, pump, said, room, clock, ada} = await deskScene();
	room.dropConnection({method: 'sendMessage', times: 2, when: 'before'});
	await put(ada.chat, say('one'));
	await put(ada.chat, say('two'));
	await pump();
	expect(said(ada.person)).toEqual([]);
	clock.forward(1000);
	await pump();
	expect(said(ada.person)).toEqual([]);
	// The pauses grow.
	clock.forward(1000);
	await pump();
	expect(said(ada.person)).toEqual([]);
	clock.forward(1000);
	await pump();
	expect(said(ada.person)).toEqual(['one', 'two']);
});

test('a connection that breaks after the call may lead to the message twice, never to none', async () => {
	const {put, pump, said, room, clock, ada} = await deskScene();
	room.dropConnection({method: 'sendMessage', times: 1, when: 'after'});
	await put(ada.chat, say('one'));
	await put(ada.chat, say('two'));
	await pump();
	clock.forward(1000);
	await pump();
	expect(said(ada.person)).toEqual(['one', 'one', 'two']);
});

test('a platform that fails is asked again after a while', async () => {
	const {put, pump, said, room, clock, ada} = await deskScene();
	room.refuse({
		method: 'sendMessage',
		times: 2,
		error: {error_code: 500, description: 'Internal Server Error'},
	});
	await put(ada.chat, say('one'));
	for (const text of [[], [], ['one']]) {
		await pump();
		expect(said(ada.person)).toEqual(text);
		clock.forward(5000);
	}
});

test.each([
	'Bad Request: message is not modified: specified new message content and reply markup are exactly the same',
	'Bad Request: message to edit not found',
	"Bad Request: message can't be edited",
])('an edit that answers "%s" is as good as done', async description => {
	const {put, pump, said, states, lines, room, ada} = await deskScene();
	await put(ada.chat, say('one'));
	await pump();
	room.refuse({method: 'editMessageText', times: 1, error: {error_code: 400, description}});
	await put(ada.chat, {kind: 'edit', row: 1, html: 'changed', keyboard: []});
	await put(ada.chat, say('two'));
	await pump();
	expect(said(ada.person)).toEqual(['one', 'two']);
	expect(await states()).toEqual(['sent', 'sent', 'sent']);
	expect(lines).toEqual([]);
});

test('a press answered too late is as good as answered, and one that is a minute old is not answered any more', async () => {
	const {put, pump, states, lines, room, clock, ada} = await deskScene();
	const description = 'Bad Request: query is too old and response timeout expired or query ID is invalid';
	room.refuse({method: 'answerCallbackQuery', times: 1, error: {error_code: 400, description}});
	await put(ada.chat, {kind: 'answer', callback: '1'});
	await pump();
	await put(ada.chat, {kind: 'answer', callback: '2'});
	clock.forward(60_001);
	await pump();
	expect(await states()).toEqual(['sent', 'failed']);
	expect(room.calls().filter(({method}) => method === 'answerCallbackQuery')).toHaveLength(1);
	expect(lines).toEqual([]);
});

test('a message that is refused for good is given up and told to the keeper, and the next one goes', async () => {
	const {put, pump, said, states, lines, ada} = await deskScene();
	await put(ada.chat, say('<b>never closed'));
	await put(ada.chat, say('two'));
	await pump();
	expect(said(ada.person)).toEqual(['two']);
	expect(await states()).toEqual(['failed', 'sent']);
	expect(lines).toMatchObject([{level: 'error', what: 'message refused', row: 1}]);
	expect(JSON.stringify(lines)).not.toContain('never closed');
});

test('a fault of our own puts a message off, and after some tries gives it up for the next one', async () => {
	const {put, pump, said, states, lines, db, clock, ada} = await deskScene();
	await put(ada.chat, say('one'), {role: 'ask'});
	await put(ada.chat, {kind: 'edit', row: 1, html: 'changed', keyboard: []}, {role: 'refresh'});
	await put(ada.chat, say('two'), {role: 'ask'});
	await pump();
	await db.updateTable('outbox').set({content: '{"broken"'}).where('id', '=', 1).execute();
	await db.updateTable('outbox').set({state: 'waiting'}).where('id', '>', 1).execute();
	const before = said(ada.person).length;
	await pump();
	expect(said(ada.person)).toHaveLength(before);
	expect(await states()).toEqual(['sent', 'waiting', 'waiting']);
	for (let tries = 0; tries < 6; tries++) {
		clock.forward(10_000);
		await pump();
	}
	expect(await states()).toEqual(['sent', 'failed', 'sent']);
	expect(said(ada.person).at(-1)).toBe('two');
	expect(lines.every(({what}) => what === 'outbox')).toBe(true);
});

test('a message that cannot be read any more is given up and holds nobody back', async () => {
	const {put, pump, said, states, lines, db, ada, ben} = await deskScene();
	await put(ada.chat, say('one'));
	await put(ada.chat, say('two'));
	await put(ben.chat, say('three'));
	await db
		.updateTable('outbox')
		.set({content: '{"kind":"of-another-program"}'})
		.where('id', '=', 1)
		.execute();
	await pump();
	expect(said(ada.person)).toEqual(['two']);
	expect(said(ben.person)).toEqual(['three']);
	expect(await states()).toEqual(['failed', 'sent', 'sent']);
	expect(lines).toEqual([{level: 'error', what: 'message not readable', row: 1}]);
});

test('a file is sent under its name with its words, and then neither file nor words stay', async () => {
	const {ada, room, db, parcelFolder, put, pump, states} = await deskScene();
	mkdirSync(join(parcelFolder, '3'), {recursive: true});
	writeFileSync(join(parcelFolder, '3', 'finds.csv'), 'a,b\r\n');
	await put(ada.chat, {kind: 'document', file: '3/finds.csv', html: 'Your <b>finds</b>'}, {role: 'file'});
	await pump();
	const message = room.messages(ada.person.id).at(-1);
	expect(message).toMatchObject({text: 'Your finds', document: {fileName: 'finds.csv', sizeBytes: 5}});
	expect(Buffer.from(room.fileBytes(message?.document?.fileId ?? '') ?? []).toString()).toBe('a,b\r\n');
	expect(existsSync(join(parcelFolder, '3'))).toBe(false);
	expect(await states()).toEqual(['sent']);
	expect(JSON.stringify(await db.selectFrom('outbox').select('content').execute())).not.toContain('finds');
});

test('a file waits where the platform is out of reach, and goes later', async () => {
	const {ada, room, parcelFolder, put, pump, states, clock} = await deskScene();
	mkdirSync(join(parcelFolder, '3'), {recursive: true});
	writeFileSync(join(parcelFolder, '3', 'finds.csv'), 'a,b\r\n');
	room.dropConnection({method: 'sendDocument', when: 'before', times: 1});
	await put(ada.chat, {kind: 'document', file: '3/finds.csv', html: ''}, {role: 'file'});
	await pump();
	expect(await states()).toEqual(['waiting']);
	expect(existsSync(join(parcelFolder, '3', 'finds.csv'))).toBe(true);
	clock.forward(10_000);
	await pump();
	expect(await states()).toEqual(['sent']);
	expect(room.messages(ada.person.id).at(-1)?.document?.fileName).toBe('finds.csv');
});
