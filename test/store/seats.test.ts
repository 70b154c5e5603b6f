import {expect, test} from 'vitest';
import {chatFor} from '../../src/store/chats.ts';
import {beginDay, dropDay} from '../../src/store/days.ts';
import {openStore} from '../../src/store/open.ts';
import type {Db, Tx} from '../../src/store/schema.ts';
import {findSatAt, listenFor, seatOf, sitAt, stopListening} from '../../src/store/seats.ts';
import {newFile} from '../record/kept.ts';
import {addFind, addPerson} from './rows.ts';

const within = <T>(db: Db, work: (tx: Tx) => Promise<T>): Promise<T> => db.transaction().execute(work);

async function inOneChat() {
	const db = await openStore(newFile());
	const person = await addPerson(db, 7);
	const {id: chat} = await within(db, tx => chatFor(tx, {platformId: 7, kind: 'private', now: 1}));
	const find = await addFind(db, {chat, person});
	const {id: day} = await within(db, tx =>
		beginDay(tx, {uuid: 'a', code: 'a', person, region: 'testland', now: 1}),
	);
	return {db, find, day, place: {chat, person}};
}

test('a person sits at one find in each chat, and at none after leaving it', async () => {
	const db = await openStore(newFile());
	const person = await addPerson(db, 7);
	const other = await addPerson(db, 8);
	const chats = [];
	for (const platformId of [-1, -2])
		chats.push((await within(db, tx => chatFor(tx, {platformId, kind: 'group', now: 1}))).id);
	const [here = 0, there = 0] = chats;
	const first = await addFind(db, {chat: here, person});
	const second = await addFind(db, {chat: there, person});
	await within(db, tx => sitAt(tx, {chat: here, person, find: first}));
	await within(db, tx => sitAt(tx, {chat: there, person, find: second}));
	expect(await findSatAt(db, {chat: here, person})).toBe(first);
	expect(await findSatAt(db, {chat: there, person})).toBe(second);
	expect(await seatOf(db, {chat: here, person: other})).toBeUndefined();
	await within(db, tx => sitAt(tx, {chat: here, person, find: undefined}));
	expect(await seatOf(db, {chat: here, person})).toEqual({find: undefined, ear: undefined});
	expect(await findSatAt(db, {chat: there, person})).toBe(second);
});

test('the find waits while its finder is asked for something else, and takes the words back when it goes on', async () => {
	const {db, find, day, place} = await inOneChat();
	await within(db, tx => sitAt(tx, {...place, find}));
	await within(db, tx => listenFor(tx, place, {kind: 'plan', day}));
	expect(await seatOf(db, place)).toEqual({find, ear: {kind: 'plan', day}});
	await within(db, tx => listenFor(tx, place, {kind: 'place'}));
	expect(await seatOf(db, place)).toEqual({find, ear: {kind: 'place'}});
	expect(await within(db, tx => stopListening(tx, place))).toBe(true);
	expect(await within(db, tx => stopListening(tx, place))).toBe(false);
	expect(await seatOf(db, place)).toEqual({find, ear: undefined});
	await within(db, tx => listenFor(tx, place, {kind: 'place'}));
	await within(db, tx => sitAt(tx, {...place, find}));
	expect(await seatOf(db, place)).toEqual({find, ear: undefined});
});

test('who is asked for something without a find sits at none, and a day thrown away asks nobody', async () => {
	const {db, day, place} = await inOneChat();
	await within(db, tx => listenFor(tx, place, {kind: 'plan', day}));
	expect(await seatOf(db, place)).toEqual({find: undefined, ear: {kind: 'plan', day}});
	await within(db, tx => dropDay(tx, day));
	expect(await seatOf(db, place)).toEqual({find: undefined, ear: undefined});
});
