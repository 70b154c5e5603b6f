import {expect, test} from 'vitest';
import {addressOf, chatFor, joinAddresses, markGone} from '../../src/store/chats.ts';
import {openStore} from '../../src/store/open.ts';
import {findOfMessage, post, rowsOfTurn} from '../../src/store/outbox.ts';
import type {Db, Tx} from '../../src/store/schema.ts';
import {findSatAt, sitAt} from '../../src/store/seats.ts';
import {newFile} from '../record/kept.ts';
import {addFind, addPerson} from './rows.ts';

const oldId = -4001;
const newId = -1001234567890;

const within = <T>(db: Db, work: (tx: Tx) => Promise<T>): Promise<T> => db.transaction().execute(work);
const chatOf = (db: Db, platformId: number, now = 1) =>
	within(db, tx => chatFor(tx, {platformId, kind: 'group', now}));
const join = (db: Db) => within(db, tx => joinAddresses(tx, {from: oldId, to: newId, now: 5}));

test('a chat is made once, and keeps its kind', async () => {
	const db = await openStore(newFile());
	const first = await chatOf(db, oldId);
	expect(await chatOf(db, oldId)).toEqual(first);
	expect((await chatOf(db, oldId - 1)).id).not.toBe(first.id);
	const alone = await within(db, tx => chatFor(tx, {platformId: 77, kind: 'private', now: 1}));
	expect(alone).toMatchObject({kind: 'private', platformId: 77});
});

test('a chat that is gone has no address until it is heard of again', async () => {
	const db = await openStore(newFile());
	const {id} = await chatOf(db, oldId);
	await within(db, tx => markGone(tx, id, 9));
	expect(await addressOf(db, id)).toBeUndefined();
	expect((await chatOf(db, oldId)).id).toBe(id);
	expect(await addressOf(db, id)).toMatchObject({id, platformId: oldId});
});

test('what still waited for a chat that is gone is given up, and other chats keep theirs', async () => {
	const db = await openStore(newFile());
	const gone = await chatOf(db, oldId);
	const here = await chatOf(db, oldId - 1);
	for (const chat of [gone.id, here.id]) await within(db, tx => post(tx, saying(chat)));
	await markGone(db, gone.id, 9);
	const rows = await db.selectFrom('outbox').select(['chat', 'state']).orderBy('id').execute();
	expect(rows).toEqual([
		{chat: gone.id, state: 'failed'},
		{chat: here.id, state: 'waiting'},
	]);
});

test('a group that moves keeps its chat and answers under its new id', async () => {
	const db = await openStore(newFile());
	const {id} = await chatOf(db, oldId);
	await join(db);
	expect((await chatOf(db, newId)).id).toBe(id);
	expect((await chatOf(db, oldId)).id).toBe(id);
	expect(await addressOf(db, id)).toMatchObject({id, platformId: newId});
});

test('a move told twice, or told before anything was heard of the group, changes nothing more', async () => {
	const db = await openStore(newFile());
	await join(db);
	await join(db);
	const {id} = await chatOf(db, newId);
	expect((await chatOf(db, oldId)).id).toBe(id);
	expect(await db.selectFrom('chat').select('id').execute()).toHaveLength(1);
});

test('a group whose new id spoke first is put together with its past: finds, seats and messages', async () => {
	const db = await openStore(newFile());
	const old = await chatOf(db, oldId);
	const ada = await addPerson(db, 1);
	const ben = await addPerson(db, 2);
	const adasOld = await addFind(db, {chat: old.id, person: ada});
	const bensFind = await addFind(db, {chat: old.id, person: ben});
	await within(db, tx => sitAt(tx, {chat: old.id, person: ada, find: adasOld}));
	await within(db, tx => sitAt(tx, {chat: old.id, person: ben, find: bensFind}));
	const young = await chatOf(db, newId);
	expect(young.id).not.toBe(old.id);
	const adasNew = await addFind(db, {chat: young.id, person: ada});
	await within(db, tx => sitAt(tx, {chat: young.id, person: ada, find: adasNew}));
	await within(db, tx => post(tx, saying(young.id)));
	await join(db);
	expect((await chatOf(db, newId)).id).toBe(old.id);
	expect(await db.selectFrom('chat').select('id').execute()).toEqual([{id: old.id}]);
	expect(await db.selectFrom('find').select('chat').distinct().execute()).toEqual([{chat: old.id}]);
	expect(await db.selectFrom('outbox').select('chat').execute()).toEqual([{chat: old.id}]);
	// What she does last is what her words are about.
	expect(await findSatAt(db, {chat: old.id, person: ada})).toBe(adasNew);
	expect(await findSatAt(db, {chat: old.id, person: ben})).toBe(bensFind);
	expect(await addressOf(db, old.id)).toMatchObject({platformId: newId});
});

test('messages of the old group are out of reach after the move, and their numbers mean nothing in the new one', async () => {
	const db = await openStore(newFile());
	const old = await chatOf(db, oldId);
	const person = await addPerson(db, 1);
	const find = await addFind(db, {chat: old.id, person});
	const young = await chatOf(db, newId);
	const later = await addFind(db, {chat: young.id, person});
	await within(db, tx => post(tx, {...saying(old.id), role: 'ask', find, turn: 1}));
	await within(db, tx => post(tx, {...saying(young.id), role: 'ask', find: later, turn: 1}));
	await db.updateTable('outbox').set({state: 'sent', messageId: 12}).execute();
	await join(db);
	// Number 12 was given twice: by the old group and by the new one.
	const reply = {chat: old.id, messageId: 12};
	expect(await within(db, tx => findOfMessage(tx, reply))).toBe(later);
	expect(await within(db, tx => rowsOfTurn(tx, {find, turn: 1}))).toEqual([]);
	expect(await within(db, tx => rowsOfTurn(tx, {find: later, turn: 1}))).toHaveLength(1);
	await join(db);
	expect(await within(db, tx => findOfMessage(tx, reply))).toBe(later);
});

test('a chat that is back is asked what it did not hear: the newest question of each open find, once', async () => {
	const db = await openStore(newFile());
	const {id: chat} = await chatOf(db, oldId);
	const person = await addPerson(db, 1);
	const asked = async (find: number, turn: number) =>
		within(db, tx => post(tx, {...saying(chat), role: 'ask', find, turn}));
	const finds: number[] = [];
	for (let count = 0; count < 4; count++) finds.push(await addFind(db, {chat, person}));
	for (const find of finds) await asked(find, 1);
	await asked(finds[0] ?? 0, 1);
	await within(db, tx => post(tx, saying(chat)));
	await db
		.updateTable('find')
		.set({state: 'kept'})
		.where('id', '=', finds[1] ?? 0)
		.execute();
	await db
		.updateTable('outbox')
		.set({state: 'sent', sentAt: 3})
		.where('find', '=', finds[2] ?? 0)
		.execute();
	await db
		.updateTable('find')
		.set({turn: 2})
		.where('id', '=', finds[3] ?? 0)
		.execute();
	await markGone(db, chat, 9);
	await chatOf(db, oldId, 20);
	await chatOf(db, oldId, 30);
	const waiting = await db
		.selectFrom('outbox')
		.select(['id', 'find', 'notBefore'])
		.where('state', '=', 'waiting')
		.execute();
	expect(waiting).toEqual([{id: 5, find: finds[0], notBefore: 20}]);
});

function saying(chat: number) {
	return {chat, role: 'say' as const, call: {kind: 'send' as const, html: 'Hello', keyboard: []}, now: 1};
}
