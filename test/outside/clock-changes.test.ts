/** Local times held to the zone database by another way into it: the clocks that Node's own Intl shows. */
import {expect, test} from 'vitest';
import {instantsOf} from '../../src/survey/clock-time.ts';

const quarterMs = 900_000;

/** Every quarter of an hour at which the clocks of the zone show this time, found by looking at each. */
function foundByLooking(date: string, time: string, zone: string): readonly number[] {
	const clock = new Intl.DateTimeFormat('sv-SE', {timeZone: zone, dateStyle: 'short', timeStyle: 'short'});
	const noon = Date.parse(`${date}T${time}Z`);
	const around = Array.from({length: 4 * 32}, (_, index) => noon + (index - 64) * quarterMs);
	return around.filter(at => clock.format(at) === `${date} ${time}`);
}

const changes = [
	['Europe/London', '2026-03-29', '2026-10-25'],
	['Europe/Lisbon', '2026-03-29', '2026-10-25'],
	['Atlantic/Azores', '2026-03-29', '2026-10-25'],
	['America/Los_Angeles', '2026-03-08', '2026-11-01'],
	// Half an hour, and in the other half of the year.
	['Australia/Lord_Howe', '2026-10-04', '2026-04-05'],
] as const;

test.each(changes)(
	'in %s every quarter of an hour of both changes is read as its clocks show it',
	(zone, ...dates) => {
		for (const date of dates) {
			for (let quarter = 0; quarter < 96; quarter += 1) {
				const time = new Date(quarter * quarterMs).toISOString().slice(11, 16);
				expect(instantsOf({date, time, zone}), `${date} ${time}`).toEqual(foundByLooking(date, time, zone));
			}
		}
	},
);

test('in London half past one is left out in spring and comes twice in autumn', () => {
	const london = {time: '01:30', zone: 'Europe/London'};
	expect(instantsOf({...london, date: '2026-03-29'})).toEqual([]);
	expect(instantsOf({...london, date: '2026-10-25'})).toEqual([
		Date.UTC(2026, 9, 25, 0, 30),
		Date.UTC(2026, 9, 25, 1, 30),
	]);
});
