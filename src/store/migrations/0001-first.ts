/** The first tables. Each index names the query it is for. */
import {type Kysely, sql} from 'kysely';

/** Creates every table of the first release. */
export async function up(db: Kysely<unknown>): Promise<void> {
	const schema = db.schema;
	await schema
		.createTable('chat')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('kind', 'text', column => column.notNull())
		.addColumn('gone_at', 'bigint')
		.addColumn('created_at', 'bigint', column => column.notNull())
		.execute();
	await schema
		.createTable('chat_address')
		.addColumn('platform_id', 'bigint', column => column.primaryKey())
		.addColumn('chat', 'integer', column => column.notNull().references('chat.id'))
		.execute();
	// chats.ts addressOf
	await schema.createIndex('chat_address_chat').on('chat_address').column('chat').execute();
	await schema
		.createTable('person')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('platform_id', 'bigint', column => column.notNull().unique())
		.addColumn('language', 'text')
		.addColumn('zone', 'text')
		.addColumn('is_zone_chosen', 'integer', column => column.notNull().defaultTo(0))
		.addColumn('region', 'text')
		.addColumn('welcomed_at', 'bigint')
		.addColumn('created_at', 'bigint', column => column.notNull())
		.execute();
	await createFind(db);
	await createQueues(db);
	await createRecords(db);
}

async function createFind(db: Kysely<unknown>): Promise<void> {
	const schema = db.schema;
	await schema
		.createTable('find')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('uuid', 'text', column => column.notNull().unique())
		.addColumn('chat', 'integer', column => column.notNull().references('chat.id'))
		.addColumn('person', 'integer', column => column.notNull().references('person.id'))
		.addColumn('region', 'text', column => column.notNull())
		.addColumn('turn', 'integer', column => column.notNull())
		.addColumn('trail', 'text', column => column.notNull())
		.addColumn('state', 'text', column => column.notNull())
		.addColumn('bowl', 'integer', column => column.references('find.id'))
		.addColumn('thread', 'integer')
		.addColumn('created_at', 'bigint', column => column.notNull())
		.addColumn('changed_at', 'bigint', column => column.notNull())
		.execute();
	// finds.ts bowlOf: what a person has in water in a chat
	await schema.createIndex('find_person').on('find').columns(['person', 'chat', 'state']).execute();
	// chats.ts mergeChats
	await schema.createIndex('find_chat').on('find').column('chat').execute();
	// finds.ts findsOfBowl
	await schema.createIndex('find_bowl').on('find').column('bowl').execute();
	await schema
		.createTable('seat')
		.addColumn('chat', 'integer', column => column.notNull().references('chat.id'))
		.addColumn('person', 'integer', column => column.notNull().references('person.id'))
		.addColumn('find', 'integer', column => column.references('find.id'))
		.addPrimaryKeyConstraint('seat_key', ['chat', 'person'])
		.execute();
	// people.ts forgetFind; foreign keys are looked up on delete
	await schema.createIndex('seat_find').on('seat').column('find').execute();
	await schema.createIndex('seat_person').on('seat').column('person').execute();
	await schema
		.createTable('reminder')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('find', 'integer', column => column.notNull().references('find.id'))
		.addColumn('due_at', 'bigint', column => column.notNull())
		.addColumn('zone', 'text', column => column.notNull())
		.addColumn('done_at', 'bigint')
		.execute();
	// reminders.ts remindersDueBy
	await schema
		.createIndex('reminder_due')
		.on('reminder')
		.column('due_at')
		.where(sql.ref('done_at'), 'is', null)
		.execute();
	// reminders.ts forgetReminders
	await schema.createIndex('reminder_find').on('reminder').column('find').execute();
}

async function createQueues(db: Kysely<unknown>): Promise<void> {
	const schema = db.schema;
	await schema
		.createTable('inbox')
		.addColumn('update_id', 'bigint', column => column.primaryKey())
		.addColumn('received_at', 'bigint', column => column.notNull())
		.execute();
	// inbox.ts forgetOldUpdates
	await schema.createIndex('inbox_received').on('inbox').column('received_at').execute();
	await schema
		.createTable('aside')
		.addColumn('update_id', 'bigint', column => column.primaryKey())
		.addColumn('error', 'text', column => column.notNull())
		.addColumn('at', 'bigint', column => column.notNull())
		.execute();
	await schema
		.createTable('outbox')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('chat', 'integer', column => column.notNull().references('chat.id'))
		.addColumn('lane', 'text', column => column.notNull())
		.addColumn('find', 'integer', column => column.references('find.id'))
		.addColumn('turn', 'integer')
		.addColumn('role', 'text', column => column.notNull())
		.addColumn('content', 'text', column => column.notNull())
		.addColumn('not_before', 'bigint', column => column.notNull())
		.addColumn('state', 'text', column => column.notNull())
		.addColumn('attempts', 'integer', column => column.notNull().defaultTo(0))
		.addColumn('message_id', 'bigint')
		.addColumn('created_at', 'bigint', column => column.notNull())
		.addColumn('sent_at', 'bigint')
		.execute();
	// outbox.ts nextToSend: the head of every chat
	await schema
		.createIndex('outbox_waiting')
		.on('outbox')
		.columns(['chat', 'id'])
		.where(sql.ref('state'), 'in', sql`('waiting', 'sending')`)
		.execute();
	// outbox.ts messageOf: the message in which a turn was asked
	await schema.createIndex('outbox_find').on('outbox').columns(['find', 'turn']).execute();
	// outbox.ts findOfMessage: which find a reply is about
	await schema.createIndex('outbox_message').on('outbox').columns(['chat', 'message_id']).execute();
	// outbox.ts forgetOldMessages
	await schema.createIndex('outbox_created').on('outbox').column('created_at').execute();
}

async function createRecords(db: Kysely<unknown>): Promise<void> {
	const schema = db.schema;
	await schema
		.createTable('photo')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('find', 'integer', column => column.notNull().references('find.id'))
		.addColumn('file_id', 'text', column => column.notNull())
		.addColumn('file_unique_id', 'text', column => column.notNull())
		.addColumn('state', 'text', column => column.notNull())
		.addColumn('hash', 'text')
		.addColumn('size_bytes', 'integer')
		.addColumn('attempts', 'integer', column => column.notNull().defaultTo(0))
		.addColumn('not_before', 'bigint', column => column.notNull())
		.addColumn('created_at', 'bigint', column => column.notNull())
		.execute();
	// photos.ts photosOf
	await schema.createIndex('photo_find').on('photo').column('find').execute();
	// photos.ts nextPhoto
	await schema
		.createIndex('photo_wanted')
		.on('photo')
		.column('not_before')
		.where(sql.ref('state'), '=', sql`'wanted'`)
		.execute();
	// photos.ts isHashInUse
	await schema.createIndex('photo_hash').on('photo').column('hash').execute();
	await schema
		.createTable('erasing')
		.addColumn('hash', 'text', column => column.primaryKey())
		.execute();
	await schema
		.createTable('draft')
		.addColumn('find', 'integer', column => column.primaryKey().references('find.id'))
		.addColumn('uuid', 'text', column => column.notNull().unique())
		.addColumn('person', 'integer', column => column.notNull().references('person.id'))
		.addColumn('status', 'text', column => column.notNull())
		.addColumn('body', 'text', column => column.notNull())
		.addColumn('version', 'integer', column => column.notNull())
		.addColumn('saved_at', 'bigint', column => column.notNull())
		.addColumn('changed_at', 'bigint', column => column.notNull())
		.execute();
	// drafts.ts draftsOf
	await schema.createIndex('draft_person').on('draft').columns(['person', 'saved_at']).execute();
	await schema
		.createTable('forward')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('record', 'text', column => column.notNull())
		.addColumn('version', 'integer', column => column.notNull())
		.addColumn('webhook_id', 'text', column => column.notNull().unique())
		.addColumn('body', 'text', column => column.notNull())
		.addColumn('state', 'text', column => column.notNull())
		.addColumn('attempts', 'integer', column => column.notNull().defaultTo(0))
		.addColumn('not_before', 'bigint', column => column.notNull())
		.addColumn('last_error', 'text')
		.addColumn('created_at', 'bigint', column => column.notNull())
		.addColumn('sent_at', 'bigint')
		.execute();
	// forwards.ts nextToForward: the head of every record
	await schema
		.createIndex('forward_waiting')
		.on('forward')
		.columns(['record', 'id'])
		.where(sql.ref('state'), '=', sql`'waiting'`)
		.execute();
}
