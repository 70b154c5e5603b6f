import {z} from 'zod';
import {numberField} from '../body.ts';
import {fileWithId, openLink} from '../files.ts';
import * as limits from '../limits.ts';
import {leaveGroup} from '../membership.ts';
import {asUser, bot, chatWithId, isBotIn, personWithId} from '../people.ts';
import {badRequest, refusal} from '../refusal.ts';
import type {Call} from './call.ts';
import {parameters} from './call.ts';

const chatSchema = z.object({chat_id: numberField});
const memberSchema = z.object({chat_id: numberField, user_id: numberField});

/** Who the bot is. */
export function getMe(): unknown {
	return {
		...bot,
		can_join_groups: true,
		can_read_all_group_messages: false,
		supports_inline_queries: false,
		can_connect_to_business: false,
		has_main_web_app: false,
	};
}

/** What a chat is called. */
export function getChat(call: Call): unknown {
	const chat = chatWithId(call.core, parameters(call, chatSchema).chat_id);
	if (chat === undefined) throw badRequest('chat not found');
	if (chat.type === 'supergroup' && !isBotIn(call.core, chat.id)) {
		throw refusal(403, 'Forbidden: bot is not a member of the supergroup chat');
	}
	return {...chat, accent_color_id: 0, max_reaction_count: 0, accepted_gift_types: {}};
}

/** Whether someone is a member of a chat; every person in the room is a member of both groups. */
export function getChatMember(call: Call): unknown {
	const fields = parameters(call, memberSchema);
	const chat = chatWithId(call.core, fields.chat_id);
	if (chat === undefined) throw badRequest('chat not found');
	if (fields.user_id === bot.id) return {user: bot, status: isBotIn(call.core, chat.id) ? 'member' : 'left'};
	const person = personWithId(call.core, fields.user_id);
	if (person === undefined) throw badRequest('member not found');
	const isHere = chat.type === 'supergroup' || chat.id === person.id;
	return {user: asUser(person), status: isHere ? 'member' : 'left'};
}

/** Takes the bot out of a group. */
export function leaveChat(call: Call): true {
	const chat = chatWithId(call.core, parameters(call, chatSchema).chat_id);
	if (chat === undefined) throw badRequest('chat not found');
	if (chat.type === 'private') throw badRequest("chat member status can't be changed in private chats");
	if (!isBotIn(call.core, chat.id))
		throw refusal(403, 'Forbidden: bot is not a member of the supergroup chat');
	leaveGroup(call.core, chat, bot);
	return true;
}

/** Where the bytes of a file are to be had, for an hour. */
export function getFile(call: Call): unknown {
	const file = fileWithId(call.core, parameters(call, z.object({file_id: z.string()})).file_id);
	if (file === undefined) throw badRequest('invalid file_id');
	if (file.sizeBytes > limits.downloadBytesMax) throw badRequest('file is too big');
	openLink(call.core, file.id);
	return {file_id: file.id, file_unique_id: file.uniqueId, file_size: file.sizeBytes, file_path: file.path};
}
