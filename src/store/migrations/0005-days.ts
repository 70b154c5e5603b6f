/** Survey days, who asked to be told of them, and the ledger of who was told. Each index names the query it is for. */
import {type Kysely, sql} from 'kysely';

/** Adds days, guests, audience, broadcasts and deliveries. */
export async function up(db: Kysely<unknown>): Promise<void> {
	await createDays(db);
	await createTelling(db);
	// saved.ts savedSince, by dates
	await db.schema.createIndex('draft_saved').on('draft').column('saved_at').execute();
}

async function createDays({schema}: Kysely<unknown>): Promise<void> {
	await schema
		.createTable('day')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('uuid', 'text', column => column.notNull().unique())
		.addColumn('code', 'text', column => column.notNull().unique())
		.addColumn('person', 'integer', column => column.references('person.id'))
		.addColumn('region', 'text', column => column.notNull())
		.addColumn('state', 'text', column => column.notNull())
		.addColumn('plan', 'text')
		.addColumn('turn', 'integer', column => column.notNull())
		.addColumn('body', 'text')
		.addColumn('sequence', 'integer', column => column.notNull().defaultTo(0))
		.addColumn('starts_at', 'bigint')
		.addColumn('ends_at', 'bigint')
		.addColumn('asked_for_result_at', 'bigint')
		.addColumn('created_at', 'bigint', column => column.notNull())
		.addColumn('changed_at', 'bigint', column => column.notNull())
		.execute();
	// days.ts daysToCome, daysOver
	await schema.createIndex('day_ends').on('day').columns(['state', 'ends_at']).execute();
	// days.ts daysOf
	await schema.createIndex('day_person').on('day').column('person').execute();
	await schema
		.createTable('guest')
		.addColumn('day', 'integer', column => column.notNull().references('day.id'))
		.addColumn('person', 'integer', column => column.notNull().references('person.id'))
		.addColumn('chat', 'integer', column => column.notNull().references('chat.id'))
		.addColumn('answer', 'text', column => column.notNull())
		.addColumn('party', 'integer', column => column.notNull())
		.addColumn('is_told', 'integer', column => column.notNull())
		.addColumn('answered_at', 'bigint', column => column.notNull())
		.addPrimaryKeyConstraint('guest_key', ['day', 'person'])
		.execute();
	// guests.ts forgetGuest, stopTelling
	await schema.createIndex('guest_person').on('guest').column('person').execute();
	// audience.ts moveAudience
	await schema.createIndex('guest_chat').on('guest').column('chat').execute();
	await schema
		.createTable('ear')
		.addColumn('chat', 'integer', column => column.notNull().references('chat.id'))
		.addColumn('person', 'integer', column => column.notNull().references('person.id'))
		.addColumn('day', 'integer', column => column.references('day.id'))
		.addPrimaryKeyConstraint('ear_key', ['chat', 'person'])
		.execute();
	// ears.ts stopHearing, by day and by person
	await schema.createIndex('ear_day').on('ear').column('day').execute();
	await schema.createIndex('ear_person').on('ear').column('person').execute();
}

async function createTelling({schema}: Kysely<unknown>): Promise<void> {
	await schema
		.createTable('audience')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('chat', 'integer', column => column.notNull().references('chat.id'))
		.addColumn('person', 'integer', column => column.notNull().references('person.id'))
		.addColumn('kind', 'text', column => column.notNull())
		.addColumn('region', 'text')
		.addColumn('coordinator', 'integer', column => column.references('person.id'))
		.addColumn('latitude', 'real')
		.addColumn('longitude', 'real')
		.addColumn('created_at', 'bigint', column => column.notNull())
		.execute();
	// audience.ts askedIn
	await schema.createIndex('audience_chat').on('audience').column('chat').execute();
	// audience.ts forgetAudience
	await schema.createIndex('audience_person').on('audience').column('person').execute();
	await schema.createIndex('audience_coordinator').on('audience').column('coordinator').execute();
	await schema
		.createTable('broadcast')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('day', 'integer', column => column.notNull().references('day.id'))
		.addColumn('kind', 'text', column => column.notNull())
		.addColumn('urgency', 'integer', column => column.notNull())
		.addColumn('state', 'text', column => column.notNull())
		.addColumn('due_at', 'bigint', column => column.notNull())
		.addColumn('useless_at', 'bigint', column => column.notNull())
		.addColumn('body', 'text', column => column.notNull())
		.addColumn('gathered', 'integer', column => column.notNull().defaultTo(0))
		.addColumn('progress_row', 'integer', column => column.references('outbox.id').onDelete('set null'))
		.addColumn('progress_at', 'bigint')
		.addColumn('created_at', 'bigint', column => column.notNull())
		.execute();
	// broadcasts.ts broadcastsAtWork
	await schema
		.createIndex('broadcast_at_work')
		.on('broadcast')
		.columns(['urgency', 'id'])
		.where(sql.ref('state'), 'in', sql`('waiting', 'gathering', 'running')`)
		.execute();
	// broadcasts.ts broadcastsOf
	await schema.createIndex('broadcast_day').on('broadcast').columns(['day', 'kind']).execute();
	// outbox.ts forgetOldMessages: foreign keys are looked up on delete
	await schema.createIndex('broadcast_progress').on('broadcast').column('progress_row').execute();
	await schema
		.createTable('delivery')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('broadcast', 'integer', column => column.notNull().references('broadcast.id'))
		.addColumn('chat', 'integer', column => column.notNull().references('chat.id'))
		.addColumn('person', 'integer', column => column.references('person.id'))
		.addColumn('state', 'text', column => column.notNull())
		.addColumn('hears_at', 'bigint', column => column.notNull())
		.addColumn('not_before', 'bigint', column => column.notNull())
		.addColumn('attempts', 'integer', column => column.notNull().defaultTo(0))
		.addColumn('sent_at', 'bigint')
		.addUniqueConstraint('delivery_once', ['broadcast', 'chat'])
		.execute();
	// deliveries.ts nextDeliveries, countDeliveries
	await schema
		.createIndex('delivery_waiting')
		.on('delivery')
		.columns(['broadcast', 'state', 'not_before', 'id'])
		.execute();
	// deliveries.ts dropDeliveries, moveDeliveries
	await schema.createIndex('delivery_chat').on('delivery').column('chat').execute();
	// deliveries.ts forgetDeliveries
	await schema.createIndex('delivery_person').on('delivery').column('person').execute();
}
