import {existsSync, mkdtempSync, readdirSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {expect, onTestFinished, test} from 'vitest';
import {keepHouse} from '../../src/clockwork/housekeeping.ts';
import {keptPicture} from '../../src/clockwork/kept-pictures.ts';
import {photoPath, storePhoto} from '../../src/clockwork/photo-files.ts';
import type {FindRow} from '../../src/store/finds.ts';
import {keepTurn} from '../../src/store/finds.ts';
import {noteUpdate} from '../../src/store/inbox.ts';
import {post} from '../../src/store/outbox.ts';
import {dropPhotos, markKept, wantPhoto} from '../../src/store/photos.ts';
import {storeWithFinds} from '../record/kept.ts';

const dayMs = 24 * 3_600_000;
const trail = '[{"question":"egg-case","answer":{"kind":"option","option":"yes"},"at":1}]';

async function scene(finds: number) {
	const db = await storeWithFinds(finds);
	const photoFolder = mkdtempSync(join(tmpdir(), 'photos-'));
	const parcelFolder = join(photoFolder, 'parcels');
	const pictureFolder = mkdtempSync(join(tmpdir(), 'pictures-'));
	onTestFinished(() => {
		for (const folder of [photoFolder, pictureFolder]) rmSync(folder, {recursive: true, force: true});
	});
	return {
		db,
		photoFolder,
		pictureFolder,
		keepHouseAt: (now: number) => keepHouse({db, photoFolder, parcelFolder, pictureFolder, now: () => now}),
		/** A find that came to this state at the beginning of time. */
		become: (find: number, state: FindRow['state']) =>
			db.transaction().execute(tx => keepTurn(tx, {find, trail, turn: 5, state, now: 0})),
		keepPhoto: async (find: number, bytes: Uint8Array) => {
			const hash = await storePhoto(photoFolder, bytes);
			await db.transaction().execute(async tx => {
				const name = `${find}-${bytes.length}`;
				const {id} = await wantPhoto(tx, {find, fileId: name, fileUniqueId: name, now: 0});
				await markKept(tx, {id, hash, sizeBytes: bytes.length});
			});
			return photoPath(photoFolder, hash);
		},
		trails: async () =>
			(await db.selectFrom('find').select('trail').orderBy('id').execute()).map(row => row.trail),
	};
}

test('a find that was thrown away, or was no egg case, is emptied after a day, and its photos go', async () => {
	const {keepHouseAt, become, keepPhoto, trails} = await scene(4);
	for (const [index, state] of (['thrown', 'not-a-case', 'kept', 'open'] as const).entries())
		await become(index + 1, state);
	const files = [];
	for (const find of [1, 2, 3, 4]) files.push(await keepPhoto(find, Buffer.alloc(find, 7)));
	await keepHouseAt(dayMs);
	expect(await trails()).toEqual([trail, trail, trail, trail]);
	await keepHouseAt(dayMs + 1);
	expect(await trails()).toEqual(['[]', '[]', trail, trail]);
	expect(files.map(file => existsSync(file))).toEqual([false, false, true, true]);
});

test('the buttons of an emptied find no longer fit it', async () => {
	const {db, keepHouseAt, become} = await scene(1);
	await become(1, 'thrown');
	await keepHouseAt(dayMs + 1);
	await keepHouseAt(dayMs + 1);
	expect(await db.selectFrom('find').select('turn').execute()).toEqual([{turn: 6}]);
});

test('what was said of a find that was thrown away is forgotten with it', async () => {
	const {db, keepHouseAt, become} = await scene(2);
	await become(1, 'thrown');
	await become(2, 'kept');
	const call = {kind: 'send' as const, html: 'Found at Larkin Sands', keyboard: []};
	for (const find of [1, 2])
		await db.transaction().execute(tx => post(tx, {chat: 1, role: 'ask', find, call, now: 0}));
	await keepHouseAt(dayMs + 1);
	expect(await db.selectFrom('outbox').select('find').execute()).toEqual([{find: 2}]);
});

test('the file of a dropped photo goes, unless another find shows the same picture', async () => {
	const {db, keepHouseAt, keepPhoto} = await scene(2);
	const picture = Buffer.from('the same picture');
	const file = await keepPhoto(1, picture);
	expect(await keepPhoto(2, picture)).toBe(file);
	await db.transaction().execute(tx => dropPhotos(tx, 1));
	await keepHouseAt(1);
	expect(existsSync(file)).toBe(true);
	await db.transaction().execute(tx => dropPhotos(tx, 2));
	await keepHouseAt(2);
	expect(existsSync(file)).toBe(false);
	// Gone already is as good as erased.
	await keepHouseAt(3);
	expect(await db.selectFrom('erasing').selectAll().execute()).toEqual([]);
});

test('a picture that nobody was shown for thirty days is erased, and one in use stays', async () => {
	const {pictureFolder, keepHouseAt} = await scene(0);
	const make = async () => Buffer.from('a picture');
	const [old, used] = ['old.png', 'used.png'].map(name => join(pictureFolder, name));
	for (const file of [old ?? '', used ?? '']) await keptPicture(file, {make, now: 0});
	await keptPicture(used ?? '', {make, now: 20 * dayMs});
	await keepHouseAt(30 * dayMs);
	expect(readdirSync(pictureFolder).toSorted()).toEqual(['old.png', 'used.png']);
	await keepHouseAt(30 * dayMs + 1000);
	expect(readdirSync(pictureFolder)).toEqual(['used.png']);
});

test('old update ids and old messages are forgotten', async () => {
	const {db, keepHouseAt} = await scene(0);
	await db.transaction().execute(async tx => {
		await noteUpdate(tx, 1, 0);
		const call = {kind: 'send' as const, html: 'Hello', keyboard: []};
		await post(tx, {chat: 1, role: 'say', call, now: 0});
	});
	await db.updateTable('outbox').set({state: 'sent'}).execute();
	await keepHouseAt(8 * dayMs);
	expect(await db.selectFrom('inbox').selectAll().execute()).toEqual([]);
	expect(await db.selectFrom('outbox').select('id').execute()).toHaveLength(1);
	await keepHouseAt(61 * dayMs);
	expect(await db.selectFrom('outbox').select('id').execute()).toEqual([]);
});
