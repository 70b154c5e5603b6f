/** Groups: the bot let in or thrown out, and a group that becomes a supergroup. */
import {joinAddresses, markGone} from '../store/chats.ts';
import {type Ctx, readerAt, sayHere} from './desk.ts';

/** Notes that the bot is gone or back; says hello to a group once it is let in. */
export async function hearMembership({desk, myChatMember}: Ctx): Promise<void> {
	if (!myChatMember) return;
	const {status} = myChatMember.new_chat_member;
	const wasIn = isIn(myChatMember.old_chat_member.status);
	if (!isIn(status)) return markGone(desk.tx, desk.chat.id, desk.now);
	if (desk.chat.kind === 'group' && !wasIn) return sayHere(desk, readerAt(desk).say.say('group-hello'));
}

/** Both ids of a group that moved mean the same chat from now on. */
export async function hearMigration({desk, message}: Ctx): Promise<void> {
	if (!message) return;
	const {id} = message.chat;
	const moved =
		message.migrate_to_chat_id === undefined
			? {from: message.migrate_from_chat_id ?? id, to: id}
			: {from: id, to: message.migrate_to_chat_id};
	return joinAddresses(desk.tx, {...moved, now: desk.now});
}

function isIn(status: string): boolean {
	return status !== 'left' && status !== 'kicked';
}
