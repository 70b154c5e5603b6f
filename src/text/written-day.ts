/** Days as people write them, in any of the usual orders with the day first. */
import {DateTime} from 'luxon';

/** Whether a day without a year is the last such day or the next one. */
export type Looking = 'back' | 'ahead';

/** Day first, as written in the region. */
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

/** The ISO date that a text means, seen from the ISO date `today`; `undefined` for what is no day. */
export function readWrittenDay(text: string, today: string, looking: Looking): string | undefined {
	const plain = text
		.trim()
		.replace(/^(?:(?:on|the|(?:mon|tues|wednes|thurs|fri|satur|sun)day)\b[\s,]*)+/i, '')
		.replace(/\s+of\s+/i, ' ')
		.replace(/(\d)(?:st|nd|rd|th)\b/i, '$1')
		.replace(/\bsept\b/i, 'Sep')
		.replace(/,/g, ' ')
		.replace(/\s+/g, ' ');
	const now = DateTime.fromISO(today, {zone: 'utc'});
	const shift = nearDays.get(plain.toLowerCase());
	const found = shift === undefined ? parsed(plain, now, looking) : now.plus({days: shift});
	return found?.toFormat('yyyy-MM-dd');
}

const nearDays: ReadonlyMap<string, number> = new Map([
	['yesterday', -1],
	['today', 0],
	['tomorrow', 1],
]);

function parsed(text: string, now: DateTime, looking: Looking): DateTime | undefined {
	const iso = /^\d{4}-\d{2}-\d{2}$/.test(text) ? DateTime.fromISO(text, {zone: 'utc'}) : undefined;
	if (iso) return iso.isValid ? iso : undefined;
	const options = {zone: 'utc', locale: 'en'};
	const full = withYear.map(format => DateTime.fromFormat(text, format, options)).find(date => date.isValid);
	if (full) return full;
	const years = looking === 'back' ? [now.year, now.year - 1] : [now.year, now.year + 1];
	for (const format of withoutYear) {
		// The year goes in before reading, so that 29 February is judged in its own year.
		for (const year of years) {
			const date = DateTime.fromFormat(`${text} ${year}`, `${format} yyyy`, options);
			if (date.isValid && (looking === 'back' ? date <= now : date >= now)) return date;
		}
	}
	return undefined;
}
