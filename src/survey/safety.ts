/** The words on safety that fit a day: said before anybody is sent to a beach. */
import {clockAt, dateAfter} from './clock-time.ts';
import type {Day} from './day.ts';
import {type Daylight, daylightOn} from './daylight.ts';

/** A sentence on safety by its id, with the instants it names (UTC ms). */
export type SafetyWord = {readonly message: string; readonly times?: Readonly<Record<string, number>>};

const minuteMs = 60_000;
/** Less light than this after the end, and the way back may be in the dark (judged). */
const nearDarkMs = 60 * minuteMs;

/** What has to be said of a day beside the usual, most pressing first; the weather is always part of it. */
export function safetyWords(day: Day): readonly SafetyWord[] {
	return [...tideWords(day), ...lightWords(day), {message: 'day-safe-weather'}];
}

function tideWords({lowWater, startsAt, endsAt}: Day): readonly SafetyWord[] {
	if (!lowWater) return [{message: 'day-safe-small-tide'}];
	const times = {low: lowWater.at};
	if (lowWater.at <= startsAt) return [{message: 'day-safe-rising', times}];
	if (lowWater.at < endsAt) return [{message: 'day-safe-turn', times}];
	return [{message: 'day-safe-falling', times}];
}

function lightWords(day: Day): readonly SafetyWord[] {
	const {startsAt, endsAt, spot} = day;
	const light = daylightOn({...spot, date: day.date});
	if (light.kind === 'always-light') return [];
	if (light.kind === 'always-dark') return [{message: 'day-safe-no-sun'}];
	return [...morningWords(light, startsAt), ...eveningWords(day, light, endsAt)];
}

type WithNight = Extract<Daylight, {kind: 'day'}>;

function morningWords({sunriseAt}: WithNight, startsAt: number): readonly SafetyWord[] {
	return startsAt < sunriseAt ? [{message: 'day-safe-before-sunrise', times: {sunrise: sunriseAt}}] : [];
}

function eveningWords({date, spot}: Day, light: WithNight, endsAt: number): readonly SafetyWord[] {
	const times = {sunset: light.sunsetAt};
	if (endsAt <= light.sunsetAt - nearDarkMs) return [{message: 'day-safe-light', times}];
	if (endsAt <= light.sunsetAt) return [{message: 'day-safe-near-dark', times}];
	// A day that goes on through the night ends in the light of the next morning, and is dark all the same.
	const morning = daylightOn({...spot, date: dateAfter(date, 1)});
	const isNextDay = clockAt(endsAt, spot.zone).date !== date;
	const isOver = isNextDay && morning.kind === 'day' && endsAt > morning.sunriseAt;
	return [{message: isOver ? 'day-safe-night' : 'day-safe-dark', times}];
}
