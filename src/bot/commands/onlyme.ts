/** /onlyme: in a group, nobody else answers for a find. */
import {findById} from '../../store/finds.ts';
import {findSatAt} from '../../store/seats.ts';
import {setAnswerers} from '../answerers.ts';
import {type Ctx, readerAt, sayHere, sitterAt} from '../desk.ts';
import {isOpen} from '../whose.ts';

/** Lets only the owner answer for the find they are at. */
export async function answerAlone({desk}: Ctx): Promise<void> {
	const {say} = readerAt(desk);
	if (desk.chat.kind === 'private') return sayHere(desk, say.say('answerers-private'));
	const seat = await findSatAt(desk.tx, sitterAt(desk));
	const row = seat === undefined ? undefined : await findById(desk.tx, seat);
	if (!row || row.person !== desk.person.id || !isOpen(row)) return sayHere(desk, say.say('answerers-none'));
	return setAnswerers(desk, row, 'owner');
}
