import {expect, vi} from 'vitest';
import type {Actor} from '../support/actor.ts';
import {journeyTest} from '../support/journey.ts';
import {begin, walkTo} from '../support/steps.ts';
import {calendarOf, planAnswers, planDay, startsAt, surveyTeam} from '../support/survey-days.ts';
import {tracesInTables} from '../support/traces.ts';

vi.setConfig({testTimeout: 60_000});

const hourMs = 3_600_000;

journeyTest(
	'a coordinator plans a day question by question, and who asked hears of it, is reminded, and hears of its changes',
	async journey => {
		const {room, clock} = journey;
		const {dora, cato} = await surveyTeam(journey);
		await planDay(dora);
		expect(dora.sees.text).toContain('This is what people will see.');
		expect(dora.sees.text).toContain('Saturday 16 May 2026, 11:00 to 14:00');
		expect(dora.sees.text).toContain(
			'Low water: 12:28, 0.9 m, as read from: Official tables, Example Harbour',
		);
		expect(dora.sees.text).toContain('The tide turns at 12:28.');
		await dora.presses('Publish and tell');
		expect(cato.sees.text).toContain('There is a survey day.');
		expect(cato.sees.text).toContain('Example Cove. We meet: At the slip below the car park');
		expect(cato.sees.text).toContain('Check the weather and the sea');
		const first = calendarOf(room, cato);
		expect(first).toMatchObject({sequence: 1, startsAt, summary: 'Spring walk', status: 'CONFIRMED'});
		expect(room.messages(dora.id).some(({text}) => text.startsWith('All is told.\nSent: 1'))).toBe(true);
		await cato.presses('Coming');
		await cato.presses('3');
		expect(cato.sees.text).toBe('Noted: you are 3.');
		// The evening before, at six by the clocks of the beach.
		await journey.forward(Date.UTC(2026, 4, 15, 17) - clock.now());
		expect(cato.sees.text).toContain('Tomorrow is the survey day.');
		await dora.sends('/day');
		await dora.presses('Open no. 1');
		expect(dora.sees.text).toContain('Coming: 3, perhaps: 0');
		await dora.presses('Change something');
		await dora.presses('Hours');
		await dora.sends('12:00');
		await dora.sends('14:30');
		await dora.presses('Tell them the change');
		expect(cato.sees.text).toContain('Before, it was Saturday 16 May 2026, 11:00.');
		expect(calendarOf(room, cato)).toMatchObject({uid: first.uid, sequence: 2, startsAt: startsAt + hourMs});
		await journey.forward(startsAt - hourMs - clock.now());
		expect(cato.sees.text).toContain('Spring walk begins at 12:00');
		expect(cato.sees.text).toContain('The tide turns at 12:28.');
		await dora.sends('/day');
		await dora.presses('Open no. 1');
		await dora.presses('Call it off');
		await dora.presses('Yes, call it off');
		expect(cato.sees.text).toContain('The survey day is off');
		expect(calendarOf(room, cato)).toMatchObject({uid: first.uid, sequence: 3, status: 'CANCELLED'});
	},
	['plain', 'delivered twice', 'restarted after each update'],
);

journeyTest(
	'one tap stops all that is told of survey days, also of the day somebody comes to',
	async journey => {
		const {clock} = journey;
		const {dora, cato} = await surveyTeam(journey);
		await planDay(dora);
		await dora.presses('Publish and tell');
		const announced = cato.sees;
		await cato.presses('Coming');
		await cato.presses('No more of these', {on: announced});
		expect(cato.sees.text).toContain('I tell you of no survey day any more');
		const before = cato.all.length;
		await journey.forward(startsAt - clock.now());
		expect(cato.all).toHaveLength(before);
		await cato.sends('/tellme');
		expect(cato.sees.text).toContain('I tell nobody of survey days who did not ask.');
	},
	['plain'],
);

journeyTest(
	'a reminder that the program slept through comes late and says so, unless it is of no use any more',
	async journey => {
		const {clock} = journey;
		const {dora, cato} = await surveyTeam(journey);
		await planDay(dora);
		await dora.presses('Publish and tell');
		await cato.presses('Perhaps');
		await journey.away(Date.UTC(2026, 4, 15, 18) - clock.now());
		expect(cato.sees.text).toContain('This comes late, I am sorry: I should have written at 18:00.');
		expect(cato.sees.text).toContain('Tomorrow is the survey day.');
		const before = cato.all.length;
		await journey.away(startsAt + hourMs - clock.now());
		expect(cato.all).toHaveLength(before);
	},
	['plain'],
);

journeyTest(
	'a link on a poster greets a newcomer with the word on safety, shows the day and takes the answer',
	async journey => {
		const {db, person} = journey;
		const {dora} = await surveyTeam(journey);
		await planDay(dora);
		await dora.presses('Publish and tell');
		const {code} = await db.selectFrom('day').select('code').executeTakeFirstOrThrow();
		const ada = person('Ada');
		await ada.sends(`/start survey-${code}`);
		expect(ada.all.at(-2)?.text).toContain('First, stay safe:');
		expect(ada.sees.text).toContain('Spring walk');
		await ada.presses('More days like this');
		await ada.sends('/tellme');
		expect(ada.sees.text).toContain('all days of one coordinator');
		await ada.sends('/days');
		expect(ada.sees.text).toContain('1. Saturday 16 May 2026, 11:00: Spring walk, Example Cove');
		await ada.presses('Open no. 1');
		await ada.presses("Can't");
		expect(ada.sees.text).toContain('you cannot come');
	},
	['plain'],
);

journeyTest(
	'a plan can be left, gone back in and thrown away, and old buttons get the present question',
	async journey => {
		const {dora, cato} = await surveyTeam(journey);
		await planDay(dora, planAnswers.slice(0, 3));
		const date = dora.sees;
		await dora.presses('Next Saturday');
		await dora.presses('Next Sunday', {on: date});
		expect(dora.all.at(-2)?.text).toContain('You have answered this already.');
		expect(dora.sees.text).toContain('When does it begin');
		await dora.presses('Back');
		expect(dora.sees.text).toContain('On which day?');
		await dora.sends('yesterday');
		expect(dora.all.at(-2)?.text).toContain('1 May 2026 is over.');
		await dora.odd('sticker');
		expect(dora.all.at(-2)?.text).toContain('I cannot use that here.');
		await dora.sends('/cancel');
		await dora.sends('16 May');
		expect(dora.sees.text).toContain('I do not have a find open');
		await dora.sends('/day');
		await dora.presses('Open no. 1');
		await dora.presses('Throw it away');
		await cato.sends('/days');
		expect(cato.sees.text).toContain('There are no survey days to come');
		await cato.makesUp('m.plan.open.1');
		expect(cato.sees.text).toContain('This is only for people who help');
	},
	['plain', 'restarted after each update'],
);

journeyTest(
	'after the day the finds made there are gathered, and one tap sends the result to those who came',
	async journey => {
		const {db, clock, person} = journey;
		const {dora, cato} = await surveyTeam(journey);
		await planDay(dora);
		await dora.presses('Publish and tell');
		const announced = cato.sees;
		await cato.presses('Coming');
		await cato.presses('2');
		const ada = person('Ada');
		await journey.forward(startsAt + hourMs - clock.now());
		await begin(ada);
		// A kilometre along the beach.
		await walkTo({db, person: ada}, 'kept', {where: one => one.sends('50.108, -5.533')});
		await cato.presses('Show me a find', {on: await welcomed(cato)});
		// On another beach, 20 km away.
		await walkTo({db, person: cato}, 'kept', {where: one => one.sends('50.2, -5.3')});
		await journey.away(startsAt + 7 * hourMs - clock.now());
		expect(dora.sees.text).toContain('Spring walk is over.');
		await dora.presses('See the result');
		const [shown] = dora.all.filter(({text}) => text.startsWith('What came of Spring walk')).slice(-1);
		expect(shown?.text).toContain('One find, with one case, saved by one person.');
		expect(shown?.text).toContain('Thornback ray: 1');
		expect(shown?.text).toContain('2 people said that they come, for 3 hours: about 6 hours of looking.');
		expect(dora.sees.text).toBe('Where it was found.');
		if (!shown) throw new Error('Expected the result to be shown');
		await dora.presses('Send it to who came', {on: shown});
		expect(cato.sees.text).toContain('Thank you for coming to Spring walk');
		expect(cato.sees.text).toContain('Thornback ray: 1');
		expect(ada.all.some(({text}) => text.includes('Thank you for coming'))).toBe(false);
		await dora.presses('Send it to who came', {on: shown});
		expect(dora.sees.text).toContain('The result has gone out already.');
		await cato.presses('Coming', {on: announced});
		expect(cato.sees.text).toContain('This survey day is over.');
	},
	['plain'],
);

journeyTest(
	'a coordinator who is forgotten leaves a day that is off, and no word to find them by',
	async journey => {
		const {db} = journey;
		const {dora, cato} = await surveyTeam(journey);
		await planDay(dora);
		await dora.presses('Publish and tell');
		await dora.sends('/forget');
		await dora.presses(dora.labels()[0] ?? '');
		expect(cato.sees.text).toContain('The survey day is off');
		expect(await tracesInTables(db, ['the beach hut'])).toEqual([]);
	},
	['plain'],
);

/** The greeting with the button that begins a find. */
async function welcomed(person: Actor) {
	await person.sends('/start');
	await person.presses('I have read this, begin');
	await person.sends('/start');
	return person.sees;
}
