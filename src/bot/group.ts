/** Groups: the bot let in or thrown out, and a group that becomes a supergroup. */
import type {Message} from 'grammy/types';
import {markGone} from '../store/chats.ts';
import {type Ctx, readerAt, sayHere} from './desk.ts';

/** Notes that the bot is gone or back; says hello to a group once it is let in. */
export async function hearMembership({desk, myChatMember}: Ctx): Promise<void> {
	if (!myChatMember) return;
	const {status} = myChatMember.new_chat_member;
	const wasIn = isIn(myChatMember.old_chat_member.status);
	if (!isIn(status)) return markGone(desk.tx, desk.chat.id, desk.now);
	if (desk.chat.kind === 'group' && !wasIn) return sayHere(desk, readerAt(desk).say.say('group-hello'));
}

/** The platform ids of a group that says it became a supergroup; both mean the same chat from now on. */
export function moveIn(
	message: Message | undefined,
): {readonly from: number; readonly to: number} | undefined {
	if (message?.migrate_to_chat_id !== undefined)
		return {from: message.chat.id, to: message.migrate_to_chat_id};
	if (message?.migrate_from_chat_id !== undefined)
		return {from: message.migrate_from_chat_id, to: message.chat.id};
	return undefined;
}

function isIn(status: string): boolean {
	return status !== 'left' && status !== 'kicked';
}
