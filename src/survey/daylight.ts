/** When it is light at a place. */
import {getTimes} from 'suncalc';
import {instantsOf} from './clock-time.ts';

/** Light of one local day: from sunrise to sunset (UTC ms), all day long, or not at all. */
export type Daylight =
	| {readonly kind: 'day'; readonly sunriseAt: number; readonly sunsetAt: number}
	| {readonly kind: 'always-light'}
	| {readonly kind: 'always-dark'};

/** The light of an ISO date at a place, on a level horizon: a cliff in the west brings the dark earlier. */
export function daylightOn(day: {
	readonly date: string;
	readonly zone: string;
	readonly latitude: number;
	readonly longitude: number;
}): Daylight {
	const {latitude, longitude} = day;
	const [noon = Date.parse(`${day.date}T12:00Z`)] = instantsOf({...day, time: '12:00'});
	const {sunrise, sunset, alwaysUp} = getTimes(new Date(noon), latitude, longitude);
	if (sunrise && sunset) return {kind: 'day', sunriseAt: sunrise.getTime(), sunsetAt: sunset.getTime()};
	return {kind: alwaysUp === true ? 'always-light' : 'always-dark'};
}
