/** Where a person sits in a chat: at which find, and what else they were asked for. One row for person and chat. */
import type {Db, Tables, Tx} from './schema.ts';

/** A person in a chat. */
export type Sitter = {readonly chat: number; readonly person: number};

/** What is asked for that is no find: answers to the plan of a day, or a place to be told about. */
export type Ear = {readonly kind: 'plan'; readonly day: number} | {readonly kind: 'place'};

/** Where somebody sits; what they were asked for goes before the find, which waits meanwhile. */
export type Seat = {
	/** Nothing where they put their find aside and began no other. */
	readonly find: number | undefined;
	readonly ear: Ear | undefined;
};

/** The seat of a person in a chat; nothing when they never had a find or were asked for anything there. */
export async function seatOf(db: Db | Tx, {chat, person}: Sitter): Promise<Seat | undefined> {
	const row = await db
		.selectFrom('seat')
		.select(['find', 'ear', 'day'])
		.where('chat', '=', chat)
		.where('person', '=', person)
		.executeTakeFirst();
	return row && {find: row.find ?? undefined, ear: earFrom(row)};
}

/** The find at which a person sits in a chat, also while they are asked for something else. */
export async function findSatAt(db: Db | Tx, sitter: Sitter): Promise<number | undefined> {
	return (await seatOf(db, sitter))?.find;
}

/** From now on a person's words in a chat go to this find, or to none, and to nothing else. */
export async function sitAt(
	tx: Tx,
	{chat, person, find}: Sitter & {readonly find: number | undefined},
): Promise<void> {
	await take(tx, {chat, person}, {find: find ?? null, ear: null, day: null});
}

/** From now on a person's words in a chat are for this; their find waits. */
export async function listenFor(tx: Tx, sitter: Sitter, ear: Ear): Promise<void> {
	await take(tx, sitter, {ear: ear.kind, day: ear.kind === 'plan' ? ear.day : null});
}

/** A person's words in a chat go to a find again; true when they went elsewhere. */
export async function stopListening(tx: Tx, {chat, person}: Sitter): Promise<boolean> {
	const freed = await tx
		.updateTable('seat')
		.set({ear: null, day: null})
		.where('chat', '=', chat)
		.where('person', '=', person)
		.where('ear', 'is not', null)
		.executeTakeFirst();
	return freed.numUpdatedRows > 0n;
}

/** Nobody is asked for the plan of this day any more. */
export async function stopPlanning(tx: Tx, day: number): Promise<void> {
	await tx.updateTable('seat').set({ear: null, day: null}).where('day', '=', day).execute();
}

/** Nobody sits at this find any more. */
export async function leaveFind(tx: Tx, find: number): Promise<void> {
	await tx.updateTable('seat').set({find: null}).where('find', '=', find).execute();
}

/** Seats of one chat become those of another, for a group that becomes a supergroup; who sits in both sits as in `from`. */
export async function moveSeats(
	tx: Tx,
	{from, into}: {readonly from: number; readonly into: number},
): Promise<void> {
	const seats = await tx.selectFrom('seat').select(['person', 'find']).where('chat', '=', from).execute();
	await tx.deleteFrom('seat').where('chat', '=', from).execute();
	for (const {person, find} of seats) await take(tx, {chat: into, person}, {find});
}

type Taken = Partial<Pick<Tables['seat'], 'find' | 'ear' | 'day'>>;

async function take(tx: Tx, sitter: Sitter, taken: Taken): Promise<void> {
	await tx
		.insertInto('seat')
		.values({find: null, ear: null, day: null, ...taken, ...sitter})
		.onConflict(conflict => conflict.columns(['chat', 'person']).doUpdateSet(taken))
		.execute();
}

function earFrom({ear, day}: Pick<Tables['seat'], 'ear' | 'day'>): Ear | undefined {
	if (ear === 'place') return {kind: 'place'};
	return ear === 'plan' && day !== null ? {kind: 'plan', day} : undefined;
}
