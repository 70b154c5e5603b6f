/** What a coordinator reads of the tide that is worked out, beside the one they typed; nobody else ever does. */
import type {Day} from '../survey/day.ts';
import {checkLowWater} from '../survey/tide-check.ts';
import type {Tides} from '../survey/tides.ts';
import type {Say} from '../text/text.ts';
import {placeTime} from './day-words.ts';

/** Says whether a typed low water fits an estimate, with its station and source; nothing where there is none. */
export function tideText(day: Day, say: Say, tides: Tides): string | undefined {
	const check = checkLowWater(day, tides);
	if (!check) return undefined;
	const {gauge, lowAt, apartMs} = check;
	const values = {
		station: gauge.name,
		away: Math.max(1, Math.round(gauge.distanceM / 1000)),
		low: placeTime(day, lowAt, say),
		attribution: gauge.attribution,
	};
	if (apartMs === undefined) return say.say('plan-tide-fits', values);
	const minutes = Math.round(apartMs / 60_000);
	return say.say('plan-tide-differs', {...values, hours: Math.floor(minutes / 60), minutes: minutes % 60});
}
