import {createServer} from 'node:http';
import type {AddressInfo} from 'node:net';
import {expect, onTestFinished, test, vi} from 'vitest';
import {z} from 'zod';
import {call, scene} from './scene.ts';

const updateSchema = z.object({
	update_id: z.number(),
	message: z.object({text: z.string(), chat: z.object({id: z.number()})}),
});

type Heard = {readonly text: string; readonly chat: number; readonly id: number; readonly secret: unknown};

async function listener(
	answer: (heard: Heard) => number | Promise<number>,
): Promise<{url: string; heard: Heard[]}> {
	const heard: Heard[] = [];
	const server = createServer((request, response) => {
		let body = '';
		request.on('data', part => {
			body += part;
		});
		request.on('end', async () => {
			const {update_id: id, message} = updateSchema.parse(JSON.parse(body));
			const secret = request.headers['x-telegram-bot-api-secret-token'];
			const one = {text: message.text, chat: message.chat.id, id, secret};
			heard.push(one);
			response.writeHead(await answer(one)).end();
		});
	});
	await new Promise<void>(resolve => server.listen(0, '127.0.0.1', () => resolve()));
	onTestFinished(() => {
		server.closeAllConnections();
		server.close();
	});
	return {url: `http://127.0.0.1:${portOf(server.address())}/hook`, heard};
}

function portOf(address: AddressInfo | string | null): number {
	if (address === null || typeof address === 'string') throw new Error(`Expected a port; got ${address}`);
	return address.port;
}

test('an update is sent with the secret, again and again until it is taken, and the next one waits (secret_token, redelivery_webhook)', async () => {
	const {room} = await scene();
	let failures = 2;
	const {url, heard} = await listener(() => {
		failures -= 1;
		return failures >= 0 ? 500 : 200;
	});
	await call(room, 'setWebhook', {url, secret_token: 'se-cret'});
	const ada = room.person('Ada');
	ada.sends('one');
	ada.sends('two');
	await room.idle();
	expect(heard.map(one => one.text)).toEqual(['one', 'one', 'one', 'two']);
	expect(new Set(heard.map(one => one.secret))).toEqual(new Set(['se-cret']));
	const info = await call(room, 'getWebhookInfo');
	expect(info.result).toMatchObject({
		url,
		pending_update_count: 0,
		last_error_message: expect.stringContaining('500'),
	});
});

test('one chat does not wait for another (order)', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	let release = (): void => undefined;
	const held = new Promise<void>(resolve => {
		release = resolve;
	});
	const {url, heard} = await listener(async one => {
		if (one.chat === ada.id) await held;
		return 200;
	});
	await call(room, 'setWebhook', {url});
	ada.sends('slow');
	ada.sends('after slow');
	room.person('Ben').sends('quick');
	await vi.waitFor(() => expect(heard.map(one => one.text)).toEqual(['slow', 'quick']));
	release();
	await room.idle();
	expect(heard.map(one => one.text)).toEqual(['slow', 'quick', 'after slow']);
});

test('only an address with HTTPS, or on this machine, is taken (https)', async () => {
	const {room} = await scene();
	const refused = await call(room, 'setWebhook', {url: 'http://example.org/hook'});
	expect(refused).toMatchObject({ok: false, error_code: 400});
});
