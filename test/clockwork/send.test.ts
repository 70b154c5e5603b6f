import {createServer} from 'node:http';
import {Api} from 'grammy';
import {expect, onTestFinished, test} from 'vitest';
import type {Sending} from '../../src/clockwork/platform-call.ts';
import {sendCall} from '../../src/clockwork/send.ts';

type Answer = {readonly status: number; readonly body: string};

/** A platform that gives the same answer to every call, and remembers what was asked. */
async function platform({status, body}: Answer) {
	const asked: string[] = [];
	const server = createServer((request, response) => {
		asked.push(request.url?.split('/').at(-1) ?? '');
		request.resume();
		request.on('end', () => response.writeHead(status, {'content-type': 'application/json'}).end(body));
	});
	await new Promise<void>(resolve => server.listen(0, '127.0.0.1', resolve));
	onTestFinished(() => {
		server.closeAllConnections();
		server.close();
	});
	const address = server.address();
	if (address === null || typeof address === 'string') throw new Error('Expected a port of our own');
	return {asked, api: new Api('1:made-up', {apiRoot: `http://127.0.0.1:${address.port}`})};
}

const refused = (error_code: number, description: string, parameters: object = {}): Answer => ({
	status: error_code,
	body: JSON.stringify({ok: false, error_code, description, parameters}),
});

async function sent(answer: Answer, more: Partial<Sending> = {}) {
	const {api} = await platform(answer);
	return sendCall({
		api,
		platformId: 7,
		call: {kind: 'send', html: 'Hello', keyboard: []},
		attempts: 0,
		...more,
	});
}

test('a message that went out is known by its number', async () => {
	const body = JSON.stringify({ok: true, result: {message_id: 41, date: 1, chat: {id: 7, type: 'private'}}});
	expect(await sent({status: 200, body})).toEqual({kind: 'sent', messageId: 41});
});

test('a platform that is busy says how long to wait, or is given five seconds', async () => {
	const limited = {kind: 'later', isLimited: true, mayHaveLeft: false};
	const many = 'Too Many Requests: retry after 240';
	expect(await sent(refused(429, many, {retry_after: 240}))).toEqual({...limited, afterMs: 240_000});
	expect(await sent(refused(429, 'Too Many Requests'))).toEqual({...limited, afterMs: 5000});
});

test.each([
	{what: 'fails', answer: refused(500, 'Internal Server Error')},
	{what: 'is away', answer: refused(502, 'Bad Gateway')},
	{
		what: 'is stood in for by something that speaks otherwise',
		answer: {status: 503, body: '{"message":"busy"}'},
	},
	{what: 'answers nothing sensible', answer: {status: 200, body: '{}'}},
	{what: 'answers a page for people', answer: {status: 502, body: '<html>Bad gateway</html>'}},
])('while the platform $what the message waits', async ({answer}) => {
	expect(await sent(answer)).toMatchObject({kind: 'later', isLimited: false});
});

test('the longer the platform is out of reach, the longer the pause, up to five minutes', async () => {
	const api = new Api('1:made-up', {apiRoot: 'http://127.0.0.1:1'});
	const pauses = [];
	for (const attempts of [0, 1, 2, 8, 20]) pauses.push(await sent(refused(500, ''), {api, attempts}));
	expect(pauses).toEqual(
		[1000, 2000, 4000, 256_000, 300_000].map(afterMs => ({
			kind: 'later',
			afterMs,
			isLimited: false,
			mayHaveLeft: false,
		})),
	);
});

test.each([
	refused(403, 'Forbidden: bot was blocked by the user'),
	refused(403, 'Forbidden: user is deactivated'),
	refused(403, "Forbidden: bot can't initiate conversation with a user"),
	refused(403, 'Forbidden: bot was kicked from the supergroup chat'),
	refused(400, 'Bad Request: chat not found'),
	refused(400, 'Bad Request: group chat was deleted'),
])('a chat is gone when the platform says $body', async answer => {
	expect(await sent(answer)).toEqual({kind: 'gone'});
});

test('a group that moved says where to', async () => {
	const answer = refused(400, 'Bad Request: group chat was upgraded to a supergroup chat', {
		migrate_to_chat_id: -1001,
	});
	expect(await sent(answer)).toEqual({kind: 'moved', to: -1001});
});

test('a message that the platform will never take is refused with its words', async () => {
	const description = "Bad Request: can't parse entities";
	expect(await sent(refused(400, description))).toEqual({kind: 'refused', description});
});

test('an edit of a message that never arrived is left out', async () => {
	const {api, asked} = await platform(refused(400, 'Bad Request: nobody should ask'));
	const call = {kind: 'edit' as const, row: 1, html: 'changed', keyboard: []};
	expect(await sent(refused(500, ''), {api, call})).toEqual({kind: 'sent', messageId: undefined});
	expect(asked).toEqual([]);
});

test('a picture is not tried again as words when the platform is merely busy or the chat is gone', async () => {
	const picture = {fileId: 'known'};
	for (const answer of [
		refused(429, 'Too Many Requests'),
		refused(403, 'Forbidden: bot was blocked by the user'),
	]) {
		const {api, asked} = await platform(answer);
		await sent(answer, {api, picture});
		expect(asked).toEqual(['sendPhoto']);
	}
	const {api, asked} = await platform(refused(400, 'Bad Request: wrong file identifier'));
	await sent(refused(500, ''), {api, picture});
	expect(asked).toEqual(['sendPhoto', 'sendMessage']);
});
