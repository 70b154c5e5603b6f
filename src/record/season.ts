/** A year of records in numbers: by kind, place, month and status, and where they lay. */
import type {MapPlace} from '../draw/map-frame.ts';
import {statuses} from './for-export.ts';
import type {ToldRecord} from './told.ts';
import {type Totals, totalsOf} from './totals.ts';
import type {Wanted} from './wanted.ts';

/** A calendar year; what a verifier found to be no egg case is counted apart. */
export type Season = {
	readonly year: number;
	readonly totals: Totals;
	/** Cases found in each month from January on. */
	readonly months: readonly number[];
	/** Where they lay, no finer than records are told. */
	readonly places: readonly MapPlace[];
	readonly notEggCases: number;
	/** The region of most finds. */
	readonly region: string | undefined;
};

/** A place said with less than this is a square on a map, in metres: half the diagonal of a square of 1 km. */
const vagueM = 700;
/** More dots than this are gathered to about a kilometre, so that a map stays small enough to wait in a queue. */
const mostDots = 400;

/** Which records belong to a year. */
export function seasonWanted(year: number): Wanted {
	return {from: `${year}-01-01`, to: `${year}-12-31`, statuses};
}

/** Adds the records of a year up; nothing of them is kept but the numbers. */
export async function seasonOf(records: AsyncIterable<ToldRecord>, year: number): Promise<Season> {
	const months = Array.from({length: 12}, () => 0);
	const places = new Map<string, MapPlace>();
	const regions = new Map<string, number>();
	let notEggCases = 0;
	async function* counted(): AsyncGenerator<ToldRecord> {
		for await (const record of records) {
			if (record.status === 'not-an-egg-case') {
				notEggCases += 1;
				continue;
			}
			const month = Number(record.day.slice(5, 7)) - 1;
			months[month] = (months[month] ?? 0) + (record.cases ?? 1);
			regions.set(record.region.id, (regions.get(record.region.id) ?? 0) + 1);
			addPlace(places, placeOf(record));
			yield record;
		}
	}
	const totals = await totalsOf(counted());
	const [most] = [...regions].sort(([, one], [, other]) => other - one);
	return {year, totals, months, places: gathered([...places.values()]), notEggCases, region: most?.[0]};
}

/** The point, or the square round it where the record tells no finer. */
function placeOf({point, core, cases}: ToldRecord): MapPlace | undefined {
	if (!point) return undefined;
	const count = cases ?? 1;
	const isVague = Number(core.coordinateUncertaintyInMeters ?? 0) >= vagueM;
	const corners = isVague ? cornersIn(String(core.footprintWKT ?? '')) : [];
	if (corners.length === 0) return {kind: 'point', ...point, count};
	const [longitudes, latitudes] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
	return {
		kind: 'square',
		south: Math.min(...latitudes),
		west: Math.min(...longitudes),
		north: Math.max(...latitudes),
		east: Math.max(...longitudes),
		count,
	};
}

/** The corners of a polygon in well-known text, longitude first. */
function cornersIn(text: string): readonly (readonly [number, number])[] {
	return [...text.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
}

function addPlace(places: Map<string, MapPlace>, place: MapPlace | undefined): void {
	if (!place) return;
	const {count, ...where} = place;
	const name = JSON.stringify(where);
	places.set(name, {...place, count: count + (places.get(name)?.count ?? 0)});
}

function gathered(places: readonly MapPlace[]): readonly MapPlace[] {
	if (places.length <= mostDots) return places;
	const near = new Map<string, MapPlace>();
	for (const place of places) {
		const isPoint = place.kind === 'point';
		addPlace(
			near,
			isPoint
				? {
						...place,
						latitude: Number(place.latitude.toFixed(2)),
						longitude: Number(place.longitude.toFixed(2)),
					}
				: place,
		);
	}
	return [...near.values()];
}
