/** What every handler has at hand: the open transaction, who is speaking, and how things are put in words. */
import type {Context} from 'grammy';
import type {Flow} from '../find/flow.ts';
import type {Call} from '../store/call.ts';
import type {Chat} from '../store/chats.ts';
import {type OutboxRole, post} from '../store/outbox.ts';
import type {Person} from '../store/people.ts';
import type {Db, Tx} from '../store/schema.ts';
import type {Sitter} from '../store/seats.ts';
import type {Tides} from '../survey/tides.ts';
import type {Texts} from '../text/text.ts';
import {escaped, type Reader} from './words.ts';

/** A region with its sentences. */
export type Shelf = {readonly flow: Flow; readonly texts: Texts};

/** What the bot is built from, once. */
export type House = {
	readonly db: Db;
	readonly shelves: ReadonlyMap<string, Shelf>;
	readonly region: string;
	readonly zone: string;
	readonly now: () => number;
	readonly newUuid: () => string;
	/** A code that nobody can guess, of letters that a link may hold. */
	readonly newCode: () => string;
	/** A link that opens the private chat and brings a code; nothing where the platform has no links. */
	readonly startLink: (code: string) => string | undefined;
	/** Tells the clockwork that something waits. */
	readonly wake: () => void;
	readonly isForwarding: boolean;
	/** Platform id of the chat in which verifiers see new drafts. */
	readonly verifiersChat: number | undefined;
	/** What a typed low water is held against, where the keeper wants that. */
	readonly tides: Tides | undefined;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
};

/** One update being handled, or one reminder. */
export type Desk = {
	readonly house: House;
	readonly tx: Tx;
	readonly now: number;
	readonly chat: Chat;
	readonly person: Person;
	/** How the person is addressed in a group; never stored with a record. */
	readonly name: string | undefined;
	readonly thread: number | undefined;
	/** Nobody known speaks: the desk is the find's owner's, who did not move. */
	readonly isUnnamed?: true;
};

/** An update as grammY hands it on, with the desk that the transaction laid out for it. */
export type Ctx = Context & {desk: Desk};

/** The default region, or the one of a find; throws when its folder is gone. */
export function shelfOf(house: Pick<House, 'shelves' | 'region'>, region: string): Shelf {
	const shelf = house.shelves.get(region) ?? house.shelves.get(house.region);
	if (!shelf)
		throw new Error(
			`Expected region "${house.region}" under flows/; there are ${[...house.shelves.keys()].join(', ')}`,
		);
	return shelf;
}

/** The region a person chose or was last on the shore of, else the keeper's. */
export function regionOf({house, person}: Desk): string {
	return person.region ?? house.region;
}

/** Who speaks, and in which chat. */
export function sitterAt({chat, person}: Desk): Sitter {
	return {chat: chat.id, person: person.id};
}

/** The person's language and clock. */
export function readerAt(desk: Desk, region = regionOf(desk)): Reader {
	return {
		say: shelfOf(desk.house, region).texts.in(desk.person.language),
		zone: desk.person.zone ?? desk.house.zone,
		now: desk.now,
	};
}

/** Puts a call in the queue of the chat. */
export async function postHere(
	desk: Desk,
	call: Call,
	about: {role: OutboxRole; find?: number; turn?: number; notBefore?: number},
): Promise<void> {
	const isMessage = call.kind === 'send' || call.kind === 'document';
	const threaded = isMessage && desk.thread !== undefined ? {...call, thread: desk.thread} : call;
	await post(desk.tx, {chat: desk.chat.id, call: threaded, now: desk.now, ...about});
}

/** Says something that is no question, with buttons if there are any. */
export async function sayHere(
	desk: Desk,
	text: string,
	keyboard: Extract<Call, {kind: 'send'}>['keyboard'] = [],
): Promise<void> {
	await postHere(desk, {kind: 'send', html: escaped(text), keyboard}, {role: 'say'});
}
