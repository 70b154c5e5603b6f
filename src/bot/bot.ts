/** The bot: every handler in order; those of commands stand in `handlers.ts`, one line each. */
import {Bot} from 'grammy';
import {isCommand} from './command-table.ts';
import type {Ctx, House} from './desk.ts';
import {hearEdited} from './edited.ts';
import {hearMembership} from './group.ts';
import {guarded} from './guard.ts';
import {handlers} from './handlers.ts';
import {hearMessage} from './message.ts';
import {press} from './press.ts';
import {inOneTransaction} from './transaction.ts';

/** What the platform is asked for; nothing else has to be survived. */
export const allowedUpdates = ['message', 'edited_message', 'callback_query', 'my_chat_member'] as const;

/** A call that hangs longer is given up; polling itself waits half a minute. */
const timeoutSeconds = 60;

/** Builds the bot; it talks to the platform, or to another host of the same interface. */
export function createBot(house: House, access: {token: string; apiRoot: string | undefined}): Bot<Ctx> {
	const bot = new Bot<Ctx>(access.token, {
		client: {timeoutSeconds, ...(access.apiRoot === undefined ? {} : {apiRoot: access.apiRoot})},
	});
	bot.use((ctx, next) => inOneTransaction(house, ctx, next));
	bot.on('my_chat_member', hearMembership);
	for (const name of Object.keys(handlers).filter(isCommand)) {
		bot.command(name, guarded(name, handlers[name]));
	}
	bot.on('callback_query:data', press);
	bot.on('edited_message', hearEdited);
	bot.on('message', hearMessage);
	// Only a store that fails gets here: stop, so that nothing unstored is confirmed.
	bot.catch(({error}) => {
		throw error;
	});
	return bot;
}
