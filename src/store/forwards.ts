/** Messages about records on their way out: queued, in order for each record, tried until heard or given up. */
import type {Db, Tx} from './schema.ts';

/** A message that is due; `attempts` counts the tries before this one. */
export type Forward = {
	readonly id: number;
	readonly record: string;
	readonly version: number;
	/** Stays the same over all tries, so that the receiver can drop repeats. */
	readonly webhookId: string;
	readonly body: string;
	readonly attempts: number;
};

/** Queues a message about a record; it goes out after those queued before for the same record. */
export async function queueForward(
	tx: Tx | Db,
	message: {
		readonly record: string;
		readonly version: number;
		readonly webhookId: string;
		readonly body: string;
		readonly now: number;
	},
): Promise<void> {
	const {now, ...row} = message;
	await tx
		.insertInto('forward')
		.values({
			...row,
			state: 'waiting',
			attempts: 0,
			notBefore: now,
			lastError: null,
			createdAt: now,
			sentAt: null,
		})
		.execute();
}

/** The oldest message due by `now` that no earlier waiting message of its record holds back. */
export async function nextToForward(db: Tx | Db, now: number): Promise<Forward | undefined> {
	return (
		db
			.selectFrom('forward')
			.select(['id', 'record', 'version', 'webhookId', 'body', 'attempts'])
			// The head of every record, read off the index of waiting rows alone, however many were sent before.
			.where('id', 'in', ({selectFrom}) =>
				selectFrom('forward')
					.select(({fn}) => fn.min('id').as('head'))
					.where('state', '=', 'waiting')
					.groupBy('record'),
			)
			.where('notBefore', '<=', now)
			.orderBy('id')
			.limit(1)
			.executeTakeFirst()
	);
}

/** Counts a try and holds the message until `until`; false when another took it first. */
export async function claimForward(
	tx: Tx | Db,
	claim: {readonly id: number; readonly attempts: number; readonly until: number},
): Promise<boolean> {
	const {numUpdatedRows} = await tx
		.updateTable('forward')
		.set({attempts: claim.attempts + 1, notBefore: claim.until})
		.where('id', '=', claim.id)
		.where('state', '=', 'waiting')
		.where('attempts', '=', claim.attempts)
		.executeTakeFirst();
	return Number(numUpdatedRows) > 0;
}

/** Marks a message as heard. */
export async function markForwarded(
	tx: Tx | Db,
	{id, now}: {readonly id: number; readonly now: number},
): Promise<void> {
	await tx
		.updateTable('forward')
		.set({state: 'sent', sentAt: now, lastError: null})
		.where('id', '=', id)
		.where('state', '=', 'waiting')
		.execute();
}

/** Puts a message off until `notBefore` and notes why. */
export async function postponeForward(
	tx: Tx | Db,
	later: {readonly id: number; readonly notBefore: number; readonly error: string},
): Promise<void> {
	await tx
		.updateTable('forward')
		.set({notBefore: later.notBefore, lastError: later.error})
		.where('id', '=', later.id)
		.where('state', '=', 'waiting')
		.execute();
}

/** Gives a message up and notes why; the next of its record may go. */
export async function buryForward(
	tx: Tx | Db,
	{id, error}: {readonly id: number; readonly error: string},
): Promise<void> {
	await tx
		.updateTable('forward')
		.set({state: 'dead', lastError: error})
		.where('id', '=', id)
		.where('state', '=', 'waiting')
		.execute();
}

/** Empties what was said of a record before, sent or not; for a record that its finder takes back. */
export async function forgetForwards(tx: Tx | Db, record: string): Promise<void> {
	await tx.deleteFrom('forward').where('record', '=', record).where('state', '=', 'waiting').execute();
	await tx.updateTable('forward').set({body: '{}'}).where('record', '=', record).execute();
}
