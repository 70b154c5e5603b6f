/** After a survey day: its coordinator is shown what came of it, and sends it on with one tap. */
import {outOfQuiet} from '../place/quiet-hours.ts';
import {broadcastsOf} from '../store/broadcasts.ts';
import {privateChatOf} from '../store/chats.ts';
import {type DayRow, daysOver, markAskedForResult} from '../store/days.ts';
import {post} from '../store/outbox.ts';
import {personById} from '../store/people.ts';
import type {Db} from '../store/schema.ts';
import {readDay} from './day-plan.ts';
import {newsOf, tellNow} from './day-publish.ts';
import {resultOf} from './day-result.ts';
import {type Desk, type House, postHere, readerAt, regionOf, sayHere, shelfOf} from './desk.ts';
import {planButton} from './plan-screen.ts';
import {resultBars, resultMap, resultText} from './result-words.ts';
import {escaped} from './words.ts';

const hourMs = 3_600_000;
/** By then most have come home and saved what they found. */
const afterMs = 3 * hourMs;
const longestMs = 14 * 24 * hourMs;

/** Tells coordinators whose day is over that its result is there, out of their quiet hours; says whether any was. */
export async function askForResults(house: House, db: Db): Promise<boolean> {
	const now = house.now();
	const rows = await daysOver(db, {before: now - afterMs, after: now - longestMs});
	for (const row of rows) await askForResult(house, db, row);
	return false;
}

async function askForResult(house: House, db: Db, row: DayRow): Promise<void> {
	const now = house.now();
	await db.transaction().execute(async tx => {
		const person = row.person === null ? undefined : await personById(tx, row.person);
		if (person && outOfQuiet(now, person.zone ?? house.zone) > now) return;
		if (!(await markAskedForResult(tx, row.id, now)) || !person) return;
		const chat = await privateChatOf(tx, person.id);
		if (!chat) return;
		const {say} = shelfOf(house, row.region).texts.in(person.language);
		const keyboard = [[{text: say('plan-result'), data: planButton('result', row.id)}]];
		const html = escaped(say('day-result-there', {title: readDay(row)?.title ?? ''}));
		await post(tx, {chat: chat.id, role: 'say', call: {kind: 'send', html, keyboard}, now});
	});
	house.wake();
}

/** Shows the coordinator what came of a day so far: words, chart and map, and the button that sends it. */
export async function showResult(desk: Desk, row: DayRow): Promise<void> {
	const day = readDay(row);
	if (!day) return;
	const {house, tx} = desk;
	const {say} = readerAt(desk);
	if (desk.now < day.startsAt) return sayHere(desk, say.say('day-result-early'));
	const told = {day, result: await resultOf(house, tx, {row, day})};
	const reader = {house, say, region: regionOf(desk)};
	const [bars, map] = [resultBars(told, reader), resultMap(told, reader)];
	const send = [[{text: say.say('plan-send'), data: planButton('send', row.id)}]];
	const html = escaped(resultText(told, reader));
	await postHere(desk, {kind: 'send', html, keyboard: send, ...(bars ? {picture: bars} : {})}, {role: 'say'});
	if (!map) return;
	const where = escaped(say.say('day-result-map'));
	await postHere(desk, {kind: 'send', html: where, keyboard: [], picture: map}, {role: 'say'});
}

/** Sends the result to those who came, once. */
export async function sendResult(desk: Desk, row: DayRow): Promise<void> {
	const day = readDay(row);
	if (!day) return;
	const {say} = readerAt(desk);
	if (desk.now < day.endsAt) return sayHere(desk, say.say('day-result-early'));
	const sent = (await broadcastsOf(desk.tx, row.id)).some(({kind}) => kind === 'result');
	if (sent) return sayHere(desk, say.say('day-result-sent'));
	const result = await resultOf(desk.house, desk.tx, {row, day});
	return tellNow(desk, {row, news: {...newsOf(row, day), result}, kind: 'result'});
}
