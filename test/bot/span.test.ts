import {join} from 'node:path';
import {DateTime} from 'luxon';
import {expect, test} from 'vitest';
import {daysOf, spanFrom} from '../../src/bot/span.ts';
import {readTexts} from '../../src/text/text.ts';

const say = readTexts([join(import.meta.dirname, '../../src/text')]).in('en');
const zone = 'Europe/London';
const at = (iso: string) => DateTime.fromISO(iso, {zone}).toMillis();
const hourMs = 3_600_000;

test('today, yesterday and this month are those of the clock of who asks', () => {
	// At 23:30 UTC on 30 April it is half past midnight in London.
	const now = Date.UTC(2026, 3, 30, 23, 30);
	const reader = {say, zone, now};
	expect(daysOf('today', reader)).toMatchObject({from: '2026-05-01', to: '2026-05-01', called: '1 May 2026'});
	expect(daysOf('yesterday', reader)).toMatchObject({from: '2026-04-30', to: '2026-04-30'});
	expect(daysOf('month', reader)).toMatchObject({from: '2026-05-01', to: '2026-05-01', called: 'May 2026'});
	expect(daysOf('month', {...reader, zone: 'UTC'})).toMatchObject({from: '2026-04-01', to: '2026-04-30'});
});

// Clocks go forward on 29 March 2026 and back on 25 October (zone database).
test.each([
	['2026-03-29T18:00', 23],
	['2026-10-25T18:00', 25],
	['2026-05-02T18:00', 24],
])('the day of %s has its own length, %i hours', (now, hours) => {
	const {beginsAt, endsAt} = daysOf('today', {say, zone, now: at(now)});
	expect(endsAt - beginsAt).toBe(hours * hourMs);
	expect(beginsAt).toBe(at(`${now.slice(0, 10)}T00:00`));
});

test('a button that names no days means today', () => {
	expect(spanFrom('month')).toBe('month');
	expect(spanFrom('century')).toBe('today');
});
