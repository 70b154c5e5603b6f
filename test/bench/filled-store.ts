/** A database that has been in use for a while. */
import {randomUUID} from 'node:crypto';
import type {Trail} from '../../src/find/trail.ts';
import type {Db} from '../../src/store/schema.ts';

const people = 1000;
const atOnce = 500;
const begunAt = Date.UTC(2026, 0, 1);

/** Fills an empty store with finds of a thousand people, and the messages that told of them, in one transaction. */
export async function fillStore(db: Db, filling: {finds: number; trail: Trail}): Promise<void> {
	const trail = JSON.stringify(filling.trail);
	const numbers = (count: number) => [...Array(count).keys()];
	await db.transaction().execute(async tx => {
		const persons = numbers(people).map(index => ({
			id: index + 1,
			platformId: 10_000 + index,
			language: 'en',
			zone: null,
			isZoneChosen: 0 as const,
			welcomedAt: begunAt,
			createdAt: begunAt,
		}));
		const chats = persons.map(({id}) => ({
			id,
			kind: 'private' as const,
			goneAt: null,
			createdAt: begunAt,
		}));
		await tx.insertInto('person').values(persons).execute();
		await tx.insertInto('chat').values(chats).execute();
		await tx
			.insertInto('chatAddress')
			.values(persons.map(({id, platformId}) => ({platformId, chat: id})))
			.execute();
		for (let first = 0; first < filling.finds; first += atOnce) {
			const indexes = numbers(Math.min(atOnce, filling.finds - first)).map(index => first + index);
			await tx
				.insertInto('find')
				.values(indexes.map(index => oldFind(index, trail)))
				.execute();
			await tx
				.insertInto('outbox')
				.values(indexes.map(index => oldMessage(index)))
				.execute();
			await tx
				.insertInto('inbox')
				.values(indexes.map(index => ({updateId: index + 1, receivedAt: begunAt + index})))
				.execute();
		}
	});
}

function oldFind(index: number, trail: string) {
	return {
		id: index + 1,
		uuid: randomUUID(),
		chat: (index % people) + 1,
		person: (index % people) + 1,
		region: 'british-isles',
		turn: 18,
		trail,
		state: 'kept' as const,
		bowl: null,
		thread: null,
		createdAt: begunAt + index,
		changedAt: begunAt + index,
	};
}

function oldMessage(index: number) {
	return {
		chat: (index % people) + 1,
		lane: 'chat' as const,
		find: index + 1,
		turn: 18,
		role: 'ask' as const,
		content: '{"kind":"send","html":"Saved as a draft.","keyboard":[]}',
		notBefore: begunAt + index,
		state: 'sent' as const,
		messageId: index + 1,
		createdAt: begunAt + index,
		sentAt: begunAt + index,
	};
}
