/** A person forgotten: every row that is about them goes; what has to stay belongs to nobody. */
import {forgetInDays} from './forget-days.ts';
import {forgetInReview} from './forget-in-review.ts';
import {nobody} from './nobody.ts';
import {forgetMessages} from './outbox.ts';
import {forgetParcels} from './parcels.ts';
import {dropPhotos} from './photos.ts';
import type {Db, Tx} from './schema.ts';
import {leaveFind} from './seats.ts';

/** Who is forgotten, and which of their finds stay as bare records. */
export type Forgetting = {
	readonly person: number;
	/** Finds whose draft was made nameless before. */
	readonly kept: readonly number[];
	readonly now: number;
};

/**
 * Forgets a person. Their private chat stays until the last words are sent there: see `eraseForgottenChats`. Every
 * table that holds people is named here; a foreign key refuses to forget whoever one of them still knows.
 */
export async function forgetPerson(tx: Tx, {person, kept, now}: Forgetting): Promise<void> {
	const rows = await tx.selectFrom('find').select('id').where('person', '=', person).execute();
	const finds = rows.map(({id}) => id);
	const chats = await privateChatsOf(tx, person);
	for (const chat of chats) await leaveChat(tx, {chat, now});
	for (const find of finds) await forgetTalk(tx, find);
	for (const find of finds.filter(id => !kept.includes(id))) await eraseFind(tx, find);
	for (const find of kept) await makeNameless(tx, {find, person, now});
	await forgetInReview(tx, person);
	await forgetInDays(tx, {person, chats});
	await tx.deleteFrom('seat').where('person', '=', person).execute();
	await forgetParcels(tx, person);
	await tx.deleteFrom('person').where('id', '=', person).execute();
}

async function privateChatsOf(tx: Tx, person: number): Promise<readonly number[]> {
	const rows = await tx
		.selectFrom('chatAddress')
		.innerJoin('person', 'person.platformId', 'chatAddress.platformId')
		.select('chatAddress.chat')
		.where('person.id', '=', person)
		.execute();
	return rows.map(({chat}) => chat);
}

/** What was said in a private chat; answers to presses may still go. */
async function leaveChat(tx: Tx, {chat, now}: {chat: number; now: number}): Promise<void> {
	await tx
		.deleteFrom('outbox')
		.where('chat', '=', chat)
		.where(({eb, and, not}) => not(and([eb('lane', '=', 'quick'), eb('state', '=', 'waiting')])))
		.where('state', '!=', 'sending')
		.execute();
	await loosen(tx, {chat});
	await tx.updateTable('chat').set({forgottenAt: now}).where('id', '=', chat).execute();
}

/** What is being sent this moment loses its words once it is sent, and its find now. */
async function loosen(tx: Tx, {chat, find}: {chat?: number; find?: number}): Promise<void> {
	let query = tx
		.updateTable('outbox')
		.set({find: null, turn: null, role: 'say'})
		.where('state', '=', 'sending');
	if (chat !== undefined) query = query.where('chat', '=', chat);
	if (find !== undefined) query = query.where('find', '=', find);
	await query.execute();
}

/** Messages, reminders, photos and letters of a find. */
async function forgetTalk(tx: Tx, find: number): Promise<void> {
	await forgetMessages(tx, find);
	await loosen(tx, {find});
	await tx.deleteFrom('reminder').where('find', '=', find).execute();
	await dropPhotos(tx, find);
	await tx.updateTable('letter').set({answers: null}).where('find', '=', find).execute();
	await tx.deleteFrom('letter').where('find', '=', find).execute();
	await leaveFind(tx, find);
	await tx.updateTable('find').set({bowl: null}).where('bowl', '=', find).execute();
}

async function eraseFind(tx: Tx, find: number): Promise<void> {
	await tx.deleteFrom('decision').where('find', '=', find).execute();
	await tx.deleteFrom('review').where('find', '=', find).execute();
	await tx.deleteFrom('draft').where('find', '=', find).execute();
	await tx.deleteFrom('find').where('id', '=', find).execute();
}

async function makeNameless(
	tx: Tx,
	{find, person, now}: {find: number; person: number; now: number},
): Promise<void> {
	const owner = await nobody(tx, now);
	const {coarseM} = await tx
		.selectFrom('person')
		.select('coarseM')
		.where('id', '=', person)
		.executeTakeFirstOrThrow();
	// The wish to have it hidden outlives whoever wished it.
	await tx.updateTable('draft').set({person: owner.person, coarseM}).where('find', '=', find).execute();
	await tx
		.updateTable('find')
		.set(({eb, ref}) => ({
			...owner,
			thread: null,
			bowl: null,
			sorting: null,
			isOwnersAlone: 0 as const,
			trail: '[]',
			turn: eb(ref('turn'), '+', 1),
			state: 'thrown' as const,
		}))
		.where('id', '=', find)
		.execute();
}

/** Erases the private chats of forgotten people to whom nothing is left to say; says how many. */
export async function eraseForgottenChats(db: Db): Promise<number> {
	return db.transaction().execute(async tx => {
		const rows = await tx
			.selectFrom('chat')
			.innerJoin('chatAddress', 'chatAddress.chat', 'chat.id')
			// Whoever wrote again meanwhile is a person again.
			.leftJoin('person', 'person.platformId', 'chatAddress.platformId')
			.select('chat.id')
			.where('chat.forgottenAt', 'is not', null)
			.where('person.id', 'is', null)
			.where(({not, exists, selectFrom}) =>
				not(
					exists(
						selectFrom('outbox')
							.select('outbox.id')
							.whereRef('outbox.chat', '=', 'chat.id')
							.where('outbox.state', 'in', ['waiting', 'sending']),
					),
				),
			)
			.execute();
		for (const {id} of rows) {
			await tx.deleteFrom('outbox').where('chat', '=', id).execute();
			await tx.deleteFrom('sorting').where('chat', '=', id).execute();
			await tx.deleteFrom('chatAddress').where('chat', '=', id).execute();
			await tx.deleteFrom('chat').where('id', '=', id).execute();
		}
		return rows.length;
	});
}
