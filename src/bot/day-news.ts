/** What people are told of a day, each in their own language: announcements, reminders, changes, results. */
import type {Broadcast} from '../store/broadcasts.ts';
import type {Call, Keyboard} from '../store/call.ts';
import type {Delivery} from '../store/deliveries.ts';
import {personById} from '../store/people.ts';
import type {Db} from '../store/schema.ts';
import {changesBetween} from '../survey/day.ts';
import {type News, newsSchema} from '../survey/news.ts';
import {isLate} from '../survey/telling.ts';
import {menuButton} from './button.ts';
import {dayFile} from './day-file.ts';
import {dayCard, placeTime, safetyText, whenValues} from './day-words.ts';
import {type House, shelfOf} from './desk.ts';
import {resultMap, resultText} from './result-words.ts';
import {escaped, type Reader, timeText} from './words.ts';

type SendCall = Extract<Call, {kind: 'send'}>;

/** Longer words go without their file (platform-limits.json, caption), and a button brings it. */
const mostUnderFile = 1024;

/** Words the deliveries of broadcasts, each in the language and by the clock of its reader. */
export function openNews(
	house: House,
	db: Db,
): (broadcast: Broadcast, delivery: Delivery) => Promise<SendCall> {
	// Thousands hear the same: it is put in words once for each language and clock.
	let worded = new Map<string, SendCall>();
	let of: string | undefined;
	return async (broadcast, delivery) => {
		const {id, body} = broadcast;
		if (of !== `${id} ${body}`) worded = new Map();
		of = `${id} ${body}`;
		const person = delivery.person === undefined ? undefined : await personById(db, delivery.person);
		const zone = person?.zone ?? house.zone;
		const isTold = isLate({...broadcast, ...delivery}, house.now()) ? `late ${delivery.hearsAt}` : 'in time';
		const key = [person?.language, zone, isTold].join(' ');
		const known = worded.get(key);
		if (known) return known;
		const news = newsSchema.parse(JSON.parse(body));
		const say = shelfOf(house, news.region).texts.in(person?.language);
		const call = wordNews(house, {broadcast, delivery, news}, {say, zone, now: house.now()});
		worded.set(key, call);
		return call;
	};
}

type Told = {readonly broadcast: Broadcast; readonly delivery: Delivery; readonly news: News};

function wordNews(house: House, {broadcast, delivery, news}: Told, reader: Reader): SendCall {
	const {kind} = broadcast;
	const {day, result, region} = news;
	const results = {house, say: reader.say, region};
	const words = kind === 'result' && result ? [resultText({day, result}, results)] : [];
	const map = kind === 'result' && result ? resultMap({day, result}, results) : undefined;
	const text = [...lateText(broadcast, delivery, reader), newsText(kind, news, reader), ...words].join(
		'\n\n',
	);
	return {
		kind: 'send',
		html: escaped(text),
		keyboard: newsKeyboard(broadcast, {reader, isLong: text.length > mostUnderFile}),
		...(map ? {picture: map} : {}),
		...(hasFile(kind) ? {attachment: fileOf(kind, news, reader)} : {}),
	};
}

/** What comes after its time says so. */
function lateText({kind, dueAt}: Broadcast, {hearsAt}: Delivery, reader: Reader): readonly string[] {
	if (kind === 'announced' || kind === 'result') return [];
	if (!isLate({dueAt, hearsAt}, reader.now)) return [];
	return [reader.say.say('day-late', {due: timeText(Math.max(dueAt, hearsAt), reader)})];
}

function newsText(kind: Broadcast['kind'], news: News, reader: Reader): string {
	const {day} = news;
	const {say} = reader;
	const values = {...whenValues(day, say), title: day.title, place: day.place, meeting: day.meeting};
	switch (kind) {
		case 'announced':
			return [say.say('day-announced'), dayCard(day, reader)].join('\n');
		case 'evening':
			return [say.say('day-evening'), dayCard(day, reader)].join('\n');
		case 'soon':
			return [say.say('day-soon', values), safetyText(day, say)].join('\n\n');
		case 'changed':
			return [...changeLines(news, reader), dayCard(day, reader)].join('\n');
		case 'cancelled':
			return say.say('day-cancelled', {...values, contact: day.contact});
		case 'result':
			return say.say('day-thanks', values);
	}
}

function changeLines({day, before}: News, {say}: Reader): readonly string[] {
	const changes = before ? changesBetween(before, day) : [];
	const was = before && {
		date: whenValues(before, say)['date'] ?? '',
		from: placeTime(before, before.startsAt, say),
		place: before.place,
	};
	return [
		say.say('day-changed'),
		...(was && changes.includes('time') ? [say.say('day-changed-time', was)] : []),
		...(was && changes.includes('place') ? [say.say('day-changed-place', was)] : []),
		'',
	];
}

function hasFile(kind: Broadcast['kind']): boolean {
	return kind === 'announced' || kind === 'changed' || kind === 'cancelled';
}

function fileOf(kind: Broadcast['kind'], {uuid, sequence, day}: News, reader: Reader) {
	return dayFile({uuid, sequence, day, isCancelled: kind === 'cancelled'}, reader);
}

/** Who is told of a day can say at once whether they come, and have peace from all of it. */
function newsKeyboard(
	{kind, day}: Broadcast,
	{reader, isLong}: {readonly reader: Reader; readonly isLong: boolean},
): Keyboard {
	const {say} = reader;
	const stop = [{text: say.say('day-stop'), data: menuButton('tellme', 'stop')}];
	if (kind === 'cancelled' || kind === 'result') return [stop];
	const file = isLong && hasFile(kind) ? [[{text: say.say('day-file'), data: dayButton(day, 'file')}]] : [];
	return [...guestButtons(day, say), ...file, stop];
}

/** The three answers to a day. */
export function guestButtons(day: number, say: Reader['say']): Keyboard {
	const button = (act: 'coming' | 'perhaps' | 'cannot') => ({
		text: say.say(`day-${act}`),
		data: dayButton(day, act),
	});
	return [[button('coming'), button('perhaps'), button('cannot')]];
}

/** The data of a button about a day that everybody may press. */
export function dayButton(day: number, act: string, ...more: readonly string[]): string {
	return menuButton('day', act, String(day), ...more);
}
