import {expect, test} from 'vitest';
import {markGone} from '../../src/store/chats.ts';
import {putInBowl} from '../../src/store/finds.ts';
import {
	forgetReminders,
	markReminded,
	moveReminder,
	remind,
	remindersDueBy,
} from '../../src/store/reminders.ts';
import type {Db, Tx} from '../../src/store/schema.ts';
import {storeWithFinds} from '../record/kept.ts';

const zone = 'Europe/London';
const within = <T>(db: Db, work: (tx: Tx) => Promise<T>): Promise<T> => db.transaction().execute(work);
const remindAt = (db: Db, find: number, dueAt: number) => within(db, tx => remind(tx, {find, dueAt, zone}));

test('reminders come due at their instant, oldest first, with the bowl they are about', async () => {
	const db = await storeWithFinds(3);
	await within(db, tx => putInBowl(tx, {find: 2, bowl: 1}));
	await remindAt(db, 2, 200);
	await remindAt(db, 1, 100);
	await remindAt(db, 3, 300);
	expect(await remindersDueBy(db, 99, 10)).toEqual([]);
	expect(await remindersDueBy(db, 200, 10)).toMatchObject([
		{find: 1, bowl: null, dueAt: 100, zone},
		{find: 2, bowl: 1, dueAt: 200, zone},
	]);
	expect(await remindersDueBy(db, 1000, 2)).toHaveLength(2);
});

test('a reminder of a chat that is gone waits until the chat is back', async () => {
	const db = await storeWithFinds(1);
	await remindAt(db, 1, 100);
	await markGone(db, 1, 50);
	expect(await remindersDueBy(db, 200, 10)).toEqual([]);
	expect(await within(db, tx => markReminded(tx, 1, 200))).toBe(false);
	await db.updateTable('chat').set({goneAt: null}).execute();
	expect(await remindersDueBy(db, 200, 10)).toMatchObject([{find: 1, chat: 1}]);
});

test('a find has one reminder: a later wish takes the place of the earlier one', async () => {
	const db = await storeWithFinds(1);
	await remindAt(db, 1, 100);
	await remindAt(db, 1, 500);
	expect(await remindersDueBy(db, 499, 10)).toEqual([]);
	expect(await remindersDueBy(db, 500, 10)).toHaveLength(1);
});

test('a reminder is said once', async () => {
	const db = await storeWithFinds(1);
	await remindAt(db, 1, 100);
	const [due] = await remindersDueBy(db, 100, 10);
	const mark = () => within(db, tx => markReminded(tx, due?.id ?? 0, 101));
	expect(await mark()).toBe(true);
	expect(await mark()).toBe(false);
	expect(await remindersDueBy(db, 1000, 10)).toEqual([]);
});

test('a forgotten reminder never comes due, and one that was said stays noted', async () => {
	const db = await storeWithFinds(1);
	await remindAt(db, 1, 100);
	const [due] = await remindersDueBy(db, 100, 10);
	await within(db, tx => markReminded(tx, due?.id ?? 0, 101));
	await remindAt(db, 1, 200);
	await within(db, tx => forgetReminders(tx, 1));
	expect(await remindersDueBy(db, 1000, 10)).toEqual([]);
	expect(await db.selectFrom('reminder').select(['dueAt', 'doneAt']).execute()).toEqual([
		{dueAt: 100, doneAt: 101},
	]);
});

test('a reminder can be moved, but not once it was said', async () => {
	const db = await storeWithFinds(1);
	await remindAt(db, 1, 100);
	const [due] = await remindersDueBy(db, 100, 10);
	const id = due?.id ?? 0;
	await moveReminder(db, {id, dueAt: 700});
	expect(await remindersDueBy(db, 699, 10)).toEqual([]);
	await within(db, tx => markReminded(tx, id, 701));
	await moveReminder(db, {id, dueAt: 900});
	expect(await db.selectFrom('reminder').select('dueAt').execute()).toEqual([{dueAt: 700}]);
});
