import type {SentUpdate} from './acts.ts';
import * as acts from './acts.ts';
import type {Core} from './core.ts';
import {joinGroup, leaveGroup, setBlocked} from './membership.ts';
import type {Chat} from './message.ts';
import type {Person} from './people.ts';
import {asUser, chatWithId, personNamed} from './people.ts';
import {pressButton} from './press.ts';

/** Where something is sent and what it replies to; without a chat, to the bot in private. */
export type Sending = {readonly chat?: number; readonly replyTo?: number};
/** How a photo is sent: as a photo, or as a file whose bytes stay untouched. */
export type PhotoSending = Sending & {
	readonly caption?: string;
	readonly asFile?: boolean;
	readonly fileName?: string;
	readonly mimeType?: string;
};
/** Which button's message a press is on. */
export type Pressing = {readonly chat?: number; readonly messageId: number; readonly inaccessible?: boolean};

/** A person in the room, moved by a test; every deed throws when no app would let a person do it. */
export type RoomPerson = {
	readonly id: number;
	readonly name: string;
	readonly sends: (text: string, options?: Sending) => SentUpdate;
	/** Follows a link to the bot that carries a code. */
	readonly opens: (payload: string) => SentUpdate;
	readonly photo: (bytes: Uint8Array, options?: PhotoSending) => SentUpdate;
	readonly album: (
		photos: readonly Uint8Array[],
		options?: Sending & {readonly caption?: string},
	) => readonly SentUpdate[];
	readonly location: (
		latitude: number,
		longitude: number,
		options?: Sending & {readonly accuracyM?: number},
	) => SentUpdate;
	readonly sticker: (options?: Sending) => SentUpdate;
	readonly voice: (options?: Sending) => SentUpdate;
	readonly video: (options?: Sending) => SentUpdate;
	readonly edits: (messageId: number, text: string, options?: Sending) => SentUpdate;
	readonly presses: (data: string, options: Pressing) => SentUpdate & {readonly queryId: string};
	readonly blocks: () => void;
	readonly unblocks: () => void;
	readonly removesBot: (group: number) => void;
	readonly addsBot: (group: number) => void;
};

/** The person of that name, made on first use. */
export function roomPerson(core: Core, name: string): RoomPerson {
	const person = personNamed(core, name);
	const place = (options: Sending = {}): acts.Place => placeOf(person, options);
	return {
		id: person.id,
		name: person.name,
		sends: (text, options) => acts.say(core, place(options), text),
		opens: payload => acts.openLinkToBot(core, person, payload),
		photo: (bytes, options = {}) => sendPicture(core, person, {bytes, options}),
		album: (photos, options = {}) =>
			acts.showPhotos(core, place(options), {photos, caption: options.caption}),
		location: (latitude, longitude, options = {}) =>
			acts.pin(core, place(options), {latitude, longitude, accuracyM: options.accuracyM}),
		sticker: options => acts.sendStandIn(core, place(options), 'sticker'),
		voice: options => acts.sendStandIn(core, place(options), 'voice'),
		video: options => acts.sendStandIn(core, place(options), 'video'),
		edits: (messageId, text, options) => acts.editOwn(core, {...place(options), messageId}, text),
		presses: (data, options) => pressButton(core, place(options), {...options, data}),
		blocks: () => {
			setBlocked(core, asUser(person), true);
		},
		unblocks: () => {
			setBlocked(core, asUser(person), false);
		},
		removesBot: group => {
			leaveGroup(core, chatOrThrow(core, group), asUser(person));
		},
		addsBot: group => {
			joinGroup(core, chatOrThrow(core, group), asUser(person));
		},
	};
}

type Picture = {readonly bytes: Uint8Array; readonly options: PhotoSending};

function sendPicture(core: Core, person: Person, {bytes, options}: Picture): SentUpdate {
	const place = placeOf(person, options);
	if (options.asFile === true) {
		const caption = options.caption === undefined ? {} : {caption: options.caption};
		const name = options.fileName ?? 'photo.jpg';
		return acts.giveFile(core, place, {bytes, name, mime: options.mimeType ?? 'image/jpeg', ...caption});
	}
	const [sent] = acts.showPhotos(core, place, {photos: [bytes], caption: options.caption});
	if (sent === undefined) throw new Error('Expected one photo to give one message; it gave none');
	return sent;
}

function placeOf(person: Person, options: Sending): acts.Place {
	return {person, chat: options.chat ?? person.id, replyTo: options.replyTo};
}

function chatOrThrow(core: Core, id: number): Chat {
	const chat = chatWithId(core, id);
	if (chat === undefined) throw new Error(`Expected a group with id ${id}; there is none`);
	return chat;
}
