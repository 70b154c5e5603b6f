/** A room, a database and a way to send, for tests of one piece of the clockwork; nothing runs by itself. */
import {join} from 'node:path';
import {Api} from 'grammy';
import {onTestFinished} from 'vitest';
import type {Drawer} from '../../src/clockwork/drawer.ts';
import {openOutbox} from '../../src/clockwork/outbox.ts';
import {openPictures} from '../../src/clockwork/pictures.ts';
import type {Call} from '../../src/store/call.ts';
import {chatFor} from '../../src/store/chats.ts';
import {openStore} from '../../src/store/open.ts';
import {type Posting, post} from '../../src/store/outbox.ts';
import {newFile} from '../record/kept.ts';
import {scene, stillClock} from '../room/scene.ts';
import {quickDrawer, testPictureMs} from '../support/drawer.ts';

export type Line = Readonly<Record<string, unknown>>;

/** Who draws, and how long words wait for it. */
type Drawing = {readonly drawer?: Pick<Drawer, 'draw'>; readonly patienceMs?: number};

/** Everything at hand, with Ada and Ben in chats of their own. */
export async function deskScene({drawer: given, patienceMs = testPictureMs}: Drawing = {}) {
	const clock = stillClock();
	const {room, folder} = await scene({clock});
	const db = await openStore(newFile());
	onTestFinished(() => db.destroy());
	const api = new Api(room.token, {apiRoot: room.url});
	const lines: Line[] = [];
	const log = (line: Line) => void lines.push(line);
	const photoFolder = join(folder, 'photos');
	const drawer = given ?? quickDrawer(photoFolder);
	const parcelFolder = join(folder, 'parcels');
	const pictures = openPictures({db, drawer, photoFolder, log, patienceMs});
	const outbox = openOutbox({db, api, now: clock.now, pictures, parcelFolder, log}, () => undefined);
	const enter = async (name: string) => {
		const person = room.person(name);
		person.sends('/start');
		const seen = {platformId: person.id, kind: 'private' as const, now: clock.now()};
		const chat = await db.transaction().execute(tx => chatFor(tx, seen));
		return {person, chat: chat.id};
	};
	return {
		room,
		db,
		api,
		clock,
		lines,
		log,
		photoFolder,
		parcelFolder,
		outbox,
		ada: await enter('Ada'),
		ben: await enter('Ben'),
		/** Puts a call in the queue of a chat. */
		put: (chat: number, call: Call, more: Partial<Posting> = {}) =>
			db.transaction().execute(tx => post(tx, {chat, call, role: 'say', now: clock.now(), ...more})),
		/** Sends whatever may go now. */
		pump: async () => {
			while (await outbox.send()) await outbox.drained();
		},
		/** What the bot said to a person, oldest first. */
		said: (person: {readonly id: number}) =>
			room
				.messages(person.id)
				.filter(({from}) => from === 'bot')
				.map(({text}) => text),
		states: async () =>
			(await db.selectFrom('outbox').select('state').orderBy('id').execute()).map(({state}) => state),
	};
}

/** A message of a few words, with whatever goes with it. */
export function say(
	html: string,
	more: Partial<Extract<Call, {kind: 'send'}>> = {},
): Extract<Call, {kind: 'send'}> {
	return {kind: 'send', html, keyboard: [], ...more};
}
