/** Photos of finds: wanted until they are fetched, cleaned and stored. */
import type {Selectable} from 'kysely';
import type {Db, Tables, Tx} from './schema.ts';

/** A photo of a find, wanted or kept. */
export type PhotoRow = Pick<
	Selectable<Tables['photo']>,
	'id' | 'find' | 'fileId' | 'state' | 'measures' | 'hash' | 'attempts'
>;

const columns = ['id', 'find', 'fileId', 'state', 'measures', 'hash', 'attempts'] as const;

/** Notes a photo that is to be fetched; the same file of the same find is noted once. */
export async function wantPhoto(
	tx: Tx,
	wanted: {find: number; fileId: string; fileUniqueId: string; album?: string | undefined; now: number},
): Promise<{id: number; isNew: boolean}> {
	const known = await tx
		.selectFrom('photo')
		.select('id')
		.where('find', '=', wanted.find)
		.where('fileUniqueId', '=', wanted.fileUniqueId)
		.executeTakeFirst();
	if (known) return {id: known.id, isNew: false};
	const {id} = await tx
		.insertInto('photo')
		.values({
			find: wanted.find,
			fileId: wanted.fileId,
			fileUniqueId: wanted.fileUniqueId,
			album: wanted.album ?? null,
			state: 'wanted',
			hash: null,
			sizeBytes: null,
			notBefore: wanted.now,
			createdAt: wanted.now,
		})
		.returning('id')
		.executeTakeFirstOrThrow();
	return {id, isNew: true};
}

/** Has a size read from a photo; one that was fetched before is fetched again. */
export async function wantMeasured(tx: Tx, wanted: {photo: number; now: number}): Promise<void> {
	await tx
		.updateTable('photo')
		.set({measures: 1, state: 'wanted', attempts: 0, notBefore: wanted.now})
		.where('id', '=', wanted.photo)
		.execute();
}

/** A photo of one find as a photo of another, too, with a row of its own; gives its id, or nothing when it is gone. */
export async function sharePhoto(
	tx: Tx,
	shared: {readonly photo: number; readonly find: number; readonly now: number},
): Promise<number | undefined> {
	const copied = ['fileId', 'fileUniqueId', 'state', 'hash', 'sizeBytes'] as const;
	const row = await tx.selectFrom('photo').select(copied).where('id', '=', shared.photo).executeTakeFirst();
	if (!row) return undefined;
	const {now, find} = shared;
	const values = {...row, find, notBefore: now, createdAt: now};
	const {id} = await tx.insertInto('photo').values(values).returning('id').executeTakeFirstOrThrow();
	return id;
}

/** The find that the first photos of an album went to. */
export async function findOfAlbum(
	tx: Tx,
	of: {readonly chat: number; readonly album: string},
): Promise<number | undefined> {
	const row = await tx
		.selectFrom('photo')
		.innerJoin('find', 'find.id', 'photo.find')
		.select('photo.find')
		.where('photo.album', '=', of.album)
		.where('find.chat', '=', of.chat)
		.executeTakeFirst();
	return row?.find;
}

/** The oldest photo that may be fetched now. */
export async function nextPhoto(db: Db, now: number): Promise<PhotoRow | undefined> {
	return db
		.selectFrom('photo')
		.select(columns)
		.where('state', '=', 'wanted')
		.where('notBefore', '<=', now)
		.orderBy('notBefore')
		.executeTakeFirst();
}

/** Notes where a cleaned photo is; the file of one that was dropped in the meantime is marked for erasing. */
export async function markKept(tx: Tx, kept: {id: number; hash: string; sizeBytes: number}): Promise<void> {
	const before = await tx.selectFrom('photo').select('hash').where('id', '=', kept.id).executeTakeFirst();
	const marked = await tx
		.updateTable('photo')
		.set({state: 'kept', measures: 0, hash: kept.hash, sizeBytes: kept.sizeBytes})
		.where('id', '=', kept.id)
		.executeTakeFirst();
	if (marked.numUpdatedRows === 0n) await eraseUnlessUsed(tx, kept.hash);
	// Fetched again, it may have been stored otherwise: a card in it is blurred once it is known for one.
	if (before?.hash && before.hash !== kept.hash) await eraseUnlessUsed(tx, before.hash);
}

/** Tries a photo again later. */
export async function postponePhoto(db: Db, later: {id: number; notBefore: number}): Promise<void> {
	await db
		.updateTable('photo')
		.set(build => ({attempts: build('attempts', '+', 1), notBefore: later.notBefore}))
		.where('id', '=', later.id)
		.execute();
}

/** Gives a photo up. */
export async function losePhoto(db: Db | Tx, id: number): Promise<void> {
	await db.updateTable('photo').set({state: 'failed'}).where('id', '=', id).execute();
}

/** The photos of a find, in the order they came. */
export async function photosOf(db: Db | Tx, find: number): Promise<readonly PhotoRow[]> {
	return db.selectFrom('photo').select(columns).where('find', '=', find).orderBy('id').execute();
}

/** The photo with this id, if it is still there. */
export async function photoById(db: Db | Tx, id: number): Promise<PhotoRow | undefined> {
	return db.selectFrom('photo').select(columns).where('id', '=', id).executeTakeFirst();
}

/** Takes the photos of a find but `kept` out of the database; files that nothing else uses are marked for erasing. */
export async function dropPhotos(tx: Tx, find: number, kept: readonly number[] = []): Promise<void> {
	let query = tx.deleteFrom('photo').where('find', '=', find);
	if (kept.length > 0) query = query.where('id', 'not in', kept);
	const dropped = await query.returning('hash').execute();
	for (const {hash} of dropped) {
		if (hash !== null) await eraseUnlessUsed(tx, hash);
	}
}

async function eraseUnlessUsed(tx: Tx, hash: string): Promise<void> {
	const used = await tx.selectFrom('photo').select('id').where('hash', '=', hash).executeTakeFirst();
	if (used) return;
	await tx
		.insertInto('erasing')
		.values({hash})
		.onConflict(conflict => conflict.doNothing())
		.execute();
}

/** Files to be erased; those stored again in the meantime are left out and stay. */
export async function filesToErase(db: Db): Promise<readonly string[]> {
	await db
		.deleteFrom('erasing')
		.where('hash', 'in', query =>
			query.selectFrom('photo').select('hash').where('hash', 'is not', null).$castTo<{hash: string}>(),
		)
		.execute();
	const rows = await db.selectFrom('erasing').select('hash').execute();
	return rows.map(row => row.hash);
}

/** Notes that a file is gone from disk. */
export async function markErased(db: Db, hash: string): Promise<void> {
	await db.deleteFrom('erasing').where('hash', '=', hash).execute();
}
