import {expect, test} from 'vitest';
import type {Call} from '../../src/store/call.ts';
import {chatFor} from '../../src/store/chats.ts';
import {
	findOfMessage,
	forgetMessages,
	forgetOldMessages,
	giveUp,
	markSending,
	markSent,
	messageOfRow,
	nextToSend,
	type Posting,
	post,
	postpone,
	recoverSending,
	rowsOfTurn,
	takeBackQuestions,
} from '../../src/store/outbox.ts';
import type {Db, Tx} from '../../src/store/schema.ts';
import {storeWithFinds} from '../record/kept.ts';

const within = <T>(db: Db, work: (tx: Tx) => Promise<T>): Promise<T> => db.transaction().execute(work);
const send = (html: string): Call => ({kind: 'send', html, keyboard: []});
const answer: Call = {kind: 'answer', callback: '77'};

/** Posts one row and gives its number. */
async function put(db: Db, posting: Partial<Posting> & {call: Call}): Promise<number> {
	await within(db, tx => post(tx, {chat: 1, role: 'say', now: 1, ...posting}));
	const {id} = await db
		.selectFrom('outbox')
		.select(({fn}) => fn.max('id').as('id'))
		.executeTakeFirstOrThrow();
	return id;
}

async function next(db: Db, ask: {now?: number; busy?: readonly number[]; limit?: number} = {}) {
	const {now = 1, busy = [], limit = 8} = ask;
	return (await nextToSend(db, {now, busy: new Set(busy), limit})).map(({id}) => id);
}

async function twoChats(finds = 1): Promise<Db> {
	const db = await storeWithFinds(finds);
	await within(db, tx => chatFor(tx, {platformId: 1, kind: 'private', now: 1}));
	return db;
}

test('one row of each chat goes at a time, in the order it was written', async () => {
	const db = await twoChats();
	const first = await put(db, {call: send('one')});
	const second = await put(db, {call: send('two')});
	const other = await put(db, {call: send('three'), chat: 2});
	expect(await next(db)).toEqual([first, other]);
	await markSending(db, first);
	expect(await next(db)).toEqual([other]);
	await markSent(db, {id: first, messageId: 5, now: 2});
	expect(await next(db)).toEqual([second, other]);
	expect(await next(db, {busy: [1]})).toEqual([other]);
	expect(await next(db, {limit: 1})).toEqual([second]);
});

test('what is put off holds back all that stands behind it in its chat', async () => {
	const db = await twoChats();
	const first = await put(db, {call: send('one')});
	const second = await put(db, {call: send('two')});
	const other = await put(db, {call: send('three'), chat: 2});
	await markSending(db, first);
	await postpone(db, {id: first, notBefore: 500});
	expect(await next(db, {now: 499})).toEqual([other]);
	expect(await next(db, {now: 500})).toEqual([first, other]);
	await giveUp(db, first);
	expect(await next(db)).toEqual([second, other]);
});

test('the answer to a press overtakes all that waits in its chat', async () => {
	const db = await twoChats();
	const question = await put(db, {call: send('one'), notBefore: 900});
	const quick = await put(db, {call: answer});
	expect(await next(db, {busy: [1]})).toEqual([quick]);
	await markSending(db, quick);
	await markSent(db, {id: quick, messageId: undefined, now: 2});
	expect(await next(db, {now: 900})).toEqual([question]);
});

test('after a crash what was being sent waits again, and a press can still be answered', async () => {
	const db = await twoChats();
	const question = await put(db, {call: send('one')});
	const press = await put(db, {call: answer});
	const later = await put(db, {call: answer, chat: 2});
	for (const id of [question, press]) await markSending(db, id);
	expect(await next(db)).toEqual([later]);
	await recoverSending(db);
	expect(await next(db)).toEqual([press, later, question]);
	const [row] = await nextToSend(db, {now: 1, busy: new Set(), limit: 1});
	expect(row).toMatchObject({attempts: 1, call: answer});
});

test('a question that has not left is taken back, one that has stays', async () => {
	const db = await twoChats(2);
	const left = await put(db, {call: send('one'), role: 'ask', find: 1});
	await markSending(db, left);
	await put(db, {call: send('two'), role: 'ask', find: 1});
	const said = await put(db, {call: send('three'), find: 1});
	const others = await put(db, {call: send('four'), role: 'ask', find: 2});
	await within(db, tx => takeBackQuestions(tx, 1));
	const rows = await db.selectFrom('outbox').select('id').orderBy('id').execute();
	expect(rows.map(({id}) => id)).toEqual([left, said, others]);
});

test('the rows of a turn are those that showed it, newest first', async () => {
	const db = await twoChats();
	const ask = await put(db, {call: send('one'), role: 'ask', find: 1, turn: 3});
	const refresh: Call = {kind: 'edit', row: ask, html: 'one, marked', keyboard: []};
	const shown = await put(db, {call: refresh, role: 'refresh', find: 1, turn: 3});
	const lost = await put(db, {call: send('lost'), role: 'ask', find: 1, turn: 3});
	await giveUp(db, lost);
	await put(db, {call: send('next'), role: 'ask', find: 1, turn: 4});
	await put(db, {call: refresh, role: 'close', find: 1, turn: 3});
	const rows = await within(db, tx => rowsOfTurn(tx, {find: 1, turn: 3}));
	expect(rows.map(({id}) => id)).toEqual([shown, ask]);
});

test('an edit of an edit finds the message that was sent first', async () => {
	const db = await twoChats();
	const picture: Call = {
		kind: 'send',
		html: 'why',
		keyboard: [],
		picture: {kind: 'drawing', path: 'pictures/parts.svg'},
	};
	const shown = await put(db, {call: picture, role: 'ask'});
	expect(await messageOfRow(db, shown)).toBeUndefined();
	await markSent(db, {id: shown, messageId: 41, now: 2});
	const edit = await put(db, {
		call: {kind: 'edit', row: shown, html: 'changed', keyboard: []},
		role: 'refresh',
	});
	await markSent(db, {id: edit, messageId: 41, now: 3});
	expect(await messageOfRow(db, edit)).toMatchObject({messageId: 41, isPhoto: true});
});

test('a reply to any message of a find is about that find, in that chat alone', async () => {
	const db = await twoChats();
	const row = await put(db, {call: send('one'), find: 1});
	await markSent(db, {id: row, messageId: 41, now: 2});
	const about = (chat: number, messageId: number) => within(db, tx => findOfMessage(tx, {chat, messageId}));
	expect(await about(1, 41)).toBe(1);
	expect(await about(1, 42)).toBeUndefined();
	expect(await about(2, 41)).toBeUndefined();
});

test('what was said about a deleted find is forgotten, except what is just leaving', async () => {
	const db = await twoChats(2);
	const leaving = await put(db, {call: send('one'), find: 1});
	await markSending(db, leaving);
	await put(db, {call: send('two'), find: 1});
	const others = await put(db, {call: send('three'), find: 2});
	await within(db, tx => forgetMessages(tx, 1));
	const rows = await db.selectFrom('outbox').select('id').orderBy('id').execute();
	expect(rows.map(({id}) => id)).toEqual([leaving, others]);
});

test('after two months what was sent is forgotten, and what still waits is not', async () => {
	const db = await twoChats();
	const sent = await put(db, {call: send('one'), now: 0});
	await markSent(db, {id: sent, messageId: 1, now: 0});
	const failed = await put(db, {call: send('two'), now: 0});
	await giveUp(db, failed);
	const waiting = await put(db, {call: send('three'), now: 0});
	const twoMonthsMs = 60 * 24 * 3_600_000;
	const left = async () =>
		(await db.selectFrom('outbox').select('id').orderBy('id').execute()).map(({id}) => id);
	await forgetOldMessages(db, twoMonthsMs);
	expect(await left()).toEqual([sent, failed, waiting]);
	await forgetOldMessages(db, twoMonthsMs + 1);
	expect(await left()).toEqual([waiting]);
});

test('a message that could not be read again is refused when it is written', async () => {
	const db = await twoChats();
	const tooLong: Call = {kind: 'send', html: 'x', keyboard: [[{text: 'Yes', data: 'é'.repeat(65)}]]};
	for (const call of [tooLong, send(''), {...answer, text: 'x'.repeat(201)}]) {
		await expect(put(db, {call})).rejects.toThrow();
	}
	expect(await db.selectFrom('outbox').select('id').execute()).toEqual([]);
});

test('once sent, words that nobody will edit are forgotten, and a question keeps its own', async () => {
	const db = await twoChats();
	const said = await put(db, {call: send('Sennen')});
	const asked = await put(db, {call: send('How long?'), role: 'ask', find: 1, turn: 1});
	for (const id of [said, asked]) await markSent(db, {id, messageId: id, now: 2});
	const rows = await db
		.selectFrom('outbox')
		.select(['id', 'content'])
		.where('id', 'in', [said, asked])
		.orderBy('id')
		.execute();
	expect(rows[0]?.content).not.toContain('Sennen');
	expect(rows[1]?.content).toContain('How long?');
});
