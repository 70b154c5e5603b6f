/** What the clockwork lets happen to finds: bowls that are due, photos that came through or did not. */
import {measuredBy} from '../find/print.ts';
import type {MeasuredPhoto} from '../find/proposal.ts';
import {standAt} from '../find/stand.ts';
import type {Trail} from '../find/trail.ts';
import {erasedAt} from '../find/unfinished.ts';
import type {PhotoMetadata} from '../place/photo-metadata.ts';
import {addressOf} from '../store/chats.ts';
import {type FindRow, findById} from '../store/finds.ts';
import {personById} from '../store/people.ts';
import type {Reminder} from '../store/reminders.ts';
import type {Tx} from '../store/schema.ts';
import {sheetPrintOf} from '../store/sheet-print.ts';
import type {StaleFind} from '../store/unfinished.ts';
import {packButton} from './button.ts';
import {type Desk, type House, readerAt, sayHere, shelfOf} from './desk.ts';
import {turnFind} from './find-turn.ts';
import {keepRecord} from './keep-record.ts';
import {readTrail, trailIfSound} from './stored-trail.ts';
import {dayOf, timeText} from './words.ts';

/** A bell this late is rung with an excuse. */
const lateMs = 30 * 60_000;

/** So many fit a phone. */
const mostButtons = 6;

/**
 * All finds of one bowl wake; the first is asked about, the others wait in /bowl. A find that cannot be read keeps no
 * other one from waking.
 */
export async function wakeBowl(house: House, tx: Tx, reminders: readonly Reminder[]): Promise<void> {
	let first: Desk | undefined;
	let others = 0;
	for (const reminder of reminders) {
		const row = await findById(tx, reminder.find);
		const desk = row && (await deskOfFind(house, tx, row));
		const trail = row && trailIfSound({house}, row);
		if (!row || !desk || !trail) continue;
		if (!first) await excuseLateness(desk, row, promisedAt(desk, row, trail) ?? reminder.dueAt);
		await turnFind(desk, row, {kind: 'woke'}, first ? 'quietly' : 'aloud');
		if (first) others += 1;
		first ??= desk;
	}
	if (first && others > 0) await sayHere(first, readerAt(first).say.say('said-bowl-also', {count: others}));
}

/** When the finder was told that the bowl would be ready; a reminder put off since is still measured by that. */
function promisedAt(desk: Desk, row: FindRow, trail: Trail): number | undefined {
	return standAt(shelfOf(desk.house, row.region).flow, trail).facts.bowl?.dueAt;
}

async function excuseLateness(desk: Desk, row: FindRow, dueAt: number): Promise<void> {
	if (desk.now - dueAt <= lateMs) return;
	const reader = readerAt(desk, row.region);
	await sayHere(desk, reader.say.say('said-late', {due: timeText(dueAt, reader)}));
}

/** The record of a kept find gets a photo that came after it. */
export async function addPhotoToRecord(house: House, tx: Tx, find: number): Promise<void> {
	const row = await findById(tx, find);
	const desk = row && (await deskOfFind(house, tx, row));
	if (row && desk) await keepRecord(desk, row, standAt(shelfOf(house, row.region).flow, readTrail(row)));
}

/** A photo was measured, or why it could not be. */
export async function photoMeasured(
	house: House,
	tx: Tx,
	find: number,
	outcome: MeasuredPhoto,
): Promise<void> {
	const row = await findById(tx, find);
	const desk = row && (await deskOfFind(house, tx, row));
	if (!row || !desk) return;
	const known = measuredBy(outcome, await sheetPrintOf(tx, row.person));
	await turnFind(desk, row, {kind: 'measured', outcome: known});
}

/** The file of a photo says where and when it was taken; a group is not told, since it may be somebody's home. */
export async function photoTold(
	house: House,
	tx: Tx,
	photo: {readonly id: number; readonly find: number},
	told: PhotoMetadata,
): Promise<void> {
	const row = await findById(tx, photo.find);
	const desk = row && (await deskOfFind(house, tx, row));
	if (row && desk?.chat.kind === 'private')
		await turnFind(desk, row, {kind: 'photo-told', photo: photo.id, told});
}

/** The finder hears that a photo could not be read. */
export async function tellPhotoLost(house: House, tx: Tx, find: number): Promise<void> {
	const row = await findById(tx, find);
	const desk = row && (await deskOfFind(house, tx, row));
	if (row && desk)
		await sayHere(desk, readerAt(desk, row.region).say.say('photo-lost', {number: String(find)}));
}

/** A finder hears that finds of theirs are not kept unfinished for ever, with a way on to each. */
export async function warnOfUnfinished(house: House, tx: Tx, finds: readonly StaleFind[]): Promise<void> {
	const [first] = finds;
	const row = first && (await findById(tx, first.id));
	const desk = row && (await deskOfFind(house, tx, row));
	if (!desk) return;
	const reader = readerAt(desk);
	const numbers = finds.map(({id}) => String(id));
	const day = dayOf(erasedAt(desk.now), reader);
	const values = {count: finds.length, numbers: numbers.join(', '), day};
	const buttons = finds.slice(0, mostButtons).map(({id}) => [
		{
			text: reader.say.say('unfinished-go-on', {number: String(id)}),
			data: packButton({kind: 'resume', find: id}),
		},
	]);
	return sayHere(desk, reader.say.say('unfinished-warning', values), buttons);
}

/** The desk of a find without anybody speaking; nothing when its chat is gone. */
export async function deskOfFind(house: House, tx: Tx, row: FindRow): Promise<Desk | undefined> {
	const chat = await addressOf(tx, row.chat);
	if (!chat) return undefined;
	const person = await personById(tx, row.person);
	return {house, tx, now: house.now(), chat, person, name: undefined, thread: row.thread ?? undefined};
}
