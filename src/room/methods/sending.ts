import {z} from 'zod';
import {numberField} from '../body.ts';
import {messageText} from '../format.ts';
import * as limits from '../limits.ts';
import type {ChatMessage} from '../message.ts';
import {addMessage} from '../messages.ts';
import {bot} from '../people.ts';
import {badRequest} from '../refusal.ts';
import type {Call} from './call.ts';
import {chatToWriteTo, markedShape, openTarget, parameters} from './call.ts';

const textSchema = z.object({text: z.string().default(''), ...markedShape});
const locationSchema = z.object({
	latitude: numberField.min(-90).max(90),
	longitude: numberField.min(-180).max(180),
	horizontal_accuracy: numberField.min(0).max(limits.accuracyMaxM).optional(),
});
const actionSchema = z.object({chat_id: numberField, action: z.string()});

const actionNames = [
	'typing',
	'upload_photo',
	'record_video',
	'upload_video',
	'record_voice',
	'upload_voice',
	'upload_document',
	'choose_sticker',
	'find_location',
	'record_video_note',
	'upload_video_note',
];

/** Puts a text from the bot into a chat. */
export function sendMessage(call: Call): ChatMessage {
	const target = openTarget(call);
	const fields = parameters(call, textSchema);
	const {text, entities} = messageText(call.core, {
		text: fields.text,
		parseMode: fields.parse_mode,
		entities: fields.entities,
	});
	const marked = entities.length === 0 ? {} : {entities: [...entities]};
	const content = {...target.reply, text, ...marked};
	return addMessage(call.core, {chat: target.chat, from: bot, content, markup: target.markup});
}

/** Puts a place on the map into a chat. */
export function sendLocation(call: Call): ChatMessage {
	const target = openTarget(call);
	const location = parameters(call, locationSchema);
	const content = {...target.reply, location};
	return addMessage(call.core, {chat: target.chat, from: bot, content, markup: target.markup});
}

/** Says that the bot is busy; the room checks it and shows nothing. */
export function sendChatAction(call: Call): true {
	const fields = parameters(call, actionSchema);
	chatToWriteTo(call.core, fields.chat_id);
	if (!actionNames.includes(fields.action)) throw badRequest('wrong parameter action in request');
	return true;
}
