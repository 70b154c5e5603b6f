/** One backup: the database as of one instant, and the photos it names in a folder beside it. */
import {chmodSync, copyFileSync, existsSync, mkdirSync, readdirSync, renameSync, rmSync} from 'node:fs';
import {basename, dirname, join, resolve} from 'node:path';
import {parseArgs} from 'node:util';
import Database from 'better-sqlite3';
import {z} from 'zod';
import {readSettings} from '../settings.ts';
import {type ExitCode, messageOf, type Terminal} from './terminal.ts';

/** What `backup --help` says. */
export const backupHelp = `npm run backup -- FILE
npm run backup -- --check FILE

Copies the database to FILE and its photos to FILE-photos/, while the program runs or not. Made again
under the same name, only new photos are copied, and photos that their owners erased are erased there
too. Which database: DATABASE_URL or DATA_DIR, as for the program.

  --check FILE   looks a backup over and says what is in it; changes nothing

Leaves with 0 when all is well, 1 when something is wrong with a file, 2 when called wrongly.`;

/** What the command may touch, handed in so that tests can hand in their own. */
export type BackupTools = Pick<Terminal, 'calledIn' | 'say' | 'complain'> & {
	readonly environment: Readonly<Record<string, string | undefined>>;
};

// As large as the binding takes: one step, so that a busy program never makes the copy begin anew.
const allPages = 0x7fff_ffff;
const photoName = /^([0-9a-f]{64})\.jpg$/;

/** Makes a backup or looks one over; says what went wrong in one line. */
export async function runBackup(args: readonly string[], tools: BackupTools): Promise<ExitCode> {
	let called: ReturnType<typeof readCall>;
	try {
		called = readCall(args);
	} catch (error) {
		tools.complain(messageOf(error));
		return 2;
	}
	const {file, isCheck, isHelp} = called;
	if (isHelp || file === undefined) {
		tools.say(backupHelp);
		return isHelp ? 0 : 2;
	}
	try {
		const path = resolve(tools.calledIn, file);
		tools.say(isCheck ? lookOver(path) : await backUp(path, tools));
		return 0;
	} catch (error) {
		tools.complain(messageOf(error));
		return 1;
	}
}

function readCall(args: readonly string[]) {
	const {values, positionals} = parseArgs({
		args: [...args],
		options: {help: {type: 'boolean', short: 'h'}, check: {type: 'boolean'}},
		allowPositionals: true,
	});
	if (positionals.length > 1) throw new Error(`Expected one FILE; got ${positionals.join(' ')}`);
	return {file: positionals[0], isCheck: values.check === true, isHelp: values.help === true};
}

async function backUp(path: string, {environment, calledIn}: BackupTools): Promise<string> {
	const settings = readSettings(environment);
	const from = resolve(calledIn, settings.databaseFile);
	if (!existsSync(from)) throw new Error(`Expected a database at ${from}; there is none`);
	if (path === from) throw new Error(`Expected FILE beside the database; ${path} is the database itself`);
	mkdirSync(dirname(path), {recursive: true});
	const half = `${path}.half`;
	rmSync(half, {force: true});
	await copyDatabase(from, half);
	// Photos after the database: whatever it names was on disk before it was named.
	const named = namedPhotos(half);
	const folder = photosBeside(path);
	copyPhotos(resolve(calledIn, settings.dataDir, 'photos'), folder, named);
	renameSync(half, path);
	erasePhotosExcept(folder, named);
	return lookOver(path);
}

async function copyDatabase(from: string, to: string): Promise<void> {
	const database = new Database(from, {readonly: true, fileMustExist: true});
	try {
		await database.backup(to, {progress: () => allPages});
	} finally {
		database.close();
	}
	// It holds where people were.
	chmodSync(to, 0o600);
	// As one plain file: no companion files that a copy could leave behind.
	const copy = new Database(to);
	copy.pragma('journal_mode = DELETE');
	copy.close();
}

/** Says what a backup holds; throws when it is broken or lacks a photo. */
function lookOver(path: string): string {
	const {integrity, finds, drafts, hashes} = read(path);
	if (integrity !== 'ok') throw new Error(`Expected ${path} to be whole; SQLite says: ${integrity}`);
	const there = new Set(photosIn(photosBeside(path)).map(({hash}) => hash));
	const lost = hashes.filter(hash => !there.has(hash));
	if (lost.length > 0) {
		throw new Error(
			`Expected ${hashes.length} photos in ${photosBeside(path)}; ${lost.length} are missing, such as ${lost[0]}.jpg`,
		);
	}
	return `${basename(path)}: ${finds} finds, ${drafts} drafts, ${hashes.length} photos, nothing wrong`;
}

function read(path: string) {
	if (!existsSync(path)) throw new Error(`Expected a backup at ${path}; there is none`);
	const database = new Database(path, {readonly: true});
	const one = (query: string) => database.prepare(query).pluck().get();
	try {
		return {
			integrity: z.string().parse(one('pragma integrity_check(1)')),
			finds: z.number().parse(one('select count(*) from find')),
			drafts: z.number().parse(one("select count(*) from draft where status = 'draft'")),
			hashes: z
				.array(z.string())
				.parse(database.prepare("select distinct hash from photo where state = 'kept'").pluck().all()),
		};
	} catch (error) {
		throw new Error(`Expected ${path} to be a backup of pursekey; ${messageOf(error)}`, {cause: error});
	} finally {
		database.close();
	}
}

function namedPhotos(path: string): ReadonlySet<string> {
	return new Set(read(path).hashes);
}

function copyPhotos(from: string, to: string, named: ReadonlySet<string>): void {
	mkdirSync(to, {recursive: true, mode: 0o700});
	const there = new Set(photosIn(to).map(({hash}) => hash));
	for (const {hash, path} of photosIn(from)) {
		if (!named.has(hash) || there.has(hash)) continue;
		const into = join(to, hash.slice(0, 2));
		mkdirSync(into, {recursive: true});
		copyFileSync(path, join(into, `${hash}.half`));
		renameSync(join(into, `${hash}.half`), join(into, `${hash}.jpg`));
	}
}

function erasePhotosExcept(folder: string, named: ReadonlySet<string>): void {
	for (const {hash, path} of photosIn(folder)) if (!named.has(hash)) rmSync(path, {force: true});
}

function photosIn(folder: string): readonly {readonly hash: string; readonly path: string}[] {
	if (!existsSync(folder)) return [];
	return readdirSync(folder, {recursive: true, encoding: 'utf8'}).flatMap(name => {
		const hash = photoName.exec(basename(name))?.[1];
		return hash === undefined ? [] : [{hash, path: join(folder, name)}];
	});
}

function photosBeside(path: string): string {
	return `${path}-photos`;
}
