import {Bot, InlineKeyboard, InputFile} from 'grammy';
import {expect, onTestFinished, test} from 'vitest';
import type {Room} from '../../src/room/server.ts';
import {png} from './picture.ts';
import {scene} from './scene.ts';

function startBot(room: Room): Bot {
	const bot = new Bot(room.token, {client: {apiRoot: room.url}});
	bot.command('start', ctx =>
		ctx.reply(`Hello ${ctx.match}`, {reply_markup: new InlineKeyboard().text('Go', 'go')}),
	);
	bot.on('message:photo', async ctx => {
		const file = await ctx.getFile();
		const response = await fetch(`${room.url}/file/bot${room.token}/${file.file_path}`);
		const bytes = new Uint8Array(await response.arrayBuffer());
		await ctx.replyWithPhoto(new InputFile(bytes, 'back.png'), {
			caption: 'Back <b>again</b>',
			parse_mode: 'HTML',
		});
		await ctx.replyWithMediaGroup([
			{type: 'document', media: new InputFile(bytes, 'a.png')},
			{type: 'document', media: new InputFile(bytes, 'b.png')},
		]);
	});
	bot.on('callback_query:data', async ctx => {
		await ctx.answerCallbackQuery({text: `You pressed ${ctx.callbackQuery.data}`});
		await ctx.editMessageText('Pressed');
	});
	const running = bot.start();
	onTestFinished(async () => {
		await bot.stop();
		await running;
	});
	return bot;
}

test('a bot on grammY talks to a person through the room', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	startBot(room);
	ada.opens('code-1');
	await room.idle();
	const hello = room.messages(ada.id).at(-1);
	expect(hello).toMatchObject({from: 'bot', text: 'Hello code-1', buttons: [[{text: 'Go', data: 'go'}]]});
	ada.presses('go', {messageId: hello?.id ?? 0});
	await room.idle();
	expect(room.callbackAnswers().at(-1)).toMatchObject({text: 'You pressed go', person: ada.id});
	expect(room.messages(ada.id).at(-1)).toMatchObject({text: 'Pressed', buttons: [], edited: true});
});

test('a photo goes to the bot and comes back, byte for byte, alone and as files in an album', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	startBot(room);
	const picture = png(30, 20);
	ada.photo(picture);
	await room.idle();
	const [, back, first, second] = room.messages(ada.id);
	expect(back).toMatchObject({from: 'bot', text: 'Back again', photo: {width: 30, height: 20}});
	expect(back?.entities).toEqual([{type: 'bold', offset: 5, length: 5}]);
	expect(room.fileBytes(back?.photo?.fileId ?? '')).toEqual(Buffer.from(picture));
	expect([first?.document?.fileName, second?.document?.fileName]).toEqual(['a.png', 'b.png']);
	expect(first?.album).toBe(second?.album);
});
