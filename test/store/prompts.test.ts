import {sql} from 'kysely';
import {expect, test} from 'vitest';
import {chatFor} from '../../src/store/chats.ts';
import {openStore} from '../../src/store/open.ts';
import {type OutboxRole, post} from '../../src/store/outbox.ts';
import {expectedLast, expectedOf} from '../../src/store/prompts.ts';
import type {Db, Tx} from '../../src/store/schema.ts';
import {newFile} from '../record/kept.ts';

const within = <T>(db: Db, work: (tx: Tx) => Promise<T>): Promise<T> => db.transaction().execute(work);

async function chatAndDb() {
	const db = await openStore(newFile());
	const chat = await within(db, tx => chatFor(tx, {platformId: 7, kind: 'private', now: 1}));
	const says = (role: OutboxRole, expects?: string) =>
		within(db, tx =>
			post(tx, {
				chat: chat.id,
				role,
				call: {kind: 'send', html: 'x', keyboard: [], ...(expects === undefined ? {} : {expects})},
				now: 1,
			}),
		);
	return {db, chat: chat.id, says, last: () => within(db, tx => expectedLast(tx, chat.id))};
}

test('only the last words in a chat are answered without a reply', async () => {
	const {says, last} = await chatAndDb();
	expect(await last()).toBeUndefined();
	await says('prompt', 'm.a');
	expect(await last()).toBe('m.a');
	await says('commands');
	expect(await last()).toBe('m.a');
	await says('say');
	expect(await last()).toBeUndefined();
	await says('prompt', 'm.b');
	expect(await last()).toBe('m.b');
});

test('a reply is known by the message it answers, however old', async () => {
	const {db, chat, says} = await chatAndDb();
	await says('prompt', 'm.a');
	await says('say', 'm.b');
	await db.updateTable('outbox').set({messageId: sql`id + 100`}).execute();
	const replied = (messageId: number) => within(db, tx => expectedOf(tx, {chat, messageId}));
	expect(await replied(101)).toBe('m.a');
	expect(await replied(102)).toBeUndefined();
	expect(await replied(103)).toBeUndefined();
});

test('looking for what was asked last reads the prompts of the chat alone', async () => {
	const {db} = await chatAndDb();
	const plan = await sql<{detail: string}>`
		explain query plan select id, content from outbox where chat = ${1} and role = 'prompt' order by id desc limit 1
	`.execute(db);
	expect(plan.rows.map(({detail}) => detail).join()).toContain('outbox_prompt');
});
