/** Rows that a test of the store needs to stand on. */
import {randomUUID} from 'node:crypto';
import {beginFind} from '../../src/store/finds.ts';
import {personFor} from '../../src/store/people.ts';
import type {Db} from '../../src/store/schema.ts';

/** A person with this platform id; gives our own. */
export async function addPerson(db: Db, platformId: number): Promise<number> {
	const {id} = await db.transaction().execute(tx => personFor(tx, {platformId, now: 1}));
	return id;
}

/** A find with an empty trail; gives its id. */
export async function addFind(db: Db, of: {chat: number; person: number; now?: number}): Promise<number> {
	const {chat, person, now = 1} = of;
	const begun = {uuid: randomUUID(), chat, person, region: 'testland', trail: '[]', now};
	const {id} = await db.transaction().execute(tx => beginFind(tx, begun));
	return id;
}
