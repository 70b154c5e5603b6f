import {z} from 'zod';
import type {Body} from '../body.ts';
import {jsonField, numberField} from '../body.ts';
import type {Core} from '../core.ts';
import type {ReplyMarkup} from '../markup.ts';
import {checkMarkup, sentMarkupSchema} from '../markup.ts';
import type {Chat, ChatMessage} from '../message.ts';
import {entitySchema} from '../message.ts';
import {asReplied, findMessage} from '../messages.ts';
import {chatWithId, isBotIn, personWithId} from '../people.ts';
import type {Polling} from '../polling.ts';
import {badRequest, refusal} from '../refusal.ts';
import type {Webhook} from '../webhook.ts';

/** One call of a method, with everything it may need. */
export type Call = Body & {
	readonly core: Core;
	readonly polling: Polling;
	readonly webhook: Webhook;
	readonly hangUp: AbortSignal;
};

/** A method of the Bot API: gives the result, or throws a refusal. */
export type Method = (call: Call) => unknown;

/** Parameters that say where a message goes and what comes with it. */
export const targetShape = {
	chat_id: numberField,
	message_thread_id: numberField.optional(),
	reply_parameters: jsonField(
		z.object({message_id: numberField, allow_sending_without_reply: z.boolean().optional()}),
	).optional(),
	reply_markup: jsonField(sentMarkupSchema).optional(),
};

/** Parameters of a text that may hold markup. */
export const markedShape = {
	parse_mode: z.string().optional(),
	entities: jsonField(z.array(entitySchema)).optional(),
	caption_entities: jsonField(z.array(entitySchema)).optional(),
};

const targetSchema = z.object(targetShape);

/** Where a message goes, checked. */
export type Target = {
	readonly chat: Chat;
	readonly reply: {readonly reply_to_message?: ReturnType<typeof asReplied>};
	readonly markup: ReplyMarkup | undefined;
};

/** Reads the parameters of a call; throws a refusal that names the one that is missing or wrong. */
export function parameters<T>(call: Call, schema: z.ZodType<T>): T {
	const read = schema.safeParse(call.fields);
	if (read.success) return read.data;
	const issue = read.error.issues[0];
	const name = String(issue?.path[0] ?? '');
	if (name === 'chat_id') {
		throw badRequest(!('chat_id' in call.fields) ? 'chat_id is empty' : 'chat not found');
	}
	if (name === 'reply_markup') throw badRequest("can't parse reply keyboard markup JSON object");
	throw badRequest(`parameter "${name}" is wrong or missing: ${issue?.message ?? 'unknown'}`);
}

/** The chat the bot may write to; throws when there is none or the bot is not welcome. */
export function chatToWriteTo(core: Core, id: number): Chat {
	const chat = chatWithId(core, id);
	if (chat === undefined) throw badRequest('chat not found');
	if (chat.type === 'supergroup') {
		if (!isBotIn(core, id)) throw refusal(403, 'Forbidden: bot was kicked from the supergroup chat');
		return chat;
	}
	const person = personWithId(core, id);
	if (person?.blocked === true) throw refusal(403, 'Forbidden: bot was blocked by the user');
	if (person?.started !== true) throw refusal(403, "Forbidden: bot can't initiate conversation with a user");
	return chat;
}

/** Checks where a message goes, what it replies to and which buttons it brings. */
export function openTarget(call: Call): Target {
	const fields = parameters(call, targetSchema);
	const chat = chatToWriteTo(call.core, fields.chat_id);
	// No chat here has topics, and the platform refuses a thread number elsewhere.
	if (fields.message_thread_id !== undefined) throw badRequest('message thread not found');
	const markup =
		fields.reply_markup === undefined ? undefined : checkMarkup(fields.reply_markup, chat.type === 'private');
	const asked = fields.reply_parameters;
	const replied =
		asked === undefined ? undefined : findMessage(call.core, chat.id, asked.message_id)?.message;
	if (asked !== undefined && replied === undefined && asked.allow_sending_without_reply !== true) {
		throw badRequest('message to be replied not found');
	}
	return {chat, reply: replied === undefined ? {} : {reply_to_message: asReplied(replied)}, markup};
}

/** A message the bot wrote and may still change; throws when it is gone or not the bot's. */
export function ownMessage(call: Call): ChatMessage {
	const fields = parameters(call, z.object({chat_id: numberField, message_id: numberField}));
	const chat = chatToWriteTo(call.core, fields.chat_id);
	const kept = findMessage(call.core, chat.id, fields.message_id);
	if (kept === undefined) throw badRequest('message to edit not found');
	if (!kept.message.from.is_bot) throw badRequest("message can't be edited");
	return kept.message;
}
