/** All that is held on one person, table by table; what names somebody else is left out. */
import {heldInDays} from './held-days.ts';
import type {Db, Tx} from './schema.ts';

/** What is held on a person, as stored: times are UTC milliseconds, JSON is text. */
export type Held = Awaited<ReturnType<typeof heldOn>>;

/** Everything held on a person. */
export async function heldOn(db: Db | Tx, person: number) {
	return {
		person: await personRow(db, person),
		roles: await db
			.selectFrom('role')
			.select(['role', 'grantedAt'])
			.where('person', '=', person)
			.orderBy('grantedAt')
			.execute(),
		invitations: await db
			.selectFrom('invitation')
			.select(['role', 'createdAt', 'expiresAt', 'usedAt'])
			.where(({eb, or}) => or([eb('invitedBy', '=', person), eb('usedBy', '=', person)]))
			.orderBy('createdAt')
			.execute(),
		chats: await chatsOf(db, person),
		finds: await findsOf(db, person),
		...(await aboutFinds(db, person)),
		...(await asVerifier(db, person)),
		...(await heldInDays(db, person)),
		messages: await messagesTo(db, person),
		requests: await db
			.selectFrom('parcel')
			.select(['wanted', 'createdAt'])
			.where('person', '=', person)
			.orderBy('id')
			.execute(),
	};
}

async function personRow(db: Db | Tx, person: number) {
	return db
		.selectFrom('person')
		.select([
			'platformId',
			'language',
			'zone',
			'isZoneChosen',
			'region',
			'publicName',
			'coarseM',
			'sheetPrint',
			'sheetPrintAt',
			'welcomedAt',
			'createdAt',
		])
		.where('id', '=', person)
		.executeTakeFirstOrThrow();
}

async function chatsOf(db: Db | Tx, person: number) {
	return db
		.selectFrom('seat')
		.innerJoin('chat', 'chat.id', 'seat.chat')
		.innerJoin('chatAddress', 'chatAddress.chat', 'chat.id')
		.leftJoin('day', 'day.id', 'seat.day')
		.select(['chat.kind', 'chatAddress.platformId', 'seat.find as presentFind'])
		.select(['seat.ear as askedFor', 'day.uuid as dayAskedFor'])
		.where('seat.person', '=', person)
		.orderBy('chat.id')
		.execute();
}

async function findsOf(db: Db | Tx, person: number) {
	return db
		.selectFrom('find')
		.select(['id', 'uuid', 'region', 'state', 'bowl', 'trail', 'createdAt', 'changedAt', 'warnedAt'])
		.where('person', '=', person)
		.orderBy('id')
		.execute();
}

async function aboutFinds(db: Db | Tx, person: number) {
	const theirs = db.selectFrom('find').select('find.id').where('find.person', '=', person);
	return {
		drafts: await db
			.selectFrom('draft')
			.select(['find', 'status', 'body', 'version', 'savedAt', 'changedAt'])
			.where('person', '=', person)
			.orderBy('find')
			.execute(),
		photos: await db
			.selectFrom('photo')
			.select(['id', 'find', 'state', 'hash', 'sizeBytes', 'createdAt'])
			.where('find', 'in', theirs)
			.orderBy('id')
			.execute(),
		reminders: await db
			.selectFrom('reminder')
			.select(['find', 'dueAt', 'zone', 'doneAt'])
			.where('find', 'in', theirs)
			.orderBy('id')
			.execute(),
		decisions: await db
			.selectFrom('decision')
			.select(['find', 'at', 'version', 'outcome', 'name', 'reason', 'words'])
			.where('find', 'in', theirs)
			.orderBy('id')
			.execute(),
		letters: await db
			.selectFrom('letter')
			.select(['find', 'at', 'words', 'photo'])
			.where('find', 'in', theirs)
			.orderBy('id')
			.execute(),
		passedOn: await db
			.selectFrom('forward')
			.select(['record', 'version', 'state', 'createdAt', 'sentAt'])
			.where('record', 'in', theirs.clearSelect().select('find.uuid'))
			.orderBy('id')
			.execute(),
	};
}

/** What they said of the finds of others. */
async function asVerifier(db: Db | Tx, person: number) {
	const of = db.selectFrom('find').select('find.id').where('find.person', '=', person);
	return {
		decisionsGiven: await db
			.selectFrom('decision')
			.select(['find', 'at', 'outcome', 'name', 'reason', 'words'])
			.where('person', '=', person)
			.orderBy('id')
			.execute(),
		lettersWritten: await db
			.selectFrom('letter')
			.select(['find', 'at', 'words', 'photo'])
			.where('person', '=', person)
			.where('find', 'not in', of)
			.orderBy('id')
			.execute(),
		looksAt: await db
			.selectFrom('review')
			.select(['find', 'claimedAt'])
			.where('claimedBy', '=', person)
			.execute(),
	};
}

/** What was said to them and is still remembered: in their private chat, and about their finds in groups. */
async function messagesTo(db: Db | Tx, person: number) {
	const theirs = db.selectFrom('find').select('find.id').where('find.person', '=', person);
	const own = db
		.selectFrom('chatAddress')
		.innerJoin('person', 'person.platformId', 'chatAddress.platformId')
		.select('chatAddress.chat')
		.where('person.id', '=', person);
	return db
		.selectFrom('outbox')
		.select(['find', 'role', 'content', 'state', 'createdAt', 'sentAt'])
		.where(({eb, or}) => or([eb('find', 'in', theirs), eb('chat', 'in', own)]))
		.orderBy('id')
		.execute();
}
