/** Updates seen before, and updates set aside. */
import type {Db, Tx} from './schema.ts';

/** An undelivered update lives a day at the platform; a week is ample. */
const rememberedMs = 7 * 24 * 3_600_000;

/** Notes an update; false when it was here before. The first statement of its transaction. */
export async function noteUpdate(tx: Tx, updateId: number, now: number): Promise<boolean> {
	const noted = await tx
		.insertInto('inbox')
		.values({updateId, receivedAt: now})
		.onConflict(conflict => conflict.column('updateId').doNothing())
		.executeTakeFirst();
	return (noted.numInsertedOrUpdatedRows ?? 0n) > 0n;
}

/** Keeps an update that made us throw, so that it is never tried again. */
export async function setAside(tx: Tx, aside: {updateId: number; error: string; now: number}): Promise<void> {
	await tx
		.insertInto('aside')
		.values({updateId: aside.updateId, error: aside.error, at: aside.now})
		.onConflict(conflict => conflict.column('updateId').doNothing())
		.execute();
}

/** Forgets update ids older than a week. */
export async function forgetOldUpdates(db: Db, now: number): Promise<void> {
	await db
		.deleteFrom('inbox')
		.where('receivedAt', '<', now - rememberedMs)
		.execute();
}
