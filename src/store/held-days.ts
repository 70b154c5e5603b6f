/** What is held on a person who has to do with survey days: what they asked for, answered, and planned. */
import type {Db, Tx} from './schema.ts';

/** Wishes, answers and days of one person. */
export async function heldInDays(db: Db | Tx, person: number) {
	return {
		tellMe: await db
			.selectFrom('audience')
			.select(['kind', 'region', 'latitude', 'longitude', 'createdAt'])
			.where('person', '=', person)
			.orderBy('id')
			.execute(),
		answersToDays: await db
			.selectFrom('guest')
			.innerJoin('day', 'day.id', 'guest.day')
			.select(['day.uuid as day', 'guest.answer', 'guest.party', 'guest.answeredAt'])
			.where('guest.person', '=', person)
			.orderBy('guest.answeredAt')
			.execute(),
		daysPlanned: await db
			.selectFrom('day')
			.select(['uuid', 'state', 'body', 'plan', 'createdAt', 'changedAt'])
			.where('person', '=', person)
			.orderBy('id')
			.execute(),
		daysHeardOf: await db
			.selectFrom('delivery')
			.innerJoin('broadcast', 'broadcast.id', 'delivery.broadcast')
			.innerJoin('day', 'day.id', 'broadcast.day')
			.select(['day.uuid as day', 'broadcast.kind', 'delivery.state', 'delivery.sentAt'])
			.where('delivery.person', '=', person)
			.orderBy('delivery.id')
			.execute(),
	};
}
