import {expect, test} from 'vitest';
import {z} from 'zod';
import {imageSize} from '../../src/room/image-size.ts';
import type {Room} from '../../src/room/server.ts';
import {png} from './picture.ts';
import {call, scene} from './scene.ts';

const fileSchema = z.object({file_path: z.string(), file_size: z.number()});

async function upload(
	room: Room,
	method: string,
	parts: Readonly<Record<string, string | Blob>>,
): Promise<unknown> {
	const body = new FormData();
	for (const [name, value] of Object.entries(parts)) body.set(name, value);
	const response = await fetch(`${room.url}/bot${room.token}/${method}`, {method: 'POST', body});
	return response.json();
}

test('a file keeps its bytes, name and kind, and its link is good for an hour (get_file)', async () => {
	const {room, forward} = await scene();
	const ada = room.person('Ada');
	const bytes = png(12, 34);
	ada.photo(bytes, {asFile: true, fileName: 'IMG 1.png', mimeType: 'image/png'});
	const sent = room.messages(ada.id)[0]?.document;
	expect(sent).toMatchObject({fileName: 'IMG 1.png', mimeType: 'image/png', sizeBytes: bytes.length});
	const {result} = await call(room, 'getFile', {file_id: sent?.fileId});
	const link = `${room.url}/file/bot${room.token}/${fileSchema.parse(result).file_path}`;
	expect(new Uint8Array(await (await fetch(link)).arrayBuffer())).toEqual(bytes);
	forward(3_600_001);
	expect((await fetch(link)).status).toBe(404);
});

test('a file over 20 MB cannot be fetched (get_file)', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	ada.photo(new Uint8Array(20_000_001), {asFile: true});
	const file_id = room.messages(ada.id)[0]?.document?.fileId;
	expect((await call(room, 'getFile', {file_id})).description).toBe('Bad Request: file is too big');
});

test('a photo comes in sizes of one picture, the last the whole of it (photo_sizes)', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	ada.photo(png(800, 400), {caption: 'On the sand'});
	const {result} = await call(room, 'getUpdates');
	const update = z
		.array(
			z.object({message: z.object({caption: z.string(), photo: z.array(z.object({width: z.number()}))})}),
		)
		.parse(result);
	expect(update[0]?.message.photo.map(size => size.width)).toEqual([90, 320, 800]);
	expect(update[0]?.message.caption).toBe('On the sand');
});

test('the bot sends no photo that is too heavy, too long, or no picture (send_photo)', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	ada.sends('/start');
	const chat_id = String(ada.id);
	const heavy = new Blob([new Uint8Array(png(10, 10)), new Uint8Array(10_000_000)]);
	for (const photo of [heavy, new Blob([png(2100, 100)]), new Blob(['no picture'])]) {
		expect(await upload(room, 'sendPhoto', {chat_id, photo})).toMatchObject({ok: false, error_code: 400});
	}
	const caption = 'x'.repeat(1024);
	expect(
		await upload(room, 'sendPhoto', {chat_id, photo: new Blob([png(2000, 100)]), caption}),
	).toMatchObject({ok: true});
	const long = {chat_id, photo: new Blob([png(20, 10)]), caption: `${caption}x`};
	expect(await upload(room, 'sendPhoto', long)).toMatchObject({
		description: 'Bad Request: message caption is too long',
	});
});

test('an album has two to ten items of one kind and no buttons (media_group, no_buttons_on_album)', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	const sent = ada.album([png(30, 20), png(30, 20)], {caption: 'Two of them'});
	expect(sent).toHaveLength(2);
	const [first, second] = room.messages(ada.id);
	expect(first?.album).toBe(second?.album);
	expect([first?.text, second?.text]).toEqual(['Two of them', '']);
	const item = {type: 'photo', media: first?.photo?.fileId};
	const send = (media: readonly object[], more = {}) =>
		call(room, 'sendMediaGroup', {chat_id: ada.id, media, ...more});
	expect(await send([item, item])).toMatchObject({ok: true});
	expect(await send([item])).toMatchObject({ok: false});
	expect(await send(Array.from({length: 11}, () => item))).toMatchObject({ok: false});
	expect(await send([item, item], {reply_markup: {inline_keyboard: []}})).toMatchObject({ok: false});
});

test('the size of a JPEG stands in its frame, wherever that lies', () => {
	const head = [0xff, 0xd8, 0xff, 0xe1, 0, 4, 1, 2];
	const frame = [0xff, 0xc2, 0, 11, 8, 0x01, 0x90, 0x02, 0x58, 1, 0, 0, 0];
	expect(imageSize(new Uint8Array([...head, ...frame]))).toEqual({width: 600, height: 400});
	expect(imageSize(new Uint8Array([1, 2, 3]))).toBeUndefined();
});
