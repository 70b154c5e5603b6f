/** Whether anything of a person is left: in any row of any table, and in any file of the data folder. */
import {readdirSync, readFileSync, statSync} from 'node:fs';
import {join, relative} from 'node:path';
import {sql} from 'kysely';
import type {Db} from '../../src/store/schema.ts';

/** Every place in the database where one of these words or numbers stands, as `table: row`. */
export async function tracesInTables(
	db: Db,
	wanted: readonly (string | number)[],
): Promise<readonly string[]> {
	const tables = await sql<{name: string}>`
		select name from sqlite_master where type = 'table' and name not like 'sqlite_%'`.execute(db);
	const found: string[] = [];
	for (const {name} of tables.rows) {
		const {rows} = await sql<Record<string, unknown>>`select * from ${sql.table(name)}`.execute(db);
		for (const row of rows) {
			const text = JSON.stringify(Object.values(row));
			const isHere = (word: string | number) =>
				typeof word === 'number' ? new RegExp(`\\b${word}\\b`).test(text) : text.includes(word);
			if (wanted.some(isHere)) found.push(`${name}: ${text}`);
		}
	}
	return found;
}

/** Every file of a folder that holds one of these words, or has it in its name; `except` is left out. */
export function tracesInFiles(
	folder: string,
	{wanted, except}: {readonly wanted: readonly string[]; readonly except: string},
): readonly string[] {
	const names = readdirSync(folder, {recursive: true}).map(String);
	return names
		.filter(name => name !== except && !name.startsWith(`${except}/`))
		.filter(name => {
			const path = join(folder, name);
			const bytes = statSync(path).isFile() ? readFileSync(path) : Buffer.alloc(0);
			return wanted.some(word => name.includes(word) || bytes.includes(word));
		})
		.map(name => relative('.', name));
}

/** Every column that names a row of this table, as `table.column`. */
export async function columnsNaming(db: Db, table: 'person' | 'chat' | 'find'): Promise<readonly string[]> {
	const {rows} = await sql<{place: string}>`
		select t.name || '.' || f."from" as place
		from sqlite_master t join pragma_foreign_key_list(t.name) f
		where t.type = 'table' and f."table" = ${table} order by place`.execute(db);
	return rows.map(({place}) => place);
}
