import {existsSync, readFileSync} from 'node:fs';
import sharp from 'sharp';
import {expect, test, vi} from 'vitest';
import {photoPath} from '../../src/clockwork/photo-files.ts';
import {fetchNextPhoto} from '../../src/clockwork/photos.ts';
import {dropPhotos, photosOf, wantPhoto} from '../../src/store/photos.ts';
import {png} from '../room/picture.ts';
import {addFind, addPerson} from '../store/rows.ts';
import {deskScene} from './desk.ts';

vi.setConfig({testTimeout: 60_000});

/** Ada's find, and a file that she sent for it. */
async function scene(bytes: Uint8Array = png(640, 480)) {
	const desk = await deskScene();
	const {room, db, api, clock, photoFolder, log, ada} = desk;
	const find = await addFind(db, {chat: ada.chat, person: await addPerson(db, ada.person.id)});
	ada.person.photo(bytes, {asFile: true});
	const {document} = room.messages(ada.person.id).at(-1) ?? {};
	const fileId = document?.fileId ?? '';
	const {id} = await db
		.transaction()
		.execute(tx => wantPhoto(tx, {find, fileId, fileUniqueId: fileId, now: clock.now()}));
	const kept: number[] = [];
	const lost: number[] = [];
	const fetchNext = () =>
		fetchNextPhoto({
			db,
			api,
			fileRoot: `${room.url}/file/bot${room.token}`,
			photoFolder,
			now: clock.now,
			onKept: async (_tx, about) => void kept.push(about),
			onLost: async (_tx, about) => void lost.push(about),
			log,
		});
	const photo = async () => (await photosOf(db, find))[0];
	return {...desk, find, id, kept, lost, fetchNext, photo};
}

test('a wanted photo is fetched, cleaned and kept under the hash of what is stored', async () => {
	const {fetchNext, photo, photoFolder, kept, lost} = await scene();
	expect(await fetchNext()).toBe(true);
	expect(await fetchNext()).toBe(false);
	const row = await photo();
	expect(row).toMatchObject({state: 'kept', hash: expect.stringMatching(/^[0-9a-f]{64}$/)});
	const file = photoPath(photoFolder, row?.hash ?? '');
	const meta = await sharp(readFileSync(file)).metadata();
	expect(meta).toMatchObject({format: 'jpeg', width: 640, height: 480});
	// The find is still open: nobody keeps a record of it yet.
	expect([kept, lost]).toEqual([[], []]);
});

test('the record of a kept find hears of a photo that comes through', async () => {
	const {db, find, fetchNext, kept} = await scene();
	await db.updateTable('find').set({state: 'kept'}).execute();
	await fetchNext();
	expect(kept).toEqual([find]);
});

test('a platform that fails is asked again after growing pauses, and in the end the finder hears of it', async () => {
	const {db, room, clock, fetchNext, photo, find, lost, lines} = await scene();
	room.refuse({method: 'getFile', times: 99, error: {error_code: 500, description: 'Internal Server Error'}});
	const pausesS: number[] = [];
	for (let tries = 0; tries < 9; tries++) {
		expect(await fetchNext()).toBe(true);
		expect(await fetchNext()).toBe(false);
		const {notBefore} = await db.selectFrom('photo').select('notBefore').executeTakeFirstOrThrow();
		pausesS.push((notBefore - clock.now()) / 1000);
		clock.forward(notBefore - clock.now());
	}
	expect(pausesS).toEqual([2, 4, 8, 16, 32, 64, 128, 256, 512]);
	expect(lost).toEqual([]);
	await fetchNext();
	expect((await photo())?.state).toBe('failed');
	expect(lost).toEqual([find]);
	expect(JSON.stringify(lines)).not.toContain(room.token);
});

test('a connection that breaks loses nothing', async () => {
	const {room, clock, fetchNext, photo, lines} = await scene();
	room.dropConnection({method: 'getFile', times: 1, when: 'after'});
	await fetchNext();
	expect(await photo()).toMatchObject({state: 'wanted', attempts: 1});
	clock.forward(2000);
	await fetchNext();
	expect((await photo())?.state).toBe('kept');
	expect(JSON.stringify(lines)).not.toContain(room.token);
});

test('a file the platform does not give out is given up at once', async () => {
	const {room, fetchNext, photo, find, lost} = await scene();
	const error = {error_code: 400, description: 'Bad Request: file is too big'};
	room.refuse({method: 'getFile', times: 1, error});
	await fetchNext();
	expect((await photo())?.state).toBe('failed');
	expect(lost).toEqual([find]);
});

test('what is no picture is given up, and the finder hears of it', async () => {
	const {fetchNext, photo, find, lost, photoFolder} = await scene(Buffer.from('not a picture at all'));
	await fetchNext();
	expect((await photo())?.state).toBe('failed');
	expect(lost).toEqual([find]);
	expect(existsSync(photoFolder)).toBe(false);
});

test('a photo that is lost is told or is still wanted, never neither', async () => {
	const {db, api, room, photoFolder, clock, log, photo} = await scene(Buffer.from('not a picture'));
	const failing = fetchNextPhoto({
		db,
		api,
		fileRoot: `${room.url}/file/bot${room.token}`,
		photoFolder,
		now: clock.now,
		onKept: () => Promise.resolve(),
		onLost: () => Promise.reject(new Error('killed here')),
		log,
	});
	await expect(failing).rejects.toThrow('killed here');
	expect((await photo())?.state).toBe('wanted');
});

test('a photo that comes through after its find was deleted is marked for erasing', async () => {
	const {db, api, find, fetchNext, photo, photoFolder} = await scene();
	api.config.use(async (call, method, payload, signal) => {
		await db.transaction().execute(tx => dropPhotos(tx, find));
		return call(method, payload, signal);
	});
	await fetchNext();
	expect(await photo()).toBeUndefined();
	const [marked] = await db.selectFrom('erasing').select('hash').execute();
	expect(existsSync(photoPath(photoFolder, marked?.hash ?? ''))).toBe(true);
});
