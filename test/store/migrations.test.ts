import Database from 'better-sqlite3';
import {Kysely, Migrator, SqliteDialect} from 'kysely';
import {expect, test} from 'vitest';
import {up as first} from '../../src/store/migrations/0001-first.ts';
import {up as sharing} from '../../src/store/migrations/0002-sharing.ts';
import {migrations, openStore} from '../../src/store/open.ts';
import {nextToReview} from '../../src/store/review.ts';
import {seatOf} from '../../src/store/seats.ts';
import {newFile} from '../record/kept.ts';

/** A database as it was before there were verifiers, with two drafts and one that was taken back. */
async function oldFile(): Promise<string> {
	const file = newFile();
	const database = new Database(file);
	const db = new Kysely<unknown>({dialect: new SqliteDialect({database})});
	const old = {'0001-first': {up: first}, '0002-sharing': {up: sharing}};
	await new Migrator({db, provider: {getMigrations: () => Promise.resolve(old)}}).migrateToLatest();
	database.exec(`
		insert into chat (id, kind, created_at) values (1, 'private', 0);
		insert into person (id, platform_id, created_at) values (1, 7, 0), (2, 8, 0);
		insert into find (id, uuid, chat, person, region, turn, trail, state, created_at, changed_at) values
			(1, 'a', 1, 1, 'r', 1, '[]', 'kept', 0, 0),
			(2, 'b', 1, 1, 'r', 1, '[]', 'kept', 0, 0),
			(3, 'c', 1, 1, 'r', 1, '[]', 'kept', 0, 0);
		insert into draft (find, uuid, person, status, body, version, saved_at, changed_at) values
			(1, 'a', 1, 'draft', '{"unusual":[]}', 1, 10, 10),
			(2, 'b', 1, 'draft', '{"unusual":["one"]}', 1, 20, 20),
			(3, 'c', 1, 'withdrawn', '{"kind":"withdrawn"}', 1, 30, 30);
	`);
	await db.destroy();
	return file;
}

test('drafts saved before there were verifiers wait for them, unusual ones marked', async () => {
	const db = await openStore(await oldFile());
	const rows = await db.selectFrom('review').select(['find', 'isUnusual', 'since']).orderBy('find').execute();
	expect(rows).toEqual([
		{find: 1, isUnusual: 0, since: 10},
		{find: 2, isUnusual: 1, since: 20},
	]);
	expect(await nextToReview(db, {person: 2, now: 100})).toBe(2);
	await db.destroy();
});

/** A database as it was when what people were asked for stood in a table of its own. */
async function fileWithEars(): Promise<string> {
	const file = newFile();
	const database = new Database(file);
	const db = new Kysely<unknown>({dialect: new SqliteDialect({database})});
	const {'0009-seats': _, ...old} = await migrations.getMigrations();
	await new Migrator({db, provider: {getMigrations: () => Promise.resolve(old)}}).migrateToLatest();
	database.exec(`
		insert into chat (id, kind, created_at) values (1, 'private', 0), (2, 'private', 0), (3, 'private', 0);
		insert into person (id, platform_id, created_at) values (1, 7, 0), (2, 8, 0), (3, 9, 0);
		insert into find (id, uuid, chat, person, region, turn, trail, state, created_at, changed_at) values
			(1, 'a', 1, 1, 'r', 1, '[]', 'open', 0, 0),
			(3, 'c', 3, 3, 'r', 1, '[]', 'open', 0, 0);
		insert into day (id, uuid, code, person, region, state, turn, created_at, changed_at) values
			(5, 'a', 'a', 1, 'r', 'planned', 1, 0, 0);
		insert into seat (chat, person, find) values (1, 1, 1), (3, 3, 3);
		insert into ear (chat, person, day) values (1, 1, 5), (2, 2, null);
	`);
	await db.destroy();
	return file;
}

test('what people were asked for when the program was renewed is still asked for', async () => {
	const db = await openStore(await fileWithEars());
	const seats = [1, 2, 3].map(id => seatOf(db, {chat: id, person: id}));
	expect(await Promise.all(seats)).toEqual([
		{find: 1, ear: {kind: 'plan', day: 5}},
		{find: undefined, ear: {kind: 'place'}},
		{find: 3, ear: undefined},
	]);
	await db.destroy();
});
