import type {Core} from './core.ts';
import type {Chat, User} from './message.ts';
import {addMessage} from './messages.ts';
import {bot, chatWithId, markBlocked, markBotIn, personWithId} from './people.ts';
import {addUpdate} from './updates.ts';

type Status = 'member' | 'left' | 'kicked';

/** Takes the bot out of a group, on someone's wish, and tells it so; gives the update's id. */
export function leaveGroup(core: Core, chat: Chat, by: User): number | undefined {
	return core.db.together(() => {
		addMessage(core, {chat, from: by, content: {left_chat_member: bot}});
		markBotIn(core, chat.id, false);
		return tellMembership(core, {chat, by, before: 'member', after: by.is_bot ? 'left' : 'kicked'});
	});
}

/** Brings the bot back into a group and tells it so; gives the update's id. */
export function joinGroup(core: Core, chat: Chat, by: User): number | undefined {
	return core.db.together(() => {
		markBotIn(core, chat.id, true);
		const id = tellMembership(core, {chat, by, before: 'left', after: 'member'});
		const message = addMessage(core, {chat, from: by, content: {new_chat_members: [bot]}});
		addUpdate(core, chat.id, {message});
		return id;
	});
}

/** Blocks or unblocks the bot in a person's private chat and tells it so; gives the update's id. */
export function setBlocked(core: Core, by: User, blocked: boolean): number | undefined {
	const chat = chatWithId(core, by.id);
	if (chat === undefined) throw new Error(`Expected a person with id ${by.id}; there is none`);
	if (personWithId(core, by.id)?.blocked === blocked) return undefined;
	return core.db.together(() => {
		markBlocked(core, by.id, blocked);
		const [before, after] = blocked ? (['member', 'kicked'] as const) : (['kicked', 'member'] as const);
		return tellMembership(core, {chat, by, before, after});
	});
}

type Move = {readonly chat: Chat; readonly by: User; readonly before: Status; readonly after: Status};

function tellMembership(core: Core, move: Move): number | undefined {
	return addUpdate(core, move.chat.id, {
		my_chat_member: {
			chat: move.chat,
			from: move.by,
			date: Math.floor(core.clock.now() / 1000),
			old_chat_member: {user: bot, status: move.before},
			new_chat_member: {user: bot, status: move.after},
		},
	});
}
