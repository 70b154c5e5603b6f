/** /sheet: the sheet with marks on which cases are measured from a photo. */
import {orderParcel} from '../../store/parcels.ts';
import {forgetSheetPrint} from '../../store/sheet-print.ts';
import {type Ctx, readerAt, sayHere} from '../desk.ts';

/** Asks the clockwork for the sheet; it comes when it is made. */
export async function sendSheet({desk}: Ctx): Promise<void> {
	const {say} = readerAt(desk);
	const order = {chat: desk.chat.id, person: desk.person.id, thread: desk.thread, now: desk.now};
	const isNew = await orderParcel(desk.tx, {...order, wanted: {kind: 'sheet'}});
	await forgetSheetPrint(desk.tx, desk.person.id);
	return sayHere(desk, say.say(isNew ? 'sheet-soon' : 'parcel-already'));
}
