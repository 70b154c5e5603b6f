/** Finds that were begun and never finished. */
import {sql} from 'kysely';
import {forgetMessages} from './outbox.ts';
import {dropPhotos} from './photos.ts';
import type {Db, Tx} from './schema.ts';
import {leaveFind} from './seats.ts';

/** A find that nobody has touched for long. */
export type StaleFind = {
	readonly id: number;
	readonly chat: number;
	readonly person: number;
	/** The zone of its finder, if it is known. */
	readonly zone: string | undefined;
};

/** Unfinished finds untouched since `before` of which their finders were not told, those of one finder together. */
export async function findsToWarnOf(db: Db | Tx, before: number): Promise<readonly StaleFind[]> {
	const rows = await untouched(db, before)
		.where(({eb, or, ref}) =>
			or([eb('find.warnedAt', 'is', null), eb('find.warnedAt', '<', ref('find.changedAt'))]),
		)
		.execute();
	return rows.map(row => ({...row, zone: row.zone ?? undefined}));
}

/** Notes that the finder of an unfinished find was told. */
export async function markWarned(
	tx: Tx,
	{finds, now}: {readonly finds: readonly number[]; readonly now: number},
): Promise<void> {
	await tx
		.updateTable('find')
		.set({warnedAt: now})
		.where('id', 'in', [...finds])
		.execute();
}

/** Erases unfinished finds untouched since `before` whose finders were told by `warnedBefore`; says how many. */
export async function eraseUnfinished(
	tx: Tx,
	{before, warnedBefore}: {readonly before: number; readonly warnedBefore: number},
): Promise<number> {
	const stale = await untouched(tx, before)
		.where('find.warnedAt', '<=', warnedBefore)
		.whereRef('find.warnedAt', '>=', 'find.changedAt')
		.execute();
	for (const {id} of stale) {
		await dropPhotos(tx, id);
		await tx.deleteFrom('reminder').where('find', '=', id).execute();
		await forgetMessages(tx, id);
		await leaveFind(tx, id);
		await tx
			.updateTable('find')
			.set(({eb, ref}) => ({trail: '[]', turn: eb(ref('turn'), '+', 1), state: 'thrown' as const}))
			.where('id', '=', id)
			.execute();
	}
	return stale.length;
}

/** Somebody looked at a find again: it counts as touched. */
export async function touchFind(
	tx: Tx,
	{find, now}: {readonly find: number; readonly now: number},
): Promise<void> {
	await tx.updateTable('find').set({changedAt: now}).where('id', '=', find).execute();
}

/** One in a bowl waits for its hour, and counts from there; one with a record is finished, whatever is changed in it. */
function untouched(db: Db | Tx, before: number) {
	return (
		db
			.selectFrom('find')
			.innerJoin('person', 'person.id', 'find.person')
			.select(['find.id', 'find.chat', 'find.person', 'person.zone'])
			// Written out, since the index is only for these states.
			.where(sql<boolean>`find.state in ('open', 'soaking')`)
			.where('find.changedAt', '<=', before)
			.where(({not, exists, selectFrom}) =>
				not(
					exists(
						selectFrom('reminder')
							.select('reminder.id')
							.whereRef('reminder.find', '=', 'find.id')
							.where(({eb, or}) => or([eb('doneAt', 'is', null), eb('doneAt', '>', before)])),
					),
				),
			)
			.where(({not, exists, selectFrom}) =>
				not(
					exists(
						selectFrom('draft')
							.select('draft.find')
							.whereRef('draft.find', '=', 'find.id')
							.where('draft.status', '=', 'draft'),
					),
				),
			)
			.orderBy('find.person')
			.orderBy('find.chat')
			.orderBy('find.id')
	);
}
