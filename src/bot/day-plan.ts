/** A survey day is planned or changed: an answer comes in, the next question goes out. */
import type {Message} from 'grammy/types';
import {type DayRow, keepPlan} from '../store/days.ts';
import {post} from '../store/outbox.ts';
import {lastAsked} from '../store/said.ts';
import {listenFor} from '../store/seats.ts';
import {type Day, daySchema} from '../survey/day.ts';
import {type Plan, type PlanEvent, planOf, planSchema, reopened, standOfPlan} from '../survey/plan.ts';
import {takePlanTurn, todayFor} from '../survey/plan-turn.ts';
import {type Desk, postHere, readerAt, sayHere, sitterAt} from './desk.ts';
import {answerText, planScreen} from './plan-screen.ts';
import {dayText, escaped} from './words.ts';

/** The plan of a stored day, or that of the day itself where nothing is being changed. */
export function readPlan(row: DayRow): Plan {
	if (row.plan !== null) return planSchema.parse(JSON.parse(row.plan));
	const day = readDay(row);
	return day ? planOf(day) : [];
}

/** The day as people were told; nothing before it is published. */
export function readDay(row: DayRow): Day | undefined {
	return row.body === null ? undefined : daySchema.parse(JSON.parse(row.body));
}

/** Asks what comes next in the plan; what the coordinator writes from now on is the answer. */
export async function askPlan(desk: Desk, row: DayRow): Promise<void> {
	const plan = readPlan(row);
	const standing = standOfPlan(plan);
	await listenFor(desk.tx, sitterAt(desk), {kind: 'plan', day: row.id});
	const shown = {row, reader: readerAt(desk), canBack: plan.length > 0, tides: desk.house.tides};
	const {text, keyboard} = planScreen(standing, shown);
	await postHere(desk, {kind: 'send', html: escaped(text), keyboard}, {role: 'ask', turn: row.turn});
}

/** Opens one question of a day again, and those that hang on it. */
export async function reopenPlan(desk: Desk, row: DayRow, step: string): Promise<void> {
	await keep(desk, row, reopened(readPlan(row), step));
}

/** Takes an answer to the plan. */
export async function turnPlan(desk: Desk, row: DayRow, event: PlanEvent): Promise<void> {
	const reader = readerAt(desk);
	const plan = readPlan(row);
	const today = todayFor(plan, desk.now, reader.zone);
	const turn = takePlanTurn(plan, event, today);
	if (turn.refused) {
		const {message, values = {}} = turn.refused;
		const date = values['date'];
		const said = typeof date === 'string' ? {...values, date: dayText(date, reader)} : values;
		await sayHere(desk, reader.say.say(message, said));
		return askPlan(desk, row);
	}
	const newest = turn.plan.length >= plan.length ? turn.plan.at(-1) : undefined;
	await closeQuestion(desk, row, newest ? answerText(newest.answer, reader) : reader.say.say('option-back'));
	await keep(desk, row, turn.plan);
}

/** Takes a message as the answer to the plan that its writer is at. */
export async function hearPlan(desk: Desk, row: DayRow, message: Message): Promise<void> {
	const event = planEventIn(message);
	if (event) return turnPlan(desk, row, event);
	await sayHere(desk, readerAt(desk).say.say('plan-odd'));
	return askPlan(desk, row);
}

/** What a message says to a plan; nothing for what no question of it takes. */
function planEventIn({location, venue, text}: Message): PlanEvent | undefined {
	const spot = location ?? venue?.location;
	if (spot) return {kind: 'pin', latitude: spot.latitude, longitude: spot.longitude};
	return text === undefined ? undefined : {kind: 'text', text};
}

async function keep(desk: Desk, row: DayRow, plan: Plan): Promise<void> {
	const kept = {plan: JSON.stringify(plan), turn: row.turn + 1};
	await keepPlan(desk.tx, {day: row.id, ...kept, now: desk.now});
	await askPlan(desk, {...row, ...kept});
}

/** The answered question loses its buttons and shows the answer. */
async function closeQuestion(desk: Desk, row: DayRow, answer: string): Promise<void> {
	const asked = await lastAsked(desk.tx, {chat: desk.chat.id, turn: row.turn});
	if (asked?.call.kind !== 'send') return;
	const html = `${asked.call.html}\n\n${escaped(`→ ${answer}`)}`;
	const call = {kind: 'edit' as const, row: asked.id, html, keyboard: []};
	await post(desk.tx, {chat: desk.chat.id, role: 'close', call, now: desk.now});
}
