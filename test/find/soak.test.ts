import {expect, test} from 'vitest';
import {leastSoakMs, oneMoreHour, twoHourSoak, untilMorning} from '../../src/find/soak.ts';
import {outOfQuiet} from '../../src/place/quiet-hours.ts';

// Offsets by hand, from the clock changes of 2026: 29 March and 25 October at 01:00 UTC in Europe
// (London 0 or +1, Paris +1 or +2; survey-day.md, section 5, measured with tzdata 2025c); Vancouver
// is seven hours behind UTC on all of these days (8 March to 1 November; from memory).
const london = 'Europe/London';
const paris = 'Europe/Paris';
const vancouver = 'America/Vancouver';
const hourMs = 3_600_000;

const at = (iso: string) => Date.parse(iso);
const said = (ms: number) => new Date(ms).toISOString().replace(':00.000Z', 'Z');

test.each([
	['London, a summer day', london, '2026-05-02T09:30Z', '2026-05-02T11:30Z'],
	['London, so late that it ends at 21:59', london, '2026-05-02T18:59Z', '2026-05-02T20:59Z'],
	['London, ending at 22:00', london, '2026-05-02T19:00Z', '2026-05-02T21:00Z', '2026-05-03T06:00Z'],
	['London, begun at midnight', london, '2026-05-01T23:00Z', '2026-05-02T01:00Z', '2026-05-02T06:00Z'],
	['London, ending at 06:59', london, '2026-05-02T03:59Z', '2026-05-02T05:59Z', '2026-05-02T06:00Z'],
	['London, ending at 07:00', london, '2026-05-02T04:00Z', '2026-05-02T06:00Z'],
	[
		'London, the evening before summer time',
		london,
		'2026-03-28T21:00Z',
		'2026-03-28T23:00Z',
		'2026-03-29T06:00Z',
	],
	[
		'London, across the hour that is not there',
		london,
		'2026-03-28T23:30Z',
		'2026-03-29T01:30Z',
		'2026-03-29T06:00Z',
	],
	[
		'London, the evening before winter time',
		london,
		'2026-10-24T20:00Z',
		'2026-10-24T22:00Z',
		'2026-10-25T07:00Z',
	],
	[
		'London, into the hour that comes twice',
		london,
		'2026-10-24T23:30Z',
		'2026-10-25T01:30Z',
		'2026-10-25T07:00Z',
	],
	[
		'Paris, the evening before summer time',
		paris,
		'2026-03-28T20:30Z',
		'2026-03-28T22:30Z',
		'2026-03-29T05:00Z',
	],
	[
		'Paris, the evening before winter time',
		paris,
		'2026-10-24T19:30Z',
		'2026-10-24T21:30Z',
		'2026-10-25T06:00Z',
	],
	['Paris, an hour later than London', paris, '2026-05-02T18:30Z', '2026-05-02T20:30Z', '2026-05-03T05:00Z'],
	[
		'Vancouver, on the day of the change in Europe',
		vancouver,
		'2026-03-29T04:00Z',
		'2026-03-29T06:00Z',
		'2026-03-29T14:00Z',
	],
	[
		'Vancouver, on the other day of the change',
		vancouver,
		'2026-10-25T03:30Z',
		'2026-10-25T05:30Z',
		'2026-10-25T14:00Z',
	],
	['Vancouver, by day, when it is night in London', vancouver, '2026-05-02T22:00Z', '2026-05-03T00:00Z'],
])('a two-hour soak never ends in the night: %s', (_, zone, startedAt, twoHoursOn, due = twoHoursOn) => {
	const soak = twoHourSoak({now: at(startedAt), zone});
	expect(at(twoHoursOn) - at(startedAt)).toBe(leastSoakMs);
	expect(said(soak.dueAt)).toBe(due);
	expect(soak).toMatchObject({kind: 'soak', plan: 'two-hours', startedAt: at(startedAt), zone});
});

test.each([
	['London, at noon', london, '2026-05-02T11:00Z', '2026-05-02T12:00Z'],
	['London, at 21:00', london, '2026-05-02T20:00Z', '2026-05-03T06:00Z'],
	['London, the evening before winter time', london, '2026-10-24T20:30Z', '2026-10-25T07:00Z'],
	['Paris, the evening before summer time', paris, '2026-03-28T20:15Z', '2026-03-29T05:00Z'],
])('one hour more never ends in the night either: %s', (_, zone, now, due) => {
	expect(said(oneMoreHour({now: at(now), zone}).dueAt)).toBe(due);
});

test.each([
	['London, in summer', london, '2026-05-02T20:00Z', 8, '2026-05-03T07:00Z'],
	['London, over the night that is an hour short', london, '2026-03-28T22:00Z', 8, '2026-03-29T07:00Z'],
	['London, over the night that is an hour long', london, '2026-10-24T17:00Z', 8, '2026-10-25T08:00Z'],
	['London, chosen after midnight', london, '2026-05-03T00:30Z', 8, '2026-05-03T07:00Z'],
	['London, chosen at 05:30, when 07:00 is too near', london, '2026-05-03T04:30Z', 7, '2026-05-04T06:00Z'],
	[
		'London, chosen at 05:00, when 07:00 is just far enough',
		london,
		'2026-05-03T04:00Z',
		7,
		'2026-05-03T06:00Z',
	],
	['Paris, over the short night', paris, '2026-03-28T21:00Z', 7, '2026-03-29T05:00Z'],
	['Paris, over the long night', paris, '2026-10-24T20:00Z', 10, '2026-10-25T09:00Z'],
	['Vancouver', vancouver, '2026-10-25T03:00Z', 9, '2026-10-25T16:00Z'],
])('an overnight soak ends when the clock shows the chosen hour: %s', (_, zone, now, hour, due) => {
	const soak = untilMorning({now: at(now), zone}, hour);
	expect(said(soak.dueAt)).toBe(due);
	expect(soak).toMatchObject({plan: 'overnight', startedAt: at(now), zone});
});

test('a day of twenty-four hours from 18:00 before winter time ends at 17:00 by the clock', () => {
	// survey-day.md, section 5: 24 October 2026, 18:00 in London, and 24 hours end at 17:00.
	const end = at('2026-10-24T17:00Z') + 24 * hourMs;
	expect(said(outOfQuiet(end, london))).toBe('2026-10-25T17:00Z');
	const clock = new Intl.DateTimeFormat('en-GB', {timeZone: london, hour: '2-digit', minute: '2-digit'});
	expect(clock.format(outOfQuiet(end, london))).toBe('17:00');
});

test('no instant of the nights of the clock changes lies in the quiet hours once it is moved', () => {
	for (const zone of [london, paris, vancouver]) {
		const hour = new Intl.DateTimeFormat('en-GB', {timeZone: zone, hour: '2-digit', hourCycle: 'h23'});
		for (const day of ['2026-03-28T12:00Z', '2026-10-24T12:00Z', '2026-05-02T12:00Z']) {
			for (let ms = at(day); ms < at(day) + 36 * hourMs; ms += hourMs / 4) {
				const moved = outOfQuiet(ms, zone);
				const shown = Number(hour.format(moved));
				expect(shown >= 7 && shown < 22, `${zone}, ${said(ms)}`).toBe(true);
				expect(moved).toBeGreaterThanOrEqual(ms);
				expect(moved - ms).toBeLessThanOrEqual(10 * hourMs);
			}
		}
	}
});
