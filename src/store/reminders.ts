/** What is to be said later: one row each, with the instant and the zone it was meant in. */
import type {Db, Tx} from './schema.ts';

/** When to write about a find in its bowl (UTC ms), and in which zone. */
export type Reminder = {
	readonly id: number;
	readonly find: number;
	/** The find that began the bowl. */
	readonly bowl: number | null;
	readonly chat: number;
	readonly dueAt: number;
	readonly zone: string;
};

/** One reminder for a find; an earlier one not yet sent is forgotten. */
export async function remind(tx: Tx, reminder: {find: number; dueAt: number; zone: string}): Promise<void> {
	await forgetReminders(tx, reminder.find);
	await tx
		.insertInto('reminder')
		.values({...reminder, doneAt: null})
		.execute();
}

/** Forgets what was still to be said about a find. */
export async function forgetReminders(tx: Tx, find: number): Promise<void> {
	await tx.deleteFrom('reminder').where('find', '=', find).where('doneAt', 'is', null).execute();
}

/** Reminders that should have gone out by `now`, oldest first; those of chats that are gone wait until they are back. */
export async function remindersDueBy(db: Db | Tx, now: number, limit: number): Promise<readonly Reminder[]> {
	return db
		.selectFrom('reminder')
		.innerJoin('find', 'find.id', 'reminder.find')
		.innerJoin('chat', 'chat.id', 'find.chat')
		.select(['reminder.id', 'reminder.find', 'find.bowl', 'find.chat', 'reminder.dueAt', 'reminder.zone'])
		.where('dueAt', '<=', now)
		.where('doneAt', 'is', null)
		.where('chat.goneAt', 'is', null)
		.orderBy('dueAt')
		.orderBy('reminder.id')
		.limit(limit)
		.execute();
}

/** Marks a reminder as said; false when somebody else did, or when its chat went in the meantime. */
export async function markReminded(tx: Tx, id: number, now: number): Promise<boolean> {
	const marked = await tx
		.updateTable('reminder')
		.set({doneAt: now})
		.where('id', '=', id)
		.where('doneAt', 'is', null)
		.where(({exists, selectFrom}) =>
			exists(
				selectFrom('find')
					.innerJoin('chat', 'chat.id', 'find.chat')
					.select('find.id')
					.whereRef('find.id', '=', 'reminder.find')
					.where('chat.goneAt', 'is', null),
			),
		)
		.executeTakeFirst();
	return marked.numUpdatedRows > 0n;
}

/** Says a reminder at another time. */
export async function moveReminder(db: Db | Tx, moved: {id: number; dueAt: number}): Promise<void> {
	await db
		.updateTable('reminder')
		.set({dueAt: moved.dueAt})
		.where('id', '=', moved.id)
		.where('doneAt', 'is', null)
		.execute();
}
