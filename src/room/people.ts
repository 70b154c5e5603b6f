import {z} from 'zod';
import type {Core} from './core.ts';
import {nextNumber} from './core.ts';
import type {Chat, User} from './message.ts';

/** The bot as the room knows it. */
export const bot = {
	id: 900001,
	is_bot: true,
	first_name: 'Pursekey',
	username: 'pursekey_bot',
} as const satisfies User;

/** The two groups that every person may enter. */
export const groups = [
	{id: -1001000000001, title: 'Beach walk'},
	{id: -1001000000002, title: 'Checking table'},
] as const;

const firstPersonId = 700001;
const personRow = z.object({id: z.number(), name: z.string(), started: z.number(), blocked: z.number()});
const groupRow = z.object({id: z.number(), title: z.string(), bot_in: z.number()});

/** Someone in the room; `started` says whether the bot may write first, `blocked` that it may not write at all. */
export type Person = {
	readonly id: number;
	readonly name: string;
	readonly started: boolean;
	readonly blocked: boolean;
};

/** Makes the two groups when the room is new. */
export function makeGroups(core: Core): void {
	for (const group of groups) {
		core.db.run('insert or ignore into room_group (id, title) values (?, ?)', group.id, group.title);
	}
}

/** The person of that name, made on first use; throws when the name is empty or longer than 64 characters. */
export function personNamed(core: Core, name: string): Person {
	const tidy = name.trim();
	if (tidy === '' || tidy.length > 64)
		throw new Error(`Expected a name of 1 to 64 characters; got "${name}"`);
	const found = core.db.one(personRow, 'select id, name, started, blocked from person where name = ?', tidy);
	if (found !== undefined) return fromRow(found);
	const id = nextNumber(core, 'person', firstPersonId);
	core.db.run('insert into person (id, name) values (?, ?)', id, tidy);
	return {id, name: tidy, started: false, blocked: false};
}

/** The person with that id, if there is one. */
export function personWithId(core: Core, id: number): Person | undefined {
	const row = core.db.one(personRow, 'select id, name, started, blocked from person where id = ?', id);
	return row === undefined ? undefined : fromRow(row);
}

/** Everyone who has been in the room, first come first. */
export function everyone(core: Core): readonly Person[] {
	return core.db.all(personRow, 'select id, name, started, blocked from person order by id').map(fromRow);
}

/** Notes that a person has written to the bot in private. */
export function markStarted(core: Core, person: number): void {
	core.db.run('update person set started = 1 where id = ?', person);
}

/** Notes that a person blocks the bot, or does so no longer. */
export function markBlocked(core: Core, person: number, blocked: boolean): void {
	core.db.run('update person set blocked = ? where id = ?', blocked ? 1 : 0, person);
	core.changes.tell();
}

/** Whether the bot is a member of a group. */
export function isBotIn(core: Core, group: number): boolean {
	return core.db.one(groupRow, 'select id, title, bot_in from room_group where id = ?', group)?.bot_in === 1;
}

/** Notes that the bot is in a group, or no longer. */
export function markBotIn(core: Core, group: number, isIn: boolean): void {
	core.db.run('update room_group set bot_in = ? where id = ?', isIn ? 1 : 0, group);
	core.changes.tell();
}

/** A person as the platform names them to a bot. */
export function asUser(person: Person): User {
	return {id: person.id, is_bot: false, first_name: person.name, language_code: 'en'};
}

/** The chat with that id: a group, or a person's private chat with the bot. */
export function chatWithId(core: Core, id: number): Chat | undefined {
	const group = core.db.one(groupRow, 'select id, title, bot_in from room_group where id = ?', id);
	if (group !== undefined) return {id: group.id, type: 'supergroup', title: group.title};
	const person = personWithId(core, id);
	return person === undefined ? undefined : {id: person.id, type: 'private', first_name: person.name};
}

function fromRow(row: z.infer<typeof personRow>): Person {
	return {id: row.id, name: row.name, started: row.started === 1, blocked: row.blocked === 1};
}
