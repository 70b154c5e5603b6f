/** Chats of our own, and the platform's ids for them. */
import {moveAudience} from './audience.ts';
import type {Db, Tx} from './schema.ts';
import {moveSeats} from './seats.ts';

/** A chat of ours, with the id the platform knows it by now. */
export type Chat = {readonly id: number; readonly kind: 'private' | 'group'; readonly platformId: number};

/** The chat with this platform id, made where it is new; one that was gone is back. */
export async function chatFor(
	tx: Tx,
	seen: {platformId: number; kind: Chat['kind']; now: number},
): Promise<Chat> {
	const known = await tx
		.selectFrom('chatAddress')
		.innerJoin('chat', 'chat.id', 'chatAddress.chat')
		.select(['chat.id', 'chat.kind', 'chat.goneAt'])
		.where('chatAddress.platformId', '=', seen.platformId)
		.executeTakeFirst();
	if (known) {
		if (known.goneAt !== null) await welcomeBack(tx, known.id, seen.now);
		return {id: known.id, kind: known.kind, platformId: seen.platformId};
	}
	const {id} = await tx
		.insertInto('chat')
		.values({kind: seen.kind, goneAt: null, createdAt: seen.now})
		.returning('id')
		.executeTakeFirstOrThrow();
	await tx.insertInto('chatAddress').values({platformId: seen.platformId, chat: id}).execute();
	return {id, kind: seen.kind, platformId: seen.platformId};
}

/** A chat that was gone is back: open questions that did not reach it are sent after all, each once. */
async function welcomeBack(tx: Tx, chat: number, now: number): Promise<void> {
	await tx.updateTable('chat').set({goneAt: null}).where('id', '=', chat).execute();
	const unheard = await tx
		.selectFrom('outbox')
		.innerJoin('find', 'find.id', 'outbox.find')
		.select(({fn}) => fn.max('outbox.id').as('id'))
		.where('outbox.chat', '=', chat)
		.where('outbox.role', '=', 'ask')
		.where('outbox.state', '=', 'failed')
		// One that was sent stands on people's screens.
		.where('outbox.sentAt', 'is', null)
		.where('find.state', 'in', ['open', 'soaking'])
		.whereRef('outbox.turn', '=', 'find.turn')
		.groupBy('outbox.find')
		.execute();
	const ids = unheard.map(({id}) => Number(id));
	if (ids.length === 0) return;
	await tx.updateTable('outbox').set({state: 'waiting', notBefore: now}).where('id', 'in', ids).execute();
}

/** The platform's newest id for a chat, or nothing when the chat is gone. */
export async function addressOf(db: Db | Tx, chat: number): Promise<Chat | undefined> {
	const found = await db
		.selectFrom('chat')
		.innerJoin('chatAddress', 'chatAddress.chat', 'chat.id')
		.select(['chat.id', 'chat.kind', 'chatAddress.platformId'])
		.where('chat.id', '=', chat)
		.where('chat.goneAt', 'is', null)
		// A supergroup's id is the lower number and the one that answers.
		.orderBy('chatAddress.platformId')
		.executeTakeFirst();
	return found;
}

/** The chat in which a person talks to the bot alone; nothing before they wrote to it, and once they blocked it. */
export async function privateChatOf(db: Db | Tx, person: number): Promise<Chat | undefined> {
	return (
		db
			.selectFrom('person')
			// In a private chat the platform gives person and chat one id.
			.innerJoin('chatAddress', 'chatAddress.platformId', 'person.platformId')
			.innerJoin('chat', 'chat.id', 'chatAddress.chat')
			.select(['chat.id', 'chat.kind', 'chatAddress.platformId'])
			.where('person.id', '=', person)
			.where('chat.goneAt', 'is', null)
			.executeTakeFirst()
	);
}

/** Marks a chat as blocked, left or deleted: nothing more is sent to it, its finds stay. */
export async function markGone(db: Db | Tx, chat: number, now: number): Promise<void> {
	await db.updateTable('chat').set({goneAt: now}).where('id', '=', chat).execute();
	await db
		.updateTable('outbox')
		.set({state: 'failed'})
		.where('chat', '=', chat)
		.where('state', 'in', ['waiting', 'sending'])
		.execute();
}

/** A group became a supergroup: both ids mean the same chat from now on. May be told twice, in any order. */
export async function joinAddresses(tx: Tx, moved: {from: number; to: number; now: number}): Promise<void> {
	const old = await chatFor(tx, {platformId: moved.from, kind: 'group', now: moved.now});
	const young = await tx
		.selectFrom('chatAddress')
		.select('chat')
		.where('platformId', '=', moved.to)
		.executeTakeFirst();
	if (young?.chat === old.id) return;
	await leaveMessagesBehind(tx, old.id);
	if (young) await mergeChats(tx, {from: young.chat, into: old.id});
	else await tx.insertInto('chatAddress').values({platformId: moved.to, chat: old.id}).execute();
}

/** The new group numbers its messages from 1 again, so a number of the old one would name another message there. */
async function leaveMessagesBehind(tx: Tx, chat: number): Promise<void> {
	await tx
		.updateTable('outbox')
		.set({state: 'failed', messageId: null})
		.where('chat', '=', chat)
		.where('state', '=', 'sent')
		.execute();
}

async function mergeChats(tx: Tx, {from, into}: {from: number; into: number}): Promise<void> {
	await tx.updateTable('chatAddress').set({chat: into}).where('chat', '=', from).execute();
	await tx.updateTable('find').set({chat: into}).where('chat', '=', from).execute();
	await tx.updateTable('sorting').set({chat: into}).where('chat', '=', from).execute();
	await tx.updateTable('outbox').set({chat: into}).where('chat', '=', from).execute();
	await tx.updateTable('parcel').set({chat: into}).where('chat', '=', from).execute();
	await moveSeats(tx, {from, into});
	await moveAudience(tx, {from, into});
	await tx.deleteFrom('chat').where('id', '=', from).execute();
}
