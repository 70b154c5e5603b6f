/** /day: a coordinator's own survey days: planned, published, changed, called off. */

import type {Keyboard} from '../../store/call.ts';
import {beginDay, type DayRow, dayById, daysOf, dropDay, keepPlan} from '../../store/days.ts';
import {guestsOf, headsOf} from '../../store/guests.ts';
import {orderParcel} from '../../store/parcels.ts';
import {stopListening} from '../../store/seats.ts';
import {standOfPlan} from '../../survey/plan.ts';
import {planSteps} from '../../survey/plan-steps.ts';
import {menuButton} from '../button.ts';
import {dayPrefix} from '../day-link.ts';
import {sendResult, showResult} from '../day-over.ts';
import {askPlan, readDay, readPlan, reopenPlan, turnPlan} from '../day-plan.ts';
import {callOff, publish} from '../day-publish.ts';
import {dayCard, dayLine} from '../day-words.ts';
import {type Ctx, type Desk, readerAt, regionOf, sayHere, sitterAt} from '../desk.ts';
import {changeScreen, planButton} from '../plan-screen.ts';

/** So many fit a phone. */
const mostListed = 8;

/** Lists the coordinator's days that are not over, and offers to plan another. */
export async function showOwnDays({desk}: Ctx): Promise<void> {
	const {say} = readerAt(desk);
	const rows = (await daysOf(desk.tx, desk.person.id, mostListed)).filter(row => isCurrent(row, desk.now));
	const open = rows.map(row => [
		{text: say.say('day-open', {number: String(row.id)}), data: planButton('open', row.id)},
	]);
	const begin = {text: say.say('plan-new'), data: menuButton('plan', 'new')};
	const lines = rows.map(row => `${say.say('day-number', {number: String(row.id)})} ${lineOf(desk, row)}`);
	return sayHere(desk, [say.say(rows.length === 0 ? 'day-none' : 'day-own'), ...lines].join('\n'), [
		...open,
		[begin],
	]);
}

/** Does what a coordinator's button asks for; each looks again whose day it is. */
export async function actOnPlan(desk: Desk, [act = '', id, ...more]: readonly string[]): Promise<void> {
	if (act === 'new') return plan(desk);
	const row = await dayById(desk.tx, Number(id));
	if (row?.person !== desk.person.id) return sayHere(desk, readerAt(desk).say.say('day-not-yours'));
	if (row.state === 'cancelled') return sayHere(desk, readerAt(desk).say.say('day-is-off'));
	const deed = deeds[act];
	return deed ? deed(desk, row, more) : openDay(desk, row);
}

type Deed = (desk: Desk, row: DayRow, more: readonly string[]) => Promise<void>;

const deeds: Readonly<Record<string, Deed>> = {
	open: openDay,
	go: askPlan,
	a: answer,
	publish: publishPlan,
	change: async (desk, row) => {
		if (row.endsAt !== null && row.endsAt <= desk.now) return openDay(desk, row);
		const {text, keyboard} = changeScreen(row, readerAt(desk).say);
		return sayHere(desk, text, keyboard);
	},
	field: async (desk, row, [step = '']) => {
		if (planSteps.some(({id}) => id === step)) return reopenPlan(desk, row, step);
		return openDay(desk, row);
	},
	leave: leaveChange,
	off: async (desk, row) =>
		sayHere(desk, readerAt(desk).say.say('day-off-really'), [
			[{text: readerAt(desk).say.say('day-off-yes'), data: planButton('offyes', row.id)}],
			[{text: readerAt(desk).say.say('day-off-no'), data: planButton('open', row.id)}],
		]),
	offyes: async (desk, row) => (row.state === 'published' ? callOff(desk, row) : drop(desk, row)),
	drop,
	poster: orderPoster,
	result: showResult,
	send: sendResult,
};

async function plan(desk: Desk): Promise<void> {
	const {house, tx, person, now} = desk;
	const begun = {
		uuid: house.newUuid(),
		code: house.newCode(),
		person: person.id,
		region: regionOf(desk),
		now,
	};
	const row = await beginDay(tx, begun);
	await sayHere(desk, readerAt(desk).say.say('plan-begins'));
	return askPlan(desk, row);
}

/** The day as people see it, how many come, and what can be done with it. */
async function openDay(desk: Desk, row: DayRow): Promise<void> {
	const reader = readerAt(desk);
	const {say} = reader;
	const day = readDay(row);
	if (!day) {
		const go = [{text: say.say('button-go-on'), data: planButton('go', row.id)}];
		const drop = [{text: say.say('plan-drop'), data: planButton('drop', row.id)}];
		return sayHere(desk, say.say('plan-open'), [go, drop]);
	}
	const heads = await headsOf(desk.tx, row.id);
	const guests = await guestsOf(desk.tx, row.id);
	const text = [dayCard(day, reader), '', say.say('day-heads', {...heads, answers: guests.length})].join(
		'\n',
	);
	return sayHere(desk, text, ownButtons(desk, row));
}

function ownButtons(desk: Desk, row: DayRow): Keyboard {
	const {say} = readerAt(desk);
	const button = (message: string, act: string) => [{text: say.say(message), data: planButton(act, row.id)}];
	const isOver = row.endsAt !== null && row.endsAt <= desk.now;
	const result = row.startsAt !== null && row.startsAt <= desk.now ? [button('plan-result', 'result')] : [];
	return isOver
		? result
		: [...result, button('plan-change', 'change'), button('plan-poster', 'poster'), button('day-off', 'off')];
}

/** Has the poster made; its code opens the day. */
async function orderPoster(desk: Desk, row: DayRow): Promise<void> {
	const {house, tx, chat, person, now} = desk;
	const {say} = readerAt(desk);
	const link = house.startLink(`${dayPrefix}${row.code}`);
	if (row.body === null) return openDay(desk, row);
	if (link === undefined)
		return sayHere(desk, say.say('plan-poster-no-link', {code: `${dayPrefix}${row.code}`}));
	const wanted = {kind: 'poster', day: row.id, link} as const;
	const isNew = await orderParcel(tx, {chat: chat.id, person: person.id, wanted, now});
	return sayHere(desk, isNew ? say.say('plan-poster-link', {link}) : say.say('parcel-already'));
}

/** An answer to the plan by a button; one of an earlier turn gets the present question. */
async function answer(desk: Desk, row: DayRow, [turn, option = '']: readonly string[]): Promise<void> {
	if (Number(turn) === row.turn) return turnPlan(desk, row, {kind: 'option', option});
	await sayHere(desk, readerAt(desk).say.say('plan-old'));
	return askPlan(desk, row);
}

async function publishPlan(desk: Desk, row: DayRow, [turn]: readonly string[]): Promise<void> {
	const {say} = readerAt(desk);
	const standing = standOfPlan(readPlan(row));
	if (Number(turn) !== row.turn || standing.kind !== 'whole') {
		await sayHere(desk, say.say('plan-old'));
		return askPlan(desk, row);
	}
	if (standing.day.startsAt > desk.now) return publish(desk, row, standing.day);
	await sayHere(desk, say.say('plan-too-late'));
	return reopenPlan(desk, row, 'date');
}

/** A published day stays as it was. */
async function leaveChange(desk: Desk, row: DayRow): Promise<void> {
	if (row.state === 'planned') return askPlan(desk, row);
	await keepPlan(desk.tx, {day: row.id, plan: undefined, turn: row.turn + 1, now: desk.now});
	await stopListening(desk.tx, sitterAt(desk));
	return sayHere(desk, readerAt(desk).say.say('plan-left'));
}

async function drop(desk: Desk, row: DayRow): Promise<void> {
	if (row.state !== 'planned') return openDay(desk, row);
	await dropDay(desk.tx, row.id);
	return sayHere(desk, readerAt(desk).say.say('plan-dropped'));
}

function isCurrent({state, endsAt}: DayRow, now: number): boolean {
	if (state === 'cancelled') return false;
	return endsAt === null || endsAt > now - shownAfterMs;
}

/** A day is still at hand for its result. */
const shownAfterMs = 30 * 24 * 3_600_000;

function lineOf(desk: Desk, row: DayRow): string {
	const {say} = readerAt(desk);
	const day = readDay(row);
	return day ? dayLine(day, say) : say.say('plan-unfinished');
}
