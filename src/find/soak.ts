/** When to wake somebody about a bowl: never in the night, right across clock changes. */
import {DateTime} from 'luxon';
import {outOfQuiet} from '../place/quiet-hours.ts';
import type {Soak} from './trail.ts';
import type {Moment} from './value.ts';

const hourMs = 3_600_000;
/** Dry cases need at least this long in tap water (common practice). */
export const leastSoakMs = 2 * hourMs;

/** A soak of two hours; one that would end in the quiet hours ends at their end. */
export function twoHourSoak({now, zone}: Moment): Soak {
	return {kind: 'soak', plan: 'two-hours', startedAt: now, dueAt: outOfQuiet(now + leastSoakMs, zone), zone};
}

/** One hour more, kept out of the quiet hours. */
export function oneMoreHour({now, zone}: Moment): Soak {
	return {kind: 'soak', plan: 'one-more-hour', startedAt: now, dueAt: outOfQuiet(now + hourMs, zone), zone};
}

/** Until the next time the clock shows `hour` that is at least two hours away. */
export function untilMorning({now, zone}: Moment, hour: number): Soak {
	const earliest = DateTime.fromMillis(now + leastSoakMs, {zone});
	const sameDay = earliest.set({hour, minute: 0, second: 0, millisecond: 0});
	const due = sameDay < earliest ? sameDay.plus({days: 1}) : sameDay;
	return {kind: 'soak', plan: 'overnight', startedAt: now, dueAt: outOfQuiet(due.toMillis(), zone), zone};
}
