import {expect} from 'vitest';
import {journeyTest, newestFind, waysOfEntry} from '../support/journey.ts';
import {begin, newestDraft, questionOf, walkTo} from '../support/steps.ts';

const pressed = [
	{press: 'Today', date: '2026-05-02'},
	{press: 'Yesterday', date: '2026-05-01'},
] as const;

for (const [index, {press, date}] of pressed.entries()) {
	journeyTest(
		`the button “${press}” is the finder's own day`,
		async ({ada, db}) => {
			await begin(ada);
			await walkTo({db, person: ada}, 'when');
			await ada.presses(press);
			expect(await questionOf(db, ada)).toBe('count');
			await walkTo({db, person: ada}, 'kept');
			expect((await newestDraft(db, ada)).body).toMatchObject({foundOn: date, zone: 'Europe/London'});
		},
		waysOfEntry(index),
	);
}

// 23:30 UTC is already tomorrow in London in summer.
journeyTest(
	'shortly after midnight, today is the day of the clock on the wall',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'when');
		await ada.presses('Today');
		expect((await newestFind(db, ada.id)).standing.facts.date).toBe('2026-05-03');
	},
	{begunAt: Date.UTC(2026, 4, 2, 23, 30)},
);

// Each way of writing is one answer taken back again; a walk of its own for each would tell no more.
const written = [
	['28 April', '2026-04-28'],
	['28/4', '2026-04-28'],
	['28.4.2026', '2026-04-28'],
	['2026-04-28', '2026-04-28'],
	['April 28th', '2026-04-28'],
	['on the 3rd of May', '2025-05-03'],
	['3 May', '2025-05-03'],
	['29 Feb', undefined],
	['yesterday', '2026-05-01'],
	['1/1/26', '2026-01-01'],
] as const;

journeyTest('a day is understood in the ways people write it', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'when');
	for (const [text, date] of written) {
		await ada.sends(text);
		const find = await newestFind(db, ada.id);
		expect([text, find.standing.facts.date]).toEqual([text, date]);
		if (date === undefined) continue;
		expect(find.standing.at.id).toBe('count');
		await ada.presses('Back');
	}
	expect(await questionOf(db, ada)).toBe('when');
});

journeyTest('a day to come, or no day at all, is refused with its reason', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'when');
	const {trail} = await newestFind(db, ada.id);
	for (const [text, says] of [
		['3 May 2026', '“3 May 2026” is still to come'],
		['blue', 'I cannot read “blue” as a day'],
		['31 April', 'I cannot read “31 April” as a day'],
		['2/5/1826', 'is too long ago'],
	] as const) {
		await ada.sends(text);
		expect(ada.sees.text).toContain(says);
		expect(ada.sees.text).toContain('Which day did you find it?');
		expect(ada.labels()).toEqual(['Today', 'Yesterday', 'Back', 'Why?']);
	}
	expect((await newestFind(db, ada.id)).trail).toEqual(trail);
});
