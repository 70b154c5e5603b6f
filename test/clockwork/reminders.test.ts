import {expect, test} from 'vitest';
import {wakeDueBowls} from '../../src/clockwork/reminders.ts';
import {putInBowl} from '../../src/store/finds.ts';
import {type Reminder, remind} from '../../src/store/reminders.ts';
import type {Tx} from '../../src/store/schema.ts';
import {storeWithFinds} from '../record/kept.ts';

const zone = 'Europe/London';
const minuteMs = 60_000;
// In July London is an hour ahead of UTC.
const noon = Date.UTC(2026, 6, 10, 11);

async function scene(finds: number) {
	const db = await storeWithFinds(finds);
	const woken: (readonly number[])[] = [];
	const lines: object[] = [];
	const time = {now: noon};
	const onDue = async (_tx: Tx, reminders: readonly Reminder[]) => {
		woken.push(reminders.map(({find}) => find));
	};
	const tools = {db, now: () => time.now, onDue, log: (line: object) => void lines.push(line)};
	return {
		db,
		woken,
		lines,
		time,
		tools,
		wake: () => wakeDueBowls(tools),
		remindAt: (find: number, dueAt: number, where = zone) =>
			db.transaction().execute(tx => remind(tx, {find, dueAt, zone: where})),
		put: (find: number, bowl: number) => db.transaction().execute(tx => putInBowl(tx, {find, bowl})),
	};
}

test('a bowl is told once, when its time has come', async () => {
	const {woken, time, wake, remindAt} = await scene(1);
	await remindAt(1, noon + minuteMs);
	await wake();
	expect(woken).toEqual([]);
	time.now += minuteMs;
	await wake();
	await wake();
	expect(woken).toEqual([[1]]);
});

test('all cases of one bowl wake together, and those of another bowl by themselves', async () => {
	const {woken, wake, remindAt, put} = await scene(4);
	for (const find of [1, 2, 3, 4]) await remindAt(find, noon - find);
	await put(1, 1);
	await put(3, 1);
	await put(2, 2);
	await wake();
	expect([...woken].sort()).toEqual([[2], [3, 1], [4]]);
});

test('cases of one bowl that are spoken of in two chats are told in each', async () => {
	const {db, woken, wake, remindAt, put} = await scene(3);
	await db.insertInto('chat').values({kind: 'group', goneAt: null, createdAt: 0}).execute();
	for (const find of [1, 2, 3]) {
		await remindAt(find, noon - find);
		await put(find, 1);
	}
	await db.updateTable('find').set({chat: 2}).where('id', '=', 2).execute();
	await wake();
	expect([...woken].sort()).toEqual([[2], [3, 1]]);
});

test.each([
	{when: 'late in the evening', now: Date.UTC(2026, 6, 10, 21, 0), until: Date.UTC(2026, 6, 11, 6, 0)},
	{when: 'after midnight', now: Date.UTC(2026, 6, 11, 2, 30), until: Date.UTC(2026, 6, 11, 6, 0)},
	{when: 'a minute too early', now: Date.UTC(2026, 6, 11, 5, 59), until: Date.UTC(2026, 6, 11, 6, 0)},
	// Clocks go forward on 29 March 2026 at 01:00 UTC, and back on 25 October.
	{
		when: 'in the night of the spring change',
		now: Date.UTC(2026, 2, 28, 23),
		until: Date.UTC(2026, 2, 29, 6),
	},
	{
		when: 'in the night of the autumn change',
		now: Date.UTC(2026, 9, 24, 22),
		until: Date.UTC(2026, 9, 25, 7),
	},
])('a bowl that comes due $when waits for seven in the morning', async ({now, until}) => {
	const {woken, time, wake, remindAt} = await scene(1);
	time.now = now;
	await remindAt(1, now - minuteMs);
	await wake();
	time.now = until - 1;
	await wake();
	expect(woken).toEqual([]);
	time.now = until;
	await wake();
	expect(woken).toEqual([[1]]);
});

test('it is the clock of the finder that counts', async () => {
	const {woken, wake, remindAt} = await scene(2);
	// At 11:00 UTC it is four in the morning in Vancouver.
	await remindAt(1, noon - 1, 'America/Vancouver');
	await remindAt(2, noon - 1, 'Europe/Paris');
	await wake();
	expect(woken).toEqual([[2]]);
});

test('a bowl that cannot be told is tried again in ten minutes, and the others are told meanwhile', async () => {
	const {db, woken, lines, time, tools, wake, remindAt} = await scene(2);
	await remindAt(1, noon - 2);
	await remindAt(2, noon - 1);
	await wakeDueBowls({
		...tools,
		onDue: async (tx, reminders) => {
			await tx.insertInto('aside').values({updateId: 1, error: 'half done', at: 1}).execute();
			if (reminders[0]?.find === 1) throw new Error('trail broken');
			return tools.onDue(tx, reminders);
		},
	});
	expect(woken).toEqual([[2]]);
	expect(lines).toMatchObject([{level: 'error', what: 'reminder failed', finds: [1]}]);
	time.now += 10 * minuteMs - 1;
	await wake();
	expect(woken).toEqual([[2]]);
	time.now += 1;
	await wake();
	expect(woken).toEqual([[2], [1]]);
	// What the failed try wrote went with it.
	expect(await db.selectFrom('aside').selectAll().execute()).toHaveLength(1);
});
