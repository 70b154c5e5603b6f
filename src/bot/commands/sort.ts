/** /sort: many cases out of one bowl, one after another, each a find of its own. */
import {countedAsOne, takenOut, trailAlike, trailOfNext} from '../../find/alike.ts';
import {standAt} from '../../find/stand.ts';
import type {Trail} from '../../find/trail.ts';
import {type FindRow, findById, keepTurn} from '../../store/finds.ts';
import {forgetReminders} from '../../store/reminders.ts';
import {
	beginSorting,
	countSorted,
	endSorting,
	findsSorted,
	joinSorting,
	lastOfBowl,
	openSorting,
} from '../../store/sortings.ts';
import {closeTurn} from '../closing.ts';
import {type Ctx, type Desk, readerAt, regionOf, sayHere, shelfOf} from '../desk.ts';
import {beginFindWith, turnFind} from '../find-turn.ts';
import {readTrail, standingOf, trailIfSound} from '../stored-trail.ts';
import {nextWaiting} from '../waiting.ts';
import {isDeleted, mayAnswer} from '../whose.ts';
import {start} from './start.ts';
import {showTallyOfSorting} from './tally.ts';

/** A bowl this long untouched is no longer the one on the table. */
const bowlLivesMs = 48 * 3_600_000;
/** The same button pressed again within this time is a shaky finger. */
const twicePressedMs = 5000;

/** Begins to sort the bowl of this chat, or goes on where it was left. */
export async function sortBowl(ctx: Ctx): Promise<void> {
	const {desk} = ctx;
	if (!desk.person.isWelcomed) return start(ctx);
	const {tx, chat, now} = desk;
	const open = await openSorting(tx, {chat: chat.id, now});
	if (open !== undefined) return goOn(desk, open);
	const sorting = await beginSorting(tx, {chat: chat.id, now});
	await sayHere(desk, readerAt(desk).say.say('sort-begin'));
	return beginNext(desk, {sorting, after: undefined, model: undefined});
}

/** What a button between two cases asks for. */
export async function actOnSort(
	desk: Desk,
	pressed: {readonly find: number; readonly turn: number; readonly act: string},
): Promise<void> {
	const {tx, chat, now} = desk;
	const {say} = readerAt(desk);
	const after = await findById(tx, pressed.find);
	const sorting = await openSorting(tx, {chat: chat.id, now});
	if (!after || sorting === undefined || after.sorting !== sorting)
		return sayHere(desk, say.say('sort-ended'));
	if (pressed.turn !== after.turn) {
		const isTwice = pressed.turn === after.turn - 1 && now - after.changedAt < twicePressedMs;
		return isTwice ? undefined : goOn(desk, sorting);
	}
	if (pressed.act === 'pause') {
		return sayHere(desk, say.say('sort-paused', {count: await countSorted(tx, sorting)}));
	}
	const model = await modelFrom(desk, sorting, pressed.act);
	await closeAfter(desk, after, labelOf(desk, pressed.act, model));
	if (pressed.act !== 'done') return beginNext(desk, {sorting, after, model});
	await endSorting(tx, {sorting, now});
	return showTallyOfSorting(desk, sorting);
}

/** The case at hand once more, or the question between two, or the first case. */
async function goOn(desk: Desk, sorting: number): Promise<void> {
	const rows = (await findsSorted(desk.tx, sorting)).filter(row => !isDeleted(row) && mayAnswer(desk, row));
	const row = rows.find(({state}) => state === 'open') ?? rows.find(({state}) => state !== 'soaking');
	if (!row) return beginNext(desk, {sorting, after: undefined, model: undefined});
	await turnFind(desk, row, {kind: 'resume'});
}

type Next = {
	readonly sorting: number;
	/** The case before, if there was one. */
	readonly after: FindRow | undefined;
	/** The case it looks like. */
	readonly model: FindRow | undefined;
};

async function beginNext(desk: Desk, next: Next): Promise<void> {
	const {sorting, after, model} = next;
	const waiting = await nextWaiting(desk, {id: sorting, isBegun: after !== undefined});
	if (waiting) return takeOut(desk, waiting, next);
	const {tx, chat, now} = desk;
	const from = model ?? after ?? (await lastOfBowl(tx, {chat: chat.id, since: now - bowlLivesMs}));
	const carried = from && trailIfSound(desk, from);
	const {flow} = shelfOf(desk.house, from?.region ?? regionOf(desk));
	const trail: Trail = !carried
		? countedAsOne(flow, now)
		: model
			? trailAlike(flow, {model: carried, find: model.id, now})
			: trailOfNext(flow, carried, now);
	return beginFindWith(desk, {
		region: from?.region ?? regionOf(desk),
		trail,
		bowl: from?.bowl ?? undefined,
		sorting,
		like: from,
	});
}

/** A case that lies in the bowl already: soft like those before it, and with answers of its own. */
async function takeOut(desk: Desk, row: FindRow, {sorting, after, model}: Next): Promise<void> {
	const {tx, now} = desk;
	const {flow} = shelfOf(desk.house, row.region);
	await joinSorting(tx, {find: row.id, sorting});
	const stored = readTrail(row);
	const isSoft = after !== undefined && (await isBowlSoft(desk, sorting, row));
	const out = isSoft ? takenOut(flow, stored, now) : stored;
	const trail =
		isSoft && model ? trailAlike(flow, {model: readTrail(model), find: model.id, own: out, now}) : out;
	const state = standAt(flow, trail).at.id === standAt(flow, stored).at.id ? row.state : 'open';
	const turn = row.turn + 1;
	if (trail !== stored) {
		const chosen = readerAt(desk, row.region).say.say('option-softness-softer');
		await closeAs(desk, row, chosen);
		await forgetReminders(tx, row.id);
		await keepTurn(tx, {find: row.id, trail: JSON.stringify(trail), turn, state, now});
	}
	const taken = trail === stored ? row : {...row, trail: JSON.stringify(trail), turn, state};
	await turnFind(desk, {...taken, sorting}, {kind: 'resume'});
}

/** Whether a case of the same bowl was found soft in this sorting. */
async function isBowlSoft(desk: Desk, sorting: number, {bowl}: FindRow): Promise<boolean> {
	const rows = await findsSorted(desk.tx, sorting);
	return rows.some(
		row =>
			row.bowl === bowl &&
			row.state !== 'soaking' &&
			!isDeleted(row) &&
			standingOf(desk, row).facts.soak === 'soaked',
	);
}

async function modelFrom(desk: Desk, sorting: number, act: string): Promise<FindRow | undefined> {
	const number = /^like-([0-9a-z]{1,10})$/.exec(act)?.[1];
	const row = number === undefined ? undefined : await findById(desk.tx, Number.parseInt(number, 36));
	return row?.sorting === sorting && row.state === 'kept' ? row : undefined;
}

function labelOf(desk: Desk, act: string, model: FindRow | undefined): string {
	const {say} = readerAt(desk);
	if (act === 'done') return say.say('sort-all-done');
	return model ? say.say('sort-like', {number: String(model.id)}) : say.say('sort-different');
}

/** The keyboard of the question is closed, and no copy of it counts any more. */
async function closeAfter(desk: Desk, row: FindRow, chosen: string): Promise<void> {
	const {trail, turn, state} = row;
	await closeAs(desk, row, chosen);
	await keepTurn(desk.tx, {find: row.id, trail, turn: turn + 1, state, now: desk.now});
}

async function closeAs(desk: Desk, {id, turn}: FindRow, chosen: string): Promise<void> {
	const answered = readerAt(desk).say.say('answered', {chosen});
	return closeTurn(desk, {find: id, turn, answered});
}
