/** /days: survey days to come, and who comes. */
import {distanceM} from '../../place/distance.ts';
import {askToBeTold} from '../../store/audience.ts';
import type {Keyboard} from '../../store/call.ts';
import {type DayRow, dayByCode, dayById, daysToCome} from '../../store/days.ts';
import {dropWaiting} from '../../store/deliveries.ts';
import {type Guest, guestOf, noteGuest} from '../../store/guests.ts';
import {menuButton} from '../button.ts';
import {dayFile} from '../day-file.ts';
import {dayButton, guestButtons} from '../day-news.ts';
import {readDay} from '../day-plan.ts';
import {dayCard, dayLine} from '../day-words.ts';
import {type Ctx, type Desk, postHere, readerAt, regionOf, sayHere} from '../desk.ts';
import {nearSpot} from '../last-spot.ts';
import {escaped} from '../words.ts';

/** So many fit a phone. */
const mostListed = 6;
const mostLooked = 200;
const parties = [1, 2, 3, 4, 5, 6, 8, 10] as const;

/** Lists the next days: near the person where a place of theirs is known, else those of their coast first. */
export async function showDays({desk}: Ctx): Promise<void> {
	const {say} = readerAt(desk);
	const rows = await nextDays(desk);
	const tellMe = {text: say.say('days-tellme'), data: menuButton('tellme', 'show')};
	if (rows.length === 0) return sayHere(desk, say.say('days-none'), [[tellMe]]);
	const lines = rows.map(
		({row, day, away}) => `• ${say.say('day-number', {number: String(row.id)})} ${dayLine(day, say, away)}`,
	);
	const open = rows.map(({row}) => [
		{text: say.say('day-open', {number: String(row.id)}), data: dayButton(row.id, 'see')},
	]);
	return sayHere(desk, [say.say('days-list'), ...lines].join('\n'), [...open, [tellMe]]);
}

/** Does what a button about a day asks for. */
export async function actOnDay(desk: Desk, [act = '', id, ...more]: readonly string[]): Promise<void> {
	const row = await dayById(desk.tx, Number(id));
	return answerDay(desk, row, {act, more});
}

/** Shows the day of a link that somebody opened. */
export async function showLinkedDay(desk: Desk, code: string): Promise<void> {
	return answerDay(desk, await dayByCode(desk.tx, code), {act: 'see', more: []});
}

async function answerDay(
	desk: Desk,
	row: DayRow | undefined,
	{act, more}: {readonly act: string; readonly more: readonly string[]},
): Promise<void> {
	const {say} = readerAt(desk);
	const day = row && readDay(row);
	if (!row || !day) return sayHere(desk, say.say('day-gone'));
	if (row.state === 'cancelled') return sayHere(desk, say.say('day-is-off'));
	if (day.endsAt <= desk.now) return sayHere(desk, say.say('day-over'));
	switch (act) {
		case 'coming':
		case 'perhaps':
		case 'cannot':
			return noteAnswer(desk, row, act);
		case 'party':
			return noteParty(desk, row, Number(more[0]));
		case 'file':
			return sendFile(desk, row);
		case 'follow':
			return follow(desk, row);
		default:
			return seeDay(desk, row);
	}
}

async function seeDay(desk: Desk, row: DayRow): Promise<void> {
	const day = readDay(row);
	if (!day) return;
	const reader = readerAt(desk);
	const {say} = reader;
	const said = await guestOf(desk.tx, {day: row.id, person: desk.person.id});
	const text = [
		dayCard(day, reader),
		...(said ? ['', say.say('day-said', {answer: said.answer, party: said.party})] : []),
	];
	return sayHere(desk, text.join('\n'), [
		...guestButtons(row.id, say),
		[{text: say.say('day-file'), data: dayButton(row.id, 'file')}],
		[{text: say.say('day-follow'), data: dayButton(row.id, 'follow')}],
	]);
}

async function noteAnswer(desk: Desk, row: DayRow, answer: Guest['answer']): Promise<void> {
	const {tx, now, person, chat} = desk;
	const before = await guestOf(tx, {day: row.id, person: person.id});
	const party = before?.party ?? 1;
	await noteGuest(tx, {day: row.id, person: person.id, chat: chat.id, answer, party, now});
	if (answer === 'cannot') {
		// A group may have others who come.
		if (chat.kind === 'private') await dropWaiting(tx, {day: row.id, chat: chat.id});
		return speak(desk, 'day-noted-cannot', {});
	}
	return speak(desk, `day-noted-${answer}`, {keyboard: partyButtons(row.id), file: row});
}

async function noteParty(desk: Desk, row: DayRow, party: number): Promise<void> {
	const {tx, now, person, chat} = desk;
	const before = await guestOf(tx, {day: row.id, person: person.id});
	if (!before || before.answer === 'cannot' || !parties.some(one => one === party)) return seeDay(desk, row);
	await noteGuest(tx, {...before, chat: chat.id, party, now});
	return speak(desk, 'day-noted-party', {values: {party}});
}

async function sendFile(desk: Desk, row: DayRow): Promise<void> {
	return speak(desk, 'day-file-is', {file: row});
}

async function follow(desk: Desk, row: DayRow): Promise<void> {
	const {tx, now, person, chat} = desk;
	if (row.person === null) return speak(desk, 'day-gone', {});
	await askToBeTold(tx, {
		chat: chat.id,
		person: person.id,
		asked: {kind: 'coordinator', coordinator: row.person},
		now,
	});
	return speak(desk, 'day-followed', {});
}

type Spoken = {
	readonly values?: Readonly<Record<string, string | number>>;
	readonly keyboard?: Keyboard;
	/** The day whose calendar file goes with it. */
	readonly file?: DayRow;
};

/** Says something to the person, by name where others listen. */
async function speak(desk: Desk, message: string, {values = {}, keyboard = [], file}: Spoken): Promise<void> {
	const reader = readerAt(desk);
	const {say} = reader;
	const text = say.say(message, values);
	const day = file && readDay(file);
	const html = escaped(desk.name === undefined ? text : `${say.say('find-of', {name: desk.name})}\n${text}`);
	const attachment = file && day && {attachment: dayFile({...file, day, isCancelled: false}, reader)};
	await postHere(desk, {kind: 'send', html, keyboard, ...attachment}, {role: 'say'});
}

function partyButtons(day: number): Keyboard {
	const buttons = parties.map(party => ({text: String(party), data: dayButton(day, 'party', String(party))}));
	return [buttons.slice(0, 4), buttons.slice(4)];
}

async function nextDays(desk: Desk) {
	const spot = await nearSpot(desk);
	const region = regionOf(desk);
	const rows = (await daysToCome(desk.tx, desk.now, mostLooked)).flatMap(row => {
		const day = readDay(row);
		return day ? [{row, day, away: spot && distanceM(spot, day.spot)}] : [];
	});
	const rank = ({row, away}: (typeof rows)[number]) => away ?? (row.region === region ? 0 : 1);
	// Near ones first; on the same coast or as far away, the soonest.
	return rows
		.toSorted((one, other) => rank(one) - rank(other) || one.day.startsAt - other.day.startsAt)
		.slice(0, mostListed);
}
