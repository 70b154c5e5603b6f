/** Those who speak as a group or as a channel: never taken for a person, and yet answered. */
import {findById} from '../store/finds.ts';
import {findOfMessage, post} from '../store/outbox.ts';
import {personById} from '../store/people.ts';
import {type Button, packButton} from './button.ts';
import {runsByButton} from './by-button.ts';
import {type Ctx, type Desk, shelfOf} from './desk.ts';
import {hearAbout} from './message.ts';
import {isDeleted} from './whose.ts';
import {escaped} from './words.ts';

/** The account that stands for a group's anonymous administrators (tdlib/telegram-bot-api#667). */
const anonymousAdministrator = 1_087_968_824;

/** Whether nobody in particular speaks. */
export function isUnnamed({from, message}: Ctx): boolean {
	return from?.id === anonymousAdministrator || message?.sender_chat !== undefined;
}

/**
 * Answers what is said to us in the name of a group or channel. An answer to a find that everybody here may answer
 * for is taken, since nobody need be known for it; anything else goes on as oneself, by a button.
 */
export async function hearUnnamed(at: Pick<Desk, 'house' | 'tx' | 'now' | 'chat'>, ctx: Ctx): Promise<void> {
	const {message} = ctx;
	if (!message || !isSaidToUs(ctx)) return;
	const isGroup = message.sender_chat?.id === message.chat.id;
	const row = isGroup ? await findRepliedTo(at, message.reply_to_message?.message_id) : undefined;
	if (row && row.isOwnersAlone === 0) {
		const person = await personById(at.tx, row.person);
		const desk: Desk = {...at, person, name: undefined, thread: row.thread ?? undefined, isUnnamed: true};
		return hearAbout(desk, row, message);
	}
	const say = shelfOf(at.house, at.house.region).texts.in(undefined);
	const goOn: Button = row ? {kind: 'resume', find: row.id} : buttonFor(message.text ?? '');
	const keyboard = isGroup ? [[{text: say.say('button-as-myself'), data: packButton(goOn)}]] : [];
	const html = escaped(say.say(isGroup ? 'anonymous' : 'sender-chat'));
	await post(at.tx, {chat: at.chat.id, role: 'say', call: {kind: 'send', html, keyboard}, now: at.now});
}

/** A command or a reply to the bot; the rest of what a group or channel says is meant for others. */
function isSaidToUs({message, me}: Ctx): boolean {
	if (message?.reply_to_message?.from?.id === me.id) return true;
	const [, , name] = /^\/\w+(@(\w+))?/.exec(message?.text ?? '') ?? [];
	return (message?.text ?? '').startsWith('/') && (name === undefined || name === me.username);
}

async function findRepliedTo({tx, chat}: Pick<Desk, 'tx' | 'chat'>, messageId: number | undefined) {
	if (messageId === undefined) return undefined;
	const find = await findOfMessage(tx, {chat: chat.id, messageId});
	const row = find === undefined ? undefined : await findById(tx, find);
	return row && !isDeleted(row) ? row : undefined;
}

/** What was written, as a press; words that no button can say lead to the present question. */
function buttonFor(text: string): Button {
	const command = /^\/(\w+)/.exec(text)?.[1] ?? '';
	return runsByButton(command) ? {kind: 'command', command} : {kind: 'resume', find: 0};
}
