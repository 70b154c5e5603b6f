import {expect, test} from 'vitest';
import {openStore} from '../../src/store/open.ts';
import {chooseZone, markWelcomed, noticeZone, personById, personFor} from '../../src/store/people.ts';
import type {Db, Tx} from '../../src/store/schema.ts';
import {newFile} from '../record/kept.ts';
import {addPerson} from './rows.ts';

const within = <T>(db: Db, work: (tx: Tx) => Promise<T>): Promise<T> => db.transaction().execute(work);

test('a person is made once, in the language of the first visit', async () => {
	const db = await openStore(newFile());
	const first = await within(db, tx => personFor(tx, {platformId: 7, language: 'fr', now: 1}));
	expect(first).toMatchObject({platformId: 7, language: 'fr', zone: undefined, isWelcomed: false});
	const again = await within(db, tx => personFor(tx, {platformId: 7, language: 'en', now: 2}));
	expect(again).toEqual(first);
	expect(await personById(db, first.id)).toEqual(first);
});

test('the first reading of the word on safety is the one that is noted', async () => {
	const db = await openStore(newFile());
	const id = await addPerson(db, 7);
	await within(db, tx => markWelcomed(tx, id, 10));
	await within(db, tx => markWelcomed(tx, id, 20));
	expect((await personById(db, id)).isWelcomed).toBe(true);
	expect(await db.selectFrom('person').select('welcomedAt').execute()).toEqual([{welcomedAt: 10}]);
});

test('the zone of a place is taken over until a person chooses one', async () => {
	const db = await openStore(newFile());
	const id = await addPerson(db, 7);
	await within(db, tx => noticeZone(tx, id, 'Europe/Dublin'));
	expect((await personById(db, id)).zone).toBe('Europe/Dublin');
	await within(db, tx => chooseZone(tx, id, 'Europe/Paris'));
	await within(db, tx => noticeZone(tx, id, 'Europe/London'));
	expect((await personById(db, id)).zone).toBe('Europe/Paris');
});
