/** What is to be told to many: now or at its hour, paused, stopped, done. */
import type {Selectable} from 'kysely';
import {dropWaiting} from './deliveries.ts';
import type {Db, Tables, Tx} from './schema.ts';

/** A broadcast as stored; `body` is JSON that the bot reads. */
export type Broadcast = Selectable<Tables['broadcast']>;

const columns = [
	'id',
	'day',
	'kind',
	'urgency',
	'state',
	'dueAt',
	'uselessAt',
	'body',
	'gathered',
	'progressRow',
	'progressAt',
	'createdAt',
] as const;

/** What cannot wait goes before what can. */
const urgencies = {cancelled: 0, changed: 1, soon: 2, evening: 3, announced: 4, result: 5} as const;

/** Notes something to be told at `dueAt`, and gives its id. */
export async function tellMany(
	tx: Tx,
	telling: {
		readonly day: number;
		readonly kind: Broadcast['kind'];
		readonly dueAt: number;
		readonly uselessAt: number;
		readonly body: string;
		readonly progressRow?: number | undefined;
		readonly now: number;
	},
): Promise<number> {
	const {now, progressRow, ...row} = telling;
	const {id} = await tx
		.insertInto('broadcast')
		.values({
			...row,
			urgency: urgencies[telling.kind],
			state: 'waiting',
			progressRow: progressRow ?? null,
			progressAt: null,
			createdAt: now,
		})
		.returning('id')
		.executeTakeFirstOrThrow();
	return id;
}

/** The broadcast with this id, if there is one. */
export async function broadcastById(db: Db | Tx, id: number): Promise<Broadcast | undefined> {
	return db.selectFrom('broadcast').select(columns).where('id', '=', id).executeTakeFirst();
}

/** Broadcasts that are at work at `now`, or whose hour has come, most pressing first. */
export async function broadcastsAtWork(db: Db | Tx, now: number): Promise<readonly Broadcast[]> {
	return db
		.selectFrom('broadcast')
		.select(columns)
		.where('state', 'in', ['waiting', 'gathering', 'running'])
		.where('dueAt', '<=', now)
		.orderBy('urgency')
		.orderBy('id')
		.execute();
}

/** The broadcasts of a day, newest first. */
export async function broadcastsOf(db: Db | Tx, day: number): Promise<readonly Broadcast[]> {
	return db.selectFrom('broadcast').select(columns).where('day', '=', day).orderBy('id', 'desc').execute();
}

/** Moves a broadcast on from one of the states `from`; false when it was in none of them. */
export async function moveBroadcast(
	tx: Db | Tx,
	{
		id,
		from,
		to,
	}: {readonly id: number; readonly from: readonly Broadcast['state'][]; readonly to: Broadcast['state']},
): Promise<boolean> {
	const moved = await tx
		.updateTable('broadcast')
		.set({state: to})
		.where('id', '=', id)
		.where('state', 'in', from)
		.executeTakeFirst();
	return moved.numUpdatedRows > 0n;
}

/** Notes how far the list of a broadcast is made. */
export async function markGathered(
	tx: Tx,
	{id, gathered}: {readonly id: number; readonly gathered: number},
): Promise<void> {
	await tx.updateTable('broadcast').set({gathered}).where('id', '=', id).execute();
}

/** Those who are not told yet hear this instead. */
export async function rewordBroadcast(
	tx: Tx,
	{id, body}: {readonly id: number; readonly body: string},
): Promise<void> {
	await tx.updateTable('broadcast').set({body}).where('id', '=', id).execute();
}

/** Notes when the coordinator was last shown how far it is. */
export async function markProgress(
	tx: Tx,
	{id, now}: {readonly id: number; readonly now: number},
): Promise<void> {
	await tx.updateTable('broadcast').set({progressAt: now}).where('id', '=', id).execute();
}

/** Stops whatever of a day still waits to be told, of these kinds. */
export async function stopBroadcasts(
	tx: Tx,
	{day, kinds}: {readonly day: number; readonly kinds: readonly Broadcast['kind'][]},
): Promise<void> {
	const rows = await tx
		.updateTable('broadcast')
		.set({state: 'stopped'})
		.where('day', '=', day)
		.where('kind', 'in', kinds)
		.where('state', 'in', ['waiting', 'gathering', 'running', 'paused'])
		.returning('id')
		.execute();
	for (const {id} of rows) await dropWaiting(tx, {broadcast: id});
}
