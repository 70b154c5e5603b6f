/** The draft records of finds: kept, listed, taken back. Bodies go through the caller's schema on the way out. */
import type {ZodType} from 'zod';
import type {Db, Tx} from './schema.ts';

/** A draft as kept; times are UTC milliseconds. */
export type KeptDraft<Body> = {
	readonly kind: 'draft';
	readonly find: number;
	readonly uuid: string;
	readonly person: number;
	readonly version: number;
	readonly savedAt: number;
	readonly changedAt: number;
	readonly body: Body;
};

/** What stays of a draft that its finder took back: that it was, and when it went. */
export type WithdrawnDraft = Omit<KeptDraft<never>, 'kind' | 'body'> & {readonly kind: 'withdrawn'};

/** Whose drafts: a person's, all of them or those of finds begun in one chat. */
export type DraftsWanted = {readonly person: number; readonly chat?: number | undefined};

/** Where a page of drafts begins: after this one. */
export type DraftMark = {readonly savedAt: number; readonly find: number};

const columns = ['find', 'uuid', 'person', 'status', 'body', 'version', 'savedAt', 'changedAt'] as const;

/**
 * Keeps the draft of a find, new or in place of the last one, whose version it raises; one that was withdrawn lives
 * again. Throws an Error when the find was kept under another uuid.
 */
export async function keepDraft(
	tx: Tx | Db,
	kept: {
		readonly find: number;
		readonly person: number;
		readonly draft: {readonly id: string};
		readonly now: number;
	},
): Promise<{readonly version: number}> {
	const {find, person, draft, now} = kept;
	const body = JSON.stringify(draft);
	const row = await tx
		.insertInto('draft')
		.values({find, uuid: draft.id, person, status: 'draft', body, version: 1, savedAt: now, changedAt: now})
		.onConflict(conflict =>
			conflict.column('find').doUpdateSet(({eb, ref}) => ({
				status: 'draft' as const,
				body,
				version: eb(ref('draft.version'), '+', 1),
				changedAt: now,
			})),
		)
		.returning(['uuid', 'version'])
		.executeTakeFirstOrThrow();
	if (row.uuid !== draft.id)
		throw new Error(`Expected the draft of find ${find} under "${row.uuid}"; got "${draft.id}"`);
	return {version: row.version};
}

/** The drafts a person keeps, newest first; throws an Error when a body does not fit `schema`. */
export async function draftsOf<Body>(
	db: Tx | Db,
	asked: DraftsWanted & {readonly limit: number; readonly after?: DraftMark | undefined},
	schema: ZodType<Body>,
): Promise<readonly KeptDraft<Body>[]> {
	const {limit, after} = asked;
	let query = wantedDrafts(db, asked)
		.select(columns)
		.orderBy('savedAt', 'desc')
		.orderBy('find', 'desc')
		.limit(limit);
	if (after) {
		query = query.where(({eb, and, or}) =>
			or([
				eb('savedAt', '<', after.savedAt),
				and([eb('savedAt', '=', after.savedAt), eb('find', '<', after.find)]),
			]),
		);
	}
	const rows = await query.execute();
	return rows.map(({status: _, body, ...row}) => ({
		kind: 'draft',
		...row,
		body: readBody(schema, row.find, body),
	}));
}

/** The draft of a find, or what stays of a withdrawn one; throws an Error when its body does not fit `schema`. */
export async function draftOfFind<Body>(
	db: Tx | Db,
	find: number,
	schema: ZodType<Body>,
): Promise<KeptDraft<Body> | WithdrawnDraft | undefined> {
	const found = await db.selectFrom('draft').select(columns).where('find', '=', find).executeTakeFirst();
	if (!found) return undefined;
	const {status, body, ...row} = found;
	return status === 'withdrawn'
		? {kind: 'withdrawn', ...row}
		: {kind: 'draft', ...row, body: readBody(schema, find, body)};
}

/** How many drafts a person keeps. */
export async function countDrafts(db: Tx | Db, wanted: DraftsWanted): Promise<number> {
	const {count} = await wantedDrafts(db, wanted)
		.select(({fn}) => fn.countAll().as('count'))
		.executeTakeFirstOrThrow();
	return Number(count);
}

function wantedDrafts(db: Tx | Db, {person, chat}: DraftsWanted) {
	const all = db.selectFrom('draft').where('person', '=', person).where('status', '=', 'draft');
	if (chat === undefined) return all;
	return all.where('find', 'in', query =>
		query.selectFrom('find').select('find.id').where('find.chat', '=', chat),
	);
}

/**
 * Takes a draft back: its body is emptied of all but its uuid and its version is raised, so that the withdrawal can
 * still be told. `undefined` when there is no draft or it was taken back before.
 */
export async function withdrawDraft(
	tx: Tx | Db,
	{find, now}: {readonly find: number; readonly now: number},
): Promise<{readonly uuid: string; readonly version: number} | undefined> {
	const row = await tx
		.updateTable('draft')
		.set(({eb, ref}) => ({
			status: 'withdrawn' as const,
			body: '{"kind":"withdrawn"}',
			version: eb(ref('version'), '+', 1),
			changedAt: now,
		}))
		.where('find', '=', find)
		.where('status', '=', 'draft')
		.returning(['uuid', 'version'])
		.executeTakeFirst();
	return row;
}

/** Raises the version of a draft, since something that is passed on with it has changed. */
export async function raiseVersion(
	tx: Tx | Db,
	{find, now}: {readonly find: number; readonly now: number},
): Promise<number | undefined> {
	const row = await tx
		.updateTable('draft')
		.set(({eb, ref}) => ({version: eb(ref('version'), '+', 1), changedAt: now}))
		.where('find', '=', find)
		.where('status', '=', 'draft')
		.returning('version')
		.executeTakeFirst();
	return row?.version;
}

/** The body of a draft through its schema; throws an Error that names the find when it does not fit. */
export function readBody<Body>(schema: ZodType<Body>, find: number, body: string): Body {
	try {
		return schema.parse(JSON.parse(body));
	} catch (error) {
		throw new Error(`Expected the draft of find ${find} to fit its schema`, {cause: error});
	}
}
