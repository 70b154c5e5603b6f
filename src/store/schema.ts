/** The tables as code sees them; `snake_case` on disk is the plugin's doing in `open.ts`. */
import type {Generated, Kysely, Transaction} from 'kysely';

/** A chat of our own; the platform's ids for it stand in `chatAddress`. */
type ChatTable = {
	id: Generated<number>;
	kind: 'private' | 'group';
	/** When the chat was found blocked, left or deleted. */
	goneAt: number | null;
	createdAt: number;
};

type ChatAddressTable = {platformId: number; chat: number};

type PersonTable = {
	id: Generated<number>;
	platformId: number;
	language: string | null;
	/** The zone a person chose, or the one of the last place they named. */
	zone: string | null;
	isZoneChosen: 0 | 1;
	/** The region a person chose, or the one of the last place they named. */
	region: string | null;
	welcomedAt: number | null;
	/** The name a person chose for published records; never the one of their account. */
	publicName: string | null;
	/** Side in metres of the square in which published records hide a person's places. */
	coarseM: number | null;
	createdAt: number;
};

/** Which find a person's words in a chat go to. */
type SeatTable = {chat: number; person: number; find: number | null};

type FindTable = {
	id: Generated<number>;
	/** Names the find for ever, here and wherever it is sent. */
	uuid: string;
	chat: number;
	person: number;
	region: string;
	turn: number;
	/** JSON, read through `trailSchema`. */
	trail: string;
	state: 'open' | 'soaking' | 'kept' | 'thrown' | 'not-a-case';
	/** The find that began the bowl this one lies in. */
	bowl: number | null;
	/** The topic of a group in which it is spoken of. */
	thread: number | null;
	createdAt: number;
	changedAt: number;
};

type ReminderTable = {
	id: Generated<number>;
	find: number;
	dueAt: number;
	zone: string;
	doneAt: number | null;
};

type InboxTable = {updateId: number; receivedAt: number};

/** Updates that made us throw: kept for the keeper, never tried again. */
type AsideTable = {updateId: number; error: string; at: number};

type OutboxTable = {
	id: Generated<number>;
	chat: number;
	/** `quick` rows overtake the others: answers to button presses. */
	lane: 'quick' | 'chat' | 'picture';
	find: number | null;
	turn: number | null;
	role: 'ask' | 'refresh' | 'close' | 'say' | 'file';
	/** JSON of a call of our own, see `bot/screen.ts`. */
	content: string;
	notBefore: number;
	state: 'waiting' | 'sending' | 'sent' | 'unknown' | 'failed';
	attempts: Generated<number>;
	messageId: number | null;
	createdAt: number;
	sentAt: number | null;
};

type PhotoTable = {
	id: Generated<number>;
	find: number;
	fileId: string;
	fileUniqueId: string;
	state: 'wanted' | 'kept' | 'failed';
	/** SHA-256 of the cleaned picture, its name on disk. */
	hash: string | null;
	sizeBytes: number | null;
	attempts: Generated<number>;
	notBefore: number;
	createdAt: number;
};

/** Stored photos whose file is to be erased from disk. */
type ErasingTable = {hash: string};

type DraftTable = {
	find: number;
	uuid: string;
	person: number;
	status: 'draft' | 'withdrawn';
	/** JSON, read through `draftSchema`. */
	body: string;
	version: number;
	savedAt: number;
	changedAt: number;
};

type ForwardTable = {
	id: Generated<number>;
	/** The record's uuid; messages of one record keep their order. */
	record: string;
	version: number;
	/** Stays the same over all tries, so that the receiver can drop repeats. */
	webhookId: string;
	body: string;
	state: 'waiting' | 'sent' | 'dead';
	attempts: Generated<number>;
	notBefore: number;
	lastError: string | null;
	createdAt: number;
	sentAt: number | null;
};

/** Every table by name. */
export type Tables = {
	chat: ChatTable;
	chatAddress: ChatAddressTable;
	person: PersonTable;
	seat: SeatTable;
	find: FindTable;
	reminder: ReminderTable;
	inbox: InboxTable;
	aside: AsideTable;
	outbox: OutboxTable;
	photo: PhotoTable;
	erasing: ErasingTable;
	draft: DraftTable;
	forward: ForwardTable;
};

/** The open database. */
export type Db = Kysely<Tables>;

/** The database inside one transaction. */
export type Tx = Transaction<Tables>;
