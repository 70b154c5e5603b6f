/** People, and what they chose. */
import type {Selectable} from 'kysely';
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
