/** To what a person's words in a chat go, where it is no find. */
import type {Db, Tx} from './schema.ts';

type Seat = {readonly chat: number; readonly person: number};

/** What is listened for: answers to the plan of a day, or a place to be told about. */
export type Ear = {readonly kind: 'plan'; readonly day: number} | {readonly kind: 'place'};

/** From now on a person's words in a chat are for this. */
export async function listenFor(tx: Tx, {chat, person}: Seat, ear: Ear): Promise<void> {
	const day = ear.kind === 'plan' ? ear.day : null;
	await tx
		.insertInto('ear')
		.values({chat, person, day})
		.onConflict(conflict => conflict.columns(['chat', 'person']).doUpdateSet({day}))
		.execute();
}

/** What a person's words in a chat are for; nothing when they go to a find. */
export async function earOf(db: Db | Tx, {chat, person}: Seat): Promise<Ear | undefined> {
	const row = await db
		.selectFrom('ear')
		.select('day')
		.where('chat', '=', chat)
		.where('person', '=', person)
		.executeTakeFirst();
	if (!row) return undefined;
	return row.day === null ? {kind: 'place'} : {kind: 'plan', day: row.day};
}

/** A person's words in a chat go to a find again; true when they went elsewhere. */
export async function stopListening(tx: Tx, {chat, person}: Seat): Promise<boolean> {
	const gone = await tx
		.deleteFrom('ear')
		.where('chat', '=', chat)
		.where('person', '=', person)
		.executeTakeFirst();
	return gone.numDeletedRows > 0n;
}
