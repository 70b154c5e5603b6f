/** An edited message: said once that it changes nothing. */
import {findById} from '../store/finds.ts';
import {seatOf} from '../store/people.ts';
import type {Ctx} from './desk.ts';
import {turnFind} from './find-turn.ts';

/** Answers an edit politely; the steps of a shared live position are passed over. */
export async function hearEdited({desk, editedMessage}: Ctx): Promise<void> {
	if (!editedMessage || editedMessage.location || desk.chat.kind === 'group') return;
	const find = await seatOf(desk.tx, {chat: desk.chat.id, person: desk.person.id});
	const row = find === undefined ? undefined : await findById(desk.tx, find);
	if (row) await turnFind(desk, row, {kind: 'odd', what: 'edited'});
}
