import {expect, test} from 'vitest';
import {atOnce, hearsAt, isLate, remindersOf} from '../../src/survey/telling.ts';
import {exampleDay} from './days.ts';

const hourMs = 3_600_000;
const london = 'Europe/London';

test('people are reminded at six on the evening before and two hours before the start', () => {
	expect(remindersOf(exampleDay, Date.UTC(2026, 3, 20))).toEqual([
		{kind: 'evening', dueAt: Date.UTC(2026, 4, 1, 17), uselessAt: Date.UTC(2026, 4, 2, 8)},
		{kind: 'soon', dueAt: Date.UTC(2026, 4, 2, 8), uselessAt: exampleDay.startsAt},
	]);
});

test.each([
	// Clocks go forward on 29 March 2026 at 01:00 UTC, and back on 25 October (zone database 2025c).
	['2026-03-29', Date.UTC(2026, 2, 29, 9), Date.UTC(2026, 2, 28, 18)],
	['2026-10-25', Date.UTC(2026, 9, 25, 10), Date.UTC(2026, 9, 24, 17)],
	['2026-10-26', Date.UTC(2026, 9, 26, 10), Date.UTC(2026, 9, 25, 18)],
])('the evening before %s is six by the clocks of that evening', (date, startsAt, evening) => {
	const day = {...exampleDay, date, startsAt, endsAt: startsAt + hourMs};
	const [first, second] = remindersOf(day, 0);
	expect(first?.dueAt).toBe(evening);
	// Two hours are two hours, also over a change.
	expect(second?.dueAt).toBe(startsAt - 2 * hourMs);
});

test('a reminder whose hour was over before the day was told is not sent after it', () => {
	expect(remindersOf(exampleDay, Date.UTC(2026, 4, 1, 20)).map(({kind}) => kind)).toEqual(['soon']);
	expect(remindersOf(exampleDay, exampleDay.startsAt)).toEqual([]);
});

const soon = (startsAt: number) =>
	({kind: 'soon', startsAt, dueAt: startsAt - 2 * hourMs, uselessAt: startsAt}) as const;

test('nobody is woken for a day that begins after the quiet hours', () => {
	const startsAt = Date.UTC(2026, 4, 2, 7);
	expect(hearsAt(soon(startsAt), {zone: london, now: startsAt - 2 * hourMs})).toBe(Date.UTC(2026, 4, 2, 6));
});

test('a day at dawn is spoken of at night, since it is then', () => {
	const startsAt = Date.UTC(2026, 4, 2, 4, 30);
	expect(hearsAt(soon(startsAt), {zone: london, now: startsAt - 2 * hourMs})).toBe(startsAt - 2 * hourMs);
});

test('it is the quiet hours of the reader that count', () => {
	const evening = {
		kind: 'evening',
		...exampleDay,
		dueAt: Date.UTC(2026, 4, 1, 17),
		uselessAt: Date.UTC(2026, 4, 2, 8),
	} as const;
	const now = evening.dueAt;
	expect(hearsAt(evening, {zone: london, now})).toBe(now);
	// Three in the morning in Sydney: it waits for seven, which is ten in the evening in London.
	expect(hearsAt(evening, {zone: 'Australia/Sydney', now})).toBe(Date.UTC(2026, 4, 1, 21));
});

test('a change and the end of a day are told at once, whatever the hour', () => {
	const now = Date.UTC(2026, 4, 1, 23);
	for (const kind of ['changed', 'cancelled'] as const) {
		expect(
			hearsAt({kind, startsAt: exampleDay.startsAt, ...atOnce(exampleDay, kind, now)}, {zone: london, now}),
		).toBe(now);
	}
	for (const kind of ['announced', 'result'] as const) {
		expect(
			hearsAt({kind, startsAt: exampleDay.startsAt, ...atOnce(exampleDay, kind, now)}, {zone: london, now}),
		).toBe(Date.UTC(2026, 4, 2, 6));
	}
});

test('what would come too late to be of use is not told at all', () => {
	const notice = {
		kind: 'soon',
		startsAt: exampleDay.startsAt,
		dueAt: 0,
		uselessAt: exampleDay.startsAt,
	} as const;
	expect(hearsAt(notice, {zone: london, now: exampleDay.startsAt})).toBeUndefined();
	expect(hearsAt(notice, {zone: london, now: exampleDay.startsAt - 1})).toBe(exampleDay.startsAt - 1);
});

test('half an hour after its time a notice says that it is late, and waiting for the morning is not late', () => {
	const due = {dueAt: 0, hearsAt: 9 * hourMs};
	expect(isLate(due, 9.5 * hourMs)).toBe(false);
	expect(isLate(due, 9.5 * hourMs + 1)).toBe(true);
});
