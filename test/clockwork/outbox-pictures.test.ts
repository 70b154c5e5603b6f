import {expect, test, vi} from 'vitest';
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
