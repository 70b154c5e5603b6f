/** Finds shared in a group, and bowls sorted case by case. Each index names the query it is for. */
import type {Kysely} from 'kysely';

/** Adds who may answer for a find, what was sorted together, and which photos came as one album. */
export async function up(db: Kysely<unknown>): Promise<void> {
	const {schema} = db;
	await schema
		.createTable('sorting')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('chat', 'integer', column => column.notNull().references('chat.id'))
		.addColumn('begun_at', 'bigint', column => column.notNull())
		.addColumn('ended_at', 'bigint')
		.execute();
	// sortings.ts openSorting; chats.ts mergeChats
	await schema.createIndex('sorting_chat').on('sorting').column('chat').execute();
	await schema
		.alterTable('find')
		.addColumn('is_owners_alone', 'integer', column => column.notNull().defaultTo(0))
		.execute();
	await schema
		.alterTable('find')
		.addColumn('sorting', 'integer', column => column.references('sorting.id'))
		.execute();
	// sortings.ts findsSorted
	await schema.createIndex('find_sorting').on('find').column('sorting').execute();
	await schema.alterTable('photo').addColumn('album', 'text').execute();
	// photos.ts findOfAlbum
	await schema.createIndex('photo_album').on('photo').column('album').execute();
}
