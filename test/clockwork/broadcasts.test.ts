import {expect, test} from 'vitest';
import {stopTelling} from '../../src/store/audience.ts';
import {moveBroadcast} from '../../src/store/broadcasts.ts';
import {recoverDeliveries} from '../../src/store/deliveries.ts';
import {noteGuest} from '../../src/store/guests.ts';
import {exampleDay} from '../survey/days.ts';
import {begunAt, type Crowd, crowdOf, idOf} from './crowd.ts';

const hourMs = 3_600_000;

/** How often each chat took each text. */
function timesTold({host}: Crowd): ReadonlyMap<string, number> {
	const times = new Map<string, number>();
	for (const {chat, text} of host.taken()) {
		times.set(`${chat} ${text}`, (times.get(`${chat} ${text}`) ?? 0) + 1);
	}
	return times;
}

test('everybody who asked is told once, and the ledger says so', async () => {
	const crowd = await crowdOf({people: 40});
	const broadcast = await crowd.tell('announced');
	await crowd.run();
	expect([...timesTold(crowd).values()]).toEqual(Array.from({length: 40}, () => 1));
	expect(await crowd.ledger(broadcast)).toMatchObject({sent: 40, waiting: 0, unknown: 0, failed: 0});
	expect(crowd.lines).toMatchObject([{level: 'info', what: 'broadcast done', sent: 40}]);
	await crowd.run();
	expect(crowd.host.taken()).toHaveLength(40);
	expect(crowd.host.mostAtOnce()).toBeLessThanOrEqual(3);
});

test('what waits for its hour is told then and not before', async () => {
	const crowd = await crowdOf({people: 2});
	await crowd.tell('announced', {dueAt: begunAt + hourMs});
	await crowd.run();
	expect(crowd.host.taken()).toEqual([]);
	crowd.time.now = begunAt + hourMs;
	await crowd.run();
	expect(crowd.host.taken()).toHaveLength(2);
});

test('what is of no use any more is told to nobody', async () => {
	const crowd = await crowdOf({people: 2});
	const broadcast = await crowd.tell('announced', {uselessAt: begunAt + hourMs});
	crowd.time.now = begunAt + hourMs;
	await crowd.run();
	expect(crowd.host.taken()).toEqual([]);
	const row = await crowd.db
		.selectFrom('broadcast')
		.select('state')
		.where('id', '=', broadcast)
		.executeTakeFirst();
	expect(row?.state).toBe('done');
});

test('at night an announcement waits for seven by the clock of each person', async () => {
	const crowd = await crowdOf({people: 2});
	await crowd.db.updateTable('person').set({zone: 'America/Vancouver'}).where('id', '=', 2).execute();
	// 23:30 in London, 15:30 in Vancouver.
	crowd.time.now = Date.UTC(2026, 3, 20, 22, 30);
	await crowd.tell('announced');
	await crowd.run(crowd.time.now + 1000);
	expect(crowd.host.taken().map(({chat}) => chat)).toEqual([idOf(2)]);
	crowd.time.now = Date.UTC(2026, 3, 21, 6);
	await crowd.run();
	expect(crowd.host.taken().map(({chat}) => chat)).toEqual([idOf(2), idOf(1)]);
});

test('who has blocked the bot is taken off, and asked no more', async () => {
	const crowd = await crowdOf({
		people: 3,
		trouble: chat =>
			chat === idOf(2)
				? {kind: 'refuse', code: 403, description: 'Forbidden: bot was blocked by the user'}
				: undefined,
	});
	const broadcast = await crowd.tell('announced');
	await crowd.run();
	expect(await crowd.ledger(broadcast)).toMatchObject({sent: 2, gone: 1});
	expect(crowd.lines.filter(({level}) => level === 'error')).toEqual([]);
	const left = await crowd.db.selectFrom('audience').select('chat').orderBy('chat').execute();
	expect(left.map(({chat}) => chat)).toEqual([1, 3]);
	const next = await crowd.tell('announced');
	await crowd.run();
	expect(await crowd.ledger(next)).toMatchObject({sent: 2, gone: 0});
});

test('a message whose fate nobody knows is not sent again, whether it arrived or not', async () => {
	const crowd = await crowdOf({
		people: 3,
		trouble: chat => (chat === idOf(3) ? undefined : {kind: 'hang-up', isTaken: chat === idOf(1)}),
	});
	const broadcast = await crowd.tell('announced');
	await crowd.run();
	expect(await crowd.ledger(broadcast)).toMatchObject({sent: 1, unknown: 2, waiting: 0});
	expect(
		crowd.host
			.taken()
			.map(({chat}) => chat)
			.toSorted(),
	).toEqual([idOf(1), idOf(3)]);
});

test('what was in hand when the program died is marked as unknown, and the others are told', async () => {
	const crowd = await crowdOf({people: 5});
	const broadcast = await crowd.tell('announced');
	// As a program leaves it that dies between marking and hearing the answer.
	await crowd.broadcaster.work();
	await crowd.broadcaster.work();
	await crowd.db.updateTable('delivery').set({state: 'sending'}).where('chat', '=', 2).execute();
	await recoverDeliveries(crowd.db);
	await crowd.run(Number.POSITIVE_INFINITY, crowd.open());
	expect(await crowd.ledger(broadcast)).toMatchObject({sent: 4, unknown: 1});
	expect(crowd.host.taken().map(({chat}) => chat)).not.toContain(idOf(2));
});

test('a broadcast is paused, goes on and is stopped', async () => {
	const crowd = await crowdOf({people: 140});
	const broadcast = await crowd.tell('announced');
	await crowd.run(begunAt + 1);
	const before = crowd.host.taken().length;
	expect(before).toBeLessThan(140);
	await moveBroadcast(crowd.db, {id: broadcast, from: ['running'], to: 'paused'});
	crowd.time.now += hourMs;
	await crowd.run();
	expect(crowd.host.taken()).toHaveLength(before);
	await moveBroadcast(crowd.db, {id: broadcast, from: ['paused'], to: 'running'});
	await crowd.run(crowd.time.now + 1);
	const after = crowd.host.taken().length;
	expect(after).toBeGreaterThan(before);
	expect(after).toBeLessThan(140);
	await moveBroadcast(crowd.db, {id: broadcast, from: ['running'], to: 'stopped'});
	crowd.time.now += hourMs;
	await crowd.run();
	expect(crowd.host.taken()).toHaveLength(after);
});

test('what cannot wait goes before what can', async () => {
	const crowd = await crowdOf({people: 60});
	await crowd.tell('announced');
	await crowd.run(begunAt + 1);
	const before = crowd.host.taken().length;
	for (const person of [1, 2, 3]) {
		await crowd.db
			.transaction()
			.execute(tx =>
				noteGuest(tx, {day: crowd.day, person, chat: person, answer: 'coming', party: 1, now: begunAt}),
			);
	}
	await crowd.tell('cancelled', {uselessAt: exampleDay.endsAt});
	await crowd.run();
	const cancelled = crowd.host.taken().flatMap(({text}, index) => (text === 'cancelled' ? [index] : []));
	// All who were told of the day hear it before anybody else hears that there is one.
	expect(Math.max(...cancelled)).toBeLessThan(before + cancelled.length + 3);
});

test('a change goes to those who were told, and to none who cannot come or took back their wish', async () => {
	const crowd = await crowdOf({people: 4});
	await crowd.tell('announced');
	await crowd.run();
	const say = (person: number, answer: 'coming' | 'cannot') =>
		crowd.db
			.transaction()
			.execute(tx => noteGuest(tx, {day: crowd.day, person, chat: person, answer, party: 1, now: begunAt}));
	await say(1, 'coming');
	await say(2, 'cannot');
	await stopTelling(crowd.db, 3);
	crowd.time.now += 2000;
	await crowd.tell('changed', {uselessAt: exampleDay.endsAt});
	await crowd.run();
	const changed = crowd.host.taken().filter(({text}) => text === 'changed');
	expect(changed.map(({chat}) => chat).toSorted()).toEqual([idOf(1), idOf(4)]);
});

test('the coordinator sees how far it is, at most every ten seconds, and the end', async () => {
	const crowd = await crowdOf({people: 700});
	const {id} = await crowd.db
		.insertInto('outbox')
		.values({
			chat: 1,
			lane: 'chat',
			find: null,
			turn: null,
			role: 'say',
			content: '{}',
			notBefore: 0,
			state: 'sent',
			messageId: 1,
			createdAt: 0,
			sentAt: 0,
		})
		.returning('id')
		.executeTakeFirstOrThrow();
	await crowd.tell('announced', {progressRow: id});
	await crowd.run();
	const at = crowd.shown.map(one => one.at);
	expect(at.length).toBeGreaterThan(2);
	const gaps = at.slice(1, -1).map((one, index) => one - (at[index] ?? 0));
	expect(Math.min(...gaps)).toBeGreaterThanOrEqual(10_000);
	expect(crowd.shown.at(-1)).toMatchObject({state: 'done', ledger: {sent: 700, waiting: 0}});
}, 60_000);
