/** Sends what waits, in order for each chat, one in flight each. */
import type {Api} from 'grammy';
import type {Call} from '../store/call.ts';
import {addressOf, joinAddresses, markGone} from '../store/chats.ts';
import {
	giveUp,
	markSending,
	markSent,
	messageOfRow,
	nextToSend,
	type Posting,
	post,
	postpone,
	type Waiting,
} from '../store/outbox.ts';
import type {Db} from '../store/schema.ts';
import type {Sent} from './judge.ts';
import {isReadable, type LuggageTools, packLuggage, type Readable} from './luggage.ts';
import {openPace, type Pace} from './pace.ts';
import {eraseParcelFile} from './parcel-files.ts';
import {sendCall} from './send.ts';

/** What sending works with. */
export type OutboxTools = LuggageTools & {
	readonly db: Db;
	readonly api: Api;
	/** Counts what is sent beside what goes to many; a count of its own without it. */
	readonly pace?: Pace;
};

const mostStumbles = 5;
const stumblePauseMs = 10_000;
/** Chats sent to at the same time. */
const mostInFlight = 8;
/** A press must be answered at once or not at all. */
const answerLivesMs = 60_000;

/** A pump for the outbox; `send` starts what may go and says whether anything did. */
export function openOutbox(given: OutboxTools, onDone: () => void) {
	const pace = given.pace ?? openPace(given.now);
	const tools = {...given, pace};
	const busy = new Set<number>();
	const inFlight = new Set<Promise<void>>();
	const send = async (): Promise<boolean> => {
		const now = tools.now();
		// Two chats refused at once: the limit is on us, not on a chat (bot-practice 13).
		if (pace.isHeld() || inFlight.size >= mostInFlight) return false;
		const rows = await nextToSend(tools.db, {now, busy, limit: mostInFlight - inFlight.size});
		for (const row of rows) {
			if (!isReadable(row)) {
				tools.log({level: 'error', what: 'message not readable', row: row.id});
				await giveUp(tools.db, row.id);
				continue;
			}
			if (row.call.kind !== 'answer') busy.add(row.chat);
			await markSending(tools.db, row.id);
			const sending = sendRow(tools, row)
				.catch(error => stumble(tools, row, error))
				.finally(() => {
					busy.delete(row.chat);
					inFlight.delete(sending);
					onDone();
				});
			inFlight.add(sending);
		}
		return rows.length > 0;
	};
	return {
		send,
		/** Resolves when nothing is in flight. */
		drained: async () => {
			await Promise.all(inFlight);
		},
	};
}

type Paced = OutboxTools & {readonly pace: Pace};

async function sendRow(tools: Paced, row: Readable): Promise<void> {
	const {db} = tools;
	const address = await addressOf(db, row.chat);
	const isStale = row.call.kind === 'answer' && tools.now() - row.createdAt > answerLivesMs;
	if (!address || isStale) return giveUp(db, row.id);
	const target = row.call.kind === 'edit' ? await messageOfRow(db, row.call.row) : undefined;
	const luggage = await packLuggage(tools, row);
	if (luggage.kind === 'not-yet') return postpone(db, {id: row.id, notBefore: tools.now() + luggage.afterMs});
	if (luggage.kind === 'missing') return giveUp(db, row.id);
	const {call} = row;
	const ended = isMessage(call) ? tools.pace.begin(row.chat) : undefined;
	const sent = await sendCall({
		...luggage.items,
		api: tools.api,
		platformId: address.platformId,
		call,
		target,
		attempts: row.attempts,
	}).finally(ended);
	await settle(tools, row, {sent, from: address.platformId, follow: luggage.follow});
	// Sent or refused for good, nobody needs it any more; a second try would.
	if (call.kind === 'document' && (sent.kind === 'sent' || sent.kind === 'refused'))
		await eraseParcelFile(tools.parcelFolder, call.file);
}

/** What the platform counts against its limits. */
function isMessage({kind}: Call): boolean {
	return kind === 'send' || kind === 'album' || kind === 'document';
}

/** A fault of our own: the row waits and is tried again, but may not hold back its chat for ever. */
async function stumble({db, now, log}: OutboxTools, row: Waiting, error: unknown): Promise<void> {
	log({level: 'error', what: 'outbox', row: row.id, error: String(error)});
	if (row.attempts >= mostStumbles) await giveUp(db, row.id);
	else await postpone(db, {id: row.id, notBefore: now() + stumblePauseMs});
}

type Settling = {
	readonly sent: Sent;
	readonly from: number;
	/** The card that comes after its words. */
	readonly follow: Omit<Posting, 'now'> | undefined;
};

async function settle(
	{db, now, log, pace}: Paced,
	row: Waiting,
	{sent, from, follow}: Settling,
): Promise<void> {
	switch (sent.kind) {
		case 'sent':
			return db.transaction().execute(async tx => {
				await markSent(tx, {id: row.id, messageId: sent.messageId, now: now()});
				if (follow) await post(tx, {...follow, now: now()});
			});
		case 'later': {
			const notBefore = now() + sent.afterMs;
			if (sent.isLimited) pace.limit(row.chat, notBefore);
			return postpone(db, {id: row.id, notBefore});
		}
		case 'moved':
			await db.transaction().execute(tx => joinAddresses(tx, {from, to: sent.to, now: now()}));
			return postpone(db, {id: row.id, notBefore: now()});
		case 'gone':
			log({level: 'info', what: 'chat gone', chat: row.chat});
			await giveUp(db, row.id);
			return markGone(db, row.chat, now());
		case 'refused':
			log({level: 'error', what: 'message refused', row: row.id, description: sent.description});
			return giveUp(db, row.id);
	}
}
