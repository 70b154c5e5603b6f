/** Who may answer for a find in a group: said, kept, and offered as a button. */
import type {Keyboard} from '../store/call.ts';
import {type FindRow, letAnswer} from '../store/finds.ts';
import {packButton} from './button.ts';
import {type Desk, readerAt, sayHere} from './desk.ts';

/** The owner alone, or everyone in the group. */
export type Answerers = 'owner' | 'everyone';

/** Who may answer for a find now. */
export function answerersOf({isOwnersAlone}: FindRow): Answerers {
	return isOwnersAlone === 1 ? 'owner' : 'everyone';
}

/** Keeps who may answer for a find, and says so with the way back. */
export async function setAnswerers(desk: Desk, row: FindRow, who: Answerers): Promise<void> {
	const {say} = readerAt(desk, row.region);
	await letAnswer(desk.tx, row.id, who);
	const message = who === 'owner' ? 'answerers-owner' : 'answerers-everyone';
	return sayHere(desk, say.say(message, {number: String(row.id)}), [answerersRow(desk, row, who)]);
}

/** The button that changes who may answer, from what holds now. */
export function answerersRow(desk: Desk, row: FindRow, now: Answerers): Keyboard[number] {
	const {say} = readerAt(desk, row.region);
	const label = now === 'owner' ? 'option-everyone-answers' : 'option-only-me';
	const who = now === 'owner' ? 'everyone' : 'owner';
	return [{text: say.say(label), data: packButton({kind: 'answerers', find: row.id, who})}];
}
