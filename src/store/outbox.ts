/** Messages that wait to be sent, in order for each chat. */
import {type Call, callSchema, readCall} from './call.ts';
import type {Db, Tables, Tx} from './schema.ts';

/** What a waiting call is for. */
export type OutboxRole = Tables['outbox']['role'];

/** A row ready to be sent. */
export type Waiting = {
	readonly id: number;
	readonly chat: number;
	readonly find: number | undefined;
	/** Nothing when it cannot be read, as a row of an older program may not. */
	readonly call: Call | undefined;
	readonly attempts: number;
	readonly createdAt: number;
};

/** A call to be put in the queue of a chat. */
export type Posting = {
	readonly chat: number;
	readonly call: Call;
	readonly role: OutboxRole;
	readonly find?: number | undefined;
	readonly turn?: number | undefined;
	readonly notBefore?: number | undefined;
	readonly now: number;
};

/** Sent messages are remembered this long, for edits and for replies to them. */
const rememberedMs = 60 * 24 * 3_600_000;

/** Puts a message in the queue of its chat and gives its row; throws when it could not be read again. */
export async function post(tx: Tx, posting: Posting): Promise<number> {
	const {id} = await tx
		.insertInto('outbox')
		.values({
			chat: posting.chat,
			lane: laneOf(posting.call),
			find: posting.find ?? null,
			turn: posting.turn ?? null,
			role: posting.role,
			content: JSON.stringify(callSchema.parse(posting.call)),
			notBefore: posting.notBefore ?? posting.now,
			state: 'waiting',
			messageId: null,
			createdAt: posting.now,
			sentAt: null,
		})
		.returning('id')
		.executeTakeFirstOrThrow();
	return id;
}

/** The last call for this purpose that was put in the queue of a chat. */
export async function lastPosted(
	tx: Tx,
	{chat, role}: {readonly chat: number; readonly role: OutboxRole},
): Promise<Call | undefined> {
	const row = await tx
		.selectFrom('outbox')
		.select('content')
		.where('chat', '=', chat)
		.where('role', '=', role)
		.where('state', '!=', 'failed')
		.orderBy('id', 'desc')
		.executeTakeFirst();
	return row && readCall(row.content);
}

/** Presses are answered before all else; a picture that follows its words keeps nothing waiting. */
function laneOf(call: Call): Tables['outbox']['lane'] {
	if (call.kind === 'answer') return 'quick';
	return call.kind === 'send' && call.follows === true ? 'picture' : 'chat';
}

/** Takes back the questions of a find that have not left yet: a later one takes their place. */
export async function takeBackQuestions(tx: Tx, find: number): Promise<void> {
	await tx
		.deleteFrom('outbox')
		.where('find', '=', find)
		.where('role', '=', 'ask')
		.where('state', '=', 'waiting')
		.execute();
}

/** The rows that showed a turn of a find, newest first, with what they said. */
export async function rowsOfTurn(
	tx: Tx,
	shown: {find: number; turn: number},
): Promise<readonly {id: number; chat: number; call: Call}[]> {
	const rows = await tx
		.selectFrom('outbox')
		.select(['id', 'chat', 'content'])
		.where('find', '=', shown.find)
		.where('turn', '=', shown.turn)
		.where('role', 'in', ['ask', 'refresh'])
		.where('state', '!=', 'failed')
		.orderBy('id', 'desc')
		.execute();
	return rows.map(row => ({id: row.id, chat: row.chat, call: callSchema.parse(JSON.parse(row.content))}));
}

/** The find that a message of ours in this chat was about. */
export async function findOfMessage(
	tx: Tx,
	message: {chat: number; messageId: number},
): Promise<number | undefined> {
	const row = await tx
		.selectFrom('outbox')
		.select('find')
		.where('chat', '=', message.chat)
		.where('messageId', '=', message.messageId)
		.where('find', 'is not', null)
		.executeTakeFirst();
	return row?.find ?? undefined;
}

/** The next row of each chat that may go now, quick ones first; chats in `busy` are left out. */
export async function nextToSend(
	db: Db,
	ask: {now: number; busy: ReadonlySet<number>; limit: number},
): Promise<readonly Waiting[]> {
	const heads = await db
		.selectFrom('outbox')
		.select(['chat', 'lane'])
		.select(build => build.fn.min('id').as('id'))
		.where('state', 'in', ['waiting', 'sending'])
		.groupBy(['chat', 'lane'])
		.execute();
	const free = heads.filter(head => head.lane === 'quick' || !ask.busy.has(head.chat));
	if (free.length === 0) return [];
	const rows = await db
		.selectFrom('outbox')
		.select(['id', 'chat', 'find', 'content', 'attempts', 'createdAt'])
		.where(
			'id',
			'in',
			free.map(head => head.id),
		)
		.where('state', '=', 'waiting')
		.where('notBefore', '<=', ask.now)
		.orderBy('lane', 'desc')
		.orderBy('id')
		.limit(ask.limit)
		.execute();
	return rows.map(row => ({
		...row,
		find: row.find ?? undefined,
		call: readCall(row.content),
	}));
}

/** Marks a row as being sent: after a crash it may have arrived. */
export async function markSending(db: Db, id: number): Promise<void> {
	await db
		.updateTable('outbox')
		.set(build => ({state: 'sending' as const, attempts: build('attempts', '+', 1)}))
		.where('id', '=', id)
		.execute();
}

/** What stays of words that nobody will edit: they may name a place, and their find may be deleted. */
const saidAndGone = JSON.stringify({kind: 'answer', callback: ''});

/** Marks a row as sent, with the message it became; only questions keep their words, for the edit that closes them. */
export async function markSent(
	db: Db | Tx,
	sent: {id: number; messageId: number | undefined; now: number},
): Promise<void> {
	await db
		.updateTable('outbox')
		.set(({eb, ref}) => ({
			state: 'sent' as const,
			messageId: sent.messageId ?? null,
			sentAt: sent.now,
			content: eb.case().when('role', 'in', ['say', 'file']).then(saidAndGone).else(ref('content')).end(),
		}))
		.where('id', '=', sent.id)
		.execute();
}

/** Puts a row back to wait, and with it all that stands behind it in its chat. */
export async function postpone(db: Db, later: {id: number; notBefore: number}): Promise<void> {
	await db
		.updateTable('outbox')
		.set({state: 'waiting', notBefore: later.notBefore})
		.where('id', '=', later.id)
		.execute();
}

/** Gives a row up; nobody will read its words any more. */
export async function giveUp(db: Db, id: number): Promise<void> {
	await db.updateTable('outbox').set({state: 'failed', content: saidAndGone}).where('id', '=', id).execute();
}

/**
 * Rows that were being sent when the program died wait again: a question that arrives twice is harmless, since its
 * buttons carry the turn, and so is a press answered twice.
 */
export async function recoverSending(db: Db): Promise<void> {
	await db.updateTable('outbox').set({state: 'waiting'}).where('state', '=', 'sending').execute();
}

/** The message a row became, and whether it carries a picture. */
export async function messageOfRow(
	db: Db,
	id: number,
): Promise<{messageId: number; isPhoto: boolean; call: Call} | undefined> {
	const row = await db
		.selectFrom('outbox')
		.select(['messageId', 'content'])
		.where('id', '=', id)
		.executeTakeFirst();
	if (row?.messageId == null) return undefined;
	const call = callSchema.parse(JSON.parse(row.content));
	if (call.kind === 'edit') {
		const target = await messageOfRow(db, call.row);
		return target && {...target, call};
	}
	return {
		messageId: row.messageId,
		isPhoto: call.kind === 'send' && (call.picture ?? call.attachment) !== undefined,
		call,
	};
}

/** Forgets what was said about a find; what is on people's screens stays there. */
export async function forgetMessages(tx: Tx, find: number): Promise<void> {
	await tx.deleteFrom('outbox').where('find', '=', find).where('state', '!=', 'sending').execute();
}

/** Forgets messages older than two months. */
export async function forgetOldMessages(db: Db, now: number): Promise<void> {
	await db
		.deleteFrom('outbox')
		.where('createdAt', '<', now - rememberedMs)
		.where('state', 'in', ['sent', 'failed', 'unknown'])
		.execute();
}
