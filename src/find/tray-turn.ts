/** Buttons and numbers at a tray, and the trail of the find that what is left begins. */
import {trailForAnother} from './another.ts';
import {askSpread, askWrongLine, groupsOf} from './ask-tray.ts';
import type {FindState, Turn} from './events.ts';
import type {Flow} from './flow.ts';
import {askAgain, takeAnswer} from './move.ts';
import type {Tray} from './proposal.ts';
import type {Ask, Line} from './question.ts';
import type {Standing} from './stand.ts';
import type {Answer, Trail} from './trail.ts';
import {casesLeft, casesPicked, type Trayed, trayQuestion} from './tray.ts';
import {isWide} from './tray-set.ts';
import {type Heard, help} from './value.ts';

type Pressed = {
	readonly find: FindState;
	readonly before: Standing;
	readonly option: string;
	readonly now: number;
};

/** What a button at a tray does: an answer, another question about it, or help. */
type Deed =
	| {readonly kind: 'answer'; readonly answer: Answer; readonly chosen: Line}
	| {readonly kind: 'ask'; readonly ask: Ask}
	| {readonly kind: 'again'; readonly lead?: Line};

/** Takes a button of a tray; nothing for any other. */
export function takeTrayPress(flow: Flow, {find, before, option, now}: Pressed): Turn | undefined {
	if (before.at.kind !== 'tray') return undefined;
	const deed = deedOf(before.at.trayed, option);
	if (!deed) return undefined;
	if (deed.kind === 'answer') {
		return takeAnswer(flow, {find, before, answer: deed.answer, chosen: deed.chosen, now});
	}
	const ask = deed.kind === 'ask' ? deed.ask : askAgain(flow, before, deed.lead);
	return {...find, standing: before, effects: [{kind: 'ask', ask, turn: find.turn}]};
}

/** A number ticked before the tick before it was shown counts: fingers are quicker than the message changes. */
export function isLateTick({at}: Standing, turnsBehind: number): boolean {
	return at.kind === 'tray' && turnsBehind > 0 && turnsBehind <= at.trayed.ticks;
}

/** Reads numbers written at a tray as those that are ticked. */
export function hearNumbers(trayed: Trayed, text: string): Heard {
	const numbers = [...new Set((text.match(/\d{1,3}/g) ?? []).map(Number))];
	const known = casesLeft(trayed).map(({number}) => number);
	if (trayed.stage !== 'shown' || known.length < 2) return help('help-tray-photo');
	if (numbers.length === 0 || !numbers.every(number => known.includes(number)))
		return help('help-tray-numbers');
	return {
		kind: 'answer',
		answer: {kind: 'picked', numbers: inOrder(numbers)},
		chosen: {message: 'chosen-text', values: {text}},
	};
}

/** The trail of the find that what is left on a tray begins; `photo` is a row of its own, if the photo is still there. */
export function trailOfRest(
	flow: Flow,
	from: {readonly trail: Trail; readonly standing: Standing; readonly rest: Tray},
	{photo, now}: {readonly photo: number | undefined; readonly now: number},
): Trail {
	const tray = {...from.rest, photo: photo ?? from.rest.photo};
	return [
		...trailForAnother(flow, from),
		...(photo === undefined ? [] : [{question: 'photo', answer: {kind: 'photo', photo}, at: now} as const]),
		{question: trayQuestion, answer: {kind: 'tray', tray, origin: 'rest'}, at: now},
	];
}

function deedOf(trayed: Trayed, option: string): Deed | undefined {
	if (option === 'leave') {
		return {kind: 'answer', answer: {kind: 'tray-left'}, chosen: {message: 'chosen-tray-left'}};
	}
	if (trayed.stage !== 'shown') return undefined;
	switch (option) {
		case 'one-kind':
		case 'one-kind-yes':
			return choose(trayed, option);
		case 'not-quite':
			return {kind: 'ask', ask: askWrongLine(trayed)};
		case 'again':
			return {kind: 'again'};
	}
	const group = groupsOf(trayed).find(({id}) => option === `group-${id}`);
	if (group) return picked(group.numbers);
	const [, deed, digits] = /^(tick|out)-(\d{1,3})$/.exec(option) ?? [];
	const number = Number(digits);
	if (!casesLeft(trayed).some(one => one.number === number)) return undefined;
	if (deed === 'out') return takeOut(number);
	const isPicked = trayed.picked.includes(number);
	return picked(isPicked ? trayed.picked.filter(one => one !== number) : [...trayed.picked, number]);
}

function choose(trayed: Trayed, option: 'one-kind' | 'one-kind-yes'): Deed {
	const left = casesLeft(trayed);
	const cases = left.length === 1 ? left : casesPicked(trayed);
	if (cases.length === 0) return {kind: 'again', lead: {message: 'help-tray-none'}};
	if (option === 'one-kind' && isWide(cases)) return {kind: 'ask', ask: askSpread(trayed)};
	const numbers = cases.map(({number}) => number);
	return {
		kind: 'answer',
		answer: {kind: 'one-kind', numbers},
		chosen: {message: 'chosen-tray-set', values: {count: numbers.length, numbers: numbers.join(', ')}},
	};
}

function picked(numbers: readonly number[]): Deed {
	return {
		kind: 'answer',
		answer: {kind: 'picked', numbers: inOrder(numbers)},
		chosen: {message: 'chosen-text', values: {text: numbers.join(', ')}},
	};
}

function takeOut(number: number): Deed {
	const values = {number: String(number)};
	return {
		kind: 'answer',
		answer: {kind: 'taken-out', number},
		chosen: {message: 'chosen-tray-out', values},
	};
}

function inOrder(numbers: readonly number[]): number[] {
	return numbers.toSorted((one, other) => one - other);
}
