/** The message of a question where it is asked: in a group it says whose find it is and who may answer. */
import type {Effect} from '../find/events.ts';
import type {FindRow} from '../store/finds.ts';
import {answerersOf, answerersRow} from './answerers.ts';
import {type Desk, readerAt} from './desk.ts';
import {askScreen, type Shown} from './screen.ts';
import {escaped} from './words.ts';

/** A question; the first of a find in a group says who may answer. */
export function askedHere(
	desk: Desk,
	{row, isBegun}: {readonly row: FindRow; readonly isBegun: boolean},
	{ask, turn}: Pick<Extract<Effect, {kind: 'ask'}>, 'ask' | 'turn'>,
): ReturnType<typeof askScreen> {
	const screen = askScreen(ask, shownAt(desk, row, turn));
	// Said once is enough where case follows case.
	if (!isBegun || desk.chat.kind === 'private' || row.sorting !== null) return screen;
	const who = answerersOf(row);
	const told = readerAt(desk, row.region).say.say(who === 'owner' ? 'answerers-alone' : 'answerers-all');
	return {
		...screen,
		html: `${screen.html}\n\n${escaped(told)}`,
		keyboard: [...screen.keyboard, answerersRow(desk, row, who)],
	};
}

/** Where a turn of a find is shown. */
export function shownAt(desk: Desk, row: FindRow, turn: number): Shown {
	const reader = readerAt(desk, row.region);
	return {find: row.id, turn, reader, head: headOf(desk, row), region: row.region};
}

/** In a group, whose find it is; nobody's name where its owner is not the one who speaks. */
export function headOf(desk: Desk, {id, region}: FindRow): string | undefined {
	if (desk.chat.kind === 'private') return undefined;
	const {say} = readerAt(desk, region);
	const number = String(id);
	return desk.name === undefined
		? say.say('find-of-number', {number})
		: say.say('find-of', {name: desk.name, number});
}
