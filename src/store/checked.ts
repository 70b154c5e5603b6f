/** Which records somebody trusted has looked at and given a name. */
import type {Db, Tx} from './schema.ts';

/** The finds of a person whose record is kept and whose last decision named it. */
export async function checkedFinds(db: Db | Tx, person: number): Promise<readonly number[]> {
	const rows = await db
		.selectFrom('draft')
		.innerJoin('decision', 'decision.find', 'draft.find')
		.select('draft.find')
		.where('draft.person', '=', person)
		.where('draft.status', '=', 'draft')
		.where('decision.outcome', '!=', 'not-an-egg-case')
		.where('decision.id', 'in', ({selectFrom}) =>
			selectFrom('decision')
				.select(({fn}) => fn.max('id').as('last'))
				.groupBy('find'),
		)
		.orderBy('draft.find')
		.execute();
	return rows.map(({find}) => find);
}
