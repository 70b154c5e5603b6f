/** What people say of the print of their measuring sheet. */
import type {Kysely} from 'kysely';

/** Adds to a person what they said of their sheet, and when. */
export async function up({schema}: Kysely<unknown>): Promise<void> {
	await schema.alterTable('person').addColumn('sheet_print', 'text').execute();
	await schema.alterTable('person').addColumn('sheet_print_at', 'bigint').execute();
}
