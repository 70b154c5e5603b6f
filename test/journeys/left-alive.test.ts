import {expect} from 'vitest';
import {png} from '../room/picture.ts';
import {journeyTest, newestFind, waysOfEntry} from '../support/journey.ts';
import {begin, draftOf, newestDraft, press, walkTo} from '../support/steps.ts';

const living = ['Something may be inside', 'Tied to weed or rock', "Can't tell"] as const;

for (const [index, answer] of living.entries()) {
	journeyTest(
		`a case answered with “${answer}” stays in the sea and is kept as left alive`,
		async ({ada, db}) => {
			await begin(ada);
			await walkTo({db, person: ada}, 'alive');
			await ada.presses(answer);
			expect(ada.sees.text).toContain('Please leave it in the sea');
			expect(ada.labels()).toEqual(['Done, go on', 'Back']);
			await ada.presses('Done, go on');
			expect(ada.sees.text).toContain('without touching it again');
			await ada.photo(png(320, 240));
			await ada.presses('Go on');
			const asked = await walkTo({db, person: ada}, 'kept');
			expect(asked).toEqual(['where', 'when', 'live-result']);
			expect(ada.sees.text).toContain('Saved as a draft');
			const {find, status, body} = await newestDraft(db, ada);
			expect(find.state).toBe('kept');
			expect(status).toBe('draft');
			expect(body).toMatchObject({
				kind: 'left-alive',
				foundOn: '2026-05-02',
				place: {verbatim: 'SW 465 304'},
				said: [],
				ranking: [],
			});
			expect(body.photos).toHaveLength(1);
			expect(body.photos[0]?.hash).toMatch(/^[0-9a-f]{64}$/);
			expect([body.count, body.soak, body.length, body.width, body.note]).toEqual(Array(5).fill(undefined));
			expect(await db.selectFrom('reminder').select('id').execute()).toEqual([]);
		},
		waysOfEntry(index),
	);
}

journeyTest('the result of a living case says why it was right to leave it', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'live-result', {alive: press('Tied to weed or rock')});
	expect(ada.sees.text).toContain('left where it is');
	expect(ada.sees.text).not.toMatch(/ray|skate|shark/i);
	await ada.presses('Change an answer');
	expect(ada.labels()).toEqual(['Egg case or not', 'Alive or empty', 'Photo', 'Place', 'Day']);
	await ada.presses('Alive or empty');
	await ada.presses('No, empty and light');
	const find = await newestFind(db, ada.id);
	expect(find.standing.facts.lives).toBe(false);
	expect(find.standing.at.id).toBe('photo');
	expect(await draftOf(db, find.id)).toBeUndefined();
});
