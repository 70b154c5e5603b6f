/** /cancel: leaving is always possible. */
import {findById} from '../../store/finds.ts';
import {findSatAt, sitAt, stopListening} from '../../store/seats.ts';
import {packButton} from '../button.ts';
import {type Ctx, readerAt, sayHere, sitterAt} from '../desk.ts';
import {turnFind} from '../find-turn.ts';

/** Puts the present find aside; it is not thrown away. */
export async function cancel({desk}: Ctx): Promise<void> {
	const {say} = readerAt(desk);
	const seat = sitterAt(desk);
	if (await stopListening(desk.tx, seat)) return sayHere(desk, say.say('cancelled-else'));
	const find = await findSatAt(desk.tx, seat);
	await sitAt(desk.tx, {...seat, find: undefined});
	const row = find === undefined ? undefined : await findById(desk.tx, find);
	if (!row || row.state === 'kept' || row.state === 'thrown' || row.state === 'not-a-case') {
		return sayHere(desk, say.say('nothing-to-cancel'));
	}
	await sayHere(desk, say.say('cancelled'), [
		[{text: say.say('button-go-on'), data: packButton({kind: 'resume', find: row.id})}],
	]);
	// What else lies on its tray need not wait for it; the other finds of a group are their owners'.
	if (row.person === desk.person.id) await turnFind(desk, row, {kind: 'put-aside'}, 'quietly');
}
