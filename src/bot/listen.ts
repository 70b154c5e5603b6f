/** How updates come in: by polling, or by webhook when the platform can reach us. */
import {createServer} from 'node:http';
import {type Bot, webhookCallback} from 'grammy';
import {allowedUpdates} from './bot.ts';
import type {Ctx} from './desk.ts';

/** Updates being taken in, by polling or by webhook, until stopped. */
export type Listening = {
	/** Resolves when listening was stopped, rejects when it cannot go on. */
	readonly ended: Promise<void>;
	readonly stop: () => Promise<void>;
};

type Webhook = {readonly url: string; readonly secret: string; readonly port: number};

/** Begins to listen. The plain loop takes one update at a time and confirms it after its transaction. */
export async function listen(bot: Bot<Ctx>, webhook: Webhook | undefined): Promise<Listening> {
	return webhook ? serve(bot, webhook) : poll(bot);
}

async function poll(bot: Bot<Ctx>): Promise<Listening> {
	await bot.api.deleteWebhook({drop_pending_updates: false});
	const ended = bot.start({allowed_updates: allowedUpdates});
	return {
		ended,
		stop: async () => {
			// A platform out of reach is no reason to stop half-way: what it sends again, the inbox drops.
			await bot.stop().catch(() => undefined);
			await ended.catch(() => undefined);
		},
	};
}

async function serve(bot: Bot<Ctx>, {url, secret, port}: Webhook): Promise<Listening> {
	// Nothing is answered in the reply, and a slow update fails loudly (bot-practice 5).
	const handle = webhookCallback(bot, 'http', {
		secretToken: secret,
		onTimeout: 'throw',
		timeoutMilliseconds: 10_000,
	});
	const {pathname} = new URL(url);
	const server = createServer((request, response) => {
		if (request.method === 'GET' && request.url === '/health') return void response.writeHead(200).end('ok');
		if (request.method !== 'POST' || request.url !== pathname) return void response.writeHead(404).end();
		handle(request, response).catch(() => {
			if (!response.headersSent) response.writeHead(500).end();
		});
	});
	await new Promise<void>((resolve, reject) => {
		server.once('error', reject);
		server.listen(port, resolve);
	});
	await bot.api.setWebhook(url, {secret_token: secret, allowed_updates: allowedUpdates});
	const ended = new Promise<void>(resolve => {
		server.once('close', resolve);
	});
	return {
		ended,
		stop: async () => {
			server.close();
			server.closeIdleConnections();
			await ended;
		},
	};
}
