import {expect} from 'vitest';
import {type Conditions, type Journey, journeyTest} from '../support/journey.ts';
import {begin, type Deed, press, remindersToCome, timesWoken, walkTo, write} from '../support/steps.ts';

const dry = {condition: press('Dry and stiff')};
const overnight = {...dry, soak: press('Overnight')};

/** What is answered, when the bell rings (UTC ms), and in whose zone. */
type Bell = {
	readonly answers: Readonly<Record<string, Deed>>;
	readonly dueAt: number;
	readonly zone: string;
	readonly says: string;
};

/** Walks to the bowl and waits until the second before the bell, then for the bell. */
async function ringsOnce({ada, db, clock, forward}: Journey, bell: Bell): Promise<void> {
	await walkTo({db, person: ada}, 'soaking', bell.answers);
	expect(ada.sees.text).toContain(`I will write to you at ${bell.says}`);
	expect(await remindersToCome(db)).toEqual([{dueAt: bell.dueAt, zone: bell.zone}]);
	await forward(bell.dueAt - 1000 - clock.now());
	expect(timesWoken(ada)).toBe(0);
	await forward(1000);
	expect(timesWoken(ada)).toBe(1);
	await forward(24 * 3_600_000);
	expect(timesWoken(ada)).toBe(1);
}

// The hour is worked out in one place, whatever the mode; a restart in between is the one that could lose it.
const modes = ['plain', 'restarted after each update'] as const;

function bellTest(name: string, conditions: Conditions, walk: (journey: Journey) => Promise<void>): void {
	journeyTest(name, walk, {modes, ...conditions});
}

// British summer time is one hour before UTC, Paris two.
bellTest('overnight ends at the chosen hour of the default zone', {}, async journey => {
	await begin(journey.ada);
	await ringsOnce(journey, {
		answers: {...overnight, morning: press('07:00')},
		dueAt: Date.UTC(2026, 4, 3, 6),
		zone: 'Europe/London',
		says: '07:00, Sunday 3 May',
	});
});

bellTest('overnight ends at the chosen hour of a zone set with /settings', {}, async journey => {
	const {ada} = journey;
	await ada.sends('/settings Europe/Paris');
	expect(ada.sees.text).toContain('Europe/Paris');
	await begin(ada);
	await ringsOnce(journey, {
		answers: {...overnight, morning: press('08:00')},
		dueAt: Date.UTC(2026, 4, 3, 6),
		zone: 'Europe/Paris',
		says: '08:00, Sunday 3 May',
	});
});

bellTest('a pin in another zone says whose clock it is', {}, async journey => {
	const {ada, db} = journey;
	await begin(ada);
	await ringsOnce(journey, {
		answers: {...overnight, where: person => person.location(48.58, -4.61), morning: press('10:00')},
		dueAt: Date.UTC(2026, 4, 3, 8),
		zone: 'Europe/Paris',
		says: '10:00, Sunday 3 May',
	});
	const person = await db
		.selectFrom('person')
		.select(['zone', 'isZoneChosen'])
		.where('platformId', '=', ada.id)
		.execute();
	expect(person).toEqual([{zone: 'Europe/Paris', isZoneChosen: 0}]);
});

bellTest('a zone set by hand is not changed by a pin', {}, async journey => {
	await journey.ada.sends('/settings Europe/London');
	await begin(journey.ada);
	await ringsOnce(journey, {
		answers: {...overnight, where: person => person.location(48.58, -4.61)},
		dueAt: Date.UTC(2026, 4, 3, 7),
		zone: 'Europe/London',
		says: '08:00, Sunday 3 May',
	});
});

// 20:00 UTC is 21:00 in London in summer: the two hours would end at 23:00.
bellTest('two hours begun at 21:00 end at 07:00', {begunAt: Date.UTC(2026, 4, 2, 20)}, async journey => {
	await begin(journey.ada);
	await ringsOnce(journey, {
		answers: dry,
		dueAt: Date.UTC(2026, 4, 3, 6),
		zone: 'Europe/London',
		says: '07:00, Sunday 3 May',
	});
});

bellTest('two hours begun at 19:59 end at 21:59', {begunAt: Date.UTC(2026, 4, 2, 18, 59)}, async journey => {
	await begin(journey.ada);
	await ringsOnce(journey, {
		answers: dry,
		dueAt: Date.UTC(2026, 4, 2, 20, 59),
		zone: 'Europe/London',
		says: '21:59',
	});
});

bellTest(
	'overnight begun at six in the morning waits for the hour after two hours',
	{
		begunAt: Date.UTC(2026, 4, 2, 5),
	},
	async journey => {
		await begin(journey.ada);
		await ringsOnce(journey, {
			answers: {...overnight, morning: press('08:00')},
			dueAt: Date.UTC(2026, 4, 2, 7),
			zone: 'Europe/London',
			says: '08:00',
		});
	},
);

// In London the clocks of 2026 go forward on 29 March and back on 25 October, both at 01:00 UTC: the last Sundays
// of the two months (Summer Time Order 2002, from memory).
bellTest(
	'overnight into summer time ends at the chosen hour of the new time',
	{
		begunAt: Date.UTC(2026, 2, 28, 18),
	},
	async journey => {
		await begin(journey.ada);
		await ringsOnce(journey, {
			answers: {...overnight, morning: press('07:00')},
			dueAt: Date.UTC(2026, 2, 29, 6),
			zone: 'Europe/London',
			says: '07:00, Sunday 29 March',
		});
	},
);

bellTest(
	'two hours that end in the night of summer time wait until seven of the new time',
	{
		begunAt: Date.UTC(2026, 2, 28, 22, 30),
	},
	async journey => {
		await begin(journey.ada);
		await ringsOnce(journey, {
			answers: dry,
			dueAt: Date.UTC(2026, 2, 29, 6),
			zone: 'Europe/London',
			says: '07:00, Sunday 29 March',
		});
	},
);

bellTest(
	'overnight out of summer time ends at the chosen hour of the new time',
	{
		begunAt: Date.UTC(2026, 9, 24, 18),
	},
	async journey => {
		await begin(journey.ada);
		await ringsOnce(journey, {
			answers: {...overnight, morning: press('09:00')},
			dueAt: Date.UTC(2026, 9, 25, 9),
			zone: 'Europe/London',
			says: '09:00, Sunday 25 October',
		});
	},
);

bellTest(
	'two hours that end in the night of winter time wait until seven of the new time',
	{
		begunAt: Date.UTC(2026, 9, 24, 20, 30),
	},
	async journey => {
		await begin(journey.ada);
		await ringsOnce(journey, {
			answers: {...dry, where: write('Sennen')},
			dueAt: Date.UTC(2026, 9, 25, 7),
			zone: 'Europe/London',
			says: '07:00, Sunday 25 October',
		});
	},
);
