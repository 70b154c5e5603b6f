import {expect} from 'vitest';
import {journeyTest} from '../support/journey.ts';
import {begin, press, questionOf, remindersToCome, timesWoken, walkTo} from '../support/steps.ts';

const hourMs = 3_600_000;
const dry = {condition: press('Dry and stiff')};

journeyTest(
	'a bell missed while the program was down is told late, once, with an excuse',
	async ({ada, db, away, forward}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'soaking', dry);
		const shown = ada.all.length;
		await away(5 * hourMs);
		expect(ada.all.slice(shown).map(({text}) => text)).toEqual([
			expect.stringContaining('I could not write at 12:30, as I said I would.'),
			expect.stringContaining('Your bowl is ready'),
		]);
		expect(await remindersToCome(db)).toEqual([]);
		await away(1000);
		await forward(hourMs);
		expect(timesWoken(ada)).toBe(1);
		await ada.presses('Softer now');
		expect(await questionOf(db, ada)).toBe('aprons');
	},
);

journeyTest('a bell missed by a few minutes is told without an excuse', async ({ada, db, away}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'soaking', dry);
	const shown = ada.all.length;
	await away(2 * hourMs + 10 * 60_000);
	expect(ada.all.slice(shown).map(({text}) => text)).toEqual([expect.stringContaining('Your bowl is ready')]);
});

journeyTest('who comes back to life at night still lets people sleep', async ({ada, db, away, forward}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'soaking', dry);
	const shown = ada.all.length;
	// From 10:30 to 23:30 of London.
	await away(13 * hourMs);
	expect(ada.all.length).toBe(shown);
	expect(await remindersToCome(db)).toEqual([{dueAt: Date.UTC(2026, 4, 3, 6), zone: 'Europe/London'}]);
	await forward(7 * hourMs);
	expect(ada.all.length).toBe(shown);
	await forward(hourMs / 2);
	expect(timesWoken(ada)).toBe(1);
	// Put off for the night, it is still late by the hour that was promised.
	expect(ada.all.slice(shown).map(({text}) => text)).toEqual([
		expect.stringContaining('I could not write at 12:30, Saturday 2 May, as I said I would.'),
		expect.stringContaining('Your bowl is ready'),
	]);
	await forward(hourMs);
	expect(timesWoken(ada)).toBe(1);
});
