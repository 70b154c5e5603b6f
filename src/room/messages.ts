import {z} from 'zod';
import type {Core} from './core.ts';
import {nextChange, nextNumber} from './core.ts';
import type {ReplyMarkup} from './markup.ts';
import {replyMarkupSchema} from './markup.ts';
import type {Chat, ChatMessage, MessageContent, User} from './message.ts';
import {chatMessageSchema} from './message.ts';

const messageRow = z.object({
	at: z.number(),
	changed: z.number(),
	gone: z.number(),
	body: z.string(),
	markup: z.string().nullable(),
});
const columns = 'at, changed, gone, body, markup';

/** A message as it is kept: with its exact time (UTC milliseconds) and the keyboard that came with it. */
export type KeptMessage = {
	readonly message: ChatMessage;
	readonly at: number;
	readonly changed: number;
	readonly gone: boolean;
	readonly markup: ReplyMarkup | undefined;
};

/** A message on its way into a chat. */
export type NewMessage = {
	readonly chat: Chat;
	readonly from: User;
	readonly content: MessageContent;
	readonly markup?: ReplyMarkup | undefined;
};

/** Puts a message into its chat, under the chat's next number, and gives it back as the platform shows it. */
export function addMessage(core: Core, draft: NewMessage): ChatMessage {
	const at = core.clock.now();
	const inline = draft.markup?.kind === 'inline' ? {reply_markup: draft.markup.keyboard} : {};
	const message: ChatMessage = {
		message_id: nextNumber(core, `message ${draft.chat.id}`, 1),
		date: Math.floor(at / 1000),
		chat: draft.chat,
		from: draft.from,
		...draft.content,
		...inline,
	};
	core.db.run(
		'insert into message (chat, id, at, changed, body, markup) values (?, ?, ?, ?, ?, ?)',
		draft.chat.id,
		message.message_id,
		at,
		nextChange(core),
		JSON.stringify(message),
		draft.markup === undefined ? undefined : JSON.stringify(draft.markup),
	);
	core.changes.tell();
	return message;
}

/** The message with that number, unless it was deleted or never was. */
export function findMessage(core: Core, chat: number, id: number): KeptMessage | undefined {
	const sql = `select ${columns} from message where chat = ? and id = ? and gone = 0`;
	const row = core.db.one(messageRow, sql, chat, id);
	return row === undefined ? undefined : fromRow(row);
}

/** Writes a changed message over the old one. */
export function replaceMessage(core: Core, message: ChatMessage): void {
	const sql = 'update message set body = ?, changed = ? where chat = ? and id = ?';
	core.db.run(sql, JSON.stringify(message), nextChange(core), message.chat.id, message.message_id);
	core.changes.tell();
}

/** Takes a message out of its chat. */
export function removeMessage(core: Core, chat: number, id: number): void {
	core.db.run(
		'update message set gone = 1, changed = ? where chat = ? and id = ?',
		nextChange(core),
		chat,
		id,
	);
	core.changes.tell();
}

/** The messages of a chat, oldest first. */
export function messagesIn(core: Core, chat: number): readonly KeptMessage[] {
	const sql = `select ${columns} from message where chat = ? and gone = 0 order by id`;
	return core.db.all(messageRow, sql, chat).map(fromRow);
}

/** The messages of a chat that are new, changed or gone since a change number. */
export function messagesChanged(core: Core, chat: number, since: number): readonly KeptMessage[] {
	const sql = `select ${columns} from message where chat = ? and changed > ? order by id`;
	return core.db.all(messageRow, sql, chat, since).map(fromRow);
}

/** A message as it stands inside a reply to it: without what it replied to itself. */
export function asReplied(message: ChatMessage): Omit<ChatMessage, 'reply_to_message'> {
	const {reply_to_message: _inner, ...bare} = message;
	return bare;
}

function fromRow(row: z.infer<typeof messageRow>): KeptMessage {
	return {
		message: chatMessageSchema.parse(JSON.parse(row.body)),
		at: row.at,
		changed: row.changed,
		gone: row.gone === 1,
		markup: row.markup === null ? undefined : replyMarkupSchema.parse(JSON.parse(row.markup)),
	};
}
