/** Somebody is forgotten in survey days: what they asked for, what they said, and that they called for days. */
import type {Db, Tx} from './schema.ts';

/**
 * Forgets a person in survey days. A day they called for stays without them; its words are the caller's to change,
 * and a plan that nobody was told of goes.
 */
export async function forgetInDays(tx: Tx, person: number): Promise<void> {
	await tx.deleteFrom('ear').where('person', '=', person).execute();
	await tx
		.deleteFrom('audience')
		.where(({eb, or}) => or([eb('person', '=', person), eb('coordinator', '=', person)]))
		.execute();
	await tx.deleteFrom('guest').where('person', '=', person).execute();
	await forgetDeliveries(tx, person);
	await tx.deleteFrom('day').where('person', '=', person).where('state', '=', 'planned').execute();
	await tx.updateTable('day').set({person: null, plan: null}).where('person', '=', person).execute();
}

/** What went to their private chat goes from the ledger; what went to a group was told to others, too. */
async function forgetDeliveries(tx: Tx, person: number): Promise<void> {
	const own = tx
		.selectFrom('chatAddress')
		.innerJoin('person', 'person.platformId', 'chatAddress.platformId')
		.select('chatAddress.chat')
		.where('person.id', '=', person);
	await tx.deleteFrom('delivery').where('chat', 'in', own).execute();
	await tx.updateTable('delivery').set({person: null}).where('person', '=', person).execute();
}

/** So long after a day was over it is still known who came and who was told. */
const rememberedMs = 60 * 24 * 3_600_000;

/** Forgets who said what of days that were over two months ago, and who was told of them; the days stay. */
export async function forgetOldDays(db: Db, now: number): Promise<void> {
	const before = now - rememberedMs;
	const over = db
		.selectFrom('day')
		.select('id')
		.where(({eb, and, or}) =>
			or([
				and([eb('state', '=', 'published'), eb('endsAt', '<', before)]),
				and([eb('state', '=', 'cancelled'), eb('changedAt', '<', before)]),
			]),
		);
	await db.deleteFrom('guest').where('day', 'in', over).execute();
	await db
		.deleteFrom('delivery')
		.where('broadcast', 'in', query => query.selectFrom('broadcast').select('id').where('day', 'in', over))
		.execute();
}
