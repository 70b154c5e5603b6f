import {existsSync} from 'node:fs';
import {expect, test, vi} from 'vitest';
import {png} from '../room/picture.ts';
import {changeNewest} from '../support/drafts.ts';
import {beginJourney, type Journey, newestFind} from '../support/journey.ts';
import {storedPhotos} from '../support/photo.ts';
import {begin, draftOf, press, remindersToCome, walkTo} from '../support/steps.ts';

vi.setConfig({testTimeout: 60_000});

const dayMs = 24 * 3_600_000;

/** Lets days pass with the program down, as a week passes for those who look away. */
async function afterDays(journey: Journey, days: number): Promise<void> {
	await journey.away(days * dayMs);
}

const warnings = ({ada}: Journey) => ada.all.filter(({text}) => text.includes('I keep it until'));

test('an unfinished find is told of on day 23 and erased with its photos a week later', async () => {
	const journey = await beginJourney();
	const {ada, db, folder} = journey;
	await begin(ada);
	await walkTo({db, person: ada}, 'photo');
	await ada.photo(png(44, 33));
	const {id} = await newestFind(db, ada.id);
	const [photo] = await storedPhotos(db, {find: id, folder});
	await afterDays(journey, 22);
	expect(warnings(journey)).toEqual([]);
	await afterDays(journey, 1);
	await expect.poll(() => warnings(journey).length, {timeout: 10_000}).toBe(1);
	expect(ada.sees.text).toContain(`Your find no. ${id} is not finished`);
	expect(ada.sees.text).toContain('I keep it until 1 June 2026');
	await afterDays(journey, 6);
	expect((await newestFind(db, ada.id)).trail.length).toBeGreaterThan(1);
	expect(existsSync(photo?.file ?? '')).toBe(true);
	await afterDays(journey, 1);
	await expect.poll(async () => (await newestFind(db, ada.id)).trail, {timeout: 10_000}).toEqual([]);
	await expect.poll(() => existsSync(photo?.file ?? ''), {timeout: 5000}).toBe(false);
	expect(warnings(journey)).toHaveLength(1);
	await ada.presses(`Go on with no. ${id}`);
	expect(ada.sees.text).toContain('I do not have a find open with you here');
	journey.check();
});

test('whoever goes on with it keeps it, and after a long absence of the program everybody is told first', async () => {
	const journey = await beginJourney();
	const {ada, db} = journey;
	await begin(ada);
	await walkTo({db, person: ada}, 'where');
	const {id} = await newestFind(db, ada.id);
	// The program was away for two months: nothing goes unsaid.
	await afterDays(journey, 60);
	await expect.poll(() => warnings(journey).length, {timeout: 10_000}).toBe(1);
	await ada.presses(`Go on with no. ${id}`);
	expect(ada.sees.text).toContain('Where');
	await afterDays(journey, 8);
	expect((await newestFind(db, ada.id)).trail.length).toBeGreaterThan(1);
	expect(warnings(journey)).toHaveLength(1);
	journey.check();
});

test('nobody is told at night', async () => {
	const journey = await beginJourney();
	const {ada, db, forward} = journey;
	await begin(ada);
	await walkTo({db, person: ada}, 'where');
	// 02:00 in London.
	await journey.away(23 * dayMs + 15.5 * 3_600_000);
	await ada.sends('/help');
	expect(warnings(journey)).toEqual([]);
	await forward(6 * 3_600_000);
	await ada.sends('/help');
	await expect.poll(() => warnings(journey).length, {timeout: 10_000}).toBe(1);
});

test('what is saved, and what lies in a bowl that is not due, is kept however long nobody looks', async () => {
	const journey = await beginJourney();
	const {ada, db} = journey;
	await begin(ada);
	await walkTo({db, person: ada}, 'kept');
	const saved = await newestFind(db, ada.id);
	await changeNewest(ada, 'Change place');
	await ada.sends('/find');
	await walkTo({db, person: ada}, 'soaking', {condition: press('Dry and stiff')});
	const soaking = await newestFind(db, ada.id);
	const [reminder] = await remindersToCome(db);
	await db
		.updateTable('reminder')
		.set({dueAt: (reminder?.dueAt ?? 0) + 90 * dayMs})
		.execute();
	await afterDays(journey, 40);
	await ada.sends('/help');
	await afterDays(journey, 10);
	await ada.sends('/help');
	expect(warnings(journey)).toEqual([]);
	expect(await draftOf(db, saved.id)).toMatchObject({status: 'draft'});
	expect((await newestFind(db, ada.id)).trail).toEqual(soaking.trail);
});
