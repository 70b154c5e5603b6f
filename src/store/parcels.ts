/** What people ask for and the clockwork makes: it takes longer than a turn, and a killed program makes it again. */
import {z} from 'zod';
import {callSchema} from './call.ts';
import type {Db, Tx} from './schema.ts';

/** What is to be made, by its kind. */
export const parcelSchema = z.discriminatedUnion('kind', [
	/** All that is held on the person who asks. */
	z.object({kind: z.literal('my-data')}),
	/** A file of records; days are ISO 8601 and both belong to it. */
	z.object({
		kind: z.literal('export'),
		form: z.enum(['archive', 'csv', 'geojson']),
		statuses: z.enum(['all', 'checked', 'unchecked']),
		from: z.iso.date().optional(),
		to: z.iso.date().optional(),
		/** A grid reference. */
		square: z.string().optional(),
		/** Goes into the name of the file. */
		called: z.string().regex(/^[\w-]+$/),
	}),
	/** A year in numbers and pictures. */
	z.object({kind: z.literal('season'), year: z.number().int()}),
	/** The poster of a survey day with the link that its code opens. */
	z.object({kind: z.literal('poster'), day: z.number().int(), link: z.url()}),
	/** The sheet with marks on which cases are measured from a photo. */
	z.object({kind: z.literal('sheet')}),
]);

/** What is to be made. */
export type ParcelWanted = z.output<typeof parcelSchema>;

/** A parcel in the making: what, for whom, and in which chat it is handed over. */
export type Parcel = {
	readonly id: number;
	readonly chat: number;
	readonly person: number;
	readonly thread: number | undefined;
	readonly wanted: ParcelWanted;
	/** How often it was begun before. */
	readonly attempts: number;
	readonly createdAt: number;
};

/** Asks for a parcel; false when the same one is in the making for that chat already. */
export async function orderParcel(
	tx: Tx,
	order: {
		readonly chat: number;
		readonly person: number;
		readonly thread?: number | undefined;
		readonly wanted: ParcelWanted;
		readonly now: number;
	},
): Promise<boolean> {
	const wanted = JSON.stringify(parcelSchema.parse(order.wanted));
	const same = await tx
		.selectFrom('parcel')
		.select('id')
		.where('person', '=', order.person)
		.where('chat', '=', order.chat)
		.where('wanted', '=', wanted)
		.executeTakeFirst();
	if (same) return false;
	const {chat, person, now} = order;
	await tx
		.insertInto('parcel')
		.values({chat, person, thread: order.thread ?? null, wanted, notBefore: now, createdAt: now})
		.execute();
	return true;
}

/** The oldest parcel that may be made now. */
export async function nextParcel(db: Db, now: number): Promise<Parcel | undefined> {
	const row = await db
		.selectFrom('parcel')
		.select(['id', 'chat', 'person', 'thread', 'wanted', 'attempts', 'createdAt'])
		.where('notBefore', '<=', now)
		.orderBy('id')
		.executeTakeFirst();
	return row && {...row, thread: row.thread ?? undefined, wanted: parcelSchema.parse(JSON.parse(row.wanted))};
}

/** Counts that a parcel was begun. */
export async function beginParcel(db: Db, id: number): Promise<void> {
	await db
		.updateTable('parcel')
		.set(({eb, ref}) => ({attempts: eb(ref('attempts'), '+', 1)}))
		.where('id', '=', id)
		.execute();
}

/** Puts a parcel off until `notBefore`. */
export async function postponeParcel(
	db: Db,
	{id, notBefore}: {readonly id: number; readonly notBefore: number},
): Promise<void> {
	await db.updateTable('parcel').set({notBefore}).where('id', '=', id).execute();
}

/** Takes a parcel out of the making; false when its person took it back meanwhile. */
export async function closeParcel(tx: Tx, id: number): Promise<boolean> {
	const {numDeletedRows} = await tx.deleteFrom('parcel').where('id', '=', id).executeTakeFirst();
	return numDeletedRows > 0n;
}

/** The parcels in the making. */
export async function parcelsInTheMaking(db: Db): Promise<readonly number[]> {
	const rows = await db.selectFrom('parcel').select('id').execute();
	return rows.map(({id}) => id);
}

/** The files that are still to be sent, by their place in the folder of parcels. */
export async function filesOnTheWay(db: Db): Promise<readonly string[]> {
	const rows = await db
		.selectFrom('outbox')
		.select('content')
		.where('role', '=', 'file')
		.where('state', 'in', ['waiting', 'sending'])
		.execute();
	return rows.flatMap(({content}) => {
		const call = callSchema.parse(JSON.parse(content));
		return call.kind === 'document' ? [call.file] : [];
	});
}

/** Takes back what a person asked for. */
export async function forgetParcels(tx: Tx, person: number): Promise<void> {
	await tx.deleteFrom('parcel').where('person', '=', person).execute();
}
