import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {Api, GrammyError} from 'grammy';
import {expect, test} from 'vitest';
import {z} from 'zod';
import {menuButton, mostBytes} from '../../src/bot/button.ts';
import {pictureIn} from '../../src/bot/event.ts';
import * as limits from '../../src/room/limits.ts';
import {projectRoot} from '../../src/settings.ts';
import {callSchema} from '../../src/store/call.ts';
import {readTexts} from '../../src/text/text.ts';
import {deskScene, say} from '../clockwork/desk.ts';

// Source of every number here: the platform's own documentation as printed in the comments of @grammyjs/types 5.0.0
// (npm, MIT), the file and the sentence named beside each. The sentence is looked up there, so that a newer edition
// of the platform's interface makes these tests fail until somebody has looked at what is different.

const published = join(projectRoot(), 'node_modules', '@grammyjs', 'types');
const printed = (file: string) => readFileSync(join(published, file), 'utf8');

/** The numbers of the one sentence in a file that matches; throws when it is not printed there. */
function numbersOf(file: string, sentence: RegExp): readonly number[] {
	const found = sentence.exec(printed(file));
	if (!found) throw new Error(`Expected ${file} to say ${sentence}; it does not`);
	return found.slice(1).map(Number);
}

const megabyte = 1_000_000;

test('the numbers come from the edition they are said to come from', () => {
	const {version} = z
		.object({version: z.string()})
		.parse(JSON.parse(readFileSync(join(published, 'package.json'), 'utf8')));
	expect(version).toBe('5.0.0');
});

test.each([
	{
		what: 'characters of a message',
		file: 'methods.d.ts',
		sentence: /Text of the message to be sent, (\d+)-(\d+) characters after entities parsing/,
		ours: [1, limits.textMax],
	},
	{
		what: 'characters of a caption',
		file: 'methods.d.ts',
		sentence: /Photo caption \(.*?\), (\d+)-(\d+) characters after entities parsing/,
		ours: [0, limits.captionMax],
	},
	{
		what: 'bytes of callback data',
		file: 'markup.d.ts',
		sentence: /Data to be sent in a callback query to the bot when the button is pressed, (\d+)-(\d+) bytes/,
		ours: [1, limits.callbackDataBytesMax],
	},
	{
		what: 'characters of the answer to a press',
		file: 'methods.d.ts',
		sentence: /If not specified, nothing will be shown to the user, (\d+)-(\d+) characters/,
		ours: [0, limits.callbackAnswerMax],
	},
	{
		what: 'characters of the hint in an empty text box',
		file: 'markup.d.ts',
		sentence: /placeholder to be shown in the input field when the reply is active; (\d+)-(\d+) characters/,
		ours: [1, limits.placeholderMax],
	},
	{
		what: 'characters that a button copies',
		file: 'markup.d.ts',
		sentence: /The text to be copied to the clipboard; (\d+)-(\d+) characters/,
		ours: [1, limits.copyTextMax],
	},
	{
		what: 'megabytes of a photo, its sides together and their ratio',
		file: 'methods.d.ts',
		sentence:
			/photo must be at most (\d+) MB in size\. The photo's width and height must not exceed (\d+) in total\. Width and height ratio must be at most (\d+)/,
		ours: [limits.photoBytesMax / megabyte, limits.photoSidesMax, limits.photoRatioMax],
	},
	{
		what: 'megabytes of a file that is sent',
		file: 'methods.d.ts',
		sentence: /Bots can currently send files of any type of up to (\d+) MB in size/,
		ours: [limits.documentBytesMax / megabyte],
	},
	{
		what: 'megabytes of a file that is fetched',
		file: 'methods.d.ts',
		sentence: /bots can download files of up to (\d+)MB in size/,
		ours: [limits.downloadBytesMax / megabyte],
	},
	{
		what: 'hours that the link to a file is good',
		file: 'methods.d.ts',
		sentence: /It is guaranteed that the link will be valid for at least (\d+) hour/,
		ours: [limits.downloadLinkMs / 3_600_000],
	},
	{
		what: 'items of an album',
		file: 'methods.d.ts',
		sentence: /An Array describing messages to be sent, must include (\d+)-(\d+) items/,
		ours: [limits.albumSize.min, limits.albumSize.max],
	},
	{
		what: 'updates fetched at once',
		file: 'methods.d.ts',
		sentence: /Limits the number of updates to be retrieved\. Values between (\d+)-(\d+) are accepted/,
		ours: [1, limits.updatesMax],
	},
	{
		what: 'metres of uncertainty of a position',
		file: 'methods.d.ts',
		sentence: /radius of uncertainty for the location, measured in meters; (\d+)-(\d+)/,
		ours: [0, limits.accuracyMaxM],
	},
	{
		what: 'commands in a list',
		file: 'methods.d.ts',
		sentence: /At most (\d+) commands can be specified/,
		ours: [limits.commandsMax],
	},
	{
		what: "characters of a command's description",
		file: 'manage.d.ts',
		sentence: /Description of the command; (\d+)-(\d+) characters/,
		ours: [1, limits.commandDescriptionMax],
	},
	{
		what: "characters of the bot's description",
		file: 'methods.d.ts',
		sentence: /New bot description; (\d+)-(\d+) characters/,
		ours: [0, limits.descriptionMax.long],
	},
	{
		what: "characters of the bot's short description",
		file: 'methods.d.ts',
		sentence: /New short description for the bot; (\d+)-(\d+) characters/,
		ours: [0, limits.descriptionMax.short],
	},
	{
		what: 'hours in which a message can be deleted',
		file: 'methods.d.ts',
		sentence: /A message can only be deleted if it was sent less than (\d+) hours ago/,
		ours: [limits.deleteWithinMs / 3_600_000],
	},
])('the room goes by the published $what', ({file, sentence, ours}) => {
	expect(numbersOf(file, sentence)).toEqual(ours);
});

test('the room takes the names of commands and the secrets that are published', () => {
	const [, longest = 0] = numbersOf(
		'manage.d.ts',
		/Text of the command; (\d+)-(\d+) characters\. Can contain only lowercase English letters, digits and underscores/,
	);
	expect(limits.commandName.test('a'.repeat(longest))).toBe(true);
	expect(limits.commandName.test('a'.repeat(longest + 1))).toBe(false);
	expect(['a_1', 'A', 'a-b', ''].map(name => limits.commandName.test(name))).toEqual([
		true,
		false,
		false,
		false,
	]);
	const [, most = 0] = numbersOf(
		'methods.d.ts',
		/in every webhook request, (\d+)-(\d+) characters\. Only characters A-Z, a-z, 0-9, _ and - are allowed/,
	);
	expect(limits.webhookSecret.test('a'.repeat(most))).toBe(true);
	expect(limits.webhookSecret.test('a'.repeat(most + 1))).toBe(false);
	expect(['Az0_-', 'a b', ''].map(name => limits.webhookSecret.test(name))).toEqual([true, false, false]);
});

const [, callbackBytes = 0] = numbersOf('markup.d.ts', /when the button is pressed, (\d+)-(\d+) bytes/);
const [, captionCharacters = 0] = numbersOf('methods.d.ts', /Photo caption \(.*?\), (\d+)-(\d+) characters/);
const [answerCharacters = 0] = numbersOf(
	'methods.d.ts',
	/nothing will be shown to the user, 0-(\d+) characters/,
);
const [fetchedMegabytes = 0] = numbersOf('methods.d.ts', /bots can download files of up to (\d+)MB in size/);

test('a button carries as many bytes as published, and no more', () => {
	expect(mostBytes).toBe(callbackBytes);
	const part = (bytes: number) => 'x'.repeat(bytes - 'm.x.'.length);
	expect(menuButton('x', part(callbackBytes))).toHaveLength(callbackBytes);
	expect(() => menuButton('x', part(callbackBytes + 1))).toThrow();
});

test('an answer to a press is as long as published, and no longer', () => {
	const answer = (length: number) => ({kind: 'answer', callback: '1', text: 'x'.repeat(length)});
	expect(callSchema.safeParse(answer(answerCharacters)).success).toBe(true);
	expect(callSchema.safeParse(answer(answerCharacters + 1)).success).toBe(false);
});

test('a picture goes with as many characters as published; with one more the words go alone', async () => {
	const {put, pump, room, ada} = await deskScene();
	for (const length of [captionCharacters, captionCharacters + 1]) {
		await put(
			ada.chat,
			say('x'.repeat(length), {
				picture: {kind: 'around', region: 'british-isles', language: 'en', which: 'parts'},
			}),
		);
	}
	await pump();
	const [, fits, exceeds] = room.messages(ada.person.id);
	expect(fits?.photo).toBeDefined();
	expect(exceeds?.photo).toBeUndefined();
	expect(exceeds?.text).toHaveLength(captionCharacters + 1);
});

test('a file is asked for up to the published size, and refused kindly above it', () => {
	const chat = {id: 7, type: 'private' as const, first_name: 'Ada'};
	const picture = (file_size: number) =>
		pictureIn({
			message_id: 1,
			date: 1,
			chat,
			document: {file_id: 'f', file_unique_id: 'u', mime_type: 'image/jpeg', file_size},
		});
	expect(picture(fetchedMegabytes * megabyte)).toEqual({fileId: 'f', fileUniqueId: 'u'});
	expect(picture(fetchedMegabytes * megabyte + 1)).toEqual({refused: 'large'});
});

test("the bot's own descriptions are within what is published", () => {
	const {say: words} = {say: readTexts([join(projectRoot(), 'src', 'text')]).in('en')};
	const [, long = 0] = numbersOf('methods.d.ts', /New bot description; (\d+)-(\d+) characters/);
	const [, short = 0] = numbersOf(
		'methods.d.ts',
		/New short description for the bot; (\d+)-(\d+) characters/,
	);
	expect(words.say('description').length).toBeLessThanOrEqual(long);
	expect(words.say('short-description').length).toBeLessThanOrEqual(short);
});

test('what is said to be refused above a limit is refused by the room', async () => {
	const {room, ada} = await deskScene();
	const api = new Api(room.token, {apiRoot: room.url});
	const [, characters = 0] = numbersOf(
		'methods.d.ts',
		/Text of the message to be sent, (\d+)-(\d+) characters/,
	);
	await api.sendMessage(ada.person.id, 'x'.repeat(characters));
	await expect(api.sendMessage(ada.person.id, 'x'.repeat(characters + 1))).rejects.toThrow(GrammyError);
	const keyboard = (bytes: number) => ({
		reply_markup: {inline_keyboard: [[{text: 'Yes', callback_data: 'x'.repeat(bytes)}]]},
	});
	await api.sendMessage(ada.person.id, 'x', keyboard(callbackBytes));
	await expect(api.sendMessage(ada.person.id, 'x', keyboard(callbackBytes + 1))).rejects.toThrow(GrammyError);
});
