import {expect, test, vi} from 'vitest';
import {storePhoto} from '../../src/clockwork/photo-files.ts';
import {markKept, wantPhoto} from '../../src/store/photos.ts';
import {png} from '../room/picture.ts';
import {addFind, addPerson} from '../store/rows.ts';
import {deskScene, say} from './desk.ts';

vi.setConfig({testTimeout: 60_000});

const drawing = say('Why', {
	picture: {kind: 'around', region: 'british-isles', language: 'en', which: 'parts'},
});

test('a drawing goes with its words, and the second time by the id it got', async () => {
	const {put, pump, room, ada} = await deskScene();
	await put(ada.chat, drawing);
	await put(ada.chat, drawing);
	await pump();
	const [, first, second] = room.messages(ada.person.id);
	expect(first).toMatchObject({text: 'Why', photo: {width: 270}});
	expect(second?.photo?.fileId).toBe(first?.photo?.fileId);
});

test('a picture that is refused does not keep the words from coming, and they can be changed later', async () => {
	const {put, pump, states, lines, room, ada} = await deskScene();
	room.refuse({
		method: 'sendPhoto',
		times: 1,
		error: {error_code: 400, description: 'Bad Request: IMAGE_PROCESS_FAILED'},
	});
	await put(ada.chat, drawing);
	await put(ada.chat, {kind: 'edit', row: 1, html: 'Why → Yes', keyboard: []});
	await pump();
	const last = room.messages(ada.person.id).at(-1);
	expect(last).toMatchObject({text: 'Why → Yes'});
	expect(last?.photo).toBeUndefined();
	expect(await states()).toEqual(['sent', 'sent']);
	expect(lines).toEqual([]);
});

test('words too long for a caption come without their picture', async () => {
	const {put, pump, room, ada} = await deskScene();
	const html = `${'&amp;'.repeat(1000)}${'x'.repeat(25)}`;
	await put(ada.chat, {...drawing, html});
	await put(ada.chat, {kind: 'edit', row: 1, html: 'Short now', keyboard: []});
	await pump();
	const last = room.messages(ada.person.id).at(-1);
	expect(last).toMatchObject({text: 'Short now'});
	expect(last?.photo).toBeUndefined();
});

test('words that just fit a caption come with their picture', async () => {
	const {put, pump, room, ada} = await deskScene();
	await put(ada.chat, {...drawing, html: `<b>${'&amp;'.repeat(1000)}</b>${'x'.repeat(24)}`});
	await pump();
	const last = room.messages(ada.person.id).at(-1);
	expect(last?.text).toHaveLength(1024);
	expect(last?.photo).toBeDefined();
});

test('a drawing that is not there any more does not keep the words from coming', async () => {
	const {put, pump, said, lines, ada} = await deskScene();
	await put(ada.chat, {...drawing, picture: {kind: 'drawing', path: 'pictures/parts.svg'}});
	await pump();
	expect(said(ada.person)).toEqual(['Why']);
	expect(lines).toMatchObject([{level: 'error', what: 'drawing failed'}]);
});

test('a photo whose file is missing does not keep its chat waiting', async () => {
	const {put, pump, said, db, ada} = await deskScene();
	const find = await addFind(db, {chat: ada.chat, person: await addPerson(db, ada.person.id)});
	await db
		.insertInto('photo')
		.values({
			find,
			fileId: 'a',
			fileUniqueId: 'a',
			state: 'kept',
			hash: 'ab'.repeat(32),
			sizeBytes: 1,
			notBefore: 0,
			createdAt: 0,
		})
		.execute();
	await put(ada.chat, say('with a photo', {photoOf: find}));
	await put(ada.chat, say('two'));
	await pump();
	expect(said(ada.person)).toEqual(['with a photo', 'two']);
});

/** A find of Ada's with so many stored photos. */
async function withPhotos({db, photoFolder, ada}: Awaited<ReturnType<typeof deskScene>>, count: number) {
	const find = await addFind(db, {chat: ada.chat, person: await addPerson(db, ada.person.id)});
	const ids: number[] = [];
	for (let number = 1; number <= count; number++) {
		const bytes = png(100 + number, 80);
		const hash = await storePhoto(photoFolder, bytes);
		await db.transaction().execute(async tx => {
			const {id} = await wantPhoto(tx, {find, fileId: `${number}`, fileUniqueId: `${number}`, now: 0});
			await markKept(tx, {id, hash, sizeBytes: bytes.length});
			ids.push(id);
		});
	}
	return {find, ids};
}

const drawn = {kind: 'around', region: 'british-isles', language: 'en', which: 'parts'} as const;

test('the photos of a find come side by side with the drawing after them', async () => {
	const scene = await deskScene();
	const {put, pump, room, ada} = scene;
	const {find} = await withPhotos(scene, 2);
	await put(ada.chat, {kind: 'album', html: 'No. 1', photosOf: find, picture: drawn});
	await put(ada.chat, say('card'));
	await pump();
	const [, ...messages] = room.messages(ada.person.id);
	expect(messages.map(({photo}) => photo?.width)).toEqual([101, 102, 270, undefined]);
	expect(messages.map(({text}) => text)).toEqual(['No. 1', '', '', 'card']);
});

test('an album of one is a photo, and an album of none nothing at all', async () => {
	const scene = await deskScene();
	const {put, pump, room, states, ada} = scene;
	const {find} = await withPhotos(scene, 1);
	await put(ada.chat, {kind: 'album', html: 'No. 1', photosOf: find});
	await put(ada.chat, {kind: 'album', html: 'No. 9', photosOf: 99});
	await pump();
	const [, ...messages] = room.messages(ada.person.id);
	expect(messages).toMatchObject([{text: 'No. 1', photo: {width: 101}}]);
	expect(await states()).toEqual(['sent', 'sent']);
});

test('an album that is refused does not keep the words after it from coming', async () => {
	const scene = await deskScene();
	const {put, pump, room, said, ada} = scene;
	const {find} = await withPhotos(scene, 2);
	room.refuse({
		method: 'sendMediaGroup',
		times: 1,
		error: {error_code: 400, description: 'Bad Request: IMAGE_PROCESS_FAILED'},
	});
	await put(ada.chat, {kind: 'album', html: 'No. 1', photosOf: find});
	await put(ada.chat, say('card'));
	await pump();
	expect(said(ada.person)).toEqual(['card']);
});

test('one photo of a find comes with the words about it, and not another', async () => {
	const scene = await deskScene();
	const {put, pump, room, ada} = scene;
	const {ids} = await withPhotos(scene, 2);
	await put(ada.chat, say('An answer', {photo: ids[1] ?? 0}));
	await put(ada.chat, say('Gone', {photo: 999}));
	await pump();
	const [, first, second] = room.messages(ada.person.id);
	expect(first).toMatchObject({text: 'An answer', photo: {width: 102}});
	expect(second).toMatchObject({text: 'Gone'});
	expect(second?.photo).toBeUndefined();
});
