import {z} from 'zod';
import type {Core} from './core.ts';

const listSchema = z.array(z.object({command: z.string(), description: z.string()}));
const bodyRow = z.object({body: z.string()});
const chatId = z.coerce.number();

/** For whom a list of commands is meant. */
export const scopeSchema = z.discriminatedUnion('type', [
	z.object({type: z.literal('default')}),
	z.object({type: z.literal('all_private_chats')}),
	z.object({type: z.literal('all_group_chats')}),
	z.object({type: z.literal('all_chat_administrators')}),
	z.object({type: z.literal('chat'), chat_id: chatId}),
	z.object({type: z.literal('chat_administrators'), chat_id: chatId}),
	z.object({type: z.literal('chat_member'), chat_id: chatId, user_id: chatId}),
]);

/** Commands with a word on each. */
export type CommandList = z.infer<typeof listSchema>;
type Place = {readonly scope: string; readonly language: string};

/** A scope written as one word, to keep its list under. */
export function scopeKey(scope: z.infer<typeof scopeSchema>): string {
	const chat = 'chat_id' in scope ? ` ${scope.chat_id}` : '';
	const person = 'user_id' in scope ? ` ${scope.user_id}` : '';
	return `${scope.type}${chat}${person}`;
}

/** Keeps the list of one scope and language. */
export function keepCommands(core: Core, place: Place, list: CommandList): void {
	const sql =
		'insert into command_list (scope, language, body) values (?, ?, ?) on conflict (scope, language) do update set body = excluded.body';
	core.db.run(sql, place.scope, place.language, JSON.stringify(list));
	core.changes.tell();
}

/** Forgets the list of one scope and language. */
export function dropCommands(core: Core, place: Place): void {
	core.db.run('delete from command_list where scope = ? and language = ?', place.scope, place.language);
	core.changes.tell();
}

/** The list kept for exactly that scope and language. */
export function commandsFor(core: Core, place: Place): CommandList | undefined {
	const sql = 'select body from command_list where scope = ? and language = ?';
	const row = core.db.one(bodyRow, sql, place.scope, place.language);
	return row === undefined ? undefined : listSchema.parse(JSON.parse(row.body));
}

/** The list a person sees in a chat: the narrowest there is, each with the language first. */
export function commandsSeen(core: Core, chat: number, person: number): CommandList {
	const scopes = [
		`chat_member ${chat} ${person}`,
		`chat ${chat}`,
		chat < 0 ? 'all_group_chats' : 'all_private_chats',
		'default',
	];
	for (const scope of scopes) {
		for (const language of ['en', '']) {
			const found = commandsFor(core, {scope, language});
			if (found !== undefined) return found;
		}
	}
	return [];
}
