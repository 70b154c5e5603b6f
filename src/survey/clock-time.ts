/** Times of a beach's own clocks, as people write them and as instants. */
import {DateTime} from 'luxon';

const written = /^(?:at\s+)?(\d{1,2})(?:\s*[:.h]\s*([0-5]\d)|([0-5]\d))?\s*(?:h|o'?clock)?\s*(am|pm)?$/;

/** A time such as `09:30` out of “9:30”, “9.30 am”, “0930” or “9 pm”; `undefined` for what is none. */
export function readClockTime(text: string): string | undefined {
	const found = written.exec(
		text
			.trim()
			.toLowerCase()
			.replace(/([ap])\.?\s*m\.?$/, '$1m'),
	);
	if (!found) return undefined;
	const [, hours = '', apart, together, half] = found;
	const hour = hourOf(Number(hours), half);
	if (hour === undefined) return undefined;
	return `${String(hour).padStart(2, '0')}:${apart ?? together ?? '00'}`;
}

function hourOf(hour: number, half: string | undefined): number | undefined {
	if (half === undefined) return hour < 24 ? hour : undefined;
	if (hour < 1 || hour > 12) return undefined;
	return (hour % 12) + (half === 'pm' ? 12 : 0);
}

/**
 * The instants (UTC ms) at which the clocks of a zone show a time on an ISO date, earlier first: one as a rule, none
 * in the hour that is left out in spring, two in the hour that comes twice in autumn.
 */
export function instantsOf({
	date,
	time,
	zone,
}: {
	readonly date: string;
	readonly time: string;
	readonly zone: string;
}): readonly number[] {
	const local = DateTime.fromISO(`${date}T${time}`, {zone});
	if (local.toFormat('yyyy-MM-dd HH:mm') !== `${date} ${time}`) return [];
	return local
		.getPossibleOffsets()
		.map(one => one.toMillis())
		.toSorted((one, other) => one - other);
}

/** The ISO date so many days after another. */
export function dateAfter(date: string, days: number): string {
	return DateTime.fromISO(date, {zone: 'utc'}).plus({days}).toFormat('yyyy-MM-dd');
}

/** The ISO date and the time that the clocks of a zone show at an instant. */
export function clockAt(at: number, zone: string): {readonly date: string; readonly time: string} {
	const local = DateTime.fromMillis(at, {zone});
	return {date: local.toFormat('yyyy-MM-dd'), time: local.toFormat('HH:mm')};
}
