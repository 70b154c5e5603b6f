/** Cases sorted one after another in a chat, which of them are done, and whether the sorting goes on. */
import type {ZodType} from 'zod';
import type {FindRow} from './finds.ts';
import {findColumns} from './finds.ts';
import type {Db, Tx} from './schema.ts';

/** A sorting is gone on with for a week; then the next is another one. */
const livesMs = 7 * 24 * 3_600_000;

/** Begins a sorting in a chat; gives its id. */
export async function beginSorting(tx: Tx, {chat, now}: {chat: number; now: number}): Promise<number> {
	const {id} = await tx
		.insertInto('sorting')
		.values({chat, begunAt: now, endedAt: null})
		.returning('id')
		.executeTakeFirstOrThrow();
	return id;
}

/** The sorting of a chat that goes on, if there is one. */
export async function openSorting(
	db: Db | Tx,
	{chat, now}: {chat: number; now: number},
): Promise<number | undefined> {
	const row = await db
		.selectFrom('sorting')
		.select('id')
		.where('chat', '=', chat)
		.where('endedAt', 'is', null)
		.where('begunAt', '>', now - livesMs)
		.orderBy('id', 'desc')
		.executeTakeFirst();
	return row?.id;
}

/** Ends a sorting. */
export async function endSorting(tx: Tx, {sorting, now}: {sorting: number; now: number}): Promise<void> {
	await tx.updateTable('sorting').set({endedAt: now}).where('id', '=', sorting).execute();
}

/** Takes a find into a sorting. */
export async function joinSorting(tx: Tx, {find, sorting}: {find: number; sorting: number}): Promise<void> {
	await tx.updateTable('find').set({sorting}).where('id', '=', find).execute();
}

/** The finds of a sorting, last touched first. */
export async function findsSorted(db: Db | Tx, sorting: number): Promise<readonly FindRow[]> {
	return db
		.selectFrom('find')
		.select(findColumns)
		.where('sorting', '=', sorting)
		.orderBy('changedAt', 'desc')
		.orderBy('id', 'desc')
		.execute();
}

/** How many finds of a sorting are saved. */
export async function countSorted(db: Db | Tx, sorting: number): Promise<number> {
	const {count} = await db
		.selectFrom('find')
		.select(({fn}) => fn.countAll().as('count'))
		.where('sorting', '=', sorting)
		.where('state', '=', 'kept')
		.executeTakeFirstOrThrow();
	return Number(count);
}

/** The records of a sorting, last saved first, `limit` at most; those that do not fit `schema` are left out. */
export async function draftsSorted<Body>(
	db: Db | Tx,
	of: {readonly sorting: number; readonly limit: number},
	schema: ZodType<Body>,
): Promise<readonly {readonly find: number; readonly body: Body}[]> {
	const rows = await db
		.selectFrom('draft')
		.innerJoin('find', 'find.id', 'draft.find')
		.select(['draft.find', 'draft.body'])
		.where('find.sorting', '=', of.sorting)
		.where('draft.status', '=', 'draft')
		.orderBy('draft.savedAt', 'desc')
		.orderBy('draft.find', 'desc')
		.limit(of.limit)
		.execute();
	return rows.flatMap(({find, body}) => {
		const read = schema.safeParse(JSON.parse(body));
		return read.success ? [{find, body: read.data}] : [];
	});
}

/** The find of a chat that was in a bowl and touched last since `since`. */
export async function lastOfBowl(
	db: Db | Tx,
	{chat, since}: {chat: number; since: number},
): Promise<FindRow | undefined> {
	return db
		.selectFrom('find')
		.select(findColumns)
		.where('chat', '=', chat)
		.where('bowl', 'is not', null)
		.where('state', 'in', ['soaking', 'open', 'kept'])
		.where('changedAt', '>=', since)
		.orderBy('changedAt', 'desc')
		.orderBy('id', 'desc')
		.executeTakeFirst();
}
