/** Saved records in the order of their finds, page by page, with what their finders wish of them. */
import type {ZodType} from 'zod';
import {type Decision, decisionsOfEach, lastDecisions} from './decisions.ts';
import {readBody} from './drafts.ts';
import type {Db, Tx} from './schema.ts';
import type {Sharing} from './sharing.ts';

/** A saved record with its finder's wishes; times are UTC milliseconds. */
export type SavedRecord<Body> = {
	readonly find: number;
	readonly savedAt: number;
	readonly changedAt: number;
	readonly body: Body;
	readonly sharing: Sharing;
	/** What a verifier said last; absent for a record that nobody has looked at. */
	readonly decision: Decision | undefined;
	/** What verifiers said before that, oldest first. */
	readonly earlier?: readonly Decision[];
};

/** The next records after find `after`; throws an Error when a body does not fit `schema`. */
export async function savedAfter<Body>(
	db: Db | Tx,
	page: {readonly after: number; readonly limit: number},
	schema: ZodType<Body>,
): Promise<readonly SavedRecord<Body>[]> {
	const rows = await db
		.selectFrom('draft')
		.innerJoin('person', 'person.id', 'draft.person')
		.select([
			'draft.find',
			'draft.savedAt',
			'draft.changedAt',
			'draft.body',
			'person.publicName',
			'person.coarseM',
			'draft.coarseM as ownCoarseM',
		])
		.where('draft.find', '>', page.after)
		.where('draft.status', '=', 'draft')
		.orderBy('draft.find')
		.limit(page.limit)
		.execute();
	const decisions = await decisionsOfEach(
		db,
		rows.map(({find}) => find),
	);
	return rows.map(({find, savedAt, changedAt, body, publicName, coarseM, ownCoarseM}) => ({
		find,
		savedAt,
		changedAt,
		body: readBody(schema, find, body),
		sharing: {publicName: publicName ?? undefined, coarseM: coarseM ?? ownCoarseM ?? undefined},
		decision: decisions.get(find)?.at(-1),
		earlier: decisions.get(find)?.slice(0, -1) ?? [],
	}));
}

/** A saved record of somebody, without a body where that cannot be read. */
export type OwnedRecord<Body> = Omit<SavedRecord<Body>, 'body'> & {
	readonly person: number;
	readonly body: Body | undefined;
};

/** Whose records: of finds begun in a chat, sorted together, a person's own, or found on these dates. */
export type RecordsOf =
	| {readonly chat: number}
	| {readonly sorting: number}
	| {readonly person: number}
	| {readonly dates: readonly string[]};

/** The records saved since `since`, oldest first. */
export async function savedSince<Body>(
	db: Db | Tx,
	of: RecordsOf & {readonly since: number},
	schema: ZodType<Body>,
): Promise<readonly OwnedRecord<Body>[]> {
	const all = db
		.selectFrom('draft')
		.innerJoin('person', 'person.id', 'draft.person')
		.innerJoin('find', 'find.id', 'draft.find')
		.select(['draft.find', 'draft.savedAt', 'draft.changedAt', 'draft.body', 'draft.person'])
		.select(['person.publicName', 'person.coarseM'])
		.where('draft.status', '=', 'draft')
		.where('draft.savedAt', '>=', of.since)
		.orderBy('draft.find');
	const wanted =
		'chat' in of
			? all.where('find.chat', '=', of.chat)
			: 'sorting' in of
				? all.where('find.sorting', '=', of.sorting)
				: 'person' in of
					? all.where('draft.person', '=', of.person)
					: all.where(({eb, or}) =>
							// As `JSON.stringify` writes it; the caller reads the body and looks again.
							or(of.dates.map(date => eb('draft.body', 'like', `%"foundOn":"${date}"%`))),
						);
	const rows = await wanted.execute();
	const decisions = await lastDecisions(
		db,
		rows.map(({find}) => find),
	);
	return rows.map(({body, publicName, coarseM, ...row}) => ({
		...row,
		body: bodyIfSound(schema, body),
		sharing: {publicName: publicName ?? undefined, coarseM: coarseM ?? undefined},
		decision: decisions.get(row.find),
	}));
}

function bodyIfSound<Body>(schema: ZodType<Body>, body: string): Body | undefined {
	try {
		return schema.safeParse(JSON.parse(body)).data;
	} catch {
		return undefined;
	}
}

/** Every saved record from first to last, `pageSize` in memory at a time. */
export async function* everySaved<Body>(
	db: Db | Tx,
	schema: ZodType<Body>,
	pageSize = 200,
): AsyncGenerator<SavedRecord<Body>, void, undefined> {
	let after = -1;
	for (;;) {
		const page = await savedAfter(db, {after, limit: pageSize}, schema);
		yield* page;
		const last = page.at(-1);
		if (!last || page.length < pageSize) return;
		after = last.find;
	}
}
