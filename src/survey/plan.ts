/** The plan of a survey day: what its coordinator answered so far, and the day that comes of it. */
import {z} from 'zod';
import {clockAt, dateAfter, instantsOf} from './clock-time.ts';
import type {Day} from './day.ts';
import {goWith, type PlanStep, planSteps} from './plan-steps.ts';

const answerSchema = z.discriminatedUnion('kind', [
	z.object({kind: z.literal('words'), words: z.string().min(1)}).readonly(),
	/** The step was passed over. */
	z.object({kind: z.literal('none')}).readonly(),
	z
		.object({kind: z.literal('spot'), latitude: z.number(), longitude: z.number(), zone: z.string().min(1)})
		.readonly(),
	z.object({kind: z.literal('date'), date: z.iso.date()}).readonly(),
	/** By the clocks of the place; `which` settles an hour that comes twice. */
	z
		.object({kind: z.literal('time'), time: z.string(), which: z.enum(['first', 'second']).optional()})
		.readonly(),
	z.object({kind: z.literal('height'), heightM: z.number()}).readonly(),
]);

/** One answer of a plan. */
export type PlanAnswer = z.output<typeof answerSchema>;

/** Checks a plan on its way in from its stored column. */
export const planSchema = z.array(z.object({step: z.string(), answer: answerSchema}).readonly()).readonly();

/** What was answered, in the order in which it was. */
export type Plan = z.output<typeof planSchema>;

/** What a coordinator did. */
export type PlanEvent =
	| {readonly kind: 'text'; readonly text: string}
	| {readonly kind: 'pin'; readonly latitude: number; readonly longitude: number}
	| {readonly kind: 'option'; readonly option: string};

/** Where a plan stands: at a step, at a time that the clocks show twice, or with all that makes a day. */
export type PlanStanding =
	| {readonly kind: 'step'; readonly step: PlanStep}
	| {readonly kind: 'which'; readonly step: PlanStep; readonly instants: readonly number[]}
	| {readonly kind: 'whole'; readonly day: Day};

/** Longer, and one of the times is a slip. */
export const longestDayMs = 12 * 3_600_000;

/** Where the plan stands; an answer that no longer fits, as a time that the new date does not have, is asked again. */
export function standOfPlan(plan: Plan): PlanStanding {
	for (const step of planSteps) {
		if (!isWanted(step, plan)) continue;
		const answer = answerOf(plan, step.id);
		if (!answer) return {kind: 'step', step};
		if (answer.kind !== 'time') continue;
		const instants = instantsAt(plan, step.id, answer.time);
		if (instants.length === 0) return {kind: 'step', step};
		if (instants.length > 1 && answer.which === undefined) return {kind: 'which', step, instants};
	}
	return {kind: 'whole', day: dayOf(plan)};
}

/** The answer of a step, if there is one. */
export function answerOf(plan: Plan, step: string): PlanAnswer | undefined {
	return plan.find(one => one.step === step)?.answer;
}

/** The plan with an answer put in place of an earlier one of the same step, as the newest. */
export function withAnswer(plan: Plan, step: string, answer: PlanAnswer): Plan {
	return [...withoutAnswer(plan, step), {step, answer}];
}

/** The plan with a step open again, and with it those that hang on it. */
export function reopened(plan: Plan, step: string): Plan {
	return [step, ...(goWith[step] ?? [])].reduce(withoutAnswer, plan);
}

/** The plan without its newest answer. */
export function withoutNewest(plan: Plan): Plan {
	return plan.slice(0, -1);
}

/**
 * The instants at which the clocks of the plan's place show a time for a step: of the start on the date itself, of the
 * end the first after it, of low water the nearest to the middle of the day. None before place and date are known.
 */
export function instantsAt(plan: Plan, step: string, time: string): readonly number[] {
	const spot = answerOf(plan, 'spot');
	const date = answerOf(plan, 'date');
	if (spot?.kind !== 'spot' || date?.kind !== 'date') return [];
	const on = (days: number) => instantsOf({date: dateAfter(date.date, days), time, zone: spot.zone});
	if (step === 'start') return on(0);
	const startsAt = instantOf(plan, 'start');
	if (startsAt === undefined) return [];
	if (step === 'end') {
		const today = on(0).filter(at => at > startsAt);
		return today.length > 0 ? today : on(1);
	}
	const middle = (startsAt + (instantOf(plan, 'end') ?? startsAt)) / 2;
	const distance = (instants: readonly number[]) => Math.min(...instants.map(at => Math.abs(at - middle)));
	return [on(-1), on(0), on(1)].reduce((best, one) => (distance(one) < distance(best) ? one : best));
}

/** The instant of a step's time, once it is answered and settled. */
export function instantOf(plan: Plan, step: string): number | undefined {
	const answer = answerOf(plan, step);
	if (answer?.kind !== 'time') return undefined;
	const instants = instantsAt(plan, step, answer.time);
	return answer.which === 'second' ? instants.at(-1) : instants[0];
}

/** The plan of a day that stands, to be changed: every answer as it would be given today. */
export function planOf(day: Day): Plan {
	const {zone} = day.spot;
	const words = (text: string | undefined): PlanAnswer =>
		text === undefined ? {kind: 'none'} : {kind: 'words', words: text};
	const time = (at: number): PlanAnswer => timeAnswer(at, zone);
	const {lowWater} = day;
	const steps: readonly (readonly [string, PlanAnswer])[] = [
		['title', words(day.title)],
		['spot', {kind: 'spot', ...day.spot}],
		['place', words(day.place)],
		['date', {kind: 'date', date: day.date}],
		['start', time(day.startsAt)],
		['end', time(day.endsAt)],
		['low-water', lowWater ? time(lowWater.at) : {kind: 'none'}],
		[
			'low-height',
			lowWater?.heightM === undefined ? {kind: 'none'} : {kind: 'height', heightM: lowWater.heightM},
		],
		['table', words(lowWater?.table)],
		['meeting', words(day.meeting)],
		['bring', words(day.bring)],
		['contact', words(day.contact)],
		['risks', words(day.risks)],
	];
	return steps.map(([step, answer]) => ({step, answer}));
}

function timeAnswer(at: number, zone: string): PlanAnswer {
	const {date, time} = clockAt(at, zone);
	const instants = instantsOf({date, time, zone});
	if (instants.length < 2) return {kind: 'time', time};
	return {kind: 'time', time, which: at === instants[0] ? 'first' : 'second'};
}

function withoutAnswer(plan: Plan, step: string): Plan {
	return plan.filter(one => one.step !== step);
}

/** Height and table are asked only where low water was given. */
function isWanted({needs}: PlanStep, plan: Plan): boolean {
	return needs === undefined || answerOf(plan, needs)?.kind === 'time';
}

function dayOf(plan: Plan): Day {
	const spot = answerOf(plan, 'spot');
	const date = answerOf(plan, 'date');
	const [startsAt, endsAt, lowAt] = ['start', 'end', 'low-water'].map(step => instantOf(plan, step));
	if (spot?.kind !== 'spot' || date?.kind !== 'date' || startsAt === undefined || endsAt === undefined)
		throw new Error('Expected a plan with place, date and times; one of them is missing');
	const height = answerOf(plan, 'low-height');
	return {
		title: wordsOf(plan, 'title') ?? '',
		spot: {latitude: spot.latitude, longitude: spot.longitude, zone: spot.zone},
		place: wordsOf(plan, 'place') ?? '',
		date: date.date,
		startsAt,
		endsAt,
		...(lowAt === undefined
			? {}
			: {
					lowWater: {
						at: lowAt,
						...(height?.kind === 'height' ? {heightM: height.heightM} : {}),
						table: wordsOf(plan, 'table') ?? '',
					},
				}),
		meeting: wordsOf(plan, 'meeting') ?? '',
		...optional('bring', wordsOf(plan, 'bring')),
		contact: wordsOf(plan, 'contact') ?? '',
		...optional('risks', wordsOf(plan, 'risks')),
	};
}

function wordsOf(plan: Plan, step: string): string | undefined {
	const answer = answerOf(plan, step);
	return answer?.kind === 'words' ? answer.words : undefined;
}

function optional(name: 'bring' | 'risks', words: string | undefined): {bring?: string; risks?: string} {
	return words === undefined ? {} : {[name]: words};
}
