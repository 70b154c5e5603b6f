import {spawnSync} from 'node:child_process';
import {createHash} from 'node:crypto';
import {mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, onTestFinished, test} from 'vitest';
import {type ArchiveWanted, writeArchive} from '../../src/record/archive.ts';
import {readDataset} from '../../src/record/dataset.ts';
import type {ToldRecord} from '../../src/record/told.ts';
import {quickFolder} from '../support/folder.ts';
import {hash, inTurn, numbered, recordWith, told} from './for-export.ts';
import {placed} from './made-up.ts';

const dataset = readDataset(join(import.meta.dirname, '../../deploy/dataset.example.yaml'));
const records = [
	told(numbered(recordWith({note: 'torn,\n"very"'}), 1)),
	told(numbered(recordWith({date: '2026-04-30', place: placed('Sandy Cove')}, {publicName: 'Ada'}), 2)),
];

function newFolder(): string {
	const folder = mkdtempSync(join(quickFolder(), 'archive-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	return folder;
}

async function archived(all: readonly ToldRecord[] = records, more: Partial<ArchiveWanted> = {}) {
	const folder = newFolder();
	const file = join(folder, 'finds.zip');
	const extent = await writeArchive(inTurn(all), {file, dataset, isExact: false, ...more});
	const read = (name: string) => spawnSync('unzip', ['-p', file, name], {encoding: 'utf8'}).stdout;
	return {folder, file, extent, read};
}

test('an archive holds its descriptor, its description and four tables, and nothing stays beside it', async () => {
	const {folder, file, extent, read} = await archived();
	expect(spawnSync('unzip', ['-Z1', file], {encoding: 'utf8'}).stdout.trim().split('\n')).toEqual([
		'meta.xml',
		'eml.xml',
		'occurrence.csv',
		'measurementorfact.csv',
		'identification.csv',
		'multimedia.csv',
	]);
	expect(readdirSync(folder)).toEqual(['finds.zip']);
	expect(extent).toMatchObject({records: 2, firstDay: '2026-04-30', lastDay: '2026-05-02'});
	expect(read('occurrence.csv').split('\r\n')).toHaveLength(4);
	expect(read('measurementorfact.csv').split('\r\n')).toHaveLength(1 + 8 + 1);
});

test('only its owner can read an archive', async () => {
	const {file} = await archived();
	expect(statSync(file).mode & 0o777).toBe(0o600);
});

test('the same records give the same bytes, on another day and in another zone', async () => {
	const sum = (file: string) => createHash('sha256').update(readFileSync(file)).digest('hex');
	const one = sum((await archived()).file);
	const zone = process.env['TZ'];
	process.env['TZ'] = 'Pacific/Auckland';
	const other = sum((await archived()).file);
	if (zone === undefined) delete process.env['TZ'];
	else process.env['TZ'] = zone;
	expect(other).toBe(one);
});

test('other records give the description another name', async () => {
	const name = (text: string) => /packageId="([^"]+)"/.exec(text)?.[1];
	const one = name((await archived()).read('eml.xml'));
	const other = name((await archived(records.slice(0, 1))).read('eml.xml'));
	expect(one).toMatch(/^ni:\/\/\/sha-256;/);
	expect(other).not.toBe(one);
});

test('without a record nothing is written, and what was there stays', async () => {
	const folder = newFolder();
	const file = join(folder, 'finds.zip');
	writeFileSync(file, 'of last year');
	const extent = await writeArchive(inTurn([]), {file, dataset, isExact: false});
	expect(extent).toEqual({records: 0});
	expect(readFileSync(file, 'utf8')).toBe('of last year');
	expect(readdirSync(folder)).toEqual(['finds.zip']);
});

test('a record that cannot be told leaves nothing behind', async () => {
	const folder = newFolder();
	async function* broken(): AsyncGenerator<ToldRecord> {
		yield* records;
		throw await Promise.resolve(new Error('find 3 does not fit'));
	}
	const wanted = {file: join(folder, 'finds.zip'), dataset, isExact: false};
	await expect(writeArchive(broken(), wanted)).rejects.toThrow('find 3 does not fit');
	expect(readdirSync(folder)).toEqual([]);
});

test('without photos their rows name them by their bytes', async () => {
	const {read} = await archived();
	expect(read('multimedia.csv')).toContain(`ni:///sha-256;${Buffer.from(hash, 'hex').toString('base64url')}`);
});

test('with photos each stands once under media, and its rows lead there', async () => {
	const photo = join(newFolder(), 'photo.jpg');
	writeFileSync(photo, 'as if it were a photo');
	const {file, read} = await archived(records, {photoFile: () => photo});
	expect(read('multimedia.csv').split(`media/${hash}.jpg`)).toHaveLength(3);
	expect(read(`media/${hash}.jpg`)).toBe('as if it were a photo');
	const names = spawnSync('unzip', ['-Z1', file], {encoding: 'utf8'}).stdout;
	expect(names.match(/^media\//gm)).toHaveLength(1);
});

test('a photo that is not on disk is named by its bytes', async () => {
	const {read} = await archived(records, {photoFile: () => join('nowhere', 'photo.jpg')});
	expect(read('multimedia.csv')).toContain('ni:///sha-256;');
});

test('a photo that goes while the archive is written stops it with an error, and nothing is written', async () => {
	const folder = newFolder();
	const photo = join(newFolder(), 'photo.jpg');
	writeFileSync(photo, 'soon gone');
	async function* erasing(): AsyncGenerator<ToldRecord> {
		yield* inTurn(records);
		rmSync(photo);
	}
	const wanted = {file: join(folder, 'finds.zip'), dataset, isExact: false, photoFile: () => photo};
	await expect(writeArchive(erasing(), wanted)).rejects.toThrow('Expected to write the archive');
	expect(readdirSync(folder)).toEqual([]);
});

test('an archive with exact places says first of all that it is not to be published', async () => {
	const {read} = await archived(records, {isExact: true});
	expect(/<para>([^<]+)/.exec(read('eml.xml'))?.[1]).toContain('Not for publication');
	expect((await archived()).read('eml.xml')).not.toContain('Not for publication');
});
