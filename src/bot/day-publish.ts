/** A day goes before the public, is changed or called off: who asked hears it, and reminders are set. */

import {placeFromPin} from '../place/place.ts';
import {broadcastsOf, rewordBroadcast, stopBroadcasts, tellMany} from '../store/broadcasts.ts';
import {cancelDay, type DayRow, publishDay} from '../store/days.ts';
import {post} from '../store/outbox.ts';
import {stopListening} from '../store/seats.ts';
import {changesBetween, type Day} from '../survey/day.ts';
import type {News} from '../survey/news.ts';
import {atOnce, remindersOf} from '../survey/telling.ts';
import {readDay} from './day-plan.ts';
import {type Desk, readerAt, regionOf, sayHere, sitterAt} from './desk.ts';
import {regionOfPlace} from './region.ts';
import {escaped} from './words.ts';

type Kind = 'announced' | 'changed' | 'cancelled' | 'result';

/** Publishes a planned day, or what was changed of it. */
export async function publish(desk: Desk, row: DayRow, day: Day): Promise<void> {
	const {tx, now} = desk;
	const {say} = readerAt(desk);
	const before = row.state === 'published' ? readDay(row) : undefined;
	if (before && changesBetween(before, day).length === 0) return sayHere(desk, say.say('plan-same'));
	const region = regionOfPlace(desk.house, regionOf(desk), placeFromPin(day.spot));
	const {startsAt, endsAt} = day;
	const published = await publishDay(tx, {
		day: row.id,
		body: JSON.stringify(day),
		region,
		startsAt,
		endsAt,
		now,
	});
	await stopListening(tx, sitterAt(desk));
	const news = newsOf(published, day);
	await stopBroadcasts(tx, {day: row.id, kinds: ['evening', 'soon']});
	if (before) {
		await rewordUnfinished(desk, row.id, news);
		await tellNow(desk, {row: published, news: {...news, before}, kind: 'changed'});
	} else await tellNow(desk, {row: published, news, kind: 'announced'});
	const body = JSON.stringify(news);
	for (const reminder of remindersOf(day, now)) await tellMany(tx, {day: row.id, ...reminder, body, now});
}

/** Calls a published day off. */
export async function callOff(desk: Desk, row: DayRow): Promise<void> {
	const {tx, now} = desk;
	const day = readDay(row);
	if (!day) return;
	await cancelDay(tx, {day: row.id, now});
	await stopListening(tx, sitterAt(desk));
	await stopBroadcasts(tx, {day: row.id, kinds: ['announced', 'evening', 'soon', 'changed']});
	const cancelled = {...row, sequence: row.sequence + 1};
	await tellNow(desk, {row: cancelled, news: newsOf(cancelled, day), kind: 'cancelled'});
}

/** What is told of a stored day. */
export function newsOf(row: DayRow, day: Day): News {
	const {uuid, sequence, region, person} = row;
	return {uuid, sequence, region, day, ...(person === null ? {} : {coordinator: person})};
}

/** Tells it as soon as may be; the coordinator gets a message that shows how far it is. */
export async function tellNow(
	desk: Desk,
	{row, news, kind}: {readonly row: DayRow; readonly news: News; readonly kind: Kind},
): Promise<void> {
	const {tx, now, chat} = desk;
	const html = escaped(readerAt(desk).say.say(`cast-begins-${kind}`));
	const call = {kind: 'send' as const, html, keyboard: []};
	const progressRow = await post(tx, {chat: chat.id, role: 'say', call, now});
	const body = JSON.stringify(news);
	await tellMany(tx, {day: row.id, kind, ...atOnce(news.day, kind, now), body, progressRow, now});
}

/** Who has not heard of the day yet hears of it as it is now. */
async function rewordUnfinished({tx}: Desk, day: number, news: News): Promise<void> {
	const unfinished = ['waiting', 'gathering', 'running', 'paused'];
	for (const {id, kind, state} of await broadcastsOf(tx, day)) {
		if (kind === 'announced' && unfinished.includes(state))
			await rewordBroadcast(tx, {id, body: JSON.stringify(news)});
	}
}
