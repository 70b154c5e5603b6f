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

/**
 * Marks a message as heard; its words are not needed any more. What was given up of the same record before is
 * overtaken: each message holds the whole record, so the receiver has missed nothing, and an older one may not follow.
 */
export async function markForwarded(
	tx: Tx | Db,
	{id, now}: {readonly id: number; readonly now: number},
): Promise<void> {
	const heard = await tx
		.updateTable('forward')
		.set({state: 'sent', sentAt: now, lastError: null, body: '{}'})
		.where('id', '=', id)
		.where('state', '=', 'waiting')
		.returning('record')
		.executeTakeFirst();
	if (!heard) return;
	await tx
		.updateTable('forward')
		.set({state: 'overtaken', body: '{}'})
		// One that waits behind a later one was revived while that was on its way.
		.where('state', 'in', ['dead', 'waiting'])
		.where('record', '=', heard.record)
		.where('id', '<', id)
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

/** How many messages wait, were heard, and were given up. */
export type ForwardCounts = {readonly waiting: number; readonly sent: number; readonly dead: number};

/** Counts the messages by what became of them. */
export async function forwardCounts(db: Tx | Db): Promise<ForwardCounts> {
	const rows = await db
		.selectFrom('forward')
		.select(['state', ({fn}) => fn.countAll().as('count')])
		.groupBy('state')
		.execute();
	const of = (state: string) => Number(rows.find(row => row.state === state)?.count ?? 0);
	return {waiting: of('waiting'), sent: of('sent'), dead: of('dead')};
}

/** A message that was given up, or that waits after a try that failed. */
export type StuckForward = {
	readonly id: number;
	readonly record: string;
	readonly version: number;
	readonly attempts: number;
	readonly lastError: string | null;
};

const stuckColumns = ['id', 'record', 'version', 'attempts', 'lastError'] as const;

/** The messages that were given up, oldest first. */
export async function deadForwards(db: Tx | Db, limit: number): Promise<readonly StuckForward[]> {
	return db
		.selectFrom('forward')
		.select(stuckColumns)
		.where('state', '=', 'dead')
		.orderBy('id')
		.limit(limit)
		.execute();
}

/** Why the newest of the waiting messages that were tried could not be heard; nothing when none was tried. */
export async function latestTrouble(db: Tx | Db): Promise<StuckForward | undefined> {
	return db
		.selectFrom('forward')
		.select(stuckColumns)
		.where('state', '=', 'waiting')
		.where('lastError', 'is not', null)
		.orderBy('id', 'desc')
		.executeTakeFirst();
}

/** Lets what was given up wait again, from the first try on: one message or all. Says how many. */
export async function reviveForwards(
	tx: Tx | Db,
	{id, now}: {readonly id?: number | undefined; readonly now: number},
): Promise<number> {
	let query = tx
		.updateTable('forward')
		.set({state: 'waiting', attempts: 0, notBefore: now})
		.where('state', '=', 'dead');
	if (id !== undefined) query = query.where('id', '=', id);
	const {numUpdatedRows} = await query.executeTakeFirst();
	return Number(numUpdatedRows);
}

/** Empties what was said of a record before, sent or not; for a record that its finder takes back. */
export async function forgetForwards(tx: Tx | Db, record: string): Promise<void> {
	await tx
		.deleteFrom('forward')
		.where('record', '=', record)
		.where('state', 'in', ['waiting', 'dead'])
		.execute();
	await tx.updateTable('forward').set({body: '{}'}).where('record', '=', record).execute();
}
