/** The hours in which nobody is woken, by the clock of whoever would be. */
import {DateTime} from 'luxon';

/** Nobody is woken from this local hour on … */
export const quietFromHour = 22;
/** … until this one. */
export const quietUntilHour = 7;

/** The same instant, or 07:00 local time when it lies between 22:00 and 07:00. */
export function outOfQuiet(at: number, zone: string): number {
	const local = DateTime.fromMillis(at, {zone});
	const morning = local.set({hour: quietUntilHour, minute: 0, second: 0, millisecond: 0});
	if (local.hour >= quietFromHour) return morning.plus({days: 1}).toMillis();
	return local.hour < quietUntilHour ? morning.toMillis() : at;
}

/** Whether an instant lies in the quiet hours of a zone. */
export function isQuiet(at: number, zone: string): boolean {
	return outOfQuiet(at, zone) !== at;
}
