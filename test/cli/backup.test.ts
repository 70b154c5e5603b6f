import {existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {expect, onTestFinished, test} from 'vitest';
import {runBackup} from '../../src/cli/backup-command.ts';
import {chatFor} from '../../src/store/chats.ts';
import {beginFind, findById} from '../../src/store/finds.ts';
import {openStore} from '../../src/store/open.ts';
import {personFor} from '../../src/store/people.ts';
import {dropPhotos, markKept, wantPhoto} from '../../src/store/photos.ts';
import type {Db} from '../../src/store/schema.ts';

const now = Date.UTC(2026, 4, 2, 9, 30);
const [one, other, stray] = ['1', '2', '3'].map(digit => digit.repeat(64));

test('a backup made while the program runs holds every find and the photos they name', async () => {
	const {db, folder, backUp, said} = await keeper();
	const find = await findWithPhotos(db, folder, [one, other]);
	putPhoto(folder, stray);
	expect(await backUp('safe/pursekey.db')).toBe(0);
	expect(said.at(-1)).toBe('pursekey.db: 1 finds, 0 drafts, 2 photos, nothing wrong');
	expect(photosIn(folder, 'safe/pursekey.db-photos')).toEqual([`${one}.jpg`, `${other}.jpg`]);
	const copy = await openStore(join(folder, 'safe', 'pursekey.db'));
	expect((await findById(copy, find))?.trail).toBe('["so far"]');
	await copy.destroy();
});

test('a backup can be read by its owner alone and needs no companion files', async () => {
	const {folder, backUp} = await keeper();
	await backUp('safe.db');
	expect(statSync(join(folder, 'safe.db')).mode & 0o777).toBe(0o600);
	expect(readdirSync(folder).filter(name => name.startsWith('safe'))).toEqual(['safe.db', 'safe.db-photos']);
});

test('a backup made again takes what is new and erases the photos that their owners erased', async () => {
	const {db, folder, backUp} = await keeper();
	const erased = await findWithPhotos(db, folder, [one]);
	await backUp('safe.db');
	await db.transaction().execute(tx => dropPhotos(tx, erased));
	await findWithPhotos(db, folder, [other]);
	expect(await backUp('safe.db')).toBe(0);
	expect(photosIn(folder, 'safe.db-photos')).toEqual([`${other}.jpg`]);
});

test('a backup that lacks a photo is found wanting, with the name of the photo', async () => {
	const {db, folder, backUp, said} = await keeper();
	await findWithPhotos(db, folder, [one]);
	await backUp('safe.db');
	rmSync(join(folder, 'safe.db-photos'), {recursive: true});
	expect(await backUp('--check', 'safe.db')).toBe(1);
	expect(said.at(-1)).toContain(`1 are missing, such as ${one}.jpg`);
});

test('a file that is no backup is refused in one line', async () => {
	const {folder, backUp, said} = await keeper();
	writeFileSync(join(folder, 'letter.txt'), 'Dear keeper, this is no database.');
	expect(await backUp('--check', 'letter.txt')).toBe(1);
	expect(said.at(-1)).toContain('to be a backup of pursekey');
});

test('the database itself is never taken for the backup', async () => {
	const {db, folder, backUp, said} = await keeper();
	const find = await findWithPhotos(db, folder, []);
	expect(await backUp('pursekey.db')).toBe(1);
	expect(said.at(-1)).toContain('is the database itself');
	expect((await findById(db, find))?.id).toBe(find);
});

test('a call without a file is answered with help and a failing exit code', async () => {
	const {backUp, said} = await keeper();
	expect(await backUp()).toBe(2);
	expect(said.at(-1)).toContain('npm run backup -- FILE');
	expect(await backUp('--help')).toBe(0);
	expect(await backUp('--speed', 'safe.db')).toBe(2);
	expect(await backUp('safe.db', 'more.db')).toBe(2);
});

test('a backup of nothing says where it looked', async () => {
	const {folder, backUp, said, db} = await keeper();
	await db.destroy();
	rmSync(join(folder, 'pursekey.db'));
	expect(await backUp('safe.db')).toBe(1);
	expect(said.at(-1)).toContain(join(folder, 'pursekey.db'));
	expect(existsSync(join(folder, 'safe.db'))).toBe(false);
});

/** An open database, as the program has it, and the command called beside it. */
async function keeper() {
	const folder = mkdtempSync(join(tmpdir(), 'backup-'));
	const db = await openStore(join(folder, 'pursekey.db'));
	onTestFinished(async () => {
		await db.destroy();
		rmSync(folder, {recursive: true, force: true});
	});
	const said: string[] = [];
	const say = (line: string) => void said.push(line);
	return {
		db,
		folder,
		said,
		backUp: (...args: readonly string[]) =>
			runBackup(args, {calledIn: folder, environment: {DATA_DIR: folder}, say, complain: say}),
	};
}

async function findWithPhotos(db: Db, folder: string, hashes: readonly (string | undefined)[]) {
	return db.transaction().execute(async tx => {
		const chat = await chatFor(tx, {platformId: 7, kind: 'private', now});
		const person = await personFor(tx, {platformId: 7, now});
		const found = {chat: chat.id, person: person.id, region: 'british-isles', trail: '["so far"]', now};
		const find = await beginFind(tx, {uuid: crypto.randomUUID(), ...found});
		for (const hash of hashes) {
			const photo = {find: find.id, fileId: `file-${hash}`, fileUniqueId: `unique-${hash}`, now};
			const {id} = await wantPhoto(tx, photo);
			await markKept(tx, {id, hash: putPhoto(folder, hash), sizeBytes: 3});
		}
		return find.id;
	});
}

function putPhoto(folder: string, hash = ''): string {
	const into = join(folder, 'photos', hash.slice(0, 2));
	mkdirSync(into, {recursive: true});
	writeFileSync(join(into, `${hash}.jpg`), 'jpg');
	return hash;
}

function photosIn(folder: string, name: string): readonly string[] {
	const files = readdirSync(join(folder, name), {recursive: true, encoding: 'utf8'});
	return files
		.filter(file => file.includes('.'))
		.map(file => file.slice(3))
		.sort();
}
