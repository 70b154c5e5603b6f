/** Photos that are to be measured. */
import type {Kysely} from 'kysely';

/** Adds to a photo whether its size is wanted. */
export async function up({schema}: Kysely<unknown>): Promise<void> {
	await schema
		.alterTable('photo')
		.addColumn('measures', 'integer', column => column.notNull().defaultTo(0))
		.execute();
}
