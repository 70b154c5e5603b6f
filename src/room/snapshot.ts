import type {Core} from './core.ts';
import {fileWithId} from './files.ts';
import type {ChatMessage, Entity} from './message.ts';
import type {KeptMessage} from './messages.ts';
import {bot} from './people.ts';

/** A button under a message; `data` is empty for one that opens a link or copies. */
export type RoomButton = {
	readonly text: string;
	readonly data: string;
	readonly url?: string;
	readonly copies?: string;
};

/** A button of a keyboard that lies below the text box. */
export type RoomKey = {readonly text: string; readonly requestLocation: boolean};

/** A message as a person sees it; `at` is UTC milliseconds, `from` is "bot" or a person's name. */
export type RoomMessage = {
	readonly chat: number;
	readonly id: number;
	readonly from: string;
	readonly fromId: number;
	readonly text: string;
	readonly entities: readonly Entity[];
	readonly photo?: {readonly fileId: string; readonly width: number; readonly height: number};
	readonly document?: {
		readonly fileId: string;
		readonly fileName: string;
		readonly mimeType: string;
		readonly sizeBytes: number;
	};
	readonly location?: {
		readonly latitude: number;
		readonly longitude: number;
		readonly accuracyM: number | undefined;
	};
	readonly standIn?: 'sticker' | 'voice' | 'video';
	readonly service?: 'joined' | 'left';
	readonly album?: string;
	readonly replyTo?: number;
	readonly buttons: readonly (readonly RoomButton[])[];
	readonly keyboard?: readonly (readonly RoomKey[])[];
	readonly removesKeyboard: boolean;
	readonly forceReply: boolean;
	readonly placeholder?: string;
	readonly edited: boolean;
	readonly at: number;
};

/** A kept message as a person sees it. */
export function snapshot(core: Core, kept: KeptMessage): RoomMessage {
	const {message, markup} = kept;
	const placeholder = markup !== undefined && 'placeholder' in markup ? markup.placeholder : undefined;
	return {
		chat: message.chat.id,
		id: message.message_id,
		from: message.from.id === bot.id ? 'bot' : message.from.first_name,
		fromId: message.from.id,
		text: message.text ?? message.caption ?? '',
		entities: message.entities ?? message.caption_entities ?? [],
		...shown(core, message),
		...(message.media_group_id === undefined ? {} : {album: message.media_group_id}),
		...(message.reply_to_message === undefined ? {} : {replyTo: message.reply_to_message.message_id}),
		buttons: buttonsOf(message),
		...(markup?.kind === 'keyboard' ? {keyboard: markup.rows} : {}),
		removesKeyboard: markup?.kind === 'remove',
		forceReply: markup?.kind === 'force',
		...(placeholder === undefined ? {} : {placeholder}),
		edited: message.edit_date !== undefined,
		at: kept.at,
	};
}

function buttonsOf(message: ChatMessage): readonly (readonly RoomButton[])[] {
	return (message.reply_markup?.inline_keyboard ?? []).map(row =>
		row.map(button => ({
			text: button.text,
			data: button.callback_data ?? '',
			...(button.url === undefined ? {} : {url: button.url}),
			...(button.copy_text === undefined ? {} : {copies: button.copy_text.text}),
		})),
	);
}

function shown(core: Core, message: ChatMessage): Partial<RoomMessage> {
	const photo = message.photo?.at(-1);
	if (photo !== undefined) return {photo: {fileId: photo.file_id, width: photo.width, height: photo.height}};
	const file = message.document === undefined ? undefined : fileWithId(core, message.document.file_id);
	if (file !== undefined) {
		const fileName = file.name ?? 'file';
		const mimeType = file.mime ?? 'application/octet-stream';
		return {document: {fileId: file.id, fileName, mimeType, sizeBytes: file.sizeBytes}};
	}
	if (message.location !== undefined) {
		const {latitude, longitude, horizontal_accuracy: accuracyM} = message.location;
		return {location: {latitude, longitude, accuracyM}};
	}
	if (message.sticker !== undefined) return {standIn: 'sticker'};
	if (message.voice !== undefined) return {standIn: 'voice'};
	if (message.video !== undefined) return {standIn: 'video'};
	if (message.new_chat_members !== undefined) return {service: 'joined'};
	return message.left_chat_member === undefined ? {} : {service: 'left'};
}
