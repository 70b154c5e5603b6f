import {expect, test} from 'vitest';
import {chatFor} from '../../src/store/chats.ts';
import {
	beginFind,
	bowlOfChat,
	emptyThrownFinds,
	type FindRow,
	findById,
	keepTurn,
	letAnswer,
	openFinds,
	putInBowl,
	soakingFinds,
} from '../../src/store/finds.ts';
import {openStore} from '../../src/store/open.ts';
import type {Db, Tx} from '../../src/store/schema.ts';
import {newFile, storeWithFinds} from '../record/kept.ts';
import {addFind, addPerson} from './rows.ts';

const within = <T>(db: Db, work: (tx: Tx) => Promise<T>): Promise<T> => db.transaction().execute(work);
const become = (db: Db, find: number, state: FindRow['state'], now = 5) =>
	within(db, tx => keepTurn(tx, {find, trail: '[1]', turn: 2, state, now}));

async function people() {
	const db = await openStore(newFile());
	const chats = [];
	for (const platformId of [7, -1])
		chats.push((await within(db, tx => chatFor(tx, {platformId, kind: 'group', now: 1}))).id);
	const [chat = 0, other = 0] = chats;
	return {db, chat, other, ada: await addPerson(db, 7), ben: await addPerson(db, 8)};
}

test('a find begins open, at its first turn, under a name that stays', async () => {
	const {db, chat, ada} = await people();
	const begun = {uuid: 'a-name', chat, person: ada, region: 'testland', trail: '[]', thread: 3, now: 9};
	const row = await within(db, tx => beginFind(tx, begun));
	expect(row).toMatchObject({uuid: 'a-name', turn: 1, state: 'open', bowl: null, thread: 3, createdAt: 9});
	expect(await findById(db, row.id)).toEqual(row);
	expect(await findById(db, row.id + 1)).toBeUndefined();
	await expect(within(db, tx => beginFind(tx, begun))).rejects.toThrow(/UNIQUE/);
});

test('what a turn made of a find is kept, of that find alone', async () => {
	const db = await storeWithFinds(2);
	const before = await findById(db, 2);
	await within(db, tx => keepTurn(tx, {find: 1, trail: '[{}]', turn: 4, state: 'soaking', now: 77}));
	expect(await findById(db, 1)).toMatchObject({trail: '[{}]', turn: 4, state: 'soaking', changedAt: 77});
	expect(await findById(db, 2)).toEqual(before);
});

test('in the bowl is what soaks, oldest first: of everybody in a group, or of one person anywhere', async () => {
	const {db, chat, other, ada, ben} = await people();
	const mine = [await addFind(db, {chat, person: ada}), await addFind(db, {chat, person: ada})];
	const elsewhere = await addFind(db, {chat: other, person: ada});
	const bens = await addFind(db, {chat, person: ben});
	const open = await addFind(db, {chat, person: ada});
	for (const find of [...mine, elsewhere, bens]) await become(db, find, 'soaking');
	const soaking = async (of: Parameters<typeof soakingFinds>[1]) =>
		(await soakingFinds(db, of)).map(({id}) => id);
	expect(await soaking({chat})).toEqual([...mine, bens]);
	expect(await soaking({person: ada})).toEqual([...mine, elsewhere]);
	expect((await findById(db, open))?.state).toBe('open');
	await become(db, mine[0] ?? 0, 'open');
	expect(await soaking({chat})).toEqual([mine[1], bens]);
});

test('the bowl of a chat is the one that its newest case in water lies in', async () => {
	const {db, chat, other, ada, ben} = await people();
	expect(await within(db, tx => bowlOfChat(tx, chat))).toBeUndefined();
	const first = await addFind(db, {chat, person: ada});
	const second = await addFind(db, {chat, person: ben});
	const elsewhere = await addFind(db, {chat: other, person: ada});
	for (const find of [first, second, elsewhere]) {
		await within(db, tx => putInBowl(tx, {find, bowl: find}));
		await become(db, find, 'soaking');
	}
	expect(await within(db, tx => bowlOfChat(tx, chat))).toBe(second);
	await become(db, second, 'kept');
	expect(await within(db, tx => bowlOfChat(tx, chat))).toBe(first);
});

test('open are the finds of a chat that were not ended and were touched of late, newest first', async () => {
	const {db, chat, other, ada, ben} = await people();
	const finds = [];
	for (const person of [ada, ben, ada, ben]) finds.push(await addFind(db, {chat, person, now: 5}));
	const [old = 0, kept = 0, ...fresh] = finds;
	await addFind(db, {chat: other, person: ada, now: 5});
	await become(db, old, 'open', 4);
	await become(db, kept, 'kept', 6);
	expect((await openFinds(db, {chat, since: 5})).map(({id}) => id)).toEqual(fresh.toReversed());
});

test('who may answer is kept for one find alone, and everyone may at first', async () => {
	const db = await storeWithFinds(2);
	expect((await findById(db, 1))?.isOwnersAlone).toBe(0);
	await within(db, tx => letAnswer(tx, 1, 'owner'));
	expect((await findById(db, 1))?.isOwnersAlone).toBe(1);
	expect((await findById(db, 2))?.isOwnersAlone).toBe(0);
	await within(db, tx => letAnswer(tx, 1, 'everyone'));
	expect((await findById(db, 1))?.isOwnersAlone).toBe(0);
});

test('a find remembers in whose bowl it lies', async () => {
	const db = await storeWithFinds(2);
	await within(db, tx => putInBowl(tx, {find: 2, bowl: 1}));
	expect((await findById(db, 2))?.bowl).toBe(1);
	expect((await findById(db, 1))?.bowl).toBeNull();
});

test('thrown finds and those that were no egg case are emptied once their time is over, each once', async () => {
	const db = await storeWithFinds(5);
	const states = ['thrown', 'not-a-case', 'kept', 'open'] as const;
	for (const [index, state] of states.entries()) await become(db, index + 1, state, 5);
	await become(db, 5, 'thrown', 6);
	const empty = async (before: number) => [...(await within(db, tx => emptyThrownFinds(tx, before)))].sort();
	expect(await empty(5)).toEqual([]);
	expect(await empty(6)).toEqual([1, 2]);
	expect(await empty(6)).toEqual([]);
	expect(await empty(7)).toEqual([5]);
	expect(await findById(db, 2)).toMatchObject({trail: '[]', turn: 3, state: 'thrown'});
	expect((await findById(db, 3))?.trail).toBe('[1]');
});
