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
import type {Pictures} from './pictures.ts';
import {fitsCaption, type Picture, type Sent, sendCall} from './send.ts';

/** What sending works with. */
export type OutboxTools = {
	readonly db: Db;
	readonly api: Api;
	readonly now: () => number;
	readonly pictures: Pictures;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
};

const mostStumbles = 5;
const stumblePauseMs = 10_000;
/** Chats sent to at the same time. */
const mostInFlight = 8;
/** A press must be answered at once or not at all. */
const answerLivesMs = 60_000;
/** A card that is not drawn after so many looks will not be. */
const mostFollowed = 20;
const followPauseMs = 1000;
/** How long a message waits for the photo that goes with it. */
const photoPatienceMs = 120_000;
/** How long an album waits for its drawing. */
const albumPatienceMs = 10_000;
/** Platform-limits.json, media_group. */
const mostInAlbum = 10;

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
	const found = await pictureFor(tools, row);
	const pictures = await picturesFor(tools, row);
	if (found === 'not-yet' || pictures === 'not-yet')
		return postpone(db, {id: row.id, notBefore: tools.now() + 1000});
	if (isFollowing(row) && found === undefined) return giveUp(db, row.id);
	if (isFollowing(row) && found === 'late') return followLater(tools, row);
	const picture = found === 'late' ? undefined : found;
	const sent = await sendCall({
		api: tools.api,
		platformId: address.platformId,
		call: row.call,
		target,
		picture: picture?.picture,
		pictures,
		onFileId: fileId => picture?.remember(fileId),
		attempts: row.attempts,
	});
	const follow = found === 'late' ? followOf(row) : undefined;
	await settle(tools, row, {sent, limited, from: address.platformId, follow});
}

/** A fault of our own: the row waits and is tried again, but may not hold back its chat for ever. */
async function stumble({db, now, log}: OutboxTools, row: Waiting, error: unknown): Promise<void> {
	log({level: 'error', what: 'outbox', row: row.id, error: String(error)});
	if (row.attempts >= mostStumbles) await giveUp(db, row.id);
	else await postpone(db, {id: row.id, notBefore: now() + stumblePauseMs});
}

type Settling = {
	readonly sent: Sent;
	readonly limited: Map<number, number>;
	readonly from: number;
	/** The card that comes after its words. */
	readonly follow: Omit<Posting, 'now'> | undefined;
};

async function settle(
	{db, now, log}: OutboxTools,
	row: Waiting,
	{sent, limited, from, follow}: Settling,
): Promise<void> {
	switch (sent.kind) {
		case 'sent':
			return db.transaction().execute(async tx => {
				await markSent(tx, {id: row.id, messageId: sent.messageId, now: now()});
				if (follow) await post(tx, {...follow, now: now()});
			});
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
): Promise<Found | 'not-yet' | 'late' | undefined> {
	if (row.call.kind !== 'send') return undefined;
	const {picture, alone, html} = row.call;
	if (picture && alone !== undefined && !fitsCaption(html)) {
		// It cannot go with these words, so they need not wait for it.
		void pictures.prepare(picture);
		return 'late';
	}
	if (picture !== undefined) return pictures.drawing(picture);
	const {photo, photoOf} = row.call;
	if (photo === undefined && photoOf === undefined) return undefined;
	const found = await (photo === undefined ? pictures.photoOf(photoOf ?? 0) : pictures.photo(photo));
	return found === 'not-yet' && now() - row.createdAt > photoPatienceMs ? undefined : found;
}

function isFollowing({call}: Readable): boolean {
	return call.kind === 'send' && call.follows === true;
}

/** The card that comes by itself, since it was late or its words are too long for a caption. */
function followOf({call, chat, find}: Readable): Omit<Posting, 'now'> | undefined {
	if (call.kind !== 'send' || call.alone === undefined || call.follows === true) return undefined;
	const {picture, thread, alone} = call;
	const follow = {kind: 'send' as const, html: alone, keyboard: [], follows: true, picture};
	return {chat, find, role: 'say', call: thread === undefined ? follow : {...follow, thread}};
}

async function followLater({db, now, log}: OutboxTools, row: Readable): Promise<void> {
	if (row.attempts < mostFollowed) return postpone(db, {id: row.id, notBefore: now() + followPauseMs});
	log({level: 'warn', what: 'card given up', row: row.id});
	return giveUp(db, row.id);
}

/** What stands in an album: stored photos, then the drawing, for which nobody waits at a question. */
async function picturesFor(
	{pictures, now}: OutboxTools,
	row: Readable,
): Promise<readonly Picture[] | 'not-yet'> {
	if (row.call.kind !== 'album') return [];
	const stored = await pictures.photosOf(row.call.photosOf);
	const isPatient = now() - row.createdAt <= photoPatienceMs;
	if (stored === 'not-yet' && isPatient) return 'not-yet';
	const drawn = row.call.picture && (await pictures.drawing(row.call.picture, albumPatienceMs));
	const photos = stored === 'not-yet' ? [] : stored.slice(0, mostInAlbum - 1);
	return [...photos, ...(drawn && drawn !== 'late' ? [drawn.picture] : [])];
}
