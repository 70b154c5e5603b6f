import {expect, test} from 'vitest';
import {
	dropPhotos,
	filesToErase,
	losePhoto,
	markErased,
	markKept,
	nextPhoto,
	photosOf,
	postponePhoto,
	wantPhoto,
} from '../../src/store/photos.ts';
import type {Db, Tx} from '../../src/store/schema.ts';
import {storeWithFinds} from '../record/kept.ts';

const within = <T>(db: Db, work: (tx: Tx) => Promise<T>): Promise<T> => db.transaction().execute(work);
const want = (db: Db, find: number, name: string, now = 1) =>
	within(db, tx => wantPhoto(tx, {find, fileId: `id-${name}`, fileUniqueId: name, now}));

async function keep(db: Db, find: number, name: string, hash: string): Promise<void> {
	const {id} = await want(db, find, name);
	await within(db, tx => markKept(tx, {id, hash, sizeBytes: 1}));
}

test('the same file of the same find is wanted once, and of another find again', async () => {
	const db = await storeWithFinds(2);
	const first = await want(db, 1, 'a');
	expect(first.isNew).toBe(true);
	expect(await want(db, 1, 'a')).toEqual({id: first.id, isNew: false});
	expect((await want(db, 2, 'a')).isNew).toBe(true);
});

test('wanted photos come oldest first, and one that is put off comes when its time is there', async () => {
	const db = await storeWithFinds(1);
	const early = await want(db, 1, 'a', 10);
	const late = await want(db, 1, 'b', 20);
	expect(await nextPhoto(db, 9)).toBeUndefined();
	expect(await nextPhoto(db, 30)).toMatchObject({id: early.id, attempts: 0});
	await postponePhoto(db, {id: early.id, notBefore: 100});
	expect(await nextPhoto(db, 30)).toMatchObject({id: late.id});
	await losePhoto(db, late.id);
	expect(await nextPhoto(db, 99)).toBeUndefined();
	expect(await nextPhoto(db, 100)).toMatchObject({id: early.id, attempts: 1});
	await within(db, tx => markKept(tx, {id: early.id, hash: 'h', sizeBytes: 5}));
	expect(await nextPhoto(db, 1000)).toBeUndefined();
	expect(await photosOf(db, 1)).toMatchObject([
		{id: early.id, state: 'kept', hash: 'h'},
		{id: late.id, state: 'failed', hash: null},
	]);
});

test('files of a dropped find are to be erased, except those that another find still shows', async () => {
	const db = await storeWithFinds(2);
	await keep(db, 1, 'own', 'own-hash');
	await keep(db, 1, 'shared', 'shared-hash');
	await want(db, 1, 'still wanted');
	await keep(db, 2, 'shared', 'shared-hash');
	await within(db, tx => dropPhotos(tx, 1));
	expect(await photosOf(db, 1)).toEqual([]);
	expect(await filesToErase(db)).toEqual(['own-hash']);
	await within(db, tx => dropPhotos(tx, 2));
	expect([...(await filesToErase(db))].sort()).toEqual(['own-hash', 'shared-hash']);
	await markErased(db, 'own-hash');
	expect(await filesToErase(db)).toEqual(['shared-hash']);
});

test('a file that was dropped and is kept again in the meantime stays', async () => {
	const db = await storeWithFinds(2);
	await keep(db, 1, 'a', 'hash');
	await within(db, tx => dropPhotos(tx, 1));
	await keep(db, 2, 'a', 'hash');
	expect(await filesToErase(db)).toEqual([]);
	await within(db, tx => dropPhotos(tx, 2));
	expect(await filesToErase(db)).toEqual(['hash']);
});

test('a photo that comes through after its find was dropped is to be erased', async () => {
	const db = await storeWithFinds(1);
	const {id} = await want(db, 1, 'a');
	await within(db, tx => dropPhotos(tx, 1));
	await within(db, tx => markKept(tx, {id, hash: 'late-hash', sizeBytes: 1}));
	expect(await photosOf(db, 1)).toEqual([]);
	expect(await filesToErase(db)).toEqual(['late-hash']);
});
