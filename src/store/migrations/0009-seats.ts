/** What else a person was asked for stands with the find they sit at. Each index names the query it is for. */
import {type Kysely, sql} from 'kysely';

/** Puts the ears into the seats. */
export async function up(db: Kysely<unknown>): Promise<void> {
	const {schema} = db;
	await schema.alterTable('seat').addColumn('ear', 'text').execute();
	await schema
		.alterTable('seat')
		.addColumn('day', 'integer', column => column.references('day.id'))
		.execute();
	// seats.ts stopPlanning; foreign keys are looked up on delete
	await schema.createIndex('seat_day').on('seat').column('day').execute();
	await sql`
		insert into seat (chat, person, ear, day)
		select chat, person, case when day is null then 'place' else 'plan' end, day from ear where true
		on conflict (chat, person) do update set ear = excluded.ear, day = excluded.day
	`.execute(db);
	await schema.dropTable('ear').execute();
}
