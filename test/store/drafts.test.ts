import {expect, test} from 'vitest';
import {draftSchema} from '../../src/record/draft.ts';
import {countDrafts, draftOfFind, draftsOf, keepDraft, withdrawDraft} from '../../src/store/drafts.ts';
import {storeWithFinds} from '../record/kept.ts';
import {draftWith, uuid} from '../record/made-up.ts';

const idOf = (find: number) => uuid.replace(/..$/, String(find).padStart(2, '0'));
const draftOf = (find: number, note?: string) => ({...draftWith({note}), id: idOf(find)});

test('a draft is kept and comes back as it was', async () => {
	const db = await storeWithFinds(1);
	const draft = draftOf(1, 'Torn at one end; "ça va"');
	expect(await keepDraft(db, {find: 1, person: 1, draft, now: 5})).toEqual({version: 1});
	expect(await draftOfFind(db, 1, draftSchema)).toEqual({
		kind: 'draft',
		find: 1,
		uuid: idOf(1),
		person: 1,
		version: 1,
		savedAt: 5,
		changedAt: 5,
		body: draft,
	});
});

test('keeping a find again raises its version and leaves its name and first day', async () => {
	const db = await storeWithFinds(1);
	await keepDraft(db, {find: 1, person: 1, draft: draftOf(1, 'first'), now: 5});
	expect(await keepDraft(db, {find: 1, person: 1, draft: draftOf(1, 'second'), now: 9})).toEqual({
		version: 2,
	});
	const kept = await draftOfFind(db, 1, draftSchema);
	expect(kept).toMatchObject({uuid: idOf(1), version: 2, savedAt: 5, changedAt: 9, body: {note: 'second'}});
	expect(await countDrafts(db, {person: 1})).toBe(1);
});

test('a find kept under another name is an error and changes nothing', async () => {
	const db = await storeWithFinds(2);
	await keepDraft(db, {find: 1, person: 1, draft: draftOf(1), now: 5});
	const other = {find: 1, person: 1, draft: draftOf(2), now: 6};
	await expect(db.transaction().execute(tx => keepDraft(tx, other))).rejects.toThrow(`under "${idOf(1)}"`);
	expect(await draftOfFind(db, 1, draftSchema)).toMatchObject({version: 1, body: {id: idOf(1)}});
});

test('drafts are listed newest first, page by page, also when several were saved at once', async () => {
	const db = await storeWithFinds(5);
	for (const [find, now] of [
		[1, 10],
		[2, 30],
		[3, 20],
		[4, 20],
		[5, 20],
	] as const)
		await keepDraft(db, {find, person: 1, draft: draftOf(find), now});
	const first = await draftsOf(db, {person: 1, limit: 2}, draftSchema);
	expect(first.map(({find}) => find)).toEqual([2, 5]);
	const second = await draftsOf(db, {person: 1, limit: 2, after: first[1]}, draftSchema);
	expect(second.map(({find}) => find)).toEqual([4, 3]);
	const last = await draftsOf(db, {person: 1, limit: 2, after: second[1]}, draftSchema);
	expect(last.map(({find}) => find)).toEqual([1]);
	expect(await draftsOf(db, {person: 2, limit: 2}, draftSchema)).toEqual([]);
});

test('a withdrawn draft leaves only its name and that it was withdrawn', async () => {
	const db = await storeWithFinds(2);
	await keepDraft(db, {find: 1, person: 1, draft: draftOf(1, 'by the blue hut'), now: 5});
	await keepDraft(db, {find: 2, person: 1, draft: draftOf(2), now: 6});
	expect(await withdrawDraft(db, {find: 1, now: 8})).toEqual({uuid: idOf(1), version: 2});
	expect(await draftOfFind(db, 1, draftSchema)).toEqual({
		kind: 'withdrawn',
		find: 1,
		uuid: idOf(1),
		person: 1,
		version: 2,
		savedAt: 5,
		changedAt: 8,
	});
	expect(JSON.stringify(await db.selectFrom('draft').select('body').execute())).not.toContain('blue hut');
	expect((await draftsOf(db, {person: 1, limit: 9}, draftSchema)).map(({find}) => find)).toEqual([2]);
	expect(await countDrafts(db, {person: 1})).toBe(1);
});

test('withdrawing twice, or what was never kept, does nothing', async () => {
	const db = await storeWithFinds(2);
	await keepDraft(db, {find: 1, person: 1, draft: draftOf(1), now: 5});
	await withdrawDraft(db, {find: 1, now: 8});
	expect(await withdrawDraft(db, {find: 1, now: 9})).toBeUndefined();
	expect(await withdrawDraft(db, {find: 2, now: 9})).toBeUndefined();
	expect(await draftOfFind(db, 1, draftSchema)).toMatchObject({version: 2, changedAt: 8});
	expect(await draftOfFind(db, 2, draftSchema)).toBeUndefined();
});

test('a withdrawn find that is kept again lives on under the same name', async () => {
	const db = await storeWithFinds(1);
	await keepDraft(db, {find: 1, person: 1, draft: draftOf(1), now: 5});
	await withdrawDraft(db, {find: 1, now: 8});
	expect(await keepDraft(db, {find: 1, person: 1, draft: draftOf(1), now: 9})).toEqual({version: 3});
	expect(await draftOfFind(db, 1, draftSchema)).toMatchObject({kind: 'draft', uuid: idOf(1), savedAt: 5});
});

test('a stored draft that no longer fits its schema is named in the error', async () => {
	const db = await storeWithFinds(1);
	await keepDraft(db, {find: 1, person: 1, draft: {id: idOf(1)}, now: 5});
	await expect(draftOfFind(db, 1, draftSchema)).rejects.toThrow('draft of find 1');
});
