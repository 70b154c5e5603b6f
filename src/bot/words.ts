/** Values put in words: instants by the reader's zone, days by the reader's language; all of it escaped. */
import {DateTime} from 'luxon';
import type {Line, Values} from '../find/question.ts';
import type {Say} from '../text/text.ts';

/** Who reads, and whose clock it is. */
export type Reader = {readonly say: Say; readonly zone: string; readonly now: number};

/** A sentence filled, its ISO days said as people say them. */
export function lineText(line: Line, reader: Reader, times: Readonly<Record<string, number>> = {}): string {
	const said = Object.entries(times).map(([name, at]) => [name, timeText(at, reader)] as const);
	return reader.say.say(line.message, {...daysSaid(line.values ?? {}, reader), ...Object.fromEntries(said)});
}

/** An instant as a clock time, with the day when it is not today. */
export function timeText(at: number, {say, zone, now}: Reader): string {
	const local = DateTime.fromMillis(at, {zone, locale: say.language});
	const isToday = local.hasSame(DateTime.fromMillis(now, {zone}), 'day');
	return local.toFormat(isToday ? 'HH:mm' : 'HH:mm, cccc d LLLL');
}

/** An ISO day in words. */
export function dayText(date: string, {say}: Pick<Reader, 'say'>): string {
	return DateTime.fromISO(date, {locale: say.language}).toFormat('d LLLL yyyy');
}

/** The day of an instant in words. */
export function dayOf(at: number, {say, zone}: Pick<Reader, 'say' | 'zone'>): string {
	return DateTime.fromMillis(at, {zone, locale: say.language}).toFormat('d LLLL yyyy');
}

/** Text made safe for the platform's HTML: the one place where everything people wrote is escaped. */
export function escaped(text: string): string {
	return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

function daysSaid(values: Values, reader: Reader): Values {
	const {date} = values;
	return typeof date === 'string' ? {...values, date: dayText(date, reader)} : values;
}
