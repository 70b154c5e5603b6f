/** Survey days: planned, published, changed, cancelled. Bodies go through the caller's schema on the way out. */
import type {Selectable} from 'kysely';
import type {Db, Tables, Tx} from './schema.ts';
import {stopPlanning} from './seats.ts';

/** A survey day as stored; `plan` and `body` are JSON that `survey/` reads. */
export type DayRow = Selectable<Tables['day']>;

const columns = [
	'id',
	'uuid',
	'code',
	'person',
	'region',
	'state',
	'plan',
	'turn',
	'body',
	'sequence',
	'startsAt',
	'endsAt',
	'askedForResultAt',
	'createdAt',
	'changedAt',
] as const;

/** A day that is going to be planned. */
export async function beginDay(
	tx: Tx,
	begun: {
		readonly uuid: string;
		readonly code: string;
		readonly person: number;
		readonly region: string;
		readonly now: number;
	},
): Promise<DayRow> {
	const {now, ...row} = begun;
	return tx
		.insertInto('day')
		.values({
			...row,
			state: 'planned',
			plan: '[]',
			turn: 1,
			body: null,
			startsAt: null,
			endsAt: null,
			askedForResultAt: null,
			createdAt: now,
			changedAt: now,
		})
		.returning(columns)
		.executeTakeFirstOrThrow();
}

/** The day with this id, if there is one. */
export async function dayById(db: Db | Tx, id: number): Promise<DayRow | undefined> {
	return db.selectFrom('day').select(columns).where('id', '=', id).executeTakeFirst();
}

/** The day whose link carries this code, if there is one. */
export async function dayByCode(db: Db | Tx, code: string): Promise<DayRow | undefined> {
	return db.selectFrom('day').select(columns).where('code', '=', code).executeTakeFirst();
}

/** Keeps the plan of a day; nothing when it is neither being planned nor changed. */
export async function keepPlan(
	tx: Tx,
	kept: {
		readonly day: number;
		readonly plan: string | undefined;
		readonly turn: number;
		readonly now: number;
	},
): Promise<void> {
	await tx
		.updateTable('day')
		.set({plan: kept.plan ?? null, turn: kept.turn, changedAt: kept.now})
		.where('id', '=', kept.day)
		.execute();
}

/** Puts a day before the public, or in place of what it was told before; its number goes up with each time. */
export async function publishDay(
	tx: Tx,
	published: {
		readonly day: number;
		readonly body: string;
		readonly region: string;
		readonly startsAt: number;
		readonly endsAt: number;
		readonly now: number;
	},
): Promise<DayRow> {
	const {day, now, ...row} = published;
	return tx
		.updateTable('day')
		.set(build => ({
			...row,
			state: 'published' as const,
			plan: null,
			turn: build('turn', '+', 1),
			sequence: build('sequence', '+', 1),
			askedForResultAt: null,
			changedAt: now,
		}))
		.where('id', '=', day)
		.returning(columns)
		.executeTakeFirstOrThrow();
}

/** Calls a day off; its number goes up, so that calendars take it out. */
export async function cancelDay(
	tx: Tx,
	{day, now}: {readonly day: number; readonly now: number},
): Promise<void> {
	await tx
		.updateTable('day')
		.set(build => ({
			state: 'cancelled' as const,
			plan: null,
			sequence: build('sequence', '+', 1),
			changedAt: now,
		}))
		.where('id', '=', day)
		.execute();
}

/** Changes the words of a day without telling anybody. */
export async function keepBody(
	tx: Tx,
	{day, body}: {readonly day: number; readonly body: string},
): Promise<void> {
	await tx.updateTable('day').set({body}).where('id', '=', day).execute();
}

/** Throws away a day that nobody was told of. */
export async function dropDay(tx: Tx, day: number): Promise<void> {
	await stopPlanning(tx, day);
	await tx.deleteFrom('day').where('id', '=', day).where('state', '=', 'planned').execute();
}

/** Published days that are not over at `now`, soonest first. */
export async function daysToCome(db: Db | Tx, now: number, limit: number): Promise<readonly DayRow[]> {
	return db
		.selectFrom('day')
		.select(columns)
		.where('state', '=', 'published')
		.where('endsAt', '>', now)
		.orderBy('startsAt')
		.limit(limit)
		.execute();
}

/** A coordinator's own days, newest first. */
export async function daysOf(db: Db | Tx, person: number, limit: number): Promise<readonly DayRow[]> {
	return db
		.selectFrom('day')
		.select(columns)
		.where('person', '=', person)
		.orderBy('id', 'desc')
		.limit(limit)
		.execute();
}

/** Published days that ended by `before` and after `after`, whose coordinator was not asked to send the result yet. */
export async function daysOver(
	db: Db | Tx,
	{before, after}: {readonly before: number; readonly after: number},
): Promise<readonly DayRow[]> {
	return db
		.selectFrom('day')
		.select(columns)
		.where('state', '=', 'published')
		.where('endsAt', '<=', before)
		.where('endsAt', '>', after)
		.where('askedForResultAt', 'is', null)
		.orderBy('endsAt')
		.execute();
}

/** Notes that the coordinator was asked to send the result; false when that was done before. */
export async function markAskedForResult(tx: Tx, day: number, now: number): Promise<boolean> {
	const marked = await tx
		.updateTable('day')
		.set({askedForResultAt: now})
		.where('id', '=', day)
		.where('askedForResultAt', 'is', null)
		.executeTakeFirst();
	return marked.numUpdatedRows > 0n;
}
