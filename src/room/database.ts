import {mkdirSync} from 'node:fs';
import {join} from 'node:path';
import Database from 'better-sqlite3';
import type {z} from 'zod';

/** A value that fits in one column. */
export type Column = string | number | Uint8Array | undefined;

/** The room's own file, read through schemas and written in transactions. */
export type RoomDatabase = {
	readonly run: (sql: string, ...values: readonly Column[]) => number;
	readonly one: <T>(schema: z.ZodType<T>, sql: string, ...values: readonly Column[]) => T | undefined;
	readonly all: <T>(schema: z.ZodType<T>, sql: string, ...values: readonly Column[]) => readonly T[];
	readonly together: <T>(work: () => T) => T;
	readonly close: () => void;
};

const tables = `
create table if not exists person (id integer primary key, name text not null unique, started integer not null default 0, blocked integer not null default 0);
create table if not exists room_group (id integer primary key, title text not null, bot_in integer not null default 1);
create table if not exists message (chat integer not null, id integer not null, at integer not null, changed integer not null, gone integer not null default 0, body text not null, markup text, primary key (chat, id));
create index if not exists message_changed on message (changed);
create table if not exists pending (seq integer primary key autoincrement, update_id integer not null, chat integer not null, body text not null, again integer not null, delivered integer not null default 0);
create index if not exists pending_update on pending (update_id);
create table if not exists content (hash text primary key, bytes blob not null);
create table if not exists file (id text primary key, unique_id text not null, kind text not null, hash text not null, path text not null unique, name text, mime text, size_bytes integer not null, width integer not null, height integer not null, link_until integer not null default 0);
create table if not exists press (id text primary key, person integer not null, at integer not null, answered integer not null default 0, changed integer not null default 0, text text, alert integer not null default 0);
create index if not exists press_changed on press (changed);
create table if not exists command_list (scope text not null, language text not null, body text not null, primary key (scope, language));
create table if not exists setting (name text primary key, body text not null);
create table if not exists counter (name text primary key, value integer not null);
`;

/** Opens `room.db` in a folder, making both when they are not there. */
export function openDatabase(folder: string): RoomDatabase {
	mkdirSync(folder, {recursive: true});
	const file = new Database(join(folder, 'room.db'));
	file.pragma('journal_mode = WAL');
	// A killed process loses nothing this way; only a power cut might, and the room is no archive.
	file.pragma('synchronous = NORMAL');
	file.exec(tables);
	const known = new Map<string, Database.Statement>();
	function prepared(sql: string): Database.Statement {
		const found = known.get(sql) ?? file.prepare(sql);
		known.set(sql, found);
		return found;
	}
	return {
		run: (sql, ...values) => prepared(sql).run(...values.map(stored)).changes,
		one: (schema, sql, ...values) => {
			const row = prepared(sql).get(...values.map(stored));
			return row === undefined ? undefined : schema.parse(row);
		},
		all: (schema, sql, ...values) =>
			prepared(sql)
				.all(...values.map(stored))
				.map(row => schema.parse(row)),
		together: work => file.transaction(work)(),
		close: () => {
			file.close();
		},
	};
}

function stored(value: Column): string | number | Uint8Array | null {
	return value ?? null;
}
