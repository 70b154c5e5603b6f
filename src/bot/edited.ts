/** An edited message: said once that it changes nothing. */
import {findById} from '../store/finds.ts';
import {seatOf} from '../store/seats.ts';
import {type Ctx, readerAt, sayHere, sitterAt} from './desk.ts';
import {turnFind} from './find-turn.ts';

/** Answers an edit politely; the steps of a shared live position are passed over. */
export async function hearEdited({desk, editedMessage}: Ctx): Promise<void> {
	if (!editedMessage || editedMessage.location || desk.chat.kind === 'group') return;
	const seat = await seatOf(desk.tx, sitterAt(desk));
	// A find that waits meanwhile is not to take the words of the plan back.
	if (seat?.ear) return sayHere(desk, readerAt(desk).say.say('help-odd-edited'));
	const row = seat?.find === undefined ? undefined : await findById(desk.tx, seat.find);
	if (row) await turnFind(desk, row, {kind: 'odd', what: 'edited'});
}
