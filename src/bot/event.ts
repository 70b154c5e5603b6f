/** An update turned into an event for a find. */
import type {Message, MessageEntity} from 'grammy/types';
import type {FindEvent} from '../find/events.ts';

/** A photo or picture file to be fetched. */
export type Incoming = {readonly fileId: string; readonly fileUniqueId: string};

/** The most bytes a bot may fetch (platform-limits.json, get_file). */
const mostBytes = 20_000_000;

/** A picture in a message, why it cannot be taken, or nothing when there is none. */
export function pictureIn(
	message: Message,
): Incoming | {readonly refused: 'large' | 'heic' | 'file'} | undefined {
	// The last size is the largest that the platform keeps.
	const photo = message.photo?.at(-1);
	if (photo) return {fileId: photo.file_id, fileUniqueId: photo.file_unique_id};
	const file = message.document;
	if (!file) return undefined;
	const type = file.mime_type ?? '';
	if (/hei[cf]/.test(type) || /\.hei[cf]$/i.test(file.file_name ?? '')) return {refused: 'heic'};
	if (!/^image\/(jpeg|png|webp|tiff)$/.test(type)) return {refused: 'file'};
	if ((file.file_size ?? 0) > mostBytes) return {refused: 'large'};
	return {fileId: file.file_id, fileUniqueId: file.file_unique_id};
}

/** What a message without picture or command says to a find. */
export function eventIn(message: Message): FindEvent {
	if (message.location) {
		const {latitude, longitude, horizontal_accuracy: accuracyM} = message.location;
		return {kind: 'pin', latitude, longitude, accuracyM};
	}
	if (message.venue) {
		const {latitude, longitude} = message.venue.location;
		return {kind: 'pin', latitude, longitude};
	}
	// Commands win over answers, also those that nobody knows (bot-practice 26).
	if (message.entities?.some(isCommandAtStart)) return {kind: 'odd', what: 'command'};
	if (message.text !== undefined) return {kind: 'text', text: message.text};
	return {kind: 'odd', what: oddKind(message)};
}

function isCommandAtStart({type, offset}: MessageEntity): boolean {
	return type === 'bot_command' && offset === 0;
}

function oddKind(message: Message): string {
	if (message.voice ?? message.audio ?? message.video_note) return 'voice';
	if (message.video ?? message.animation) return 'video';
	return message.sticker ? 'sticker' : 'other';
}
