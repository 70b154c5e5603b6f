import {Bot, InlineKeyboard, InputFile, Keyboard} from 'grammy';
import {onTestFinished} from 'vitest';
import type {Room} from '../../src/room/server.ts';
import {png} from './picture.ts';

/** A bot of a few lines that asks, answers, shows and wants a place; it ends with the test. */
export async function startLittleBot(room: Room): Promise<void> {
	const bot = new Bot(room.token, {client: {apiRoot: room.url}});
	bot.command('start', ctx =>
		ctx.reply('Hello. <b>Is it stuck to something?</b>\nLook at the horns before you pull.', {
			parse_mode: 'HTML',
			reply_markup: new InlineKeyboard()
				.text('Yes', 'yes')
				.text('No', 'no')
				.row()
				.text("Can't tell", 'unsure'),
		}),
	);
	bot.command('row', ctx =>
		ctx.reply('Is there a blade?', {
			reply_markup: new InlineKeyboard()
				.text("Can't tell", 'unsure')
				.text('Back', 'back')
				.text('Why?', 'why'),
		}),
	);
	bot.command('where', ctx =>
		ctx.reply('Where did you find it?', {reply_markup: new Keyboard().requestLocation('Send my place')}),
	);
	bot.command('name', ctx =>
		ctx.reply('What is this beach called?', {
			reply_parameters: {message_id: ctx.msg.message_id},
			reply_markup: {force_reply: true, selective: true, input_field_placeholder: 'Name of the beach'},
		}),
	);
	bot.on('callback_query:data', async ctx => {
		await ctx.answerCallbackQuery({text: 'Noted'});
		await ctx.editMessageText(`Stuck to something: ${ctx.callbackQuery.data}`);
		await ctx.reply('How long is it, without the horns?', {
			reply_markup: new InlineKeyboard().text('Under 5 cm', 'short').row().text('5 cm or more', 'long'),
		});
	});
	bot.on('message:photo', ctx =>
		ctx.replyWithPhoto(new InputFile(png(320, 200), 'tally.png'), {caption: 'Your photo is kept.'}),
	);
	bot.on('message:document', ctx => ctx.reply(`A file: ${ctx.msg.document.file_name}`));
	bot.on('message:location', ctx =>
		ctx.reply(`You were at ${ctx.msg.location.latitude}.`, {reply_markup: {remove_keyboard: true}}),
	);
	bot.on('message:sticker', ctx => ctx.reply('That is a sticker. Please send a photo.'));
	bot.on('message:text', ctx => ctx.reply(`You wrote ${ctx.msg.text}`));
	bot.on('edited_message:text', ctx => ctx.reply(`Now it says ${ctx.editedMessage.text}`));
	await bot.api.setMyCommands([
		{command: 'start', description: 'Begin with a find'},
		{command: 'where', description: 'Send a place'},
	]);
	const running = bot.start();
	onTestFinished(async () => {
		await bot.stop();
		await running;
	});
}
