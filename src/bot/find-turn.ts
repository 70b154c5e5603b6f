/** A find takes its turn in the store: what comes in is kept, what is to happen is written down. */
import {trailForAnother} from '../find/another.ts';
import type {Effect, FindEvent, Turn} from '../find/events.ts';
import type {Tray} from '../find/proposal.ts';
import {type Standing, standAt} from '../find/stand.ts';
import type {Trail} from '../find/trail.ts';
import {takeTurn} from '../find/turn.ts';
import {
	beginFind,
	bowlOfChat,
	type FindRow,
	keepTurn,
	letAnswer,
	moveFind,
	putInBowl,
} from '../store/finds.ts';
import {rowsOfTurn, takeBackQuestions} from '../store/outbox.ts';
import {chooseRegion, noticeZone} from '../store/people.ts';
import {dropPhotos, wantMeasured} from '../store/photos.ts';
import {forgetReminders, remind} from '../store/reminders.ts';
import {keepSheetPrint} from '../store/sheet-print.ts';
import {alikeAsk} from './alike-ask.ts';
import {askPosition} from './ask-position.ts';
import {askedHere, shownAt} from './asking.ts';
import {closeTurn} from './closing.ts';
import {type Desk, postHere, readerAt, regionOf, sayHere, shelfOf} from './desk.ts';
import {keepRecord} from './keep-record.ts';
import {regionOfPlace} from './region.ts';
import {resultCard} from './result-card.ts';
import {askScreen, cardCaption, whyScreen} from './screen.ts';
import {isBetweenCases, sortScreen} from './sort-screen.ts';
import {readTrail} from './stored-trail.ts';
import {withRest} from './tray-rest.ts';
import {ownersDesk, sitDown} from './whose.ts';
import {lineText} from './words.ts';

/** Takes one event for a find to its end, inside the open transaction; `quietly` shows nothing for now. */
export async function turnFind(
	desk: Desk,
	row: FindRow,
	event: FindEvent,
	voice: 'aloud' | 'quietly' = 'aloud',
): Promise<Turn> {
	const owner = await ownersDesk(desk, row);
	const zone = owner.person.zone ?? desk.house.zone;
	const state = {trail: readTrail(row), turn: row.turn};
	const input = {event, moment: {now: desk.now, zone}};
	const turn = takeTurn(shelfOf(desk.house, row.region).flow, state, input);
	const region = regionOfPlace(desk.house, row.region, turn.standing.facts.place);
	if (region !== row.region) {
		// The place lies on the shore of another region: the same turn is taken by its key.
		await moveFind(desk.tx, row.id, region);
		await chooseRegion(desk.tx, row.person, region);
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
		if (photosIn(turn.trail) < photosIn(state.trail))
			await dropPhotos(desk.tx, row.id, turn.standing.facts.photos);
		const {place} = turn.standing.facts;
		if (place?.kind === 'spot' && place.zone !== owner.person.zone)
			await noticeZone(desk.tx, row.person, place.zone);
	}
	// What happened by itself and changes nothing that is seen moves nobody to another find.
	if (voice === 'aloud' && turn.effects.length > 0) await sitDown(desk, row);
	for (const effect of turn.effects) {
		const isHeard = voice === 'aloud' || effect.kind !== 'ask';
		if (isHeard) await carryOut(owner, {row, turn, isBegun: event.kind === 'begin', speaker: desk}, effect);
	}
	return turn;
}

function photosIn(trail: Trail): number {
	return trail.filter(({answer}) => answer.kind === 'photo').length;
}

/** A new find, fresh or another of the walk or bowl of `from`; asks its first question. */
export async function beginFindHere(desk: Desk, from?: FindRow, of: 'walk' | 'bowl' = 'bowl'): Promise<void> {
	return beginFindWith(desk, {
		region: from?.region ?? regionOf(desk),
		trail: from ? carriedTrail(desk, from, of) : [],
		bowl: of === 'walk' ? undefined : (from?.bowl ?? undefined),
		like: from,
	});
}

/** What a new find begins with. */
export type Begun = {
	readonly region: string;
	readonly trail: Trail;
	readonly bowl?: number | undefined;
	readonly sorting?: number | undefined;
	/** The find it comes after. */
	readonly like?: FindRow | undefined;
	/** What is left on the tray of that find, of which `trail` is. */
	readonly rest?: Tray;
};

/** A new find of the person who speaks, with what is known of it already; asks its first open question. */
export async function beginFindWith(desk: Desk, begun: Begun): Promise<void> {
	const {house, tx, now} = desk;
	const {region, trail, bowl, sorting, like, rest} = begun;
	const row = await beginFind(tx, {
		uuid: house.newUuid(),
		chat: desk.chat.id,
		person: desk.person.id,
		region,
		trail: JSON.stringify(trail),
		now,
		...(bowl === undefined ? {} : {bowl}),
		...(sorting === undefined ? {} : {sorting}),
		...(desk.thread === undefined ? {} : {thread: desk.thread}),
	});
	// Who wished to be asked alone wishes so for the next case, too.
	const isAlone = like?.isOwnersAlone === 1 && like.person === row.person;
	if (isAlone) await letAnswer(tx, row.id, 'owner');
	const begunRow = rest ? await withRest(desk, row, {trail, rest}) : row;
	await turnFind(desk, {...begunRow, isOwnersAlone: isAlone ? 1 : 0}, {kind: 'begin'});
}

function carriedTrail(desk: Desk, from: FindRow, of: 'walk' | 'bowl'): Trail {
	const {flow} = shelfOf(desk.house, from.region);
	const trail = readTrail(from);
	return trailForAnother(flow, {trail, standing: standAt(flow, trail)}, of);
}

type Taken = {
	readonly row: FindRow;
	readonly turn: Turn;
	readonly isBegun: boolean;
	/** Who answered, in a group perhaps for somebody else. */
	readonly speaker: Desk;
};

async function carryOut(desk: Desk, taken: Taken, effect: Effect): Promise<void> {
	const {row, speaker} = taken;
	const find = row.id;
	switch (effect.kind) {
		case 'ask':
			if (effect.settleMs !== undefined) await takeBackQuestions(desk.tx, find);
			return postHere(desk, await messageOf(desk, taken, effect), {
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
			return close(desk, taken, effect);
		case 'ask-position':
			return askPosition(desk, row);
		case 'measure':
			return wantMeasured(desk.tx, {photo: effect.photo, now: desk.now});
		case 'say':
			return sayHere(desk, lineText(effect.line, readerAt(desk, row.region)));
		case 'remind':
			if (row.bowl === null) await putInBowl(desk.tx, {find, bowl: await bowlFor(desk, row)});
			return remind(desk.tx, {find, dueAt: effect.dueAt, zone: effect.zone});
		case 'forget-reminder':
			return forgetReminders(desk.tx, find);
		case 'keep':
			return keepRecord(desk, {...row, trail: JSON.stringify(taken.turn.trail)}, taken.turn.standing);
		case 'throw':
			return;
		case 'print':
			return keepSheetPrint(desk.tx, {person: row.person, print: effect.print, now: desk.now});
		case 'begin':
			if (effect.how === 'rest') return beginRest(desk, taken, effect.rest);
			if (effect.how === 'fresh') return beginFindHere(speaker);
			return beginFindHere(speaker, row, effect.how === 'walk' ? 'walk' : 'bowl');
	}
}

/** What is left on a tray begins a find of the same owner. */
async function beginRest(desk: Desk, {row, turn}: Taken, rest: Tray): Promise<void> {
	const {region, bowl} = row;
	return beginFindWith(desk, {region, trail: turn.trail, bowl: bowl ?? undefined, like: row, rest});
}

/** A group has one bowl together; else the first case begins one. */
async function bowlFor({tx, chat}: Desk, {id, chat: begunIn}: FindRow): Promise<number> {
	const shared = chat.kind === 'group' ? await bowlOfChat(tx, begunIn) : undefined;
	return shared ?? id;
}

/** The question as a message; a result has its card with it. */
async function messageOf(
	desk: Desk,
	taken: Taken,
	effect: Extract<Effect, {kind: 'ask'}>,
): Promise<ReturnType<typeof askScreen>> {
	const {row, turn} = taken;
	if (await isBetweenCases(desk, row, effect.ask)) return sortScreen(desk, row, effect);
	const ask = await alikeAsk(desk, row, {ask: effect.ask, standing: turn.standing});
	const screen = askedHere(desk, taken, {ask, turn: effect.turn});
	const result = ask.isBrief ? undefined : ask.result;
	const card = result && (await resultCard(desk, row, {result, standing: turn.standing}));
	if (!card) return screen;
	return {...screen, picture: card, alone: cardCaption(effect.ask, shownAt(desk, row, effect.turn))};
}

async function refresh(desk: Desk, row: FindRow, effect: Extract<Effect, {kind: 'refresh'}>): Promise<void> {
	const screen = askScreen(effect.ask, shownAt(desk, row, effect.turn));
	const about = {find: row.id, turn: effect.turn};
	const [shown] = await rowsOfTurn(desk.tx, {find: row.id, turn: effect.of});
	if (shown?.chat !== desk.chat.id) return postHere(desk, screen, {role: 'ask', ...about});
	const call = {kind: 'edit' as const, row: shown.id, html: screen.html, keyboard: screen.keyboard};
	return postHere(desk, call, {role: 'refresh', ...about});
}

async function close(
	desk: Desk,
	{row, speaker}: Taken,
	effect: Extract<Effect, {kind: 'close'}>,
): Promise<void> {
	const reader = readerAt(desk, row.region);
	const chosen = lineText(effect.chosen, reader);
	const {name} = speaker;
	const isHelp = speaker !== desk && name !== undefined;
	const answered = isHelp
		? reader.say.say('answered-by', {chosen, name})
		: reader.say.say('answered', {chosen});
	await closeTurn(desk, {find: row.id, turn: effect.turn, answered});
}

function stateOf({at}: Standing): FindRow['state'] {
	if (at.kind !== 'step') return 'open';
	if (at.step.kind === 'soaking' || at.step.kind === 'softness') return 'soaking';
	return at.step.kind === 'end' ? at.step.outcome : 'open';
}
