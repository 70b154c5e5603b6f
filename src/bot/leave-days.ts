/** A coordinator who wants to be forgotten leaves their survey days: those to come are off, and none names them. */
import {broadcastsOf, rewordBroadcast, stopBroadcasts, tellMany} from '../store/broadcasts.ts';
import {cancelDay, type DayRow, daysOf, keepBody} from '../store/days.ts';
import {newsSchema} from '../survey/news.ts';
import {atOnce} from '../survey/telling.ts';
import {readDay} from './day-plan.ts';
import {newsOf} from './day-publish.ts';
import type {Desk} from './desk.ts';

const everyDay = 10_000;
/** Stands where whom to ask stood. */
const nobodyToAsk = '–';

/** Calls off what is to come of the person's days, and takes out of all of them whom people could ask. */
export async function leaveDays(desk: Desk): Promise<void> {
	for (const row of await daysOf(desk.tx, desk.person.id, everyDay)) await leaveDay(desk, row);
}

async function leaveDay({tx, now}: Desk, row: DayRow): Promise<void> {
	const told = readDay(row);
	if (!told) return;
	const day = {...told, contact: nobodyToAsk};
	await keepBody(tx, {day: row.id, body: JSON.stringify(day)});
	for (const {id, body} of await broadcastsOf(tx, row.id)) {
		const {coordinator: _, before: __, ...news} = newsSchema.parse(JSON.parse(body));
		await rewordBroadcast(tx, {
			id,
			body: JSON.stringify({...news, day: {...news.day, contact: nobodyToAsk}}),
		});
	}
	if (row.state !== 'published' || told.endsAt <= now) return;
	await cancelDay(tx, {day: row.id, now});
	await stopBroadcasts(tx, {day: row.id, kinds: ['announced', 'evening', 'soon', 'changed']});
	const news = newsOf({...row, person: null, sequence: row.sequence + 1}, day);
	await tellMany(tx, {
		day: row.id,
		kind: 'cancelled',
		...atOnce(day, 'cancelled', now),
		body: JSON.stringify(news),
		now,
	});
}
