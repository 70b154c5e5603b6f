/** Sends what is to be told to many: marked before it leaves, never twice, at most three under way. */
import type {Api} from 'grammy';
import {stopTelling} from '../store/audience.ts';
import type {Broadcast} from '../store/broadcasts.ts';
import type {Call} from '../store/call.ts';
import {addressOf, joinAddresses, markGone} from '../store/chats.ts';
import {
	claimDelivery,
	type Delivery,
	nextDeliveries,
	postponeDelivery,
	settleDelivery,
} from '../store/deliveries.ts';
import type {Db} from '../store/schema.ts';
import type {Sent} from './judge.ts';
import type {Pace} from './pace.ts';
import type {Pictures} from './pictures.ts';
import {sendCall} from './send.ts';

/** What delivering works with. */
export type DeliveringTools = {
	readonly db: Db;
	readonly api: Api;
	readonly now: () => number;
	readonly pace: Pace;
	/** Where the pictures of messages come from. */
	readonly pictures: Pick<Pictures, 'drawing'>;
	/** What one chat is told, in its own language. */
	readonly word: (broadcast: Broadcast, delivery: Delivery) => Promise<Extract<Call, {kind: 'send'}>>;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
};

/** More at once only make the platform's pauses longer (grammY documentation, advanced/flood). */
const mostInFlight = 3;
const mostAttempts = 8;
/** Nobody waits for these messages, so they wait for their picture. */
const picturePatienceMs = 20_000;
/** One message a second to one chat (grammY documentation, advanced/flood). */
const chatPauseMs = 1000;

/** Opens the sending; `start` sets off what may leave now and says how many that were. */
export function openDelivering(tools: DeliveringTools, onDone: () => void) {
	const busy = new Set<number>();
	const inFlight = new Set<Promise<void>>();
	const setOff = async (broadcast: Broadcast, delivery: Delivery): Promise<boolean> => {
		if (!tools.pace.isOpenFor(delivery.chat, delivery.kind)) {
			// Out of the way of those behind it.
			await postponeDelivery(tools.db, {
				id: delivery.id,
				from: 'waiting',
				notBefore: tools.now() + chatPauseMs,
			});
			return false;
		}
		if (!(await claimDelivery(tools.db, delivery.id))) return false;
		busy.add(delivery.chat);
		const sending = deliver(tools, broadcast, delivery).finally(() => {
			busy.delete(delivery.chat);
			inFlight.delete(sending);
			onDone();
		});
		inFlight.add(sending);
		return true;
	};
	return {
		start: async (running: readonly Broadcast[]): Promise<number> => {
			let started = 0;
			for (const broadcast of running) {
				if (inFlight.size >= mostInFlight || !tools.pace.isOpen()) break;
				const ask = {broadcast: broadcast.id, now: tools.now(), busy: [...busy], limit: mostInFlight};
				for (const delivery of await nextDeliveries(tools.db, ask)) {
					if (inFlight.size >= mostInFlight || !tools.pace.isOpen()) break;
					if (await setOff(broadcast, delivery)) started += 1;
				}
			}
			return started;
		},
		drained: async (): Promise<void> => {
			await Promise.all(inFlight);
		},
	};
}

async function deliver(tools: DeliveringTools, broadcast: Broadcast, delivery: Delivery): Promise<void> {
	const {db, log, now} = tools;
	try {
		const address = await addressOf(db, delivery.chat);
		if (!address) return await settleDelivery(db, {id: delivery.id, state: 'gone', now: now()});
		const call = await tools.word(broadcast, delivery);
		const drawn = call.picture && (await tools.pictures.drawing(call.picture, picturePatienceMs));
		const found = drawn === 'late' ? undefined : drawn;
		const ended = tools.pace.begin(delivery.chat);
		const {platformId} = address;
		const sent = await sendCall({
			api: tools.api,
			platformId,
			call,
			picture: found?.picture,
			...(found ? {onFileId: found.remember} : {}),
			attempts: delivery.attempts,
		}).finally(ended);
		await settle(tools, delivery, {sent, from: platformId});
	} catch (error) {
		// Ours to mend; whether it has left is not known, so it is not sent again.
		log({level: 'error', what: 'delivery', delivery: delivery.id, error: String(error)});
		await settleDelivery(db, {id: delivery.id, state: 'failed', now: now()});
	}
}

async function settle(
	tools: DeliveringTools,
	{id, chat, attempts}: Delivery,
	{sent, from}: {readonly sent: Sent; readonly from: number},
): Promise<void> {
	const {db, log, now} = tools;
	switch (sent.kind) {
		case 'sent':
			return settleDelivery(db, {id, state: 'sent', now: now()});
		case 'later': {
			// A call that may have arrived is not repeated (bot-practice 12).
			if (sent.mayHaveLeft) return settleDelivery(db, {id, state: 'unknown', now: now()});
			const notBefore = now() + sent.afterMs;
			if (sent.isLimited) tools.pace.limit(chat, notBefore);
			else if (attempts >= mostAttempts) return settleDelivery(db, {id, state: 'failed', now: now()});
			return postponeDelivery(db, {id, from: 'sending', notBefore});
		}
		case 'moved':
			await db.transaction().execute(tx => joinAddresses(tx, {from, to: sent.to, now: now()}));
			return postponeDelivery(db, {id, from: 'sending', notBefore: now()});
		case 'gone':
			await settleDelivery(db, {id, state: 'gone', now: now()});
			await markGone(db, chat, now());
			return stopTelling(db, chat);
		case 'refused':
			log({level: 'error', what: 'delivery refused', delivery: id, description: sent.description});
			return settleDelivery(db, {id, state: 'failed', now: now()});
	}
}
