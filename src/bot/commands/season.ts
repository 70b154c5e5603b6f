/** /season: a year in numbers and pictures, for those who run the survey. */
import {DateTime} from 'luxon';
import {orderParcel} from '../../store/parcels.ts';
import {type Ctx, type Desk, readerAt, sayHere} from '../desk.ts';

/** Asks the clockwork for this year, or for the one written after the command. */
export async function showSeason(ctx: Ctx): Promise<void> {
	const written = typeof ctx.match === 'string' ? ctx.match.trim() : '';
	return orderSeason(ctx.desk, [written]);
}

/** The same by a button that carries the year. */
export async function orderSeason(desk: Desk, [written = '']: readonly string[]): Promise<void> {
	const {say, zone} = readerAt(desk);
	const present = DateTime.fromMillis(desk.now, {zone}).year;
	const year = written === '' ? present : Number(/^\d{4}$/.exec(written)?.[0]);
	if (!(year >= 1900 && year <= present))
		return sayHere(desk, say.say('season-which', {year: String(present)}));
	const order = {chat: desk.chat.id, person: desk.person.id, thread: desk.thread, now: desk.now};
	const isNew = await orderParcel(desk.tx, {...order, wanted: {kind: 'season', year}});
	return sayHere(desk, isNew ? say.say('season-soon', {year: String(year)}) : say.say('parcel-already'));
}
