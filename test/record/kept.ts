/** A database file of its own for a test, with one person and some of their finds in it. */

import {randomUUID} from 'node:crypto';
import {join} from 'node:path';
import {openStore} from '../../src/store/open.ts';
import type {Db} from '../../src/store/schema.ts';
import {ownFolder} from '../support/folder.ts';

export function newFile(): string {
	return join(ownFolder('pursekey'), 'pursekey.db');
}

/** Opens a new database with finds 1 to `finds`, all of person 1. */
export async function storeWithFinds(finds: number): Promise<Db> {
	const db = await openStore(newFile());
	await db.insertInto('chat').values({kind: 'private', goneAt: null, createdAt: 0}).execute();
	await db
		.insertInto('person')
		.values({platformId: 77, language: 'en', zone: null, isZoneChosen: 0, welcomedAt: null, createdAt: 0})
		.execute();
	for (let index = 0; index < finds; index++) {
		await db
			.insertInto('find')
			.values({
				uuid: randomUUID(),
				chat: 1,
				person: 1,
				region: 'testland',
				turn: 0,
				trail: '[]',
				state: 'kept',
				bowl: null,
				thread: null,
				createdAt: 0,
				changedAt: 0,
			})
			.execute();
	}
	return db;
}
