/** Sends what waits, in order for each chat, one in flight each. */
import {existsSync} from 'node:fs';
import {join} from 'node:path';
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
import {eraseParcelFile} from './parcel-files.ts';
import type {Pictures} from './pictures.ts';
import {type Picture, type Sent, sendCall} from './send.ts';

/** What sending works with. */
export type OutboxTools = {
	readonly db: Db;
	readonly api: Api;
	readonly now: () => number;
	readonly pictures: Pictures;
	/** Where the files of parcels stand. */
	readonly parcelFolder: string;
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
export function openOutbox(tools: OutboxTools, onDone: () => void) {
	const busy = new Set<number>();
	const inFlight = new Set<Promise<void>>();
	const limited = new Map<number, number>();
	const send = async (): Promise<boolean> => {
		const now = tools.now();
		for (const [chat, until] of limited) if (until <= now) limited.delete(chat);
		// Two chats refused at once: the limit is on us, not on a chat (bot-practice 13).
		if (limited.size > 1 || inFlight.size >= mostInFlight) return false;
		const rows = await nextToSend(tools.db, {now, busy, limit: mostInFlight - inFlight.size});
		for (const row of rows) {
			if (!isReadable(row)) {
				tools.log({level: 'error', what: 'message not readable', row: row.id});
				await giveUp(tools.db, row.id);
				continue;
			}
			if (row.call.kind !== 'answer') busy.add(row.chat);
			await markSending(tools.db, row.id);
			const sending = sendRow(tools, row, limited)
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

function isReadable(row: Waiting): row is Readable {
	return row.call !== undefined;
}

async function sendRow(tools: OutboxTools, row: Readable, limited: Map<number, number>): Promise<void> {
	const {db} = tools;
	const address = await addressOf(db, row.chat);
	const isStale = row.call.kind === 'answer' && tools.now() - row.createdAt > answerLivesMs;
	if (!address || isStale) return giveUp(db, row.id);
	const target = row.call.kind === 'edit' ? await messageOfRow(db, row.call.row) : undefined;
	const {call} = row;
	const document = documentOf(tools, call);
	if (document === 'gone') {
		tools.log({level: 'error', what: 'file gone before it was sent', row: row.id});
		return giveUp(db, row.id);
	}
	const picture = await pictureFor(tools, row);
	if (picture === 'not-yet') return postpone(db, {id: row.id, notBefore: tools.now() + 1000});
	const sent = await sendCall({
		api: tools.api,
		platformId: address.platformId,
		call,
		target,
		picture: picture?.picture,
		document,
		onFileId: fileId => picture?.remember(fileId),
		attempts: row.attempts,
	});
	await settle(tools, row, {sent, limited, from: address.platformId});
	// Sent or refused for good, nobody needs it any more; a second try would.
	if (call.kind === 'document' && (sent.kind === 'sent' || sent.kind === 'refused'))
		await eraseParcelFile(tools.parcelFolder, call.file);
}

/** The path of the file that a call carries. */
function documentOf({parcelFolder}: OutboxTools, call: Call): string | 'gone' | undefined {
	if (call.kind !== 'document') return undefined;
	const path = join(parcelFolder, call.file);
	return existsSync(path) ? path : 'gone';
}

/** A fault of our own: the row waits and is tried again, but may not hold back its chat for ever. */
async function stumble({db, now, log}: OutboxTools, row: Waiting, error: unknown): Promise<void> {
	log({level: 'error', what: 'outbox', row: row.id, error: String(error)});
	if (row.attempts >= mostStumbles) await giveUp(db, row.id);
	else await postpone(db, {id: row.id, notBefore: now() + stumblePauseMs});
}

async function settle(
	{db, now, log}: OutboxTools,
	row: Waiting,
	{sent, limited, from}: {sent: Sent; limited: Map<number, number>; from: number},
): Promise<void> {
	switch (sent.kind) {
		case 'sent':
			return markSent(db, {id: row.id, messageId: sent.messageId, now: now()});
		case 'later': {
			const notBefore = now() + sent.afterMs;
			if (sent.isLimited) limited.set(row.chat, notBefore);
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
