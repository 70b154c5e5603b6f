import {expect, test} from 'vitest';
import {tellMany} from '../../src/store/broadcasts.ts';
import {beginDay, publishDay} from '../../src/store/days.ts';
import {addDeliveries} from '../../src/store/deliveries.ts';
import {guestsOf, noteGuest} from '../../src/store/guests.ts';
import {forgetOldDays} from '../../src/store/old-days.ts';
import {storeWithFinds} from '../record/kept.ts';

const dayMs = 24 * 3_600_000;

test('two months after a day it is forgotten who came and who was told, and not an hour before', async () => {
	const db = await storeWithFinds(0);
	const endsAt = 100 * dayMs;
	const day = await db.transaction().execute(async tx => {
		const {id} = await beginDay(tx, {uuid: 'd', code: 'c', person: 1, region: 'testland', now: 1});
		await publishDay(tx, {day: id, body: '{}', region: 'testland', startsAt: endsAt - 1, endsAt, now: 1});
		await noteGuest(tx, {day: id, person: 1, chat: 1, answer: 'coming', party: 1, now: 1});
		const told = {day: id, kind: 'announced', dueAt: 1, uselessAt: endsAt, body: '{}', now: 1} as const;
		const broadcast = await tellMany(tx, told);
		await addDeliveries(tx, broadcast, [{chat: 1, person: 1, hearsAt: 1, notBefore: 1, isUseless: false}]);
		return id;
	});
	const left = async () => [
		(await guestsOf(db, day)).length,
		(await db.selectFrom('delivery').select('id').execute()).length,
	];
	await forgetOldDays(db, endsAt + 60 * dayMs);
	expect(await left()).toEqual([1, 1]);
	await forgetOldDays(db, endsAt + 60 * dayMs + 1);
	expect(await left()).toEqual([0, 0]);
});
