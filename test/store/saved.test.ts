import {expect, test} from 'vitest';
import {draftSchema} from '../../src/record/draft.ts';
import {keepDraft, withdrawDraft} from '../../src/store/drafts.ts';
import {everySaved, savedAfter} from '../../src/store/saved.ts';
import type {Db} from '../../src/store/schema.ts';
import {chooseSharing, sharingOf} from '../../src/store/sharing.ts';
import {storeWithFinds} from '../record/kept.ts';
import {draftWith, uuid} from '../record/made-up.ts';

const idOf = (find: number) => uuid.replace(/..$/, String(find).padStart(2, '0'));

async function storeWithRecords(count: number): Promise<Db> {
	const db = await storeWithFinds(count);
	for (let find = 1; find <= count; find++)
		await keepDraft(db, {find, person: 1, draft: {...draftWith(), id: idOf(find)}, now: 10 * find});
	return db;
}

async function findsOf(db: Db, pageSize: number): Promise<readonly number[]> {
	const finds: number[] = [];
	for await (const {find} of everySaved(db, draftSchema, pageSize)) finds.push(find);
	return finds;
}

test.each([1, 2, 3, 5, 6, 200])('every record comes once and in order, in pages of %d', async pageSize => {
	expect(await findsOf(await storeWithRecords(5), pageSize)).toEqual([1, 2, 3, 4, 5]);
});

test('a page begins after the record it was told, and is no longer than wanted', async () => {
	const db = await storeWithRecords(5);
	const page = await savedAfter(db, {after: 2, limit: 2}, draftSchema);
	expect(page.map(({find, savedAt}) => [find, savedAt])).toEqual([
		[3, 30],
		[4, 40],
	]);
});

test('a withdrawn record does not come', async () => {
	const db = await storeWithRecords(3);
	await withdrawDraft(db, {find: 2, now: 99});
	expect(await findsOf(db, 1)).toEqual([1, 3]);
});

test('a record comes with what its finder wishes, as it is wished now', async () => {
	const db = await storeWithRecords(1);
	const wishes = async () => (await savedAfter(db, {after: 0, limit: 1}, draftSchema))[0]?.sharing;
	expect(await wishes()).toEqual({publicName: undefined, coarseM: undefined});
	await chooseSharing(db, 1, {publicName: 'Shell Seeker', coarseM: 1000});
	expect(await wishes()).toEqual({publicName: 'Shell Seeker', coarseM: 1000});
	expect(await sharingOf(db, 1)).toEqual({publicName: 'Shell Seeker', coarseM: 1000});
	await chooseSharing(db, 1, {});
	expect(await wishes()).toEqual({publicName: undefined, coarseM: undefined});
});

test('a record that no longer fits its schema is named in the error', async () => {
	const db = await storeWithFinds(1);
	await keepDraft(db, {find: 1, person: 1, draft: {id: idOf(1)}, now: 5});
	await expect(findsOf(db, 10)).rejects.toThrow('draft of find 1');
});
