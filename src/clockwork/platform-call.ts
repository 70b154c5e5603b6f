/** One row of the outbox as a call to the platform. */
import {basename} from 'node:path';
import {type Api, GrammyError, InputFile, InputMediaBuilder} from 'grammy';
import type {InlineKeyboardMarkup, Message, ReplyKeyboardMarkup} from 'grammy/types';
import type {Call, Keyboard} from '../store/call.ts';
import {judge} from './judge.ts';

/** A picture to go with a message: its bytes, or the platform's id of the same picture sent before. */
export type Picture = {readonly bytes: Uint8Array; readonly name: string} | {readonly fileId: string};

/** One call to the platform, with the chat it goes to and what it needs on the way. */
export type Sending = {
	readonly api: Api;
	readonly platformId: number;
	readonly call: Call;
	/** The message that an edit changes. */
	readonly target?: {readonly messageId: number; readonly isPhoto: boolean} | undefined;
	readonly picture?: Picture | undefined;
	/** What stands in an album. */
	readonly pictures?: readonly Picture[];
	/** The path of the file that a document carries. */
	readonly document?: string | undefined;
	/** Hears the platform's id of a picture once it has one. */
	readonly onFileId?: (fileId: string) => void;
	readonly attempts: number;
};

/** The most characters of a caption (platform-limits.json, caption). */
const mostInCaption = 1024;
/** Makes the call; the number of the message that it sent or changed, if any. Throws as grammY does. */
export async function makeCall(sending: Sending): Promise<number | undefined> {
	const {api, call, target} = sending;
	switch (call.kind) {
		case 'answer':
			await api.answerCallbackQuery(call.callback, call.text === undefined ? {} : {text: call.text});
			return undefined;
		case 'commands':
			await listCommands(sending, call);
			return undefined;
		case 'document':
			return (await sendFile(sending, call)).message_id;
		case 'edit':
			if (!target) return undefined;
			await editMessage(sending, call, target);
			return target.messageId;
		case 'send':
			return (await sendMessage(sending, call)).message_id;
		case 'album':
			return sendAlbum(sending, call);
	}
}

async function sendFile(
	{api, platformId, document}: Sending,
	call: Extract<Call, {kind: 'document'}>,
): Promise<Message> {
	if (document === undefined) throw new Error('Expected the path of the file that a document carries');
	return api.sendDocument(platformId, new InputFile(document, basename(document)), {
		caption: call.html,
		parse_mode: 'HTML',
		...(call.thread === undefined ? {} : {message_thread_id: call.thread}),
	});
}

async function listCommands(
	{api, platformId}: Sending,
	{list}: Extract<Call, {kind: 'commands'}>,
): Promise<void> {
	const scope = {type: 'chat', chat_id: platformId} as const;
	if (list.length === 0) await api.deleteMyCommands({scope});
	else await api.setMyCommands(list, {scope});
}

async function editMessage(
	{api, platformId}: Sending,
	call: Extract<Call, {kind: 'edit'}>,
	{messageId, isPhoto}: NonNullable<Sending['target']>,
): Promise<void> {
	const markup = {parse_mode: 'HTML', reply_markup: inline(call.keyboard)} as const;
	if (isPhoto) {
		try {
			await api.editMessageCaption(platformId, messageId, {caption: call.html, ...markup});
			return;
		} catch (error) {
			// Its picture may have been refused, or its words too long for a caption; then it went as text.
			if (!(error instanceof GrammyError) || !mayBeText(error)) throw error;
		}
	}
	await api.editMessageText(platformId, messageId, call.html, markup);
}

async function sendAlbum(
	{api, platformId, pictures = []}: Sending,
	{html}: Extract<Call, {kind: 'album'}>,
): Promise<number | undefined> {
	const [first, ...others] = pictures.map(sourceOf);
	const caption = {caption: html, parse_mode: 'HTML'} as const;
	try {
		if (!first) return undefined;
		if (others.length === 0) return (await api.sendPhoto(platformId, first, caption)).message_id;
		const media = [first, ...others].map((source, index) =>
			InputMediaBuilder.photo(source, index === 0 ? caption : {}),
		);
		return (await api.sendMediaGroup(platformId, media))[0]?.message_id;
	} catch (error) {
		// The words that follow tell the most of it; they may not wait for pictures that are refused.
		if (!(error instanceof GrammyError) || !isPictureTrouble(error.error_code)) throw error;
		return undefined;
	}
}

function sourceOf(picture: Picture): string | InputFile {
	return 'fileId' in picture ? picture.fileId : new InputFile(picture.bytes, picture.name);
}

async function sendMessage(sending: Sending, call: Extract<Call, {kind: 'send'}>): Promise<Message> {
	const {api, platformId, picture} = sending;
	const options = {
		parse_mode: 'HTML' as const,
		...markupOf(call),
		...(call.replyTo === undefined
			? {}
			: {reply_parameters: {message_id: call.replyTo, allow_sending_without_reply: true}}),
		...(call.thread === undefined ? {} : {message_thread_id: call.thread}),
	};
	const fits = fitsCaption(call.html);
	if (fits && picture) {
		try {
			const sent = await api.sendPhoto(platformId, sourceOf(picture), {caption: call.html, ...options});
			const fileId = sent.photo.at(-1)?.file_id;
			if (fileId !== undefined) sending.onFileId?.(fileId);
			return sent;
		} catch (error) {
			// Its words have gone before it, so there is nothing to be said without it.
			if (call.follows === true) throw error;
			// A picture that is not taken, for whatever reason of its own, never costs the person the question.
			if (!(error instanceof GrammyError) || !isPictureTrouble(error.error_code)) throw error;
		}
	} else if (fits && call.attachment) {
		const {name, text} = call.attachment;
		try {
			const file = new InputFile(new TextEncoder().encode(text), name);
			return await api.sendDocument(platformId, file, {caption: call.html, ...options});
		} catch (error) {
			// Only where the file itself is refused: after a failure the words may have arrived with it.
			if (!(error instanceof GrammyError) || error.error_code !== 400 || judge(error).kind !== 'refused')
				throw error;
		}
	}
	// Words too long for a caption come after their picture, so that their buttons stand last.
	if (!fits && picture && call.alone !== undefined) await sendBefore(sending, {picture, words: call.alone});
	return api.sendMessage(platformId, call.html, {...options, link_preview_options: {is_disabled: true}});
}

/** A picture by itself; one that is not taken costs nobody the words that follow. */
async function sendBefore(
	{api, platformId, call, onFileId}: Sending,
	{picture, words}: {readonly picture: Picture; readonly words: string},
): Promise<void> {
	const thread = call.kind !== 'send' || call.thread === undefined ? {} : {message_thread_id: call.thread};
	try {
		const caption = {caption: words, parse_mode: 'HTML' as const, ...thread};
		const sent = await api.sendPhoto(platformId, sourceOf(picture), caption);
		const fileId = sent.photo.at(-1)?.file_id;
		if (fileId !== undefined) onFileId?.(fileId);
	} catch (error) {
		if (!(error instanceof GrammyError) || !isPictureTrouble(error.error_code)) throw error;
	}
}

/** The message has no caption, or the platform fails over captions as such. */
function mayBeText({error_code, description}: GrammyError): boolean {
	const isSaid = description?.includes('there is no caption') ?? false;
	return isSaid || (error_code !== 400 && isPictureTrouble(error_code));
}

/** Anything but too many requests and a chat that is gone, which would meet the words alike. */
function isPictureTrouble(code: number): boolean {
	return code !== 429 && code !== 403;
}

function markupOf(call: Extract<Call, {kind: 'send'}>) {
	if (call.keyboard.length > 0) return {reply_markup: inline(call.keyboard)};
	if (call.positionButton !== undefined) return {reply_markup: positionKeyboard(call.positionButton)};
	return call.forceReply === true ? {reply_markup: {force_reply: true as const, selective: true}} : {};
}

function positionKeyboard(text: string): ReplyKeyboardMarkup {
	return {keyboard: [[{text, request_location: true}]], one_time_keyboard: true, resize_keyboard: true};
}

function inline(keyboard: Keyboard): InlineKeyboardMarkup {
	return {inline_keyboard: keyboard.map(row => row.map(({text, data}) => ({text, callback_data: data})))};
}

/** Whether these words, in HTML, may stand under a picture. */
export function fitsCaption(html: string): boolean {
	return lengthShown(html) <= mostInCaption;
}

/** Characters once markup and entities are taken out. */
function lengthShown(html: string): number {
	return html.replace(/<[^>]*>/g, '').replace(/&(?:lt|gt|amp|quot);/g, '.').length;
}
