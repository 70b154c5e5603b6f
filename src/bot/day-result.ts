/** What came of a survey day: the finds made there and then, gathered by themselves. */
import type {Region} from '../key/region.ts';
import {coarseSquare} from '../place/coarse-square.ts';
import {distanceM} from '../place/distance.ts';
import type {Spot} from '../place/place.ts';
import {type Draft, draftSchema} from '../record/draft.ts';
import {coarseSideFrom} from '../record/for-export.ts';
import {hidingOf} from '../record/protection.ts';
import {tallyOf} from '../record/tally.ts';
import {verificationFrom} from '../record/verification.ts';
import type {DayRow} from '../store/days.ts';
import {type Guest, guestsOf} from '../store/guests.ts';
import {type OwnedRecord, savedSince} from '../store/saved.ts';
import type {Db, Tx} from '../store/schema.ts';
import {clockAt} from '../survey/clock-time.ts';
import {type Day, dayRadiusM} from '../survey/day.ts';
import type {Result} from '../survey/result.ts';
import {type House, shelfOf} from './desk.ts';

type Found = OwnedRecord<Draft> & {readonly body: Draft};
type MapPlace = Result['places'][number];

/** Somebody may save what they found before the day began for all. */
const earlierMs = 12 * 3_600_000;
/** A place known no better than this still counts as there. */
const mostUnsureM = 1500;

/** Gathers what was found at the place of a day on its date, whoever found it and whenever they saved it. */
export async function resultOf(
	house: Pick<House, 'shelves' | 'region'>,
	db: Db | Tx,
	{row, day}: {row: DayRow; day: Day},
): Promise<Result> {
	const guests = await guestsOf(db, row.id);
	const saved = await savedSince(db, {dates: datesOf(day), since: day.startsAt - earlierMs}, draftSchema);
	const found = saved.flatMap(({body, ...record}): readonly Found[] =>
		body && isOfDay(body, {day, guests, finder: record.person}) ? [{...record, body}] : [],
	);
	const tally = tallyOf(found.map(({body, ...record}) => ({draft: body, ...record})));
	const coming = guests.filter(({answer}) => answer === 'coming');
	return {
		...tally,
		finders: new Set(found.map(({person}) => person)).size,
		heads: coming.reduce((sum, {party}) => sum + party, 0),
		minutes: Math.round((day.endsAt - day.startsAt) / 60_000),
		places: found.flatMap(record => mapPlaceOf(record, shelfOf(house, record.body.region.id).flow.region)),
	};
}

/** The date on which it began at the place, and the one on which it ended. */
function datesOf({startsAt, endsAt, spot}: Day): readonly string[] {
	return [...new Set([startsAt, endsAt].map(at => clockAt(at, spot.zone).date))];
}

/** Near enough to the pin of the day; a place that has only a name counts for those who said that they come. */
function isOfDay(
	{place, foundOn}: Draft,
	{day, guests, finder}: {readonly day: Day; readonly guests: readonly Guest[]; readonly finder: number},
): boolean {
	if (!datesOf(day).includes(foundOn)) return false;
	if (place.kind === 'named')
		return guests.some(({person, answer}) => person === finder && answer !== 'cannot');
	return distanceM(place, day.spot) <= dayRadiusM + Math.min(place.uncertaintyM, mostUnsureM);
}

/** Where a find stands on a map that others see: hidden in its square as in any export. */
function mapPlaceOf(
	{body, sharing, decision, savedAt, changedAt}: Found,
	region: Region,
): readonly MapPlace[] {
	const {place, count = 1} = body;
	if (place.kind === 'named' || decision?.outcome === 'not-an-egg-case') return [];
	const verification = decision && verificationFrom(decision, region);
	const coarseM = coarseSideFrom(sharing.coarseM);
	const hiding = hidingOf({draft: body, savedAt, changedAt, coarseM, verification}, region);
	if (hiding) return squareOf(place, hiding.sideM, count);
	return [{kind: 'point', latitude: place.latitude, longitude: place.longitude, count}];
}

function squareOf(
	place: Spot,
	sideM: Parameters<typeof coarseSquare>[1],
	count: number,
): readonly MapPlace[] {
	// Without the square it was given as there is always a larger one that hides it.
	const ring = coarseSquare({...place, sideM: undefined}, sideM)?.ring ?? [];
	if (ring.length === 0) return [];
	const [longitudes, latitudes] = [
		ring.map(([longitude]) => longitude),
		ring.map(([, latitude]) => latitude),
	];
	return [
		{
			kind: 'square',
			south: Math.min(...latitudes),
			north: Math.max(...latitudes),
			west: Math.min(...longitudes),
			east: Math.max(...longitudes),
			count,
		},
	];
}
