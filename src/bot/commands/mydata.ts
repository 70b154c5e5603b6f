/** /mydata: all that is held on a person, as files to keep. */
import {orderParcel} from '../../store/parcels.ts';
import {type Ctx, type Desk, readerAt, sayHere} from '../desk.ts';

/** Asks the clockwork for the files; they come when they are made. */
export async function sendMyData({desk}: Ctx): Promise<void> {
	return orderMyData(desk);
}

/** The same by a button. */
export async function orderMyData(desk: Desk): Promise<void> {
	const {say} = readerAt(desk);
	const order = {chat: desk.chat.id, person: desk.person.id, thread: desk.thread, now: desk.now};
	const isNew = await orderParcel(desk.tx, {...order, wanted: {kind: 'my-data'}});
	return sayHere(desk, say.say(isNew ? 'my-data-soon' : 'parcel-already'));
}
