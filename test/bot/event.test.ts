import type {Message} from 'grammy/types';
import {expect, test} from 'vitest';
import {eventIn, pictureIn} from '../../src/bot/event.ts';

type Content = Partial<Message>;

function message(content: Content): Message {
	const chat = {id: 7, type: 'private' as const, first_name: 'Ada'};
	return {message_id: 1, date: 1, chat, ...content};
}

const file = {file_id: 'f', file_unique_id: 'u'};
const fileNamed = (name: string, type: string | undefined, size?: number) =>
	message({
		document: {
			...file,
			file_name: name,
			...(type === undefined ? {} : {mime_type: type}),
			...(size === undefined ? {} : {file_size: size}),
		},
	});

test('of a photo the largest size is taken', () => {
	const photo = [90, 320, 1280].map(width => ({
		file_id: `f${width}`,
		file_unique_id: `u${width}`,
		width,
		height: width,
	}));
	expect(pictureIn(message({photo}))).toEqual({fileId: 'f1280', fileUniqueId: 'u1280'});
});

test.each(['image/jpeg', 'image/png', 'image/webp', 'image/tiff'])('a file of type %s is a picture', type => {
	expect(pictureIn(fileNamed('a', type))).toEqual({fileId: 'f', fileUniqueId: 'u'});
});

test.each([
	{name: 'IMG_1.HEIC', type: undefined, refused: 'heic'},
	{name: 'IMG_1.heif', type: 'application/octet-stream', refused: 'heic'},
	{name: 'a.jpg', type: 'image/heic', refused: 'heic'},
	{name: 'a.pdf', type: 'application/pdf', refused: 'file'},
	{name: 'a.gif', type: 'image/gif', refused: 'file'},
	{name: 'a.svg', type: 'image/svg+xml', refused: 'file'},
	{name: 'a.jpg', type: undefined, refused: 'file'},
	{name: 'a.exe', type: 'image/jpeg.exe', refused: 'file'},
])('a file $name of type $type is refused as $refused', ({name, type, refused}) => {
	expect(pictureIn(fileNamed(name, type))).toEqual({refused});
});

test('a picture of 20 MB can just be fetched, and a larger one is refused before it is asked for', () => {
	expect(pictureIn(fileNamed('a.jpg', 'image/jpeg', 20_000_000))).toEqual({fileId: 'f', fileUniqueId: 'u'});
	expect(pictureIn(fileNamed('a.jpg', 'image/jpeg', 20_000_001))).toEqual({refused: 'large'});
	expect(pictureIn(fileNamed('a.heic', 'image/heic', 30_000_000))).toEqual({refused: 'heic'});
});

test('a message without a file shows no picture', () => {
	expect(pictureIn(message({text: 'a.jpg'}))).toBeUndefined();
});

test('a position and a place with a name are both pins', () => {
	const location = {latitude: 50.1, longitude: -5.5};
	expect(eventIn(message({location}))).toEqual({kind: 'pin', ...location});
	expect(eventIn(message({location: {...location, horizontal_accuracy: 12}}))).toEqual({
		kind: 'pin',
		...location,
		accuracyM: 12,
	});
	const venue = {location, title: 'Sandy Cove', address: 'The Beach'};
	expect(eventIn(message({venue}))).toEqual({kind: 'pin', ...location});
});

test('words are words', () => {
	expect(eventIn(message({text: ' 62 mm '}))).toEqual({kind: 'text', text: ' 62 mm '});
});

const sized = {...file, width: 1, height: 1, duration: 1};

test.each([
	{content: {voice: {...file, duration: 1}}, what: 'voice'},
	{content: {audio: {...file, duration: 1}}, what: 'voice'},
	{content: {video_note: {...file, length: 1, duration: 1}}, what: 'voice'},
	{content: {video: sized}, what: 'video'},
	{content: {animation: sized}, what: 'video'},
	{
		content: {
			sticker: {...file, type: 'regular' as const, width: 1, height: 1, is_animated: false, is_video: false},
		},
		what: 'sticker',
	},
	{content: {dice: {emoji: '🎲', value: 3}}, what: 'other'},
	{content: {contact: {phone_number: '1', first_name: 'Ada'}}, what: 'other'},
	{content: {}, what: 'other'},
])('what no question takes is told apart: $what', ({content, what}) => {
	expect(eventIn(message(content))).toEqual({kind: 'odd', what});
});
