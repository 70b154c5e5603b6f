import {z} from 'zod';
import type {Core} from './core.ts';
import {nextNumber, readSetting, writeSetting} from './core.ts';
import type {ChatMessage, User} from './message.ts';

const pendingRow = z.object({seq: z.number(), update_id: z.number(), chat: z.number(), body: z.string()});
const countRow = z.object({count: z.number()});
const chatRow = z.object({chat: z.number()});
const lastSchema = z.object({id: z.number(), chat: z.number(), body: z.string()});
const columns = 'seq, update_id, chat, body';
const firstUpdateId = 100000001;
const notByDefault = ['chat_member', 'message_reaction', 'message_reaction_count'];

type Membership = {readonly status: 'member' | 'left' | 'kicked'};

/** What happened, in the platform's words. */
export type UpdateContent =
	| {readonly message: ChatMessage}
	| {readonly edited_message: ChatMessage}
	| {readonly callback_query: PressedButton}
	| {readonly my_chat_member: MembershipChange};

/** A press of a button as the bot hears of it. */
export type PressedButton = {
	readonly id: string;
	readonly from: User;
	readonly chat_instance: string;
	readonly data: string;
	readonly message: ChatMessage | (Pick<ChatMessage, 'chat' | 'message_id'> & {readonly date: 0});
};

/** The bot's own coming and going in a chat. */
export type MembershipChange = Pick<ChatMessage, 'chat' | 'from' | 'date'> & {
	readonly old_chat_member: Membership & {readonly user: User};
	readonly new_chat_member: Membership & {readonly user: User};
};

/** An update that waits; `body` is its JSON. */
export type Waiting = {
	readonly seq: number;
	readonly updateId: number;
	readonly chat: number;
	readonly body: string;
};

/** Queues an update and gives its id; undefined when the bot does not ask for that kind. */
export function addUpdate(core: Core, chat: number, content: UpdateContent): number | undefined {
	const kind = Object.keys(content)[0] ?? '';
	const allowed = readSetting(core, 'allowed_updates', z.array(z.string())) ?? [];
	const isWanted = allowed.length === 0 ? !notByDefault.includes(kind) : allowed.includes(kind);
	if (!isWanted) return undefined;
	const id = nextNumber(core, 'update', firstUpdateId);
	const last = {id, chat, body: JSON.stringify({update_id: id, ...content})};
	writeSetting(core, 'last_update', last);
	insert(core, last, false);
	if (isDeliveringTwice(core)) insert(core, last, true);
	return id;
}

/** Queues the newest update once more, under the same id, as the platform may; false when there was none. */
export function repeatLastUpdate(core: Core): boolean {
	const last = readSetting(core, 'last_update', lastSchema);
	if (last !== undefined) insert(core, last, true);
	return last !== undefined;
}

/** Whether every update comes two times. */
export function isDeliveringTwice(core: Core): boolean {
	return readSetting(core, 'deliver_twice', z.boolean()) ?? false;
}

/** Updates that wait, in order, up to `limit`. */
export function waitingUpdates(core: Core, limit: number): readonly Waiting[] {
	const sql = `select ${columns} from pending order by update_id, seq limit ?`;
	return core.db.all(pendingRow, sql, limit).map(fromRow);
}

/** The update of one chat that is next in order. */
export function nextUpdateOf(core: Core, chat: number): Waiting | undefined {
	const sql = `select ${columns} from pending where chat = ? order by update_id, seq limit 1`;
	const row = core.db.one(pendingRow, sql, chat);
	return row === undefined ? undefined : fromRow(row);
}

/** The chats for which something waits. */
export function chatsWaiting(core: Core): readonly number[] {
	return core.db.all(chatRow, 'select distinct chat from pending').map(row => row.chat);
}

/** How many deliveries wait. */
export function waitingCount(core: Core): number {
	return core.db.one(countRow, 'select count(*) as count from pending')?.count ?? 0;
}

/** Notes that updates were handed out, without taking them off the list. */
export function markDelivered(core: Core, updates: readonly Waiting[]): void {
	for (const update of updates) core.db.run('update pending set delivered = 1 where seq = ?', update.seq);
}

/** Takes one delivered update off the list. */
export function dropUpdate(core: Core, seq: number): void {
	core.db.run('delete from pending where seq = ?', seq);
	core.changes.tell();
}

/** Takes all updates off the list. */
export function dropAllUpdates(core: Core): void {
	core.db.run('delete from pending');
	core.changes.tell();
}

/** Takes what an offset confirms off the list; a negative offset keeps only that many of the newest. */
export function confirmUpdates(core: Core, offset: number): void {
	// A second delivery comes after its first was confirmed, so it stays until it was handed out itself.
	const below = 'delete from pending where update_id < ? and (again = 0 or delivered = 1)';
	const allButNewest =
		'delete from pending where seq not in (select seq from pending order by update_id desc, seq desc limit ?)';
	const gone = offset < 0 ? core.db.run(allButNewest, -offset) : core.db.run(below, offset);
	if (gone > 0) core.changes.tell();
}

function insert(core: Core, update: z.infer<typeof lastSchema>, again: boolean): void {
	const sql = 'insert into pending (update_id, chat, body, again) values (?, ?, ?, ?)';
	core.db.run(sql, update.id, update.chat, update.body, again ? 1 : 0);
	core.changes.tell();
}

function fromRow(row: z.infer<typeof pendingRow>): Waiting {
	return {seq: row.seq, updateId: row.update_id, chat: row.chat, body: row.body};
}
