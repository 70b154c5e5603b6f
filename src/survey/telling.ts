/** Who is told what of a day, when, and until when it is still of use. */
import {DateTime} from 'luxon';
import {isQuiet, outOfQuiet} from '../place/quiet-hours.ts';
import type {Day} from './day.ts';

/** What people are told of a day. */
export const noticeKinds = ['announced', 'evening', 'soon', 'changed', 'cancelled', 'result'] as const;
/** One of the things people are told of a day. */
export type NoticeKind = (typeof noticeKinds)[number];

/** When a notice is to go (UTC ms), and the instant from which it is of no use any more. */
export type Due = {readonly dueAt: number; readonly uselessAt: number};

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;
/** The evening before, by the clocks of the place. */
const eveningHour = 18;
const soonMs = 2 * hourMs;
/** Said later than this after its hour, a notice says that it is late. */
export const lateMs = hourMs / 2;
const resultLivesMs = 14 * dayMs;

/** When the reminders of a day are due by themselves; those whose time was over at `now` are left out. */
export function remindersOf(day: Day, now: number): readonly (Due & {readonly kind: 'evening' | 'soon'})[] {
	const soonAt = day.startsAt - soonMs;
	return [
		{kind: 'evening' as const, dueAt: eveningBefore(day), uselessAt: soonAt},
		{kind: 'soon' as const, dueAt: soonAt, uselessAt: day.startsAt},
	].filter(({dueAt}) => dueAt > now);
}

/** 18:00 on the day before, as the clocks of the place show it. */
function eveningBefore({date, spot}: Day): number {
	const {zone} = spot;
	return DateTime.fromISO(date, {zone}).minus({days: 1}).set({hour: eveningHour}).toMillis();
}

/** When something that happens at `now` is told, and how long it is of use. */
export function atOnce(day: Day, kind: 'announced' | 'changed' | 'cancelled' | 'result', now: number): Due {
	switch (kind) {
		case 'announced':
			return {dueAt: now, uselessAt: day.startsAt};
		case 'changed':
		case 'cancelled':
			return {dueAt: now, uselessAt: Math.max(day.endsAt, now + hourMs)};
		case 'result':
			return {dueAt: now, uselessAt: now + resultLivesMs};
	}
}

/**
 * When a person hears it: out of their quiet hours, unless the day itself begins in them or the news cannot wait:
 * a change or the end of a day is told at once. `undefined` when it would be of no use by then.
 */
export function hearsAt(
	notice: Due & {readonly kind: NoticeKind; readonly startsAt: number},
	{zone, now}: {readonly zone: string; readonly now: number},
): number | undefined {
	const {kind, dueAt, uselessAt, startsAt} = notice;
	const earliest = Math.max(dueAt, now);
	const cannotWait = kind === 'changed' || kind === 'cancelled';
	const isDayThen = kind !== 'result' && isQuiet(startsAt, zone) && startsAt < outOfQuiet(earliest, zone);
	const at = cannotWait || isDayThen ? earliest : outOfQuiet(earliest, zone);
	return at < uselessAt ? at : undefined;
}

/** Whether a notice that goes out at `now` has to say that it is late. */
export function isLate({dueAt, hearsAt: heard}: {dueAt: number; hearsAt: number}, now: number): boolean {
	return now - Math.max(dueAt, heard) > lateMs;
}
