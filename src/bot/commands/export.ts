/** /export: a file of records, chosen by days, by who looked at them, and by form. */
import {DateTime} from 'luxon';
import {readSquare} from '../../place/grid-square.ts';
import type {FileForm} from '../../record/export-file.ts';
import {orderParcel, type ParcelWanted} from '../../store/parcels.ts';
import {menuButton} from '../button.ts';
import {type Ctx, type Desk, readerAt, sayHere} from '../desk.ts';

type Statuses = Extract<ParcelWanted, {kind: 'export'}>['statuses'];

const everyStatus: readonly Statuses[] = ['all', 'checked', 'unchecked'];
const everyForm: readonly FileForm[] = ['archive', 'csv', 'geojson'];
/** Stands in a button for the whole map. */
const everywhere = '0';
/** Stands in a button for all days. */
const always = 'all';

/** Asks for the days; a grid square written after the command narrows it to that. */
export async function askForExport(ctx: Ctx): Promise<void> {
	const {desk} = ctx;
	const {say, now, zone} = readerAt(desk);
	const written = typeof ctx.match === 'string' ? ctx.match.trim() : '';
	const read = written === '' ? undefined : readSquare(written);
	if (read && read.kind !== 'square')
		return sayHere(desk, say.say('export-square', {written: written.slice(0, 40)}));
	const square = read ? read.verbatim.replaceAll(/[ ,/]/g, '') : everywhere;
	const today = DateTime.fromMillis(now, {zone, locale: say.language});
	const spans = [
		{days: today.toFormat('yyyy'), text: say.say('export-year', {year: today.toFormat('yyyy')})},
		{days: today.toFormat('yyyy-MM'), text: say.say('export-month', {month: today.toFormat('LLLL yyyy')})},
		{
			days: today.minus({years: 1}).toFormat('yyyy'),
			text: say.say('export-year', {year: today.minus({years: 1}).toFormat('yyyy')}),
		},
		{days: always, text: say.say('export-always')},
	];
	const keyboard = spans.map(({days, text}) => [button(text, [square, days])]);
	return sayHere(
		desk,
		say.say('export', {square: read?.verbatim ?? '', isNarrowed: read ? 'yes' : 'no'}),
		keyboard,
	);
}

/** Asks for what is still to be chosen, and then has the file made. */
export async function goOnWithExport(desk: Desk, parts: readonly string[]): Promise<void> {
	const {say} = readerAt(desk);
	const [square, days, status, form] = parts;
	if (status === undefined) {
		const keyboard = everyStatus.map(one => [button(say.say(`export-${one}`), [...parts, one])]);
		return sayHere(desk, say.say('export-which'), keyboard);
	}
	if (form === undefined) {
		const keyboard = everyForm.map(one => [button(say.say(`export-${one}`), [...parts, one])]);
		return sayHere(desk, say.say('export-form'), keyboard);
	}
	const statuses = everyStatus.find(one => one === status);
	const known = everyForm.find(one => one === form);
	const span = daysFrom(days);
	if (!statuses || !known || !span) return sayHere(desk, say.say('export-again'));
	const where = square === undefined || square === everywhere ? {} : {square};
	const wanted = {kind: 'export', form: known, statuses, ...span, ...where} as const;
	const order = {chat: desk.chat.id, person: desk.person.id, thread: desk.thread, now: desk.now};
	const isNew = await orderParcel(desk.tx, {...order, wanted});
	return sayHere(desk, say.say(isNew ? 'export-soon' : 'parcel-already'));
}

function button(text: string, parts: readonly string[]) {
	return {text, data: menuButton('export', ...parts)};
}

/** The first and last day of a year or month as a button names it; nothing for what no button names. */
function daysFrom(
	days = '',
): {readonly from?: string; readonly to?: string; readonly called: string} | undefined {
	if (days === always) return {called: always};
	if (!/^\d{4}(?:-\d{2})?$/.test(days)) return undefined;
	const unit = days.length === 4 ? 'year' : 'month';
	const from = DateTime.fromFormat(days, unit === 'year' ? 'yyyy' : 'yyyy-MM', {zone: 'UTC'});
	if (!from.isValid) return undefined;
	return {from: from.toFormat('yyyy-MM-dd'), to: from.endOf(unit).toFormat('yyyy-MM-dd'), called: days};
}
