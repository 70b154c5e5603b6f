import {z} from 'zod';
import {jsonField, numberField} from '../body.ts';
import {captionText, messageText} from '../format.ts';
import * as limits from '../limits.ts';
import {checkMarkup, sentMarkupSchema} from '../markup.ts';
import type {ChatMessage} from '../message.ts';
import {findMessage, removeMessage, replaceMessage} from '../messages.ts';
import {badRequest} from '../refusal.ts';
import type {Call} from './call.ts';
import {chatToWriteTo, markedShape, ownMessage, parameters} from './call.ts';

const textSchema = z.object({text: z.string().default(''), ...markedShape});
const captionSchema = z.object({caption: z.string().default(''), ...markedShape});
const markupSchema = z.object({reply_markup: jsonField(sentMarkupSchema).optional()});
const notModified =
	'message is not modified: specified new message content and reply markup are exactly the same as a current content and reply markup of the message';

/** Changes the text of the bot's own message; its buttons go unless they are sent again. */
export function editMessageText(call: Call): ChatMessage {
	const old = ownMessage(call);
	if (old.text === undefined) throw badRequest('there is no text in the message to edit');
	const fields = parameters(call, textSchema);
	const {text, entities} = messageText(call.core, {
		text: fields.text,
		parseMode: fields.parse_mode,
		entities: fields.entities,
	});
	const {entities: _before, ...rest} = old;
	const marked = entities.length === 0 ? {} : {entities: [...entities]};
	return keepChange(call, old, {...rest, text, ...marked});
}

/** Changes the caption of the bot's own photo or file; its buttons go unless they are sent again. */
export function editMessageCaption(call: Call): ChatMessage {
	const old = ownMessage(call);
	if (old.photo === undefined && old.document === undefined) {
		throw badRequest('there is no caption in the message to edit');
	}
	const fields = parameters(call, captionSchema);
	const {text, entities} = captionText(call.core, {
		text: fields.caption,
		parseMode: fields.parse_mode,
		entities: fields.caption_entities,
	});
	const {caption: _before, caption_entities: _marked, ...rest} = old;
	const caption = text === '' ? {} : {caption: text};
	const marked = entities.length === 0 ? {} : {caption_entities: [...entities]};
	return keepChange(call, old, {...rest, ...caption, ...marked});
}

/** Changes or takes away the buttons under the bot's own message. */
export function editMessageReplyMarkup(call: Call): ChatMessage {
	const old = ownMessage(call);
	return keepChange(call, old, old);
}

/** Takes a message away: the bot's own, or in a private chat anyone's, within 48 hours. */
export function deleteMessage(call: Call): true {
	const fields = parameters(call, z.object({chat_id: numberField, message_id: numberField}));
	const chat = chatToWriteTo(call.core, fields.chat_id);
	const kept = findMessage(call.core, chat.id, fields.message_id);
	if (kept === undefined) throw badRequest('message to delete not found');
	const isOld = kept.at + limits.deleteWithinMs < call.core.clock.now();
	const isOthers = chat.type !== 'private' && !kept.message.from.is_bot;
	if (isOld || isOthers) throw badRequest("message can't be deleted");
	removeMessage(call.core, chat.id, fields.message_id);
	return true;
}

function keepChange(call: Call, old: ChatMessage, next: ChatMessage): ChatMessage {
	const sent = parameters(call, markupSchema).reply_markup;
	if (sent !== undefined && !('inline_keyboard' in sent)) throw badRequest('inline keyboard expected');
	const markup = sent === undefined ? undefined : checkMarkup(sent, old.chat.type === 'private');
	const keyboard = markup?.kind === 'inline' ? markup.keyboard : undefined;
	const {reply_markup: _buttons, ...rest} = next;
	const hasButtons = keyboard !== undefined && keyboard.inline_keyboard.length > 0;
	const changed: ChatMessage = hasButtons ? {...rest, reply_markup: keyboard} : rest;
	if (visible(changed) === visible(old)) throw badRequest(notModified);
	const edited = {...changed, edit_date: Math.floor(call.core.clock.now() / 1000)};
	replaceMessage(call.core, edited);
	return edited;
}

function visible(message: ChatMessage): string {
	const {text, entities, caption, caption_entities, reply_markup} = message;
	return JSON.stringify([text, entities, caption, caption_entities, reply_markup?.inline_keyboard ?? []]);
}
