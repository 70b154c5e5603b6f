import {chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {expect, onTestFinished, test} from 'vitest';
import {putIntoFolder} from '../../src/clockwork/forward-folder.ts';
import {forwardNext} from '../../src/clockwork/forwarding.ts';
import {queueForward} from '../../src/store/forwards.ts';
import {storeWithFinds} from '../record/kept.ts';

function newFolder(): string {
	const folder = mkdtempSync(join(tmpdir(), 'records-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	return folder;
}

const news = (type: string, count: number) =>
	JSON.stringify({type, data: {occurrenceID: 'urn:uuid:a', count}});

test('a record is one file that holds its newest message, and a withdrawal is written as such', async () => {
	const folder = newFolder();
	const read = () => JSON.parse(readFileSync(join(folder, 'a.json'), 'utf8'));
	await putIntoFolder(folder, {record: 'a', body: news('record.submitted', 1)});
	await putIntoFolder(folder, {record: 'b', body: news('record.submitted', 9)});
	expect(read()).toEqual({type: 'record.submitted', data: {occurrenceID: 'urn:uuid:a', count: 1}});
	await putIntoFolder(folder, {record: 'a', body: news('record.changed', 2)});
	expect(read().data.count).toBe(2);
	await putIntoFolder(folder, {record: 'a', body: JSON.stringify({type: 'record.withdrawn', data: {}})});
	expect(read()).toEqual({type: 'record.withdrawn', data: {}});
	expect(readdirSync(folder).toSorted()).toEqual(['a.json', 'b.json']);
});

test('what a killed program left half written is written over, and never stands as a record', async () => {
	const folder = newFolder();
	writeFileSync(join(folder, '.a.half'), '{"type": "rec');
	expect(await putIntoFolder(folder, {record: 'a', body: news('record.submitted', 1)})).toEqual({
		kind: 'heard',
	});
	expect(readdirSync(folder)).toEqual(['a.json']);
});

test('a name that could lead out of the folder is refused', async () => {
	await expect(putIntoFolder(newFolder(), {record: '../a', body: '{}'})).rejects.toThrow('"../a"');
});

test('a folder that is away is tried again later, and the error names no path', async () => {
	const db = await storeWithFinds(0);
	const folder = newFolder();
	const away = join(folder, 'not-mounted');
	await queueForward(db, {
		record: 'a',
		version: 1,
		webhookId: 'a_1',
		body: news('record.submitted', 1),
		now: 5,
	});
	const lines: object[] = [];
	const tools = {db, log: (line: object) => void lines.push(line), jitter: () => 0};
	const forward = (to: string) => ({kind: 'folder', folder: to}) as const;
	expect(await forwardNext({...tools, now: 5, forward: forward(away)})).toBe(true);
	expect(await db.selectFrom('forward').select(['state', 'notBefore', 'lastError']).execute()).toEqual([
		{state: 'waiting', notBefore: 5005, lastError: 'ENOENT'},
	]);
	expect(JSON.stringify(lines)).not.toContain('not-mounted');
	expect(await forwardNext({...tools, now: 5005, forward: forward(folder)})).toBe(true);
	expect(await db.selectFrom('forward').select('state').execute()).toEqual([{state: 'sent'}]);
	expect(readdirSync(folder)).toEqual(['a.json']);
});

test('a file is not for everybody on the machine to read', async () => {
	const folder = newFolder();
	chmodSync(folder, 0o755);
	await putIntoFolder(folder, {record: 'a', body: '{}'});
	expect(statSync(join(folder, 'a.json')).mode & 0o007).toBe(0);
});
