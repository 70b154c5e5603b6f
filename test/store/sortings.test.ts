import {expect, test} from 'vitest';
import {draftSchema} from '../../src/record/draft.ts';
import {keepDraft, withdrawDraft} from '../../src/store/drafts.ts';
import {keepTurn, putInBowl} from '../../src/store/finds.ts';
import {savedSince} from '../../src/store/saved.ts';
import type {Db, Tx} from '../../src/store/schema.ts';
import {
	beginSorting,
	countSorted,
	draftsSorted,
	endSorting,
	findsSorted,
	joinSorting,
	lastOfBowl,
	openSorting,
} from '../../src/store/sortings.ts';
import {storeWithFinds} from '../record/kept.ts';
import {draftWith, uuid} from '../record/made-up.ts';

const dayMs = 24 * 3_600_000;
const within = <T>(db: Db, work: (tx: Tx) => Promise<T>): Promise<T> => db.transaction().execute(work);
const save = (db: Db, find: number, now: number) =>
	keepDraft(db, {find, person: 1, draft: {...draftWith(), id: uuid.replace(/..$/, `0${find}`)}, now});

async function sortedFinds() {
	const db = await storeWithFinds(4);
	const sorting = await within(db, tx => beginSorting(tx, {chat: 1, now: 1}));
	for (const find of [1, 2, 3]) await within(db, tx => joinSorting(tx, {find, sorting}));
	return {db, sorting};
}

test('a chat has one sorting that goes on, until it is ended or a week old', async () => {
	const db = await storeWithFinds(1);
	const open = (now: number) => openSorting(db, {chat: 1, now});
	expect(await open(1)).toBeUndefined();
	const first = await within(db, tx => beginSorting(tx, {chat: 1, now: 1}));
	expect(await open(7 * dayMs)).toBe(first);
	expect(await open(7 * dayMs + 1)).toBeUndefined();
	expect(await openSorting(db, {chat: 2, now: 1})).toBeUndefined();
	const second = await within(db, tx => beginSorting(tx, {chat: 1, now: 2}));
	expect(await open(3)).toBe(second);
	await within(db, tx => endSorting(tx, {sorting: second, now: 4}));
	expect(await open(5)).toBe(first);
});

test('the finds of a sorting come last touched first, and only saved ones are counted', async () => {
	const {db, sorting} = await sortedFinds();
	const touch = (find: number, state: 'kept' | 'open', now: number) =>
		within(db, tx => keepTurn(tx, {find, trail: '[]', turn: 2, state, now}));
	await touch(3, 'kept', 10);
	await touch(1, 'kept', 30);
	await touch(2, 'open', 20);
	expect((await findsSorted(db, sorting)).map(({id}) => id)).toEqual([1, 2, 3]);
	expect(await countSorted(db, sorting)).toBe(2);
});

test('the records of a sorting come last saved first, without those withdrawn or unreadable', async () => {
	const {db, sorting} = await sortedFinds();
	for (const find of [1, 2, 3, 4]) await save(db, find, find);
	const finds = async (limit: number) =>
		(await draftsSorted(db, {sorting, limit}, draftSchema)).map(({find}) => find);
	expect(await finds(9)).toEqual([3, 2, 1]);
	expect(await finds(2)).toEqual([3, 2]);
	await db.updateTable('draft').set({body: '{}'}).where('find', '=', 3).execute();
	await withdrawDraft(db, {find: 2, now: 9});
	expect(await finds(9)).toEqual([1]);
});

test('saved records are found by chat, by sorting and by person, from an instant on', async () => {
	const {db, sorting} = await sortedFinds();
	for (const find of [1, 2, 4]) await save(db, find, 10 * find);
	await db.updateTable('draft').set({body: 'x'}).where('find', '=', 4).execute();
	const finds = async (of: Parameters<typeof savedSince>[1]) =>
		(await savedSince(db, of, draftSchema)).map(({find, body}) => (body ? find : `unreadable ${find}`));
	expect(await finds({chat: 1, since: 0})).toEqual([1, 2, 'unreadable 4']);
	expect(await finds({chat: 2, since: 0})).toEqual([]);
	expect(await finds({sorting, since: 0})).toEqual([1, 2]);
	expect(await finds({person: 1, since: 20})).toEqual([2, 'unreadable 4']);
	expect(await finds({person: 2, since: 0})).toEqual([]);
});

test('the case of a bowl that was touched last is found, unless it was too long ago', async () => {
	const db = await storeWithFinds(3);
	expect(await lastOfBowl(db, {chat: 1, since: 0})).toBeUndefined();
	for (const [find, now] of [
		[1, 50],
		[2, 40],
	] as const) {
		await within(db, tx => putInBowl(tx, {find, bowl: 1}));
		await within(db, tx => keepTurn(tx, {find, trail: '[]', turn: 2, state: 'kept', now}));
	}
	expect((await lastOfBowl(db, {chat: 1, since: 50}))?.id).toBe(1);
	expect(await lastOfBowl(db, {chat: 1, since: 51})).toBeUndefined();
	await within(db, tx => keepTurn(tx, {find: 1, trail: '[]', turn: 3, state: 'thrown', now: 60}));
	expect((await lastOfBowl(db, {chat: 1, since: 0}))?.id).toBe(2);
});
