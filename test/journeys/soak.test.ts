import {expect} from 'vitest';
import {journeyTest, newestFind} from '../support/journey.ts';
import {
	begin,
	newestDraft,
	press,
	questionOf,
	remindersToCome,
	timesWoken,
	walkTo,
} from '../support/steps.ts';

const hourMs = 3_600_000;
const begunAt = Date.UTC(2026, 4, 2, 9, 30);
const dry = {condition: press('Dry and stiff')};

journeyTest(
	'a dry case soaks for two hours, and the finder is told then and not before',
	async ({ada, db, forward}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'soaking', dry);
		expect(ada.sees.text).toContain('in the bowl since 10:30');
		expect(ada.sees.text).toContain('I will write to you at 12:30');
		expect(await remindersToCome(db)).toEqual([{dueAt: begunAt + 2 * hourMs, zone: 'Europe/London'}]);
		await forward(2 * hourMs - 1000);
		expect(timesWoken(ada)).toBe(0);
		expect((await newestFind(db, ada.id)).state).toBe('soaking');
		await forward(1000);
		expect(timesWoken(ada)).toBe(1);
		expect(await remindersToCome(db)).toEqual([]);
		await forward(hourMs);
		expect(timesWoken(ada)).toBe(1);
		await ada.presses('Softer now');
		await walkTo({db, person: ada}, 'kept');
		expect((await newestDraft(db, ada)).body).toMatchObject({
			soak: {state: 'soaked', hours: 3},
			length: {countsAs: 'exact', because: []},
		});
	},
);

journeyTest('a case still stiff gets one hour more, then a night', async ({ada, db, forward}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'soaking', dry);
	await forward(2 * hourMs);
	await ada.presses('Still stiff: one hour');
	expect(ada.sees.text).toContain('I will write to you at 13:30');
	expect(ada.sees.text).toContain('since 10:30');
	expect(await remindersToCome(db)).toEqual([{dueAt: begunAt + 3 * hourMs, zone: 'Europe/London'}]);
	await forward(hourMs);
	expect(timesWoken(ada)).toBe(2);
	await ada.presses('Tomorrow morning');
	expect(ada.labels().slice(0, 4)).toEqual(['07:00', '08:00', '09:00', '10:00']);
	await ada.presses('09:00');
	expect(await remindersToCome(db)).toEqual([{dueAt: Date.UTC(2026, 4, 3, 8), zone: 'Europe/London'}]);
	await forward(Date.UTC(2026, 4, 3, 8) - (begunAt + 3 * hourMs));
	expect(timesWoken(ada)).toBe(3);
	await ada.presses('Softer now');
	expect((await newestFind(db, ada.id)).standing.facts.soak).toBe('soaked');
});

journeyTest('a case soaked already goes straight on, and its length counts as it is', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'soak', {condition: press('Still damp')});
	await ada.presses('It is soaked already');
	expect(await questionOf(db, ada)).toBe('aprons');
	expect(await remindersToCome(db)).toEqual([]);
	await walkTo({db, person: ada}, 'result');
	expect(ada.sees.text).not.toContain('at least');
	await walkTo({db, person: ada}, 'kept');
	const {body} = await newestDraft(db, ada);
	expect(body.length).toMatchObject({mm: 66, countsAs: 'exact'});
	expect(body.soak).toEqual({state: 'soaked'});
});

journeyTest('a case measured dry is said and kept to be at least so long', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'soak', dry);
	await ada.presses('Go on without soaking');
	await walkTo({db, person: ada}, 'length');
	expect(ada.sees.text).toContain('dry as it is');
	await walkTo({db, person: ada}, 'result');
	expect(ada.sees.text).toContain('at least 66 mm');
	expect(ada.sees.text).toContain('measured dry');
	await walkTo({db, person: ada}, 'kept');
	expect((await newestDraft(db, ada)).body).toMatchObject({
		soak: {state: 'dry'},
		length: {mm: 66, countsAs: 'at-least', because: ['dry']},
	});
});

journeyTest('who says early that it is soft is not reminded any more', async ({ada, db, forward}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'soaking', dry);
	await forward(hourMs);
	await ada.presses('It is soft now');
	expect(await questionOf(db, ada)).toBe('softness');
	expect(await remindersToCome(db)).toEqual([]);
	await ada.presses('Softer now');
	const shown = ada.all.length;
	await forward(5 * hourMs);
	expect(ada.all.length).toBe(shown);
	await walkTo({db, person: ada}, 'kept');
	expect((await newestDraft(db, ada)).body.soak).toEqual({state: 'soaked', hours: 1});
});

journeyTest(
	'Back from the bowl takes the reminder away, and a new choice sets a new one',
	async ({ada, db, forward}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'soaking', dry);
		await ada.presses('Back');
		expect(await questionOf(db, ada)).toBe('soak');
		expect((await newestFind(db, ada.id)).state).toBe('open');
		expect(await remindersToCome(db)).toEqual([]);
		await forward(3 * hourMs);
		expect(timesWoken(ada)).toBe(0);
		await ada.presses('Two hours');
		expect(await remindersToCome(db)).toEqual([{dueAt: begunAt + 5 * hourMs, zone: 'Europe/London'}]);
		await forward(2 * hourMs);
		expect(timesWoken(ada)).toBe(1);
	},
);

journeyTest(
	'words at the bowl are answered with what can be done, and the reminder stays',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'soaking', dry);
		await ada.sends('is it ready?');
		expect(ada.sees.text).toContain('/bowl');
		expect(ada.labels()).toContain('It is soft now');
		expect(await remindersToCome(db)).toHaveLength(1);
	},
);
