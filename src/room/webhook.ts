import {setTimeout as sleep} from 'node:timers/promises';
import {z} from 'zod';
import type {Core} from './core.ts';
import {readSetting, writeSetting} from './core.ts';
import type {Waiting} from './updates.ts';
import {chatsWaiting, dropUpdate, nextUpdateOf} from './updates.ts';

const webhookSchema = z.object({url: z.string(), secret: z.string().optional(), connections: z.number()});
const answerWithinMs = 60_000;
const pausesMs = [100, 200, 400, 800, 1600, 3200, 5000];

/** Where updates are sent to. */
export type WebhookSetting = z.infer<typeof webhookSchema>;

/** Delivery by calls to the bot: in order within a chat, chats beside each other, again and again until a 2xx. */
export type Webhook = {
	readonly set: (setting: WebhookSetting | undefined) => void;
	readonly setting: () => WebhookSetting | undefined;
	readonly lastError: () => {readonly at: number; readonly message: string} | undefined;
	readonly stop: () => Promise<void>;
};

/** Starts delivering to the webhook that is set, whenever one is. */
export function openWebhook(core: Core): Webhook {
	const stopping = new AbortController();
	const busy = new Map<number, Promise<void>>();
	let lastError: {readonly at: number; readonly message: string} | undefined;
	const setting = (): WebhookSetting | undefined => readSetting(core, 'webhook', webhookSchema);

	function pump(): void {
		const target = stopping.signal.aborted ? undefined : setting();
		if (target === undefined) return;
		for (const chat of chatsWaiting(core)) {
			if (busy.has(chat) || busy.size >= target.connections) continue;
			const work = deliver(chat).finally(() => {
				busy.delete(chat);
				pump();
			});
			busy.set(chat, work);
		}
	}

	async function deliver(chat: number): Promise<void> {
		for (let tries = 0; !stopping.signal.aborted; ) {
			const target = setting();
			const update = target === undefined ? undefined : nextUpdateOf(core, chat);
			if (target === undefined || update === undefined) return;
			const trouble = await call(target, update, stopping.signal);
			if (stopping.signal.aborted) return;
			if (trouble === undefined) {
				dropUpdate(core, update.seq);
				tries = 0;
			} else {
				lastError = {at: core.clock.now(), message: trouble};
				await pause(pausesMs[Math.min(tries, pausesMs.length - 1)] ?? 5000, stopping.signal);
				tries += 1;
			}
		}
	}

	const stopListening = core.changes.listen(pump);
	pump();
	return {
		set: next => writeSetting(core, 'webhook', next),
		setting,
		lastError: () => lastError,
		stop: async () => {
			stopListening();
			stopping.abort();
			await Promise.all(busy.values());
		},
	};
}

/** Sends one update; gives what went wrong, or undefined when it was taken. */
async function call(target: WebhookSetting, update: Waiting, over: AbortSignal): Promise<string | undefined> {
	const secret = target.secret === undefined ? {} : {'x-telegram-bot-api-secret-token': target.secret};
	try {
		const response = await fetch(target.url, {
			method: 'POST',
			headers: {'content-type': 'application/json', ...secret},
			body: update.body,
			signal: AbortSignal.any([over, AbortSignal.timeout(answerWithinMs)]),
		});
		await response.body?.cancel();
		return response.ok ? undefined : `Wrong response from the webhook: ${response.status}`;
	} catch (error) {
		return error instanceof Error ? error.message : String(error);
	}
}

async function pause(ms: number, over: AbortSignal): Promise<void> {
	await sleep(ms, undefined, {signal: over}).catch(() => undefined);
}
