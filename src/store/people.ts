/** People, and which find their words in a chat go to. */
import type {Selectable} from 'kysely';
import {stopListening} from './ears.ts';
import type {Db, Tables, Tx} from './schema.ts';

/** Somebody who writes to us, under an id of our own. */
export type Person = {
	readonly id: number;
	readonly platformId: number;
	readonly language: string | undefined;
	readonly zone: string | undefined;
	readonly region: string | undefined;
	readonly isWelcomed: boolean;
};

const columns = ['id', 'platformId', 'language', 'zone', 'region', 'welcomedAt'] as const;

/** The person with this platform id, made where they are new. */
export async function personFor(
	tx: Tx,
	seen: {platformId: number; language?: string | undefined; now: number},
): Promise<Person> {
	const known = await tx
		.selectFrom('person')
		.select(columns)
		.where('platformId', '=', seen.platformId)
		.executeTakeFirst();
	if (known) return personFrom(known);
	const made = await tx
		.insertInto('person')
		.values({
			platformId: seen.platformId,
			language: seen.language ?? null,
			zone: null,
			isZoneChosen: 0,
			region: null,
			welcomedAt: null,
			createdAt: seen.now,
		})
		.returning(columns)
		.executeTakeFirstOrThrow();
	return personFrom(made);
}

/** The person by our own id. */
export async function personById(db: Db | Tx, id: number): Promise<Person> {
	const found = await db.selectFrom('person').select(columns).where('id', '=', id).executeTakeFirstOrThrow();
	return personFrom(found);
}

/** Notes that the word on safety was read. */
export async function markWelcomed(tx: Tx, person: number, now: number): Promise<void> {
	await tx
		.updateTable('person')
		.set({welcomedAt: now})
		.where('id', '=', person)
		.where('welcomedAt', 'is', null)
		.execute();
}

/** The zone a person chose. */
export async function chooseZone(tx: Tx, person: number, zone: string): Promise<void> {
	await tx.updateTable('person').set({zone, isZoneChosen: 1}).where('id', '=', person).execute();
}

/** The zone of a place a person named; a chosen zone stays. */
export async function noticeZone(tx: Tx, person: number, zone: string): Promise<void> {
	await tx.updateTable('person').set({zone}).where('id', '=', person).where('isZoneChosen', '=', 0).execute();
}

/** The region a person chose, or whose shore they named a place on. */
export async function chooseRegion(tx: Tx, person: number, region: string): Promise<void> {
	await tx.updateTable('person').set({region}).where('id', '=', person).execute();
}

/** The find to which a person's words in this chat go. */
export async function seatOf(db: Db | Tx, seat: {chat: number; person: number}): Promise<number | undefined> {
	const found = await db
		.selectFrom('seat')
		.select('find')
		.where('chat', '=', seat.chat)
		.where('person', '=', seat.person)
		.executeTakeFirst();
	return found?.find ?? undefined;
}

/** Whether a person put their find in this chat aside and began no other. */
export async function hasLeft(tx: Tx, seat: {chat: number; person: number}): Promise<boolean> {
	const found = await tx
		.selectFrom('seat')
		.select('find')
		.where('chat', '=', seat.chat)
		.where('person', '=', seat.person)
		.executeTakeFirst();
	return found !== undefined && found.find === null;
}

/** From now on a person's words in this chat go to this find, or to none. */
export async function sitAt(
	tx: Tx,
	seat: {chat: number; person: number; find: number | undefined},
): Promise<void> {
	const find = seat.find ?? null;
	await stopListening(tx, seat);
	await tx
		.insertInto('seat')
		.values({chat: seat.chat, person: seat.person, find})
		.onConflict(conflict => conflict.columns(['chat', 'person']).doUpdateSet({find}))
		.execute();
}

function personFrom(row: Pick<Selectable<Tables['person']>, (typeof columns)[number]>): Person {
	return {
		id: row.id,
		platformId: row.platformId,
		language: row.language ?? undefined,
		zone: row.zone ?? undefined,
		region: row.region ?? undefined,
		isWelcomed: row.welcomedAt !== null,
	};
}
