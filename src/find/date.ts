/** The day of a find, as people type it. */
import {DateTime} from 'luxon';

/** What a text says about a day: the ISO date, or why it was not taken. */
export type DateRead =
	| {readonly kind: 'date'; readonly date: string}
	| {readonly kind: 'refused'; readonly why: 'not-a-date' | 'future' | 'too-old'; readonly heard: string};

/** Days before this year are taken for slips of the finger. */
const earliestYear = 1900;

/** Day first, as written in the region; without a year the last such day is meant. */
const withYear = [
	'd/M/yyyy',
	'd.M.yyyy',
	'd-M-yyyy',
	'd/M/yy',
	'd.M.yy',
	'd MMM yyyy',
	'd MMMM yyyy',
	'MMM d yyyy',
	'MMMM d yyyy',
];
const withoutYear = ['d/M', 'd.M.', 'd.M', 'd MMM', 'd MMMM', 'MMM d', 'MMMM d'];

/** Reads a day; `today` is the local ISO date, and no day after it is taken. */
export function readDate(text: string, today: string): DateRead {
	const heard = text.trim().slice(0, 60);
	const plain = heard
		.replace(/^(?:(?:on|the|(?:mon|tues|wednes|thurs|fri|satur|sun)day)\b[\s,]*)+/i, '')
		.replace(/\s+of\s+/i, ' ')
		.replace(/(\d)(?:st|nd|rd|th)\b/i, '$1')
		.replace(/\bsept\b/i, 'Sep')
		.replace(/,/g, ' ')
		.replace(/\s+/g, ' ');
	const now = DateTime.fromISO(today, {zone: 'utc'});
	const word = plain.toLowerCase();
	if (word === 'today') return {kind: 'date', date: today};
	if (word === 'yesterday') return {kind: 'date', date: now.minus({days: 1}).toFormat('yyyy-MM-dd')};
	const found = parsed(plain, now);
	if (!found) return {kind: 'refused', why: 'not-a-date', heard};
	if (found > now) return {kind: 'refused', why: 'future', heard};
	if (found.year < earliestYear) return {kind: 'refused', why: 'too-old', heard};
	return {kind: 'date', date: found.toFormat('yyyy-MM-dd')};
}

/** The local ISO date at an instant. */
export function localDate(now: number, zone: string): string {
	return DateTime.fromMillis(now, {zone}).toFormat('yyyy-MM-dd');
}

function parsed(text: string, now: DateTime): DateTime | undefined {
	const iso = /^\d{4}-\d{2}-\d{2}$/.test(text) ? DateTime.fromISO(text, {zone: 'utc'}) : undefined;
	if (iso) return iso.isValid ? iso : undefined;
	const options = {zone: 'utc', locale: 'en'};
	const full = withYear.map(format => DateTime.fromFormat(text, format, options)).find(date => date.isValid);
	if (full) return full;
	for (const format of withoutYear) {
		// The year goes in before reading, so that 29 February is judged in its own year.
		for (const year of [now.year, now.year - 1]) {
			const date = DateTime.fromFormat(`${text} ${year}`, `${format} yyyy`, options);
			if (date.isValid && date <= now) return date;
		}
	}
	return undefined;
}
