/** Survey days that were over long ago: what was said of them is forgotten. */
import type {Db} from './schema.ts';

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
