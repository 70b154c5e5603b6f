/** The days that a tally is about: today, yesterday, or this month, by the clock of who asks. */
import {DateTime} from 'luxon';
import type {Reader} from './words.ts';

/** Which days. */
export type Span = 'today' | 'yesterday' | 'month';

/** In the order of the buttons. */
export const spans: readonly Span[] = ['today', 'yesterday', 'month'];

/** Days as ISO dates, both ends included; the instants between which they lie (UTC ms); and how they are called. */
export type Days = {
	readonly from: string;
	readonly to: string;
	readonly beginsAt: number;
	readonly endsAt: number;
	readonly called: string;
};

/** The days of a span; instants follow the zone's own clock, also on days of 23 and 25 hours. */
export function daysOf(span: Span, {now, zone, say}: Reader): Days {
	const today = DateTime.fromMillis(now, {zone, locale: say.language}).startOf('day');
	const day = span === 'yesterday' ? today.minus({days: 1}) : today;
	const begins = span === 'month' ? today.startOf('month') : day;
	return {
		from: begins.toFormat('yyyy-MM-dd'),
		to: day.toFormat('yyyy-MM-dd'),
		beginsAt: begins.toMillis(),
		endsAt: day.plus({days: 1}).toMillis(),
		called: day.toFormat(span === 'month' ? 'LLLL yyyy' : 'd LLLL yyyy'),
	};
}

/** One day, given as an ISO date. */
export function dayOf(date: string, {zone, say}: Reader): Days {
	const day = DateTime.fromISO(date, {zone, locale: say.language});
	return {
		from: date,
		to: date,
		beginsAt: day.toMillis(),
		endsAt: day.plus({days: 1}).toMillis(),
		called: day.toFormat('cccc d LLLL yyyy'),
	};
}

/** The span that a button names; today where there is no such button. */
export function spanFrom(text: string): Span {
	return spans.find(span => span === text) ?? 'today';
}
