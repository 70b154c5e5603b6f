import sharp from 'sharp';
import {expect, test} from 'vitest';
import {readPhoto} from '../../src/capsule/photo.ts';

const plain = (width: number, height: number) =>
	sharp({create: {width, height, channels: 3, background: '#c0a080'}});

test('a large photo is shrunk to 1280 pixels, and says by how much', async () => {
	const photo = await readPhoto(await plain(2560, 1920).jpeg().toBuffer());
	expect(photo).toMatchObject({kind: 'photo', scale: 2, raster: {width: 1280, height: 960}});
});

test('a small photo is left as it is', async () => {
	expect(await readPhoto(await plain(640, 480).jpeg().toBuffer())).toMatchObject({
		scale: 1,
		raster: {width: 640},
	});
});

test('a photo held across is turned upright', async () => {
	const bytes = await plain(800, 600).withMetadata({orientation: 6}).jpeg().toBuffer();
	expect(await readPhoto(bytes)).toMatchObject({raster: {width: 600, height: 800}, scale: 1});
});

test('a grey photo has three channels as any other', async () => {
	const bytes = await plain(640, 480).toColourspace('b-w').png().toBuffer();
	const photo = await readPhoto(bytes);
	expect(photo.kind === 'photo' && photo.raster.rgb.length).toBe(640 * 480 * 3);
});

test.each([
	['words', Buffer.from('not a picture'), 'no-photo'],
	['nothing', new Uint8Array(0), 'no-photo'],
	['HEIC', Buffer.from('\0\0\0\u0018ftypheic\0\0\0\0'), 'heic'],
	['31 MB', new Uint8Array(31_000_000), 'too-heavy'],
])('%s is refused before it is decoded', async (_, bytes, why) => {
	expect(await readPhoto(bytes)).toEqual({kind: 'unreadable', why});
});

test('a thumbnail is refused, and so is a picture of too many pixels', async () => {
	expect(await readPhoto(await plain(200, 150).jpeg().toBuffer())).toMatchObject({why: 'too-small'});
	const vast = '<svg xmlns="http://www.w3.org/2000/svg" width="9000" height="9000"/>';
	expect(await readPhoto(Buffer.from(vast))).toMatchObject({why: 'too-many-pixels'});
});
