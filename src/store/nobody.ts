/** The one to whom records belong whose person was forgotten, and a chat that nobody reads. */
import type {Tx} from './schema.ts';

/** No person of the platform has this number. */
const platformId = 0;

/** Nobody, made on first use. */
export async function nobody(tx: Tx, now: number): Promise<{readonly person: number; readonly chat: number}> {
	const known = await tx
		.selectFrom('person')
		.innerJoin('chatAddress', 'chatAddress.platformId', 'person.platformId')
		.select(['person.id as person', 'chatAddress.chat'])
		.where('person.platformId', '=', platformId)
		.executeTakeFirst();
	if (known) return known;
	const person = await tx
		.insertInto('person')
		.values({platformId, language: null, zone: null, isZoneChosen: 0, welcomedAt: null, createdAt: now})
		.returning('id')
		.executeTakeFirstOrThrow();
	// Gone from the beginning, so that nothing is ever sent there.
	const chat = await tx
		.insertInto('chat')
		.values({kind: 'private', goneAt: now, createdAt: now})
		.returning('id')
		.executeTakeFirstOrThrow();
	await tx.insertInto('chatAddress').values({platformId, chat: chat.id}).execute();
	return {person: person.id, chat: chat.id};
}
