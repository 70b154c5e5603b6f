/** Drafts that wait for a verifier: in what order, who looks at which, and which rest until their finder answers. */
import type {Db, Tx} from './schema.ts';

/** Who looks for a draft, and when (UTC ms). */
export type Looking = {readonly person: number; readonly now: number};

/** Somebody who looks at a draft just now. */
export type Claim = {
	readonly person: number;
	readonly publicName: string | undefined;
	readonly claimedAt: number;
};

/** A draft looked at for longer without a decision goes back to the queue. */
export const claimLivesMs = 3_600_000;

/** Puts a draft in the queue, or notes what changed about one that is there. */
export async function waitForReview(
	tx: Tx | Db,
	draft: {readonly find: number; readonly isUnusual: boolean; readonly now: number},
): Promise<void> {
	const isUnusual = draft.isUnusual ? 1 : 0;
	await tx
		.insertInto('review')
		.values({find: draft.find, isUnusual, since: draft.now})
		.onConflict(conflict => conflict.column('find').doUpdateSet({isUnusual}))
		.execute();
}

/** The find this person may look at next: unusual ones first, then the oldest; after find `after` where there is one. */
export async function nextToReview(
	tx: Tx | Db,
	looking: Looking & {readonly after?: number | undefined},
): Promise<number | undefined> {
	const mark =
		looking.after === undefined
			? undefined
			: await tx
					.selectFrom('review')
					.select(['isUnusual', 'since', 'find'])
					.where('find', '=', looking.after)
					.executeTakeFirst();
	const inOrder = waiting(tx, looking)
		.select('review.find')
		.orderBy('review.isUnusual', 'desc')
		.orderBy('review.since')
		.orderBy('review.find')
		.limit(1);
	if (!mark) return (await inOrder.executeTakeFirst())?.find;
	const later = await inOrder
		.where(({eb, and, or}) =>
			or([
				eb('review.isUnusual', '<', mark.isUnusual),
				and([
					eb('review.isUnusual', '=', mark.isUnusual),
					or([
						eb('review.since', '>', mark.since),
						and([eb('review.since', '=', mark.since), eb('review.find', '>', mark.find)]),
					]),
				]),
			]),
		)
		.executeTakeFirst();
	const found = later ?? (await inOrder.where('review.find', '!=', mark.find).executeTakeFirst());
	return found?.find;
}

/** How many drafts wait for this person. */
export async function countToReview(tx: Tx | Db, looking: Looking): Promise<number> {
	const {count} = await waiting(tx, looking)
		.select(({fn}) => fn.countAll().as('count'))
		.executeTakeFirstOrThrow();
	return Number(count);
}

/** Notes who looks at a draft from now on. */
export async function claimReview(tx: Tx | Db, {find, person, now}: Looking & {find: number}): Promise<void> {
	await tx
		.updateTable('review')
		.set({claimedBy: person, claimedAt: now})
		.where('find', '=', find)
		.where('decidedAt', 'is', null)
		.execute();
}

/** Who looks at a draft just now. */
export async function claimOf(tx: Tx | Db, find: number, now: number): Promise<Claim | undefined> {
	const row = await tx
		.selectFrom('review')
		.innerJoin('person', 'person.id', 'review.claimedBy')
		.select(['person.id as person', 'person.publicName', 'review.claimedAt'])
		.where('review.find', '=', find)
		.where('review.decidedAt', 'is', null)
		.where('review.claimedAt', '>', now - claimLivesMs)
		.executeTakeFirst();
	if (!row || row.claimedAt === null) return undefined;
	return {person: row.person, publicName: row.publicName ?? undefined, claimedAt: row.claimedAt};
}

/** Lets go of a draft, or of all that a person looks at. */
export async function releaseClaims(
	tx: Tx | Db,
	{person, find}: {readonly person: number; readonly find?: number},
): Promise<void> {
	const held = tx
		.updateTable('review')
		.set({claimedBy: null, claimedAt: null})
		.where('claimedBy', '=', person);
	await (find === undefined ? held : held.where('find', '=', find)).execute();
}

/** Keeps a draft out of the queue until its finder answers, or until then (UTC ms). */
export async function restUntil(
	tx: Tx | Db,
	{find, until}: {readonly find: number; readonly until: number | undefined},
): Promise<void> {
	await tx
		.updateTable('review')
		.set({restsUntil: until ?? null, claimedBy: null, claimedAt: null})
		.where('find', '=', find)
		.execute();
}

/** Takes a draft out of the queue, since somebody decided. */
export async function settleReview(
	tx: Tx | Db,
	{find, now}: {readonly find: number; readonly now: number},
): Promise<void> {
	await tx
		.updateTable('review')
		.set({decidedAt: now, restsUntil: null, claimedBy: null, claimedAt: null})
		.where('find', '=', find)
		.execute();
}

/** Takes a draft out of the queue for good, since its finder took it back. */
export async function leaveReview(tx: Tx | Db, find: number): Promise<void> {
	await tx.deleteFrom('review').where('find', '=', find).execute();
}

/** Nobody checks their own finds, and nobody one that another looks at. */
function waiting(tx: Tx | Db, {person, now}: Looking) {
	return tx
		.selectFrom('review')
		.innerJoin('draft', 'draft.find', 'review.find')
		.where('review.decidedAt', 'is', null)
		.where('draft.status', '=', 'draft')
		.where('draft.person', '!=', person)
		.where(({eb, or}) => or([eb('review.restsUntil', 'is', null), eb('review.restsUntil', '<=', now)]))
		.where(({eb, or}) =>
			or([
				eb('review.claimedBy', 'is', null),
				eb('review.claimedBy', '=', person),
				eb('review.claimedAt', '<=', now - claimLivesMs),
			]),
		);
}
