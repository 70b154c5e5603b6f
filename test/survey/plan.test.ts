import {expect, test} from 'vitest';
import type {Plan, PlanEvent} from '../../src/survey/plan.ts';
import {planOf, reopened, standOfPlan} from '../../src/survey/plan.ts';
import {planSteps} from '../../src/survey/plan-steps.ts';
import {type PlanTurn, takePlanTurn} from '../../src/survey/plan-turn.ts';
import {exampleDay} from './days.ts';

const today = '2026-04-20';

function says(plan: Plan, ...events: readonly (string | PlanEvent)[]): PlanTurn {
	return events.reduce<PlanTurn>(
		(turn, event) =>
			takePlanTurn(turn.plan, typeof event === 'string' ? {kind: 'text', text: event} : event, today),
		{plan},
	);
}

const option = (name: string): PlanEvent => ({kind: 'option', option: name});
const begun = ['Spring walk', '50.103, -5.543', 'Example Cove'];

function stepOf(plan: Plan): string {
	const standing = standOfPlan(plan);
	return standing.kind === 'whole' ? 'whole' : `${standing.kind} ${standing.step.id}`;
}

test('a coordinator who answers question by question comes to a whole day', () => {
	const {plan} = says(
		[],
		...begun,
		'2 May',
		'11:00',
		'2 pm',
		'12.28',
		'0,9 m',
		'Official tables, Example Harbour',
		'At the slip below the car park',
		'Boots and a bag',
		'the beach hut, 01234 567890',
		'The far end is cut off by the tide.',
	);
	expect(standOfPlan(plan)).toEqual({kind: 'whole', day: exampleDay});
});

test('a day is what its own plan says', () => {
	expect(standOfPlan(planOf(exampleDay))).toEqual({kind: 'whole', day: exampleDay});
	const {lowWater: _, bring: __, risks: ___, ...bare} = exampleDay;
	expect(standOfPlan(planOf(bare))).toEqual({kind: 'whole', day: bare});
	// In the second of the two hours of the autumn night.
	const second = Date.UTC(2026, 9, 25, 1, 30);
	const night = {...bare, date: '2026-10-25', startsAt: second, endsAt: second + 3_600_000};
	expect(standOfPlan(planOf(night))).toEqual({kind: 'whole', day: night});
});

test('every question can be gone back from, one at a time, to the beginning', () => {
	let plan = planOf(exampleDay);
	const seen: string[] = [];
	while (plan.length > 0) {
		plan = takePlanTurn(plan, option('back'), today).plan;
		seen.push(stepOf(plan).replace('step ', ''));
	}
	expect(seen).toEqual(planSteps.map(({id}) => id).toReversed());
	expect(takePlanTurn([], option('back'), today).plan).toEqual([]);
});

test('where there is hardly any tide, neither its height nor a table is asked for', () => {
	const {plan} = says([], ...begun, '2 May', '11:00', '14:00', option('none'));
	expect(stepOf(plan)).toBe('step meeting');
});

test('an hour that the clocks leave out is refused, and one that comes twice is asked about', () => {
	const spring = says([], ...begun, '28 March 2027', '01:30');
	expect(spring.refused).toMatchObject({message: 'plan-no-such-hour'});
	expect(stepOf(spring.plan)).toBe('step start');
	const autumn = says([], ...begun, '25 October', '01:30');
	expect(stepOf(autumn.plan)).toBe('which start');
	expect(says(autumn.plan, 'the first').refused).toMatchObject({message: 'plan-want-which'});
	const startsAt = (which: string) => {
		const plan = says(autumn.plan, option(which), '03:00').plan;
		const whole = says(plan, option('none'), 'At the slip', option('none'), 'the hut', option('none')).plan;
		const standing = standOfPlan(whole);
		return standing.kind === 'whole' ? standing.day.startsAt : undefined;
	};
	expect(startsAt('first')).toBe(Date.UTC(2026, 9, 25, 0, 30));
	expect(startsAt('second')).toBe(Date.UTC(2026, 9, 25, 1, 30));
	expect(stepOf(says(autumn.plan, option('back')).plan)).toBe('step start');
});

test('a time that the new date does not have is asked again', () => {
	const {plan} = says([], ...begun, '27 March 2027', '01:30', '04:00');
	const moved = plan.map(one =>
		one.step === 'date' ? {step: 'date', answer: {kind: 'date', date: '2027-03-28'} as const} : one,
	);
	expect(stepOf(moved)).toBe('step start');
});

test('an end before the start is on the next day, and a day of over twelve hours is a slip', () => {
	const night = says([], ...begun, '2 May', '22:00', '01:00').plan;
	expect(stepOf(night)).toBe('step low-water');
	expect(says([], ...begun, '2 May', '11:00', '10:00').refused).toMatchObject({message: 'plan-too-much'});
});

test('low water is the nearest one that the clocks show', () => {
	const low = (start: string, end: string, time: string) => {
		const plan = says(
			[],
			...begun,
			'2 May',
			start,
			end,
			time,
			option('none'),
			'Tables',
			'Slip',
			option('none'),
			'hut',
			option('none'),
		).plan;
		const standing = standOfPlan(plan);
		return standing.kind === 'whole' ? standing.day.lowWater?.at : undefined;
	};
	expect(low('22:00', '23:30', '00:15')).toBe(Date.UTC(2026, 4, 2, 23, 15));
	expect(low('00:30', '02:00', '23:50')).toBe(Date.UTC(2026, 4, 1, 22, 50));
});

test.each([
	['a name without a place on the map', [begun[0], 'Example Cove'], 'plan-want-spot'],
	['a square too large for one beach', [begun[0], 'SW 43'], 'plan-coarse-spot'],
	['a day gone by', [...begun, '2026-04-19'], 'plan-past'],
	['a day in two years', [...begun, '2028-04-19'], 'plan-far'],
	['words for a day', [...begun, 'when the sun shines'], 'plan-want-date'],
	['words for a time', [...begun, '2 May', 'early'], 'plan-want-time'],
	['words for a height', [...begun, '2 May', '11:00', '14:00', '12:28', 'low'], 'plan-want-height'],
	['a title longer than a line', ['x'.repeat(61)], 'plan-too-long'],
])('%s is refused with the reason, and the same is asked again', (_, events, message) => {
	const turn = says([], ...events.flatMap(event => (event === undefined ? [] : [event])));
	expect(turn.refused?.message).toBe(message);
	expect(turn.plan).toHaveLength(events.length - 1);
});

test('next Saturday and Sunday are the days after today', () => {
	const dateOf = (day: string, which: string) => {
		const {plan} = takePlanTurn(says([], ...begun).plan, option(which), day);
		const answer = plan.at(-1)?.answer;
		return answer?.kind === 'date' ? answer.date : undefined;
	};
	// 2 May 2026 is a Saturday.
	expect(dateOf('2026-05-01', 'saturday')).toBe('2026-05-02');
	expect(dateOf('2026-05-02', 'saturday')).toBe('2026-05-09');
	expect(dateOf('2026-05-02', 'sunday')).toBe('2026-05-03');
});

test('another date asks for times and low water anew, and keeps the rest', () => {
	const plan = reopened(planOf(exampleDay), 'date');
	expect(stepOf(plan)).toBe('step date');
	const changed = says(plan, '16 May', '10:00', '13:00', '11:40', '0.7').plan;
	expect(standOfPlan(changed)).toEqual({
		kind: 'whole',
		day: {
			...exampleDay,
			date: '2026-05-16',
			startsAt: Date.UTC(2026, 4, 16, 9),
			endsAt: Date.UTC(2026, 4, 16, 12),
			lowWater: {...exampleDay.lowWater, at: Date.UTC(2026, 4, 16, 10, 40), heightM: 0.7},
		},
	});
});
