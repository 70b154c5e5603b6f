/** What people may ask for of what is kept on them, and how long the unfinished is kept. */
import {type Kysely, sql} from 'kysely';

/** Adds parcels, the warning before an unfinished find goes, and what is needed to forget a person. */
export async function up(db: Kysely<unknown>): Promise<void> {
	const {schema} = db;
	await schema.alterTable('find').addColumn('warned_at', 'bigint').execute();
	// unfinished.ts staleFinds
	await schema
		.createIndex('find_unfinished')
		.on('find')
		.column('changed_at')
		.where(sql.ref('state'), 'in', sql`('open', 'soaking')`)
		.execute();
	await schema.alterTable('chat').addColumn('forgotten_at', 'bigint').execute();
	// forget.ts eraseForgottenChats
	await schema
		.createIndex('chat_forgotten')
		.on('chat')
		.column('id')
		.where(sql.ref('forgotten_at'), 'is not', null)
		.execute();
	await schema.alterTable('draft').addColumn('coarse_m', 'integer').execute();
	await schema
		.createTable('parcel')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('chat', 'integer', column => column.notNull().references('chat.id'))
		.addColumn('person', 'integer', column => column.notNull().references('person.id'))
		.addColumn('thread', 'integer')
		.addColumn('wanted', 'text', column => column.notNull())
		.addColumn('attempts', 'integer', column => column.notNull().defaultTo(0))
		.addColumn('not_before', 'bigint', column => column.notNull())
		.addColumn('created_at', 'bigint', column => column.notNull())
		.execute();
	// Foreign keys are looked up when a chat is merged or a person forgotten.
	await schema.createIndex('parcel_chat').on('parcel').column('chat').execute();
	await schema.createIndex('parcel_person').on('parcel').column('person').execute();
	// forwards.ts forwardCounts, deadForwards, markForwarded
	await schema.createIndex('forward_state').on('forward').columns(['state', 'record']).execute();
}
