/** One turn of a plan: what the coordinator says comes in, the changed plan and what to say go out. */

import {readWrittenDay} from '../text/written-day.ts';
import {clockAt, dateAfter, readClockTime} from './clock-time.ts';
import {readHeight} from './height.ts';
import {
	answerOf,
	instantOf,
	instantsAt,
	longestDayMs,
	type Plan,
	type PlanAnswer,
	type PlanEvent,
	type PlanStanding,
	standOfPlan,
	withAnswer,
	withoutNewest,
} from './plan.ts';
import {findSpot} from './plan-spot.ts';
import type {PlanStep} from './plan-steps.ts';

/** What came of it; `refused` is the sentence that says why nothing changed. */
export type PlanTurn = {
	readonly plan: Plan;
	readonly refused?: {readonly message: string; readonly values?: Readonly<Record<string, string | number>>};
};

/** Nobody plans further ahead than this. */
const furthestDays = 400;

/** Takes an answer; `today` is the ISO date where the coordinator is. */
export function takePlanTurn(plan: Plan, event: PlanEvent, today: string): PlanTurn {
	const standing = standOfPlan(plan);
	if (event.kind === 'option' && event.option === 'back') return {plan: withoutNewest(plan)};
	if (standing.kind === 'whole') return {plan, refused: {message: 'plan-whole'}};
	if (standing.kind === 'which') return settleHour(plan, standing, event);
	const {step} = standing;
	if (event.kind === 'option' && event.option === 'none' && step.mayBeNone === true)
		return {plan: withAnswer(plan, step.id, {kind: 'none'})};
	const heard = hear(plan, step, {event, today});
	return 'message' in heard ? {plan, refused: heard} : {plan: withAnswer(plan, step.id, heard)};
}

type Refused = NonNullable<PlanTurn['refused']>;
type Heard = {readonly event: PlanEvent; readonly today: string};

function hear(plan: Plan, step: PlanStep, {event, today}: Heard): PlanAnswer | Refused {
	switch (step.takes) {
		case 'spot':
			return findSpot(event);
		case 'date':
			return hearDate(event, today);
		case 'words':
			return event.kind === 'text' ? hearWords(event.text, step) : {message: 'plan-want-words'};
		case 'time':
			return event.kind === 'text' ? hearTime(plan, step, event.text) : {message: 'plan-want-time'};
		case 'height': {
			const heightM = event.kind === 'text' ? readHeight(event.text) : undefined;
			return heightM === undefined ? {message: 'plan-want-height'} : {kind: 'height', heightM};
		}
	}
}

function hearWords(text: string, {most = 100}: PlanStep): PlanAnswer | Refused {
	const words = text.replace(/[\p{Cc}\p{Z}]+/gu, ' ').trim();
	if (words === '') return {message: 'plan-want-words'};
	const {length} = [...words];
	return length > most ? {message: 'plan-too-long', values: {most, length}} : {kind: 'words', words};
}

function hearDate(event: PlanEvent, today: string): PlanAnswer | Refused {
	const date =
		event.kind === 'text'
			? readWrittenDay(event.text, today, 'ahead')
			: event.kind === 'option'
				? nextWeekday(event.option, today)
				: undefined;
	if (date === undefined) return {message: 'plan-want-date'};
	if (date < today) return {message: 'plan-past', values: {date}};
	if (date > dateAfter(today, furthestDays)) return {message: 'plan-far', values: {date}};
	return {kind: 'date', date};
}

/** The next Saturday or Sunday after today. */
function nextWeekday(option: string, today: string): string | undefined {
	const wanted = ['sunday', undefined, undefined, undefined, undefined, undefined, 'saturday'].indexOf(
		option,
	);
	if (wanted < 0) return undefined;
	const now = new Date(`${today}T00:00Z`).getUTCDay();
	return dateAfter(today, ((wanted - now + 6) % 7) + 1);
}

function hearTime(plan: Plan, step: PlanStep, text: string): PlanAnswer | Refused {
	const time = readClockTime(text);
	if (time === undefined) return {message: 'plan-want-time'};
	const answer: PlanAnswer = {kind: 'time', time};
	if (instantsAt(plan, step.id, time).length === 0) return {message: 'plan-no-such-hour', values: {time}};
	const endsAt = instantOf(withAnswer(plan, step.id, answer), 'end');
	const startsAt = instantOf(withAnswer(plan, step.id, answer), 'start');
	if (startsAt !== undefined && endsAt !== undefined && endsAt - startsAt > longestDayMs)
		return {message: 'plan-too-much', values: {start: startTime(plan), time}};
	return answer;
}

function startTime(plan: Plan): string {
	const start = answerOf(plan, 'start');
	return start?.kind === 'time' ? start.time : '';
}

/** The hour comes twice that night: only its two buttons settle which is meant. */
function settleHour(plan: Plan, {step}: Extract<PlanStanding, {kind: 'which'}>, event: PlanEvent): PlanTurn {
	const answer = answerOf(plan, step.id);
	if (answer?.kind !== 'time') return {plan};
	if (event.kind === 'option' && (event.option === 'first' || event.option === 'second'))
		return {plan: withAnswer(plan, step.id, {...answer, which: event.option})};
	return {plan, refused: {message: 'plan-want-which'}};
}

/** The ISO date that it is at an instant where a plan's place is, or in `zone` before it has one. */
export function todayFor(plan: Plan, now: number, zone: string): string {
	const spot = answerOf(plan, 'spot');
	return clockAt(now, spot?.kind === 'spot' ? spot.zone : zone).date;
}
