import {expect, test} from 'vitest';
import {forgetOldUpdates, noteUpdate, setAside} from '../../src/store/inbox.ts';
import {storeWithFinds} from '../record/kept.ts';

const dayMs = 24 * 3_600_000;

test('an update is new once', async () => {
	const db = await storeWithFinds(0);
	const note = (id: number) => db.transaction().execute(tx => noteUpdate(tx, id, 1000));
	expect(await note(500)).toBe(true);
	expect(await note(500)).toBe(false);
	expect(await note(501)).toBe(true);
});

test('after a gap in the numbering a lower number is new all the same', async () => {
	const db = await storeWithFinds(0);
	const note = (id: number) => db.transaction().execute(tx => noteUpdate(tx, id, 1000));
	expect(await note(900_000_000)).toBe(true);
	expect(await note(7)).toBe(true);
	expect(await note(7)).toBe(false);
});

test('an update whose transaction fails is still new', async () => {
	const db = await storeWithFinds(0);
	const failing = db.transaction().execute(async tx => {
		await noteUpdate(tx, 500, 1000);
		throw new Error('poisonous');
	});
	await expect(failing).rejects.toThrow('poisonous');
	expect(await db.transaction().execute(tx => noteUpdate(tx, 500, 1000))).toBe(true);
});

test('an update is remembered for a week', async () => {
	const db = await storeWithFinds(0);
	const note = (id: number, now: number) => db.transaction().execute(tx => noteUpdate(tx, id, now));
	await note(1, 0);
	await note(2, 1);
	await forgetOldUpdates(db, 7 * dayMs);
	expect(await note(1, 7 * dayMs)).toBe(false);
	await forgetOldUpdates(db, 7 * dayMs + 1);
	expect(await note(1, 7 * dayMs)).toBe(true);
	expect(await note(2, 7 * dayMs)).toBe(false);
});

test('an update is set aside once, with the first error', async () => {
	const db = await storeWithFinds(0);
	for (const error of ['first', 'second']) {
		await db.transaction().execute(tx => setAside(tx, {updateId: 9, error, now: 5}));
	}
	expect(await db.selectFrom('aside').selectAll().execute()).toEqual([{updateId: 9, error: 'first', at: 5}]);
});
