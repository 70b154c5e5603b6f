/** A season in numbers: finds and cases by kind, place, month and status. */
import type {Status} from './for-export.ts';
import type {ToldRecord} from './told.ts';

/** How many finds, and how many cases they held where somebody counted. */
export type Total = {readonly finds: number; readonly cases: number};

/** Totals under each name, in the order of the names. */
export type Totals = {
	readonly all: Total;
	/** By the name that counts, at whatever rank it is sure. */
	readonly species: Readonly<Record<string, Total>>;
	/** By 10 km square, by a larger one where the place is hidden in it, or by the name of the place. */
	readonly places: Readonly<Record<string, Total>>;
	/** By month of finding, `2026-05`. */
	readonly months: Readonly<Record<string, Total>>;
	readonly statuses: Readonly<Record<string, Total>>;
};

/** What totals need to know of a record. */
export type Counted = Pick<ToldRecord, 'name' | 'where' | 'day' | 'cases'> & {readonly status: Status};

/** Adds records up, one after another; nothing of them is kept but the numbers. */
export async function totalsOf(records: AsyncIterable<Counted> | Iterable<Counted>): Promise<Totals> {
	let all: Total = {finds: 0, cases: 0};
	const species = new Map<string, Total>();
	const places = new Map<string, Total>();
	const months = new Map<string, Total>();
	const statuses = new Map<string, Total>();
	for await (const {name, where, day, status, cases} of records) {
		all = withOne(all, cases);
		addTo(species, name ?? 'none', cases);
		addTo(places, where ?? 'not told', cases);
		addTo(months, day.slice(0, 7), cases);
		addTo(statuses, status, cases);
	}
	return {
		all,
		species: inOrder(species),
		places: inOrder(places),
		months: inOrder(months),
		statuses: inOrder(statuses),
	};
}

function withOne({finds, cases}: Total, count: number | undefined): Total {
	return {finds: finds + 1, cases: cases + (count ?? 0)};
}

function addTo(totals: Map<string, Total>, name: string, count: number | undefined): void {
	totals.set(name, withOne(totals.get(name) ?? {finds: 0, cases: 0}, count));
}

function inOrder(totals: ReadonlyMap<string, Total>): Readonly<Record<string, Total>> {
	return Object.fromEntries([...totals].sort(([one], [other]) => (one < other ? -1 : 1)));
}
