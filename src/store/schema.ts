/** The tables as code sees them, a long list in one place; `snake_case` on disk is the plugin's doing in `open.ts`. */
import type {Generated, Kysely, Transaction} from 'kysely';
import type {DayTables} from './day-tables.ts';

/** A chat of our own; the platform's ids for it stand in `chatAddress`. */
type ChatTable = {
	id: Generated<number>;
	kind: 'private' | 'group';
	/** When the chat was found blocked, left or deleted. */
	goneAt: number | null;
	/** When its person asked to be forgotten: it goes once the last words are sent. */
	forgottenAt: number | null;
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
	/** What they said of the print of their measuring sheet, and when. */
	sheetPrint: Generated<'exact' | 'wrong' | 'unsure' | null>;
	sheetPrintAt: Generated<number | null>;
	createdAt: number;
};

/** What a person's words in a chat go to. */
type SeatTable = {
	chat: number;
	person: number;
	find: number | null;
	/** What they were asked for that is no find; it goes before the find. */
	ear: 'plan' | 'place' | null;
	/** The day that is planned. */
	day: number | null;
};

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
	/** 1 when nobody else in its group may answer for it. */
	isOwnersAlone: Generated<0 | 1>;
	/** With which others it was sorted out of a bowl. */
	sorting: Generated<number | null>;
	createdAt: number;
	changedAt: number;
	/** When its finder was told that it will not be kept unfinished. */
	warnedAt: number | null;
};

/** Cases sorted one after another in a chat. */
type SortingTable = {id: Generated<number>; chat: number; begunAt: number; endedAt: number | null};

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
	role: 'ask' | 'refresh' | 'close' | 'say' | 'file' | 'commands' | 'prompt';
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
	/** The platform's id of the album it came in. */
	album: Generated<string | null>;
	state: 'wanted' | 'kept' | 'failed';
	/** A size is to be read from it as soon as it is fetched. */
	measures: Generated<0 | 1>;
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
	/** The square, side in metres, in which somebody who was forgotten wanted it hidden. */
	coarseM: number | null;
};

/** What somebody asked for and the clockwork makes: files, totals. */
type ParcelTable = {
	id: Generated<number>;
	chat: number;
	person: number;
	thread: number | null;
	/** JSON, read through `parcelSchema`. */
	wanted: string;
	attempts: Generated<number>;
	notBefore: number;
	createdAt: number;
};

type ForwardTable = {
	id: Generated<number>;
	/** The record's uuid; messages of one record keep their order. */
	record: string;
	version: number;
	/** Stays the same over all tries, so that the receiver can drop repeats. */
	webhookId: string;
	body: string;
	/** `overtaken`: given up, and a later message of the same record was heard. */
	state: 'waiting' | 'sent' | 'dead' | 'overtaken';
	attempts: Generated<number>;
	notBefore: number;
	lastError: string | null;
	createdAt: number;
	sentAt: number | null;
};

/** Who may do what besides looking at finds of their own. */
type RoleTable = {
	person: number;
	role: 'owner' | 'coordinator' | 'verifier';
	/** Nobody for whoever claimed the program. */
	grantedBy: number | null;
	grantedAt: number;
};

/** A role offered to whoever brings the code; only its hash is kept. */
type InvitationTable = {
	/** SHA-256 of the code in hex. */
	hash: string;
	role: RoleTable['role'];
	/** Nobody for the code with which the program is claimed. */
	invitedBy: number | null;
	createdAt: number;
	/** Absent where it holds until it is used. */
	expiresAt: number | null;
	usedBy: number | null;
	usedAt: number | null;
};

/** A draft that waits for a verifier, or was looked at. */
type ReviewTable = {
	find: number;
	isUnusual: 0 | 1;
	since: number;
	claimedBy: Generated<number | null>;
	claimedAt: Generated<number | null>;
	/** Its finder was asked something: it is not offered to others before. */
	restsUntil: Generated<number | null>;
	decidedAt: Generated<number | null>;
};

/** What a verifier said of a draft; never changed, only followed by another. */
type DecisionTable = {
	id: Generated<number>;
	find: number;
	/** Nobody once that person is forgotten. */
	person: number | null;
	at: number;
	/** The version of the draft that was looked at. */
	version: number;
	outcome: 'agreed' | 'other-name' | 'higher-rank' | 'not-an-egg-case';
	/** Scientific name of another kind, or of a genus or family. */
	name: string | null;
	reason: string | null;
	/** The reason in the verifier's own words. */
	words: string | null;
};

/** A question of a verifier to the finder, or the answer to one. */
type LetterTable = {
	id: Generated<number>;
	find: number;
	person: number | null;
	/** The question that this answers. */
	answers: number | null;
	at: number;
	words: string | null;
	/** Id of a photo of the find that came as the answer. */
	photo: number | null;
};

/** Every table by name. */
export type Tables = {
	chat: ChatTable;
	chatAddress: ChatAddressTable;
	person: PersonTable;
	seat: SeatTable;
	find: FindTable;
	sorting: SortingTable;
	reminder: ReminderTable;
	inbox: InboxTable;
	aside: AsideTable;
	outbox: OutboxTable;
	photo: PhotoTable;
	erasing: ErasingTable;
	draft: DraftTable;
	parcel: ParcelTable;
	forward: ForwardTable;
	role: RoleTable;
	invitation: InvitationTable;
	review: ReviewTable;
	decision: DecisionTable;
	letter: LetterTable;
} & DayTables;

/** The open database. */
export type Db = Kysely<Tables>;

/** The database inside one transaction. */
export type Tx = Transaction<Tables>;
