/** Finds and their trails. */
import type {Selectable} from 'kysely';
import type {Db, Tables, Tx} from './schema.ts';

/** Every column of a find. */
export const findColumns = [
	'id',
	'uuid',
	'chat',
	'person',
	'region',
	'turn',
	'trail',
	'state',
	'bowl',
	'thread',
	'isOwnersAlone',
	'sorting',
	'createdAt',
	'changedAt',
] as const;

/** A find as stored; its trail is JSON that `find/trail.ts` reads. */
export type FindRow = Pick<Selectable<Tables['find']>, (typeof findColumns)[number]>;

/** A new find with its first trail. */
export async function beginFind(
	tx: Tx,
	begun: {
		uuid: string;
		chat: number;
		person: number;
		region: string;
		trail: string;
		bowl?: number;
		thread?: number;
		sorting?: number;
		now: number;
	},
): Promise<FindRow> {
	return tx
		.insertInto('find')
		.values({
			uuid: begun.uuid,
			chat: begun.chat,
			person: begun.person,
			region: begun.region,
			turn: 1,
			trail: begun.trail,
			state: 'open',
			bowl: begun.bowl ?? null,
			thread: begun.thread ?? null,
			sorting: begun.sorting ?? null,
			createdAt: begun.now,
			changedAt: begun.now,
		})
		.returning(findColumns)
		.executeTakeFirstOrThrow();
}

/** The find with this id, if there is one. */
export async function findById(db: Db | Tx, id: number): Promise<FindRow | undefined> {
	return db.selectFrom('find').select(findColumns).where('id', '=', id).executeTakeFirst();
}

/** Every find of a person, oldest first. */
export async function findsOf(db: Db | Tx, person: number): Promise<readonly FindRow[]> {
	return db.selectFrom('find').select(findColumns).where('person', '=', person).orderBy('id').execute();
}

/** Keeps what a turn made of a find. */
export async function keepTurn(
	tx: Tx,
	kept: {find: number; trail: string; turn: number; state: FindRow['state']; now: number},
): Promise<void> {
	await tx
		.updateTable('find')
		.set({trail: kept.trail, turn: kept.turn, state: kept.state, changedAt: kept.now})
		.where('id', '=', kept.find)
		.execute();
}

/** Says in which region a find lies. */
export async function moveFind(tx: Tx, find: number, region: string): Promise<void> {
	await tx.updateTable('find').set({region}).where('id', '=', find).execute();
}

/** Finds that lie in water, oldest first: everybody's of a group, or a person's own of all their chats. */
export async function soakingFinds(
	db: Db | Tx,
	of: {readonly chat: number} | {readonly person: number},
): Promise<readonly FindRow[]> {
	const all = db.selectFrom('find').select(findColumns).where('state', '=', 'soaking').orderBy('id');
	const wanted = 'chat' in of ? all.where('chat', '=', of.chat) : all.where('person', '=', of.person);
	return wanted.execute();
}

/** Finds of a chat that were not brought to an end and were touched since `since`, newest first. */
export async function openFinds(
	db: Db | Tx,
	of: {readonly chat: number; readonly since: number},
): Promise<readonly FindRow[]> {
	return db
		.selectFrom('find')
		.select(findColumns)
		.where('chat', '=', of.chat)
		.where('state', 'in', ['open', 'soaking'])
		.where('changedAt', '>=', of.since)
		.orderBy('id', 'desc')
		.execute();
}

/** How many finds, begun from `from` and before `until`, were not brought to an end. */
export async function countUnfinished(
	db: Db | Tx,
	of: ({readonly chat: number} | {readonly person: number}) & {readonly from: number; readonly until: number},
): Promise<number> {
	const all = db
		.selectFrom('find')
		.select(({fn}) => fn.countAll().as('count'))
		.where('state', 'in', ['open', 'soaking'])
		.where('createdAt', '>=', of.from)
		.where('createdAt', '<', of.until);
	const wanted = 'chat' in of ? all.where('chat', '=', of.chat) : all.where('person', '=', of.person);
	return Number((await wanted.executeTakeFirstOrThrow()).count);
}

/** Says whether only its owner may answer for a find, or everybody in its group. */
export async function letAnswer(tx: Tx, find: number, who: 'owner' | 'everyone'): Promise<void> {
	await tx
		.updateTable('find')
		.set({isOwnersAlone: who === 'owner' ? 1 : 0})
		.where('id', '=', find)
		.execute();
}

/** The bowl of a chat that is in use: the one that the newest case in water lies in. */
export async function bowlOfChat(tx: Tx, chat: number): Promise<number | undefined> {
	const row = await tx
		.selectFrom('find')
		.select('bowl')
		.where('chat', '=', chat)
		.where('state', '=', 'soaking')
		.where('bowl', 'is not', null)
		.orderBy('id', 'desc')
		.executeTakeFirst();
	return row?.bowl ?? undefined;
}

/** Says in whose bowl a find lies: the find that began it. */
export async function putInBowl(tx: Tx, put: {find: number; bowl: number}): Promise<void> {
	await tx.updateTable('find').set({bowl: put.bowl}).where('id', '=', put.find).execute();
}

/** Empties the trails of finds that were thrown away or were no egg case before `before`; says which. */
export async function emptyThrownFinds(tx: Tx, before: number): Promise<readonly number[]> {
	const rows = await tx
		.updateTable('find')
		.set(build => ({trail: '[]', turn: build('turn', '+', 1), state: 'thrown' as const}))
		.where('state', 'in', ['thrown', 'not-a-case'])
		.where('changedAt', '<', before)
		.where('trail', '!=', '[]')
		.returning('id')
		.execute();
	return rows.map(row => row.id);
}
