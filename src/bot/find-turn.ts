/** A find takes its turn in the store: what comes in is kept, what is to happen is written down. */
import {trailForAnother} from '../find/another.ts';
import {type Standing, standAt} from '../find/stand.ts';
import {type Trail, trailSchema} from '../find/trail.ts';
import {type Effect, type FindEvent, type Turn, takeTurn} from '../find/turn.ts';
import type {Keyboard} from '../store/call.ts';
import {beginFind, type FindRow, keepTurn, moveFind, putInBowl} from '../store/finds.ts';
import {rowsOfTurn, takeBackQuestions} from '../store/outbox.ts';
import {chooseRegion, noticeZone, sitAt} from '../store/people.ts';
import {dropPhotos, wantMeasured} from '../store/photos.ts';
import {forgetReminders, remind} from '../store/reminders.ts';
import {type Desk, postHere, readerAt, regionOf, sayHere, shelfOf} from './desk.ts';
import {keepRecord} from './keep-record.ts';
import {regionOfPlace} from './region.ts';
import {askScreen, type Shown, whyScreen} from './screen.ts';
import {escaped, lineText} from './words.ts';

/** Takes one event for a find to its end, inside the open transaction; `quietly` shows nothing for now. */
export async function turnFind(
	desk: Desk,
	row: FindRow,
	event: FindEvent,
	voice: 'aloud' | 'quietly' = 'aloud',
): Promise<Turn> {
	const zone = desk.person.zone ?? desk.house.zone;
	const state = {trail: readTrail(row), turn: row.turn};
	const input = {event, moment: {now: desk.now, zone}};
	const turn = takeTurn(shelfOf(desk.house, row.region).flow, state, input);
	const region = regionOfPlace(desk.house, row.region, turn.standing.facts.place);
	if (region !== row.region) {
		// The place lies on the shore of another region: the same turn is taken by its key.
		await moveFind(desk.tx, row.id, region);
		await chooseRegion(desk.tx, desk.person.id, region);
		return turnFind(desk, {...row, region}, event, voice);
	}
	if (turn.trail !== state.trail || turn.turn !== row.turn) {
		await keepTurn(desk.tx, {
			find: row.id,
			trail: JSON.stringify(turn.trail),
			turn: turn.turn,
			state: stateOf(turn.standing),
			now: desk.now,
		});
		// A photo taken back by Back is erased like any other answer.
		if (turn.trail.length < state.trail.length) await dropPhotos(desk.tx, row.id, turn.standing.facts.photos);
		const {place} = turn.standing.facts;
		if (place?.kind === 'spot') await noticeZone(desk.tx, desk.person.id, place.zone);
	}
	if (voice === 'aloud') await sitAt(desk.tx, {chat: desk.chat.id, person: desk.person.id, find: row.id});
	for (const effect of turn.effects) {
		if (voice === 'aloud' || effect.kind !== 'ask') await carryOut(desk, {row, turn}, effect);
	}
	return turn;
}

/** A new find, fresh or another of the walk or bowl of `from`; asks its first question. */
export async function beginFindHere(desk: Desk, from?: FindRow, of: 'walk' | 'bowl' = 'bowl'): Promise<void> {
	const {house, tx, now} = desk;
	const region = from?.region ?? regionOf(desk);
	const trail = from ? carriedTrail(desk, from, of) : [];
	const row = await beginFind(tx, {
		uuid: house.newUuid(),
		chat: desk.chat.id,
		person: desk.person.id,
		region,
		trail: JSON.stringify(trail),
		now,
		...(from?.bowl == null || of === 'walk' ? {} : {bowl: from.bowl}),
		...(desk.thread === undefined ? {} : {thread: desk.thread}),
	});
	await turnFind(desk, row, {kind: 'begin'});
}

/** The trail of a stored find; throws an Error that repeats nothing of it when it cannot be read. */
export function readTrail(row: FindRow): Trail {
	try {
		return trailSchema.parse(JSON.parse(row.trail));
	} catch (error) {
		throw new Error(`Expected the trail of find ${row.id} to fit its schema`, {cause: error});
	}
}

function carriedTrail(desk: Desk, from: FindRow, of: 'walk' | 'bowl'): Trail {
	const {flow} = shelfOf(desk.house, from.region);
	const trail = readTrail(from);
	return trailForAnother(flow, {trail, standing: standAt(flow, trail)}, of);
}

type Taken = {readonly row: FindRow; readonly turn: Turn};

async function carryOut(desk: Desk, taken: Taken, effect: Effect): Promise<void> {
	const {row} = taken;
	const find = row.id;
	switch (effect.kind) {
		case 'ask':
			if (effect.settleMs !== undefined) await takeBackQuestions(desk.tx, find);
			return postHere(desk, askScreen(effect.ask, shownAt(desk, row, effect.turn)), {
				role: 'ask',
				find,
				turn: effect.turn,
				notBefore: desk.now + (effect.settleMs ?? 0),
			});
		case 'explain':
			return postHere(desk, whyScreen(effect.ask, shownAt(desk, row, effect.turn)), {
				role: 'ask',
				find,
				turn: effect.turn,
			});
		case 'refresh':
			return refresh(desk, row, effect);
		case 'close':
			return close(desk, row, effect);
		case 'ask-position':
			return askPosition(desk, row);
		case 'measure':
			return wantMeasured(desk.tx, {photo: effect.photo, now: desk.now});
		case 'say':
			return sayHere(desk, lineText(effect.line, readerAt(desk, row.region)));
		case 'remind':
			if (row.bowl === null) await putInBowl(desk.tx, {find, bowl: find});
			return remind(desk.tx, {find, dueAt: effect.dueAt, zone: effect.zone});
		case 'forget-reminder':
			return forgetReminders(desk.tx, find);
		case 'keep':
			return keepRecord(desk, {...row, trail: JSON.stringify(taken.turn.trail)}, taken.turn.standing);
		case 'throw':
			return;
		case 'begin':
			if (effect.how === 'fresh') return beginFindHere(desk);
			return beginFindHere(desk, row, effect.how === 'walk' ? 'walk' : 'bowl');
	}
}

async function refresh(desk: Desk, row: FindRow, effect: Extract<Effect, {kind: 'refresh'}>): Promise<void> {
	const screen = askScreen(effect.ask, shownAt(desk, row, effect.turn));
	const about = {find: row.id, turn: effect.turn};
	const [shown] = await rowsOfTurn(desk.tx, {find: row.id, turn: effect.of});
	if (!shown) return postHere(desk, screen, {role: 'ask', ...about});
	const call = {kind: 'edit' as const, row: shown.id, html: screen.html, keyboard: screen.keyboard};
	return postHere(desk, call, {role: 'refresh', ...about});
}

/** Every message of the turn loses its buttons; the newest shows what was chosen. */
async function close(desk: Desk, row: FindRow, effect: Extract<Effect, {kind: 'close'}>): Promise<void> {
	const rows = await rowsOfTurn(desk.tx, {find: row.id, turn: effect.turn});
	const none: Keyboard = [];
	for (const [index, shown] of rows.entries()) {
		if (shown.call.kind !== 'send' && shown.call.kind !== 'edit') continue;
		const chosen = escaped(`→ ${lineText(effect.chosen, readerAt(desk, row.region))}`);
		const html = index === 0 ? `${shown.call.html}\n\n${chosen}` : shown.call.html;
		await postHere(desk, {kind: 'edit', row: shown.id, html, keyboard: none}, {role: 'close', find: row.id});
	}
}

async function askPosition(desk: Desk, row: FindRow): Promise<void> {
	const {say} = readerAt(desk, row.region);
	const isPrivate = desk.chat.kind === 'private';
	await postHere(
		desk,
		{
			kind: 'send',
			html: escaped(say.say(isPrivate ? 'ask-position' : 'ask-position-group')),
			keyboard: [],
			...(isPrivate ? {positionButton: say.say('option-send-position')} : {forceReply: true}),
		},
		{role: 'say', find: row.id},
	);
}

function shownAt(desk: Desk, row: FindRow, turn: number): Shown {
	return {
		find: row.id,
		turn,
		reader: readerAt(desk, row.region),
		groupName: desk.name,
		region: row.region,
	};
}

function stateOf({at}: Standing): FindRow['state'] {
	if (at.kind !== 'step') return 'open';
	if (at.step.kind === 'soaking' || at.step.kind === 'softness') return 'soaking';
	return at.step.kind === 'end' ? at.step.outcome : 'open';
}
