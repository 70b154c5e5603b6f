import {expect, test} from 'vitest';
import {askedIn, askToBeTold} from '../../src/store/audience.ts';
import {tellMany} from '../../src/store/broadcasts.ts';
import {chatFor, joinAddresses} from '../../src/store/chats.ts';
import {beginDay} from '../../src/store/days.ts';
import {addDeliveries, dropWaiting, ledgerOf} from '../../src/store/deliveries.ts';
import {guestsOf, noteGuest} from '../../src/store/guests.ts';
import {storeWithFinds} from '../record/kept.ts';

const recipient = (chat: number) => ({chat, person: 1, hearsAt: 1, notBefore: 1, isUseless: false});

test('a group that becomes a supergroup hears on, and what both of its chats were to be told it hears once', async () => {
	const db = await storeWithFinds(0);
	await db.transaction().execute(async tx => {
		const old = await chatFor(tx, {platformId: -5, kind: 'group', now: 1});
		const young = await chatFor(tx, {platformId: -1005, kind: 'group', now: 1});
		const {id: day} = await beginDay(tx, {uuid: 'd', code: 'c', person: 1, region: 'testland', now: 1});
		for (const {id: chat} of [old, young]) {
			await askToBeTold(tx, {chat, person: 1, asked: {kind: 'coast', region: `coast-${chat}`}, now: 1});
		}
		await noteGuest(tx, {day, person: 1, chat: young.id, answer: 'coming', party: 2, now: 1});
		const broadcast = await tellMany(tx, {day, kind: 'soon', dueAt: 1, uselessAt: 9, body: '{}', now: 1});
		await addDeliveries(tx, broadcast, [recipient(old.id), recipient(young.id)]);
		await joinAddresses(tx, {from: -5, to: -1005, now: 2});
		expect(await askedIn(tx, old.id)).toHaveLength(2);
		expect((await guestsOf(tx, day)).map(({chat}) => chat)).toEqual([old.id]);
		expect((await ledgerOf(tx, broadcast)).waiting).toBe(1);
	});
});

test('the same wish counts once, and another place takes the place of the last', async () => {
	const db = await storeWithFinds(0);
	await db.transaction().execute(async tx => {
		const ask = (asked: Parameters<typeof askToBeTold>[1]['asked']) =>
			askToBeTold(tx, {chat: 1, person: 1, asked, now: 1});
		await ask({kind: 'coast', region: 'testland'});
		await ask({kind: 'coast', region: 'testland'});
		await ask({kind: 'near', latitude: 50, longitude: -5});
		await ask({kind: 'near', latitude: 51, longitude: -5});
		await ask({kind: 'coordinator', coordinator: 1});
		expect((await askedIn(tx, 1)).map(({asked}) => asked)).toEqual([
			{kind: 'coast', region: 'testland'},
			{kind: 'near', latitude: 51, longitude: -5},
			{kind: 'coordinator', coordinator: 1},
		]);
	});
});

test('who cannot come hears nothing that still waits of that day, and of other days as before', async () => {
	const db = await storeWithFinds(0);
	await db.transaction().execute(async tx => {
		const broadcasts: number[] = [];
		for (const name of ['one', 'other']) {
			const {id: day} = await beginDay(tx, {uuid: name, code: name, person: 1, region: 'testland', now: 1});
			const told = {day, kind: 'evening', dueAt: 1, uselessAt: 9, body: '{}', now: 1} as const;
			const broadcast = await tellMany(tx, told);
			await addDeliveries(tx, broadcast, [recipient(1)]);
			broadcasts.push(broadcast);
		}
		await dropWaiting(tx, {day: 1, chat: 1});
		const ledgers = await Promise.all(broadcasts.map(broadcast => ledgerOf(tx, broadcast)));
		expect(ledgers.map(({waiting, stopped}) => [waiting, stopped])).toEqual([
			[0, 1],
			[1, 0],
		]);
	});
});
