/** Who may do what, how they came to it, and what was said of drafts. Each index names the query it is for. */
import {type Kysely, sql} from 'kysely';

/** Adds roles and invitations, and the queue, talks and decisions of reviewing. */
export async function up(db: Kysely<unknown>): Promise<void> {
	await createRoles(db);
	await createReview(db);
	// prompts.ts expectedLast
	await db.schema
		.createIndex('outbox_prompt')
		.on('outbox')
		.columns(['chat', 'id'])
		.where(sql.ref('role'), '=', sql`'prompt'`)
		.execute();
	// Drafts saved before wait to be looked at, too.
	await sql`
		insert into review (find, is_unusual, since)
		select find, case when body like '%"unusual":["%' then 1 else 0 end, saved_at from draft where status = 'draft'
	`.execute(db);
}

async function createRoles({schema}: Kysely<unknown>): Promise<void> {
	await schema
		.createTable('role')
		.addColumn('person', 'integer', column => column.notNull().references('person.id'))
		.addColumn('role', 'text', column => column.notNull())
		.addColumn('granted_by', 'integer', column => column.references('person.id'))
		.addColumn('granted_at', 'bigint', column => column.notNull())
		.addPrimaryKeyConstraint('role_key', ['person', 'role'])
		.execute();
	// roles.ts forgetRoles
	await schema.createIndex('role_granted_by').on('role').column('granted_by').execute();
	await schema
		.createTable('invitation')
		.addColumn('hash', 'text', column => column.primaryKey())
		.addColumn('role', 'text', column => column.notNull())
		.addColumn('invited_by', 'integer', column => column.references('person.id'))
		.addColumn('created_at', 'bigint', column => column.notNull())
		.addColumn('expires_at', 'bigint')
		.addColumn('used_by', 'integer', column => column.references('person.id'))
		.addColumn('used_at', 'bigint')
		.execute();
	// invitations.ts forgetInvitations
	await schema.createIndex('invitation_invited_by').on('invitation').column('invited_by').execute();
	await schema.createIndex('invitation_used_by').on('invitation').column('used_by').execute();
}

async function createReview({schema}: Kysely<unknown>): Promise<void> {
	await schema
		.createTable('review')
		.addColumn('find', 'integer', column => column.primaryKey().references('find.id'))
		.addColumn('is_unusual', 'integer', column => column.notNull())
		.addColumn('since', 'bigint', column => column.notNull())
		.addColumn('claimed_by', 'integer', column => column.references('person.id'))
		.addColumn('claimed_at', 'bigint')
		.addColumn('rests_until', 'bigint')
		.addColumn('decided_at', 'bigint')
		.execute();
	// review.ts nextToReview
	await schema
		.createIndex('review_waiting')
		.on('review')
		.columns(['is_unusual', 'since'])
		.where(sql.ref('decided_at'), 'is', null)
		.execute();
	// review.ts releaseClaims
	await schema.createIndex('review_claimed_by').on('review').column('claimed_by').execute();
	await schema
		.createTable('decision')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('find', 'integer', column => column.notNull().references('find.id'))
		.addColumn('person', 'integer', column => column.references('person.id'))
		.addColumn('at', 'bigint', column => column.notNull())
		.addColumn('version', 'integer', column => column.notNull())
		.addColumn('outcome', 'text', column => column.notNull())
		.addColumn('name', 'text')
		.addColumn('reason', 'text')
		.addColumn('words', 'text')
		.execute();
	// decisions.ts decisionsOf
	await schema.createIndex('decision_find').on('decision').columns(['find', 'id']).execute();
	// decisions.ts forgetVerifier
	await schema.createIndex('decision_person').on('decision').column('person').execute();
	await schema
		.createTable('letter')
		.addColumn('id', 'integer', column => column.primaryKey().autoIncrement())
		.addColumn('find', 'integer', column => column.notNull().references('find.id'))
		.addColumn('person', 'integer', column => column.references('person.id'))
		.addColumn('answers', 'integer', column => column.references('letter.id'))
		.addColumn('at', 'bigint', column => column.notNull())
		.addColumn('words', 'text')
		.addColumn('photo', 'integer')
		.execute();
	// letters.ts lettersOf
	await schema.createIndex('letter_find').on('letter').columns(['find', 'id']).execute();
	// letters.ts forgetLetters; foreign keys are looked up on delete
	await schema.createIndex('letter_answers').on('letter').column('answers').execute();
	await schema.createIndex('letter_person').on('letter').column('person').execute();
}
