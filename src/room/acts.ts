import type {Core} from './core.ts';
import {nextNumber} from './core.ts';
import type {NewFile} from './files.ts';
import {keepDocument, keepPhoto} from './files.ts';
import {entitiesTyped} from './format.ts';
import {imageSize} from './image-size.ts';
import * as limits from './limits.ts';
import type {Chat, ChatMessage, MessageContent} from './message.ts';
import {addMessage, asReplied, findMessage, replaceMessage} from './messages.ts';
import type {Person} from './people.ts';
import {asUser, chatWithId, isBotIn, markStarted, personWithId} from './people.ts';
import {reachesBot} from './privacy.ts';
import {addUpdate} from './updates.ts';

/** Who does something, in which chat, and to which message it replies. */
export type Place = {
	readonly person: Person;
	readonly chat: number;
	readonly replyTo?: number | undefined;
};

/** What a person's deed led to; without an `updateId` the bot does not hear of it. */
export type SentUpdate = {readonly messageId: number; readonly updateId: number | undefined};

/** A message the bot should not be surprised by, standing in for the real thing. */
export type StandIn = 'sticker' | 'voice' | 'video';

/** Sends a text of 1 to 4096 characters; throws when it is empty, too long or the bot is blocked. */
export function say(core: Core, place: Place, text: string): SentUpdate {
	const tidy = text.trim();
	if (tidy === '' || tidy.length > limits.textMax) {
		throw new Error(`Expected a text of 1 to ${limits.textMax} characters; got ${tidy.length}`);
	}
	return send(core, place, withEntities(tidy));
}

/** Follows a link to the bot that carries a code; throws when no link could carry it. */
export function openLinkToBot(core: Core, person: Person, payload: string): SentUpdate {
	if (!limits.startPayload.test(payload)) {
		throw new Error(`Expected a code of 1 to 64 letters, digits, "_" or "-"; got "${payload}"`);
	}
	return say(core, {person, chat: person.id}, `/start ${payload}`);
}

/** Sends photos: one alone, or up to ten as an album with the caption on the first. */
export function showPhotos(core: Core, place: Place, sent: Album): readonly SentUpdate[] {
	return core.db.together(() => {
		const album = sent.photos.length > 1 ? {media_group_id: newAlbum(core)} : {};
		return sent.photos.map((bytes, index) => {
			// A real app refuses what is no picture; here anything goes, so that the bot can be surprised.
			const photo = keepPhoto(core, bytes, imageSize(bytes) ?? {width: 640, height: 480});
			return send(core, place, {photo, ...album, ...captioned(index === 0 ? sent.caption : undefined)});
		});
	});
}

/** Photos in one go, with the words under the first. */
export type Album = {readonly photos: readonly Uint8Array[]; readonly caption?: string | undefined};

/** Sends a file as it is, bytes untouched. */
export function giveFile(core: Core, place: Place, file: NewFile & {readonly caption?: string}): SentUpdate {
	return core.db.together(() =>
		send(core, place, {document: keepDocument(core, file), ...captioned(file.caption)}),
	);
}

/** A place on the map; `accuracyM` is the radius of uncertainty in metres. */
export type Pin = {
	readonly latitude: number;
	readonly longitude: number;
	readonly accuracyM?: number | undefined;
};

/** Sends a place on the map; throws when it is not on the globe. */
export function pin(core: Core, place: Place, at: Pin): SentUpdate {
	const accuracy = at.accuracyM === undefined ? {} : {horizontal_accuracy: at.accuracyM};
	const isOnGlobe = Math.abs(at.latitude) <= 90 && Math.abs(at.longitude) <= 180;
	if (!isOnGlobe || (at.accuracyM ?? 0) < 0 || (at.accuracyM ?? 0) > limits.accuracyMaxM) {
		throw new Error(
			`Expected a latitude of -90 to 90, a longitude of -180 to 180 and 0 to ${limits.accuracyMaxM} m; got ${at.latitude}, ${at.longitude}, ${at.accuracyM}`,
		);
	}
	return send(core, place, {location: {latitude: at.latitude, longitude: at.longitude, ...accuracy}});
}

/** Sends a sticker, voice message or video with nothing in it. */
export function sendStandIn(core: Core, place: Place, kind: StandIn): SentUpdate {
	const id = nextNumber(core, 'file', 1);
	const file = {file_id: `room-${kind}-${id}`, file_unique_id: `${kind}${id}`, file_size: 1000};
	const square = {width: 512, height: 512};
	if (kind === 'voice') return send(core, place, {voice: {...file, duration: 3, mime_type: 'audio/ogg'}});
	if (kind === 'video')
		return send(core, place, {video: {...file, ...square, duration: 3, mime_type: 'video/mp4'}});
	const sticker = {...file, ...square, type: 'regular', is_animated: false, is_video: false, emoji: '🐚'};
	return send(core, place, {sticker});
}

/** Changes the words of a person's own message; throws when it is not theirs or has none. */
export function editOwn(core: Core, place: Place & {readonly messageId: number}, text: string): SentUpdate {
	const old = findMessage(core, place.chat, place.messageId)?.message;
	if (old === undefined || old.from.id !== place.person.id) {
		throw new Error(`Expected message ${place.messageId} to be one of ${place.person.name}'s; it is not`);
	}
	const words =
		old.text === undefined ? {...without(old), ...captioned(text)} : {...without(old), ...withEntities(text)};
	const message = {...words, edit_date: Math.floor(core.clock.now() / 1000)};
	return core.db.together(() => {
		replaceMessage(core, message);
		return {messageId: message.message_id, updateId: tell(core, message, 'edited_message')};
	});
}

function send(core: Core, place: Place, content: MessageContent): SentUpdate {
	const chat = chatWithId(core, place.chat);
	if (chat === undefined) throw new Error(`Expected a chat with id ${place.chat}; there is none`);
	if (chat.type === 'private' && chat.id !== place.person.id) {
		throw new Error(`Expected ${place.person.name} to write in a chat of their own; got ${place.chat}`);
	}
	if (chat.type === 'private' && personWithId(core, chat.id)?.blocked === true) {
		throw new Error(`Expected ${place.person.name} to unblock the bot before writing to it`);
	}
	return core.db.together(() => {
		if (chat.type === 'private') markStarted(core, place.person.id);
		const message = addMessage(core, {
			chat,
			from: asUser(place.person),
			content: {...replied(core, chat, place.replyTo), ...content},
		});
		return {messageId: message.message_id, updateId: tell(core, message, 'message')};
	});
}

function tell(core: Core, message: ChatMessage, kind: 'message' | 'edited_message'): number | undefined {
	const chat = message.chat.id;
	if (message.chat.type === 'supergroup' && !(isBotIn(core, chat) && reachesBot(message))) return undefined;
	return addUpdate(core, chat, kind === 'message' ? {message} : {edited_message: message});
}

function replied(core: Core, chat: Chat, id: number | undefined): MessageContent {
	if (id === undefined) return {};
	const message = findMessage(core, chat.id, id)?.message;
	if (message === undefined)
		throw new Error(`Expected message ${id} to reply to in chat ${chat.id}; it is gone`);
	return {reply_to_message: asReplied(message)};
}

function newAlbum(core: Core): string {
	return String(nextNumber(core, 'album', 1));
}

function withEntities(text: string): MessageContent {
	const entities = entitiesTyped(text);
	return entities.length === 0 ? {text} : {text, entities: [...entities]};
}

function captioned(text: string | undefined): MessageContent {
	const tidy = text?.trim() ?? '';
	if (tidy === '') return {};
	if (tidy.length > limits.captionMax) {
		throw new Error(`Expected a caption of up to ${limits.captionMax} characters; got ${tidy.length}`);
	}
	const entities = entitiesTyped(tidy);
	return entities.length === 0 ? {caption: tidy} : {caption: tidy, caption_entities: [...entities]};
}

function without(message: ChatMessage): ChatMessage {
	const {
		text: _text,
		entities: _marks,
		caption: _caption,
		caption_entities: _captionMarks,
		...rest
	} = message;
	return rest;
}
