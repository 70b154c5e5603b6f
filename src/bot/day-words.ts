/** A survey day in words: its card, its line in a list, and the words on safety that fit it. */
import {DateTime} from 'luxon';
import {clockAt} from '../survey/clock-time.ts';
import type {Day} from '../survey/day.ts';
import {type SafetyWord, safetyWords} from '../survey/safety.ts';
import type {Say, Values} from '../text/text.ts';
import type {Reader} from './words.ts';

/** All that people are told of a day before they set out, the words on safety last. */
export function dayCard(day: Day, reader: Reader): string {
	return [...dayFacts(day, reader), '', safetyText(day, reader.say)].join('\n');
}

/** What a day is, where and when, line by line. */
export function dayFacts(day: Day, {say, zone}: Reader): readonly string[] {
	const {lowWater, bring, risks, contact, meeting} = day;
	return [
		day.title,
		say.say('day-when', {...whenValues(day, say), away: hasOtherClocks(day, zone) ? 'yes' : 'no'}),
		say.say('day-where', {place: day.place, meeting}),
		...(lowWater ? [say.say('day-low-water', lowWaterValues(day, lowWater, say))] : []),
		...(bring === undefined ? [] : [say.say('day-bring', {bring})]),
		say.say('day-contact', {contact}),
		...(risks === undefined ? [] : [say.say('day-risks', {risks})]),
	];
}

/** The words on safety that fit a day, and those that fit every day. */
export function safetyText(day: Day, say: Say): string {
	const words = safetyWords(day).map(word => safetyLine(word, day, say));
	return [say.say('day-safe'), ...words.map(line => `• ${line}`), say.say('day-safe-always')].join('\n');
}

/** A day in a line. */
export function dayLine(day: Day, say: Say, away?: number): string {
	const values = {...whenValues(day, say), title: day.title, place: day.place};
	if (away === undefined) return say.say('day-line', values);
	return say.say('day-line-near', {...values, away: Math.max(1, Math.round(away / 1000))});
}

/** The values that sentences about the date and the hours of a day take, by the clocks of the place. */
export function whenValues(day: Day, say: Say): Values {
	const {zone} = day.spot;
	return {
		date: DateTime.fromMillis(day.startsAt, {zone, locale: say.language}).toFormat('cccc d LLLL yyyy'),
		from: placeTime(day, day.startsAt, say),
		to: placeTime(day, day.endsAt, say),
	};
}

/** A clock time at the place of the day; with its date where that is not the date of the day. */
export function placeTime({date, spot}: Day, at: number, say: Say): string {
	const local = DateTime.fromMillis(at, {zone: spot.zone, locale: say.language});
	return local.toFormat(clockAt(at, spot.zone).date === date ? 'HH:mm' : 'HH:mm, cccc d LLLL');
}

function lowWaterValues(day: Day, low: NonNullable<Day['lowWater']>, say: Say): Values {
	return {
		low: placeTime(day, low.at, say),
		height: low.heightM ?? 0,
		hasHeight: low.heightM === undefined ? 'no' : 'yes',
		table: low.table,
	};
}

function safetyLine({message, times = {}}: SafetyWord, day: Day, say: Say): string {
	const said = Object.entries(times).map(([name, at]) => [name, placeTime(day, at, say)] as const);
	return say.say(message, Object.fromEntries(said));
}

/** Whether the reader's clock shows another time than the one at the place, on that day. */
function hasOtherClocks({startsAt, spot}: Day, zone: string): boolean {
	const here = DateTime.fromMillis(startsAt, {zone});
	return here.offset !== DateTime.fromMillis(startsAt, {zone: spot.zone}).offset;
}
