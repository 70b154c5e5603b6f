/** People who help, as tests need them: with a role from the start, and the commands that their chat lists. */
import {sql} from 'kysely';
import {vi} from 'vitest';
import {z} from 'zod';
import type {Room} from '../../src/room/server.ts';
import {grantRole, type Role} from '../../src/store/roles.ts';
import type {Db} from '../../src/store/schema.ts';
import type {Actor} from './actor.ts';

const listSchema = z.object({result: z.array(z.object({command: z.string()}))});

/** Writes to the bot once and has a role from then on. */
export async function trust(db: Db, person: Actor, role: Role): Promise<void> {
	await person.sends('/start');
	const granted = {person: await idOf(db, person), role, now: 1};
	// The program writes in this very thread: waiting inside SQLite would keep it from ever coming to an end.
	await sql`pragma busy_timeout = 0`.execute(db);
	await vi.waitFor(() => grantRole(db, granted), 10_000);
	await sql`pragma busy_timeout = 5000`.execute(db);
}

/** Our own id of a person. */
export async function idOf(db: Db, {id}: Actor): Promise<number> {
	const row = db.selectFrom('person').select('id').where('platformId', '=', id);
	return (await row.executeTakeFirstOrThrow()).id;
}

/** The commands that the platform lists in a person's private chat, none when it has no list of its own. */
export async function commandsListed(room: Room, {id}: Actor): Promise<readonly string[]> {
	const scope = encodeURIComponent(JSON.stringify({type: 'chat', chat_id: id}));
	const answer = await fetch(`${room.url}/bot${room.token}/getMyCommands?scope=${scope}`);
	const {result} = listSchema.parse(await answer.json());
	return result.map(({command}) => command);
}

/** The code in the last message of the bot. */
export function codeIn(person: Actor): string {
	const [, code] = /\/start ([\w-]+)$/.exec(person.sees.text) ?? [];
	if (code === undefined) throw new Error(`Expected a code to be passed on; got "${person.sees.text}"`);
	return code;
}
