/** The day of a find, as people type it. */
import {DateTime} from 'luxon';
import {readWrittenDay} from '../text/written-day.ts';

/** What a text says about a day: the ISO date, or why it was not taken. */
export type DateRead =
	| {readonly kind: 'date'; readonly date: string}
	| {readonly kind: 'refused'; readonly why: 'not-a-date' | 'future' | 'too-old'; readonly heard: string};

/** Days before this year are taken for slips of the finger. */
const earliestYear = 1900;

/** Reads a day, without a year the last such day; `today` is the local ISO date, and no day after it is taken. */
export function readDate(text: string, today: string): DateRead {
	const heard = text.trim().slice(0, 60);
	const date = readWrittenDay(heard, today, 'back');
	if (date === undefined) return {kind: 'refused', why: 'not-a-date', heard};
	if (date > today) return {kind: 'refused', why: 'future', heard};
	if (Number(date.slice(0, 4)) < earliestYear) return {kind: 'refused', why: 'too-old', heard};
	return {kind: 'date', date};
}

/** The local ISO date at an instant. */
export function localDate(now: number, zone: string): string {
	return DateTime.fromMillis(now, {zone}).toFormat('yyyy-MM-dd');
}
