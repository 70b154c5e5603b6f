import {expect, test} from 'vitest';
import {
	buryForward,
	claimForward,
	deadForwards,
	forgetForwards,
	forwardCounts,
	markForwarded,
	nextToForward,
	postponeForward,
	queueForward,
	reviveForwards,
} from '../../src/store/forwards.ts';
import type {Db} from '../../src/store/schema.ts';
import {storeWithFinds} from '../record/kept.ts';

const message = (webhookId: string, record = 'a', now = 0) => ({
	record,
	version: 1,
	webhookId,
	body: '{}',
	now,
});

async function queued(...messages: readonly ReturnType<typeof message>[]): Promise<Db> {
	const db = await storeWithFinds(0);
	for (const one of messages) await queueForward(db, one);
	return db;
}

async function nextId(db: Db, now: number): Promise<string | undefined> {
	return (await nextToForward(db, now))?.webhookId;
}

test('the oldest message that is due comes first', async () => {
	const db = await queued(message('w1', 'a', 50), message('w2', 'b', 10), message('w3', 'c', 10));
	expect(await nextId(db, 9)).toBeUndefined();
	expect(await nextToForward(db, 10)).toEqual({
		id: 2,
		record: 'b',
		version: 1,
		webhookId: 'w2',
		body: '{}',
		attempts: 0,
	});
	expect(await nextId(db, 50)).toBe('w1');
});

test('a message waits for the earlier ones of its record, and only for those', async () => {
	const db = await queued(message('w1', 'a'), message('w2', 'a'), message('w3', 'b'));
	await postponeForward(db, {id: 1, notBefore: 100, error: 'answered 500'});
	expect(await nextId(db, 5)).toBe('w3');
	await markForwarded(db, {id: 3, now: 5});
	expect(await nextId(db, 99)).toBeUndefined();
	expect(await nextId(db, 100)).toBe('w1');
	await markForwarded(db, {id: 1, now: 100});
	expect(await nextId(db, 100)).toBe('w2');
});

test('a message given up lets the next of its record go', async () => {
	const db = await queued(message('w1'), message('w2'));
	await buryForward(db, {id: 1, error: 'answered 410'});
	expect(await nextId(db, 0)).toBe('w2');
	const row = await db.selectFrom('forward').select(['state', 'lastError']).where('id', '=', 1).execute();
	expect(row).toEqual([{state: 'dead', lastError: 'answered 410'}]);
});

test('of two that reach for the same message one gets it, and it is held for a while', async () => {
	const db = await queued(message('w1'), message('w2'));
	const claim = {id: 1, attempts: 0, until: 60};
	expect(await Promise.all([claimForward(db, claim), claimForward(db, claim)])).toEqual([true, false]);
	expect(await nextId(db, 59)).toBeUndefined();
	expect(await nextToForward(db, 60)).toMatchObject({webhookId: 'w1', attempts: 1});
});

test('a message once sent or given up cannot be taken or changed again', async () => {
	const db = await queued(message('w1'));
	await markForwarded(db, {id: 1, now: 7});
	expect(await claimForward(db, {id: 1, attempts: 0, until: 60})).toBe(false);
	await buryForward(db, {id: 1, error: 'late'});
	await postponeForward(db, {id: 1, notBefore: 9, error: 'late'});
	const row = await db.selectFrom('forward').select(['state', 'sentAt', 'lastError', 'notBefore']).execute();
	expect(row).toEqual([{state: 'sent', sentAt: 7, lastError: null, notBefore: 0}]);
});

test('the same webhook id is never queued twice', async () => {
	const db = await queued(message('w1'));
	await expect(queueForward(db, message('w1', 'b'))).rejects.toThrow('UNIQUE');
});

test('a record taken back leaves nothing of what was said of it', async () => {
	const secret = {body: '{"place":"blue hut"}'};
	const db = await queued({...message('w1'), ...secret}, {...message('w2'), ...secret}, message('w3', 'b'));
	await markForwarded(db, {id: 1, now: 1});
	await forgetForwards(db, 'a');
	const rows = await db.selectFrom('forward').select(['webhookId', 'state', 'body']).orderBy('id').execute();
	expect(rows).toEqual([
		{webhookId: 'w1', state: 'sent', body: '{}'},
		{webhookId: 'w3', state: 'waiting', body: '{}'},
	]);
});

test('what was given up is counted, listed, and waits again from the first try on', async () => {
	const db = await queued(message('w1', 'a'), message('w2', 'b'), message('w3', 'c'));
	await claimForward(db, {id: 1, attempts: 0, until: 60});
	await buryForward(db, {id: 1, error: 'answered 500'});
	await buryForward(db, {id: 2, error: 'ECONNREFUSED'});
	await markForwarded(db, {id: 3, now: 7});
	expect(await forwardCounts(db)).toEqual({waiting: 0, sent: 1, dead: 2});
	expect(await deadForwards(db, 10)).toEqual([
		{id: 1, record: 'a', version: 1, attempts: 1, lastError: 'answered 500'},
		{id: 2, record: 'b', version: 1, attempts: 0, lastError: 'ECONNREFUSED'},
	]);
	expect(await reviveForwards(db, {id: 1, now: 100})).toBe(1);
	// Pressed twice, it is not begun twice.
	expect(await reviveForwards(db, {id: 1, now: 101})).toBe(0);
	expect(await nextToForward(db, 100)).toMatchObject({webhookId: 'w1', attempts: 0});
	expect(await reviveForwards(db, {now: 102})).toBe(1);
	expect(await forwardCounts(db)).toEqual({waiting: 2, sent: 1, dead: 0});
});

test('a message given up is not sent after a later one of its record was heard', async () => {
	const db = await queued(message('w1'), message('w2'), message('w3', 'b'));
	for (const id of [1, 3]) await buryForward(db, {id, error: 'answered 500'});
	await markForwarded(db, {id: 2, now: 5});
	expect(await reviveForwards(db, {now: 9})).toBe(1);
	expect(await nextId(db, 9)).toBe('w3');
	const rows = await db.selectFrom('forward').select(['webhookId', 'state']).orderBy('id').execute();
	expect(rows[0]).toEqual({webhookId: 'w1', state: 'overtaken'});
});

test('a message that was revived while a later one of its record was on its way is overtaken, too', async () => {
	const db = await queued(message('w1'), message('w2'));
	await buryForward(db, {id: 1, error: 'answered 500'});
	await claimForward(db, {id: 2, attempts: 0, until: 60});
	await reviveForwards(db, {now: 9});
	await markForwarded(db, {id: 2, now: 10});
	expect(await nextToForward(db, 1e9)).toBeUndefined();
});

test('a message once heard keeps its id and loses its words', async () => {
	const db = await queued({...message('w1'), body: '{"place":"blue hut"}'});
	await markForwarded(db, {id: 1, now: 7});
	expect(await db.selectFrom('forward').select(['webhookId', 'body']).execute()).toEqual([
		{webhookId: 'w1', body: '{}'},
	]);
});
