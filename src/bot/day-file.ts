/** A survey day as a file for people's calendars. */
import type {Call} from '../store/call.ts';
import {calendarFile} from '../survey/calendar.ts';
import type {Day} from '../survey/day.ts';
import {dayFacts} from './day-words.ts';
import type {Reader} from './words.ts';

type Attachment = NonNullable<Extract<Call, {kind: 'send'}>['attachment']>;

/** The calendar file of one version of a day; opening a newer one changes the entry that is there. */
export function dayFile(
	of: {readonly uuid: string; readonly sequence: number; readonly day: Day; readonly isCancelled: boolean},
	reader: Reader,
): Attachment {
	const {day, uuid, sequence, isCancelled} = of;
	const {latitude, longitude} = day.spot;
	const [, ...facts] = dayFacts(day, reader);
	const text = calendarFile({
		uid: `${uuid}@pursekey`,
		sequence,
		writtenAt: reader.now,
		startsAt: day.startsAt,
		endsAt: day.endsAt,
		summary: day.title,
		location: `${day.place}; ${day.meeting}`,
		position: {latitude, longitude},
		description: [...facts, reader.say.say('day-file-check')].join('\n'),
		isCancelled,
	});
	return {name: `survey-${day.date}.ics`, text};
}
