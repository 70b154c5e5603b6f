/** What people wish of published records. Read with each record by `saved.ts`, so no index of its own. */
import type {Kysely} from 'kysely';

/** Adds the name a person chose to be called by in public, and how coarse their places are told. */
export async function up(db: Kysely<unknown>): Promise<void> {
	await db.schema.alterTable('person').addColumn('public_name', 'text').execute();
	await db.schema.alterTable('person').addColumn('coarse_m', 'integer').execute();
}
