/** The database opened and brought up to date; where engines differ, the difference is here. */
import {mkdirSync} from 'node:fs';
import {dirname} from 'node:path';
import Database from 'better-sqlite3';
import {
	CamelCasePlugin,
	type Dialect,
	Kysely,
	type KyselyPlugin,
	type MigrationProvider,
	Migrator,
	SqliteDialect,
	SqliteQueryCompiler,
	sql,
} from 'kysely';
import {up as first} from './migrations/0001-first.ts';
import {up as sharing} from './migrations/0002-sharing.ts';
import {up as roles} from './migrations/0003-roles.ts';
import {up as theirs} from './migrations/0004-theirs.ts';
import {up as days} from './migrations/0005-days.ts';
import {up as groups} from './migrations/0006-groups.ts';
import {up as measuring} from './migrations/0007-measuring.ts';
import {up as tray} from './migrations/0008-tray.ts';
import {up as seats} from './migrations/0009-seats.ts';
import type {Db, Tables} from './schema.ts';

/** In order; a file, once released, is never edited. */
export const migrations: MigrationProvider = {
	getMigrations: () =>
		Promise.resolve({
			'0001-first': {up: first},
			'0002-sharing': {up: sharing},
			'0003-roles': {up: roles},
			'0004-theirs': {up: theirs},
			'0005-days': {up: days},
			'0006-groups': {up: groups},
			'0007-measuring': {up: measuring},
			'0008-tray': {up: tray},
			'0009-seats': {up: seats},
		}),
};

/** Opens a database file, creating it and its folder where needed, and migrates it. */
export async function openStore(file: string): Promise<Db> {
	mkdirSync(dirname(file), {recursive: true});
	const db = new Kysely<Tables>({
		dialect: snakeCased(new SqliteDialect({database: withRememberedStatements(openFile(file))})),
		plugins: [camelCased()],
	});
	const {error, results} = await new Migrator({db, provider: migrations}).migrateToLatest();
	const failed = results?.find(result => result.status === 'Error');
	if (error)
		throw new Error(`Expected ${file} to migrate; ${failed?.migrationName ?? 'a migration'} failed`, {
			cause: error,
		});
	return db;
}

function openFile(file: string): Database.Database {
	const database = new Database(file);
	database.pragma('journal_mode = WAL');
	// An update is confirmed after the commit, so a power cut may not take the commit back.
	database.pragma('synchronous = FULL');
	database.pragma('foreign_keys = ON');
	database.pragma('busy_timeout = 5000');
	// What is erased is overwritten, so that the file does not hold it any longer.
	database.pragma('secure_delete = ON');
	return database;
}

/** Takes what was erased out of the file's own journal, too; left for another time while somebody else reads. */
export async function flushErased(db: Db): Promise<void> {
	await db.connection().execute(async connection => {
		// Waiting here would stop every conversation.
		await sql`pragma busy_timeout = 0`.execute(connection);
		await sql`pragma wal_checkpoint(truncate)`.execute(connection);
		await sql`pragma busy_timeout = 5000`.execute(connection);
	});
}

/** Names become `snake_case` as they are written out: the plugin would build each query anew first, a tenth of a turn. */
class SnakeCaseCompiler extends SqliteQueryCompiler {
	protected override sanitizeIdentifier(name: string): string {
		return super.sanitizeIdentifier(snakeCase(name));
	}
}

function snakeCased(dialect: SqliteDialect): Dialect {
	return {
		createAdapter: () => dialect.createAdapter(),
		createDriver: () => dialect.createDriver(),
		createIntrospector: db => dialect.createIntrospector(db),
		createQueryCompiler: () => new SnakeCaseCompiler(),
	};
}

function snakeCase(name: string): string {
	return name.replace(/[A-Z]/g, letter => `_${letter.toLowerCase()}`);
}

/** What comes back is renamed by the plugin. */
function camelCased(): KyselyPlugin {
	const plugin = new CamelCasePlugin();
	return {transformQuery: ({node}) => node, transformResult: result => plugin.transformResult(result)};
}

/** Kysely prepares each statement anew (kysely `sqlite-driver.ts`); remembering them saves a third of a turn. */
function withRememberedStatements(database: Database.Database) {
	const remembered = new Map<string, Database.Statement>();
	return {
		close: () => {
			remembered.clear();
			database.close();
		},
		prepare: (text: string) => {
			const known = remembered.get(text);
			if (known) return known;
			const statement = database.prepare(text);
			remembered.set(text, statement);
			return statement;
		},
	};
}
