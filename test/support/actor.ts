/** The people of a journey: what they do in the room, and what they see of the bot. */
import type {Room, RoomClock, RoomMessage} from '../../src/room/server.ts';
import type {Db} from '../../src/store/schema.ts';

/** How a journey is made harder. */
export type Mode = 'plain' | 'delivered twice' | 'restarted after each update' | 'two at once in a group';

/** What all people of a journey share. */
export type World = {
	readonly mode: Mode;
	readonly room: Room;
	readonly clock: RoomClock;
	readonly db: Db;
	readonly restart: () => Promise<void>;
	readonly settle: () => Promise<void>;
};

export type Actor = ReturnType<typeof actorIn>;

/** A person who writes, presses and sends, and looks at what came back. */
export function actorIn(world: World, name: string, group?: number, meanwhile?: () => Promise<void>) {
	const {room} = world;
	const person = room.person(name);
	const chat = group ?? person.id;
	const heard = () =>
		room.messages(chat).filter(message => message.from === 'bot' && isFor(message, name, group));
	const last = (): RoomMessage => {
		const message = heard().at(-1);
		if (!message) throw new Error(`Expected a message of the bot for ${name}; there is none`);
		return message;
	};
	/** A card that came after its words has no buttons: those of the words are pressed. */
	const asking = (): RoomMessage => {
		const isCard = ({photo, buttons}: RoomMessage) => photo !== undefined && buttons.length === 0;
		return isCard(last()) ? (heard().findLast(message => !isCard(message)) ?? last()) : last();
	};
	// In a group only a reply to the bot's message reaches it.
	const replying = () => (group === undefined ? {} : {chat: group, replyTo: last().id});
	const done = async () => {
		await world.settle();
		if (world.mode === 'restarted after each update') {
			await world.restart();
			await world.settle();
		}
		await meanwhile?.();
	};
	const deed = async (act: () => unknown) => {
		act();
		await done();
	};
	return {
		id: person.id,
		chat,
		room: person,
		get sees(): RoomMessage {
			return last();
		},
		get all(): readonly RoomMessage[] {
			return heard();
		},
		labels: () =>
			last()
				.buttons.flat()
				.map(button => button.text),
		sends: (text: string) =>
			deed(() => person.sends(text, text.startsWith('/') ? {chat} : {chat, ...replying()})),
		photo: (bytes: Uint8Array, options: {asFile?: boolean; fileName?: string; mimeType?: string} = {}) =>
			deed(() => person.photo(bytes, {chat, ...replying(), ...options})),
		album: (photos: readonly Uint8Array[]) => deed(() => person.album(photos, {chat, ...replying()})),
		location: (latitude: number, longitude: number, accuracyM?: number) =>
			deed(() =>
				person.location(latitude, longitude, {
					chat,
					...replying(),
					...(accuracyM === undefined ? {} : {accuracyM}),
				}),
			),
		/** Sends what no question takes. */
		odd: (what: 'sticker' | 'voice' | 'video') => deed(() => person[what]({chat, ...replying()})),
		/** Changes the person's own last message. */
		edits: (text: string) =>
			deed(() => {
				const own = room.messages(chat).findLast(message => message.fromId === person.id);
				if (!own) throw new Error(`Expected a message of ${name}'s to change; there is none`);
				person.edits(own.id, text, {chat});
			}),
		/** Sends callback data that no button need have, as clients can. */
		makesUp: (data: string) => deed(() => person.presses(data, {chat, messageId: last().id})),
		deed,
		/** Presses the button with this label on the last message, or on an older one. */
		presses: (label: string, {on = asking()}: {on?: RoomMessage} = {}) => {
			const data = dataOf(on, label);
			return deed(() => person.presses(data, {chat, messageId: on.id}));
		},
	};
}

/** What the button with this label carries; throws when the message has none. */
export function dataOf(message: RoomMessage, label: string): string {
	const buttons = message.buttons.flat();
	// The letter that an option has in its picture need not be known.
	const button = buttons.find(({text}) => {
		const bare = text.replace(/^[A-D]\u2002/, '');
		return text === label || bare === label || bare.startsWith(`${label} `);
	});
	if (button) return button.data;
	const labels = buttons.map(({text}) => text).join(' | ');
	throw new Error(`Expected a button "${label}" under "${message.text.slice(0, 80)}"; it has ${labels}`);
}

/** In a group every question begins with the name of whom it is for. */
function isFor(message: RoomMessage, name: string, group: number | undefined): boolean {
	return (
		group === undefined ||
		message.text.startsWith(`${name}, no. `) ||
		!/^(?:Ada|Ben|Cato|Dora), no\. /.test(message.text)
	);
}
