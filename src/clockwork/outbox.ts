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
	postpone,
	type Waiting,
} from '../store/outbox.ts';
import type {Db} from '../store/schema.ts';
import {openPace, type Pace} from './pace.ts';
import type {Pictures} from './pictures.ts';
import {type Picture, type Sent, sendCall} from './send.ts';

/** What sending works with. */
export type OutboxTools = {
	readonly db: Db;
	readonly api: Api;
	readonly now: () => number;
	readonly pictures: Pictures;
	/** Counts what is sent beside what goes to many; a count of its own without it. */
	readonly pace?: Pace;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
};

const mostStumbles = 5;
const stumblePauseMs = 10_000;
/** Chats sent to at the same time. */
const mostInFlight = 8;
/** A press must be answered at once or not at all. */
const answerLivesMs = 60_000;
/** How long a message waits for the photo that goes with it. */
const photoPatienceMs = 120_000;

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

type Readable = Waiting & {readonly call: Call};
type Paced = OutboxTools & {readonly pace: Pace};

function isReadable(row: Waiting): row is Readable {
	return row.call !== undefined;
}

async function sendRow(tools: Paced, row: Readable): Promise<void> {
	const {db} = tools;
	const address = await addressOf(db, row.chat);
	const isStale = row.call.kind === 'answer' && tools.now() - row.createdAt > answerLivesMs;
	if (!address || isStale) return giveUp(db, row.id);
	const target = row.call.kind === 'edit' ? await messageOfRow(db, row.call.row) : undefined;
	const picture = await pictureFor(tools, row);
	if (picture === 'not-yet') return postpone(db, {id: row.id, notBefore: tools.now() + 1000});
	const ended = row.call.kind === 'send' ? tools.pace.begin(row.chat) : () => undefined;
	const sent = await sendCall({
		api: tools.api,
		platformId: address.platformId,
		call: row.call,
		target,
		picture: picture?.picture,
		onFileId: fileId => picture?.remember(fileId),
		attempts: row.attempts,
	}).finally(ended);
	await settle(tools, row, {sent, from: address.platformId});
}

/** A fault of our own: the row waits and is tried again, but may not hold back its chat for ever. */
async function stumble({db, now, log}: OutboxTools, row: Waiting, error: unknown): Promise<void> {
	log({level: 'error', what: 'outbox', row: row.id, error: String(error)});
	if (row.attempts >= mostStumbles) await giveUp(db, row.id);
	else await postpone(db, {id: row.id, notBefore: now() + stumblePauseMs});
}

async function settle(
	{db, now, log, pace}: Paced,
	row: Waiting,
	{sent, from}: {sent: Sent; from: number},
): Promise<void> {
	switch (sent.kind) {
		case 'sent':
			return markSent(db, {id: row.id, messageId: sent.messageId, now: now()});
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

type Found = {readonly picture: Picture; readonly remember: (fileId: string) => void};

async function pictureFor(
	{pictures, now}: OutboxTools,
	row: Readable,
): Promise<Found | 'not-yet' | undefined> {
	if (row.call.kind !== 'send') return undefined;
	if (row.call.picture !== undefined) return pictures.drawing(row.call.picture);
	if (row.call.photoOf === undefined) return undefined;
	const found = await pictures.photoOf(row.call.photoOf);
	return found === 'not-yet' && now() - row.createdAt > photoPatienceMs ? undefined : found;
}
