import {execFileSync} from 'node:child_process';
import {mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {expect, onTestFinished, test} from 'vitest';
import {writeMyData} from '../../src/record/my-data.ts';
import {heldOn} from '../../src/store/held.ts';
import {markKept, wantPhoto} from '../../src/store/photos.ts';
import {storeWithFinds} from './kept.ts';

test('photos that are too many for one file come in several, each of them once and whole', async () => {
	const db = await storeWithFinds(2);
	const folder = mkdtempSync(join(tmpdir(), 'my-data-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	const hashes = ['a', 'b', 'c'].map(letter => letter.repeat(64));
	for (const [index, hash] of hashes.entries()) {
		writeFileSync(join(folder, hash), Buffer.alloc(600, index));
		await db.transaction().execute(async tx => {
			const {id} = await wantPhoto(tx, {find: 1 + (index % 2), fileId: hash, fileUniqueId: hash, now: 0});
			await markKept(tx, {id, hash, sizeBytes: 600});
		});
	}
	const names = await writeMyData({
		held: await heldOn(db, 1),
		folder,
		explained: 'What this is.',
		photoFile: hash => join(folder, hash),
		now: Date.UTC(2026, 4, 2),
		mostBytes: 1300,
	});
	expect(names).toEqual(['my-data-2026-05-02-1-of-2.zip', 'my-data-2026-05-02-2-of-2.zip']);
	const inside = names.map(name =>
		execFileSync('unzip', ['-Z1', join(folder, name)])
			.toString()
			.trim()
			.split('\n'),
	);
	expect(inside).toEqual([
		['READ-ME.txt', 'my-data.json', 'photos/find-1-photo-1.jpg', 'photos/find-2-photo-2.jpg'],
		['photos/find-1-photo-3.jpg'],
	]);
	const third = execFileSync('unzip', ['-p', join(folder, names[1] ?? ''), 'photos/find-1-photo-3.jpg']);
	expect(third).toEqual(Buffer.alloc(600, 2));
});
