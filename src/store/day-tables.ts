/** The tables of survey days and of telling people, as code sees them. */
import type {Generated} from 'kysely';

type DayTable = {
	id: Generated<number>;
	/** Names the day for ever, in calendars too. */
	uuid: string;
	/** What the link on a poster carries. */
	code: string;
	/** The coordinator; nobody once that person is forgotten. */
	person: number | null;
	region: string;
	state: 'planned' | 'published' | 'cancelled';
	/** JSON, read through `planSchema`, while it is being planned or changed. */
	plan: string | null;
	turn: number;
	/** JSON, read through `daySchema`: the day as people were told. */
	body: string | null;
	/** Raised with every change that people are told. */
	sequence: Generated<number>;
	startsAt: number | null;
	endsAt: number | null;
	/** When the coordinator was asked to send the result. */
	askedForResultAt: number | null;
	createdAt: number;
	changedAt: number;
};

/** Who said whether they come to a day. */
type GuestTable = {
	day: number;
	person: number;
	/** Where they said it, and hear more. */
	chat: number;
	answer: 'coming' | 'perhaps' | 'cannot';
	/** How many they are, themselves among them. */
	party: number;
	isTold: 0 | 1;
	answeredAt: number;
};

/** Who asked to be told of days: of a coast, near a spot, or by one coordinator. */
type AudienceTable = {
	id: Generated<number>;
	chat: number;
	person: number;
	kind: 'coast' | 'near' | 'coordinator';
	region: string | null;
	coordinator: number | null;
	latitude: number | null;
	longitude: number | null;
	createdAt: number;
};

/** One thing to be told to many, now or at its hour. */
type BroadcastTable = {
	id: Generated<number>;
	day: number;
	kind: 'announced' | 'evening' | 'soon' | 'changed' | 'cancelled' | 'result';
	/** The lowest goes first. */
	urgency: number;
	state: 'waiting' | 'gathering' | 'running' | 'paused' | 'stopped' | 'done';
	dueAt: number;
	/** From then on it is told to nobody. */
	uselessAt: number;
	/** JSON: the day as it is told, and what else goes into the words. */
	body: string;
	/** How far the list of deliveries is made. */
	gathered: Generated<number>;
	/** The message that shows the coordinator how far it is. */
	progressRow: number | null;
	progressAt: number | null;
	createdAt: number;
};

/** One message of a broadcast to one chat: the ledger. */
type DeliveryTable = {
	id: Generated<number>;
	broadcast: number;
	chat: number;
	/** Whose language and clock it is told by. */
	person: number | null;
	/** `unknown` was under way when the program died, and is not repeated; `useless` came too late to be of use. */
	state: 'waiting' | 'sending' | 'sent' | 'unknown' | 'failed' | 'gone' | 'stopped' | 'useless';
	/** When it was meant to be heard. */
	hearsAt: number;
	notBefore: number;
	attempts: Generated<number>;
	sentAt: number | null;
};

/** Every table of survey days by name. */
export type DayTables = {
	day: DayTable;
	guest: GuestTable;
	audience: AudienceTable;
	broadcast: BroadcastTable;
	delivery: DeliveryTable;
};
