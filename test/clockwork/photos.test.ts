import {existsSync, readFileSync} from 'node:fs';
import sharp from 'sharp';
import {expect, test, vi} from 'vitest';
import type {Outcome} from '../../src/capsule/outcome.ts';
import type {Measurer} from '../../src/clockwork/measurer.ts';
import {photoPath} from '../../src/clockwork/photo-files.ts';
import {fetchNextPhoto} from '../../src/clockwork/photos.ts';
import type {MeasuredPhoto} from '../../src/find/proposal.ts';
import type {PhotoMetadata} from '../../src/place/photo-metadata.ts';
import {dropPhotos, photosOf, wantMeasured, wantPhoto} from '../../src/store/photos.ts';
import {png} from '../room/picture.ts';
import {addFind, addPerson} from '../store/rows.ts';
import {phonePhoto} from '../support/photo.ts';
import {deskScene} from './desk.ts';

vi.setConfig({testTimeout: 60_000});

const refuse: Measurer['measure'] = () => Promise.reject(new Error('nothing is measured here'));

/** Ada's find, and a file that she sent for it. */
async function scene(bytes: Uint8Array = png(640, 480), measure: Measurer['measure'] = refuse) {
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
	const measured: {find: number; outcome: MeasuredPhoto}[] = [];
	const told: {photo: number; told: PhotoMetadata}[] = [];
	const fetchNext = () =>
		fetchNextPhoto({
			db,
			api,
			fileRoot: `${room.url}/file/bot${room.token}`,
			photoFolder,
			now: clock.now,
			onKept: async (_tx, about) => void kept.push(about),
			onLost: async (_tx, about) => void lost.push(about),
			measure,
			onMeasured: async (_tx, about, outcome) => void measured.push({find: about, outcome}),
			onTold: async (_tx, photo, what) => void told.push({photo: photo.id, told: what}),
			log,
		});
	const photo = async () => (await photosOf(db, find))[0];
	return {...desk, find, id, kept, lost, measured, told, fetchNext, photo};
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

test('what the file says of its place is told once, and is not in the photo that is kept', async () => {
	const {fetchNext, id, told, photo, photoFolder} = await scene(await phonePhoto(600, 400));
	await fetchNext();
	expect(told).toEqual([{photo: id, told: {fix: {latitude: 50.12, longitude: expect.closeTo(-5.53, 6)}}}]);
	const kept = readFileSync(photoPath(photoFolder, (await photo())?.hash ?? ''));
	expect((await sharp(kept).metadata()).exif).toBeUndefined();
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
		measure: refuse,
		onMeasured: () => Promise.resolve(),
		onTold: () => Promise.resolve(),
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

const read: Outcome = {
	kind: 'measured',
	reference: 'card',
	referencePx: [
		[300, 100],
		[600, 100],
		[600, 300],
		[300, 300],
	],
	cases: [
		{
			lengthMm: 66.21,
			lengthIntervalMm: [65.4, 67],
			lengthLinePx: [
				[10.4, 20.2],
				[10.4, 220.6],
			],
		},
	],
};

test('a photo whose size is wanted is measured, and what nobody may see in it is blurred before it is stored', async () => {
	const striped = await sharp(png(640, 480))
		.composite([{input: Buffer.from(stripes), left: 300, top: 100}])
		.png()
		.toBuffer();
	const {db, id, find, fetchNext, photo, photoFolder, measured} = await scene(striped, async () => read);
	await db.transaction().execute(tx => wantMeasured(tx, {photo: id, now: 0}));
	await fetchNext();
	const hash = (await photo())?.hash ?? '';
	expect(measured).toMatchObject([
		{find, outcome: {kind: 'proposed', proposal: {photo: id, hash, reference: 'card'}}},
	]);
	const [{outcome} = {}] = measured;
	if (outcome?.kind !== 'proposed') throw new Error('Expected sizes to be proposed');
	expect(outcome.proposal.lengths[0]?.line).toEqual([
		[10, 20],
		[10, 221],
	]);
	expect(outcome.proposal.lengths[0]).toMatchObject({mm: 66.2, uncertaintyMm: 0.9});
	const inside = await sharp(photoPath(photoFolder, hash))
		.extract({left: 350, top: 140, width: 200, height: 120})
		.stats();
	expect(inside.channels[0]?.stdev).toBeLessThan(25);
});

test('a measurer that fails is told, once, and the photo is kept all the same', async () => {
	const {db, id, fetchNext, photo, measured} = await scene(png(640, 480));
	await db.transaction().execute(tx => wantMeasured(tx, {photo: id, now: 0}));
	await fetchNext();
	expect(await fetchNext()).toBe(false);
	expect((await photo())?.state).toBe('kept');
	expect(measured).toMatchObject([{outcome: {kind: 'declined', why: 'failed'}}]);
});

test('a photo that was fetched before is measured when its size is wanted later', async () => {
	const {db, id, fetchNext, measured, photo} = await scene(png(640, 480), async () => read);
	await fetchNext();
	expect(measured).toEqual([]);
	await db.transaction().execute(tx => wantMeasured(tx, {photo: id, now: 0}));
	expect(await fetchNext()).toBe(true);
	expect(measured).toHaveLength(1);
	expect((await photo())?.state).toBe('kept');
});

/** Black and white bars, as letters on a card. */
const stripes = `<svg xmlns="http://www.w3.org/2000/svg" width="300" height="200">${Array.from({length: 30}, (_, index) => `<rect x="${index * 10}" width="5" height="200"/><rect x="${index * 10 + 5}" width="5" height="200" fill="white"/>`).join('')}</svg>`;
