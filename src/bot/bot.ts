/** The bot: every handler in order, one line each. */
import {Bot} from 'grammy';
import {showBowl} from './commands/bowl.ts';
import {cancel} from './commands/cancel.ts';
import {showDrafts} from './commands/drafts.ts';
import {beginFindCommand} from './commands/find.ts';
import {showForwarding} from './commands/forwarding.ts';
import {showHelp} from './commands/help.ts';
import {askWhom} from './commands/invite.ts';
import {answerAlone} from './commands/onlyme.ts';
import {showRegions} from './commands/region.ts';
import {showSafety} from './commands/safety.ts';
import {say} from './commands/say.ts';
import {showSettings} from './commands/settings.ts';
import {start} from './commands/start.ts';
import {showTeam} from './commands/team.ts';
import type {Ctx, House} from './desk.ts';
import {hearEdited} from './edited.ts';
import {hearMembership} from './group.ts';
import {hearMessage} from './message.ts';
import {press} from './press.ts';
import {only, privately} from './role-commands.ts';
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
	bot.command('start', start);
	bot.command('find', beginFindCommand);
	bot.command('bowl', showBowl);
	bot.command('drafts', showDrafts);
	bot.command('cancel', cancel);
	bot.command('help', showHelp);
	bot.command('safety', showSafety);
	bot.command('region', showRegions);
	bot.command('settings', showSettings);
	bot.command('forwarding', only(['owner'], privately(showForwarding)));
	bot.command('say', say);
	bot.command('invite', only(['owner', 'coordinator'], privately(askWhom)));
	bot.command('team', only(['owner', 'coordinator'], privately(showTeam)));
	bot.command('onlyme', answerAlone);
	bot.on('callback_query:data', press);
	bot.on('edited_message', hearEdited);
	bot.on('message', hearMessage);
	// Only a store that fails gets here: stop, so that nothing unstored is confirmed.
	bot.catch(({error}) => {
		throw error;
	});
	return bot;
}
