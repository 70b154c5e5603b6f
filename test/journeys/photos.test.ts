import {expect} from 'vitest';
import {png} from '../room/picture.ts';
import {journeyTest, newestFind} from '../support/journey.ts';
import {storedPhotos} from '../support/photo.ts';
import {begin, newestDraft, questionOf, walkTo} from '../support/steps.ts';

journeyTest('a find without photos goes on and is kept without', async ({ada, db, folder}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'photo');
	await ada.presses('No photo, go on');
	expect(await questionOf(db, ada)).toBe('where');
	await walkTo({db, person: ada}, 'kept');
	const {find, body} = await newestDraft(db, ada);
	expect(body.photos).toEqual([]);
	expect(await storedPhotos(db, {find: find.id, folder})).toEqual([]);
});

journeyTest('one photo is counted, stored and named in the draft', async ({ada, db, folder}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'photo');
	await ada.photo(png(400, 300));
	expect(ada.sees.text).toContain('I have one photo.');
	expect(ada.labels()).toEqual(['Go on', 'Back', 'Why?']);
	await ada.presses('Go on');
	await walkTo({db, person: ada}, 'kept');
	const {find, body} = await newestDraft(db, ada);
	const [photo, ...others] = await storedPhotos(db, {find: find.id, folder});
	expect(others).toEqual([]);
	expect(photo?.state).toBe('kept');
	expect(body.photos).toEqual([{id: photo?.id, hash: photo?.hash}]);
});

journeyTest(
	'an album of four is taken whole, and the next question comes once',
	async ({ada, db, folder}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'photo');
		const before = ada.all.length;
		await ada.album([png(40, 30), png(41, 30), png(42, 30), png(43, 30)]);
		expect(ada.all.slice(before).map(({text}) => text.replace(/^Ada, no\. \d+:\n/, ''))).toEqual([
			expect.stringContaining('I have 4 photos. Send more, or go on.'),
		]);
		const find = await newestFind(db, ada.id);
		expect(find.trail.filter(({answer}) => answer.kind === 'photo')).toHaveLength(4);
		const photos = await storedPhotos(db, {find: find.id, folder});
		expect(photos.map(({state}) => state)).toEqual(['kept', 'kept', 'kept', 'kept']);
		expect(new Set(photos.map(({hash}) => hash)).size).toBe(4);
		await ada.presses('Go on');
		await walkTo({db, person: ada}, 'kept');
		expect((await newestDraft(db, ada)).body.photos).toEqual(photos.map(({id, hash}) => ({id, hash})));
	},
);

journeyTest(
	'a photo sent at another question joins the find, and the question is put again',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'where');
		await ada.photo(png(200, 100));
		expect(ada.sees.text).toContain('I added the photo to this find.');
		expect(ada.sees.text).toContain('Where did you find it?');
		await walkTo({db, person: ada}, 'keel');
		await ada.photo(png(210, 100));
		expect(ada.sees.text).toContain('Is there one along the sides?');
		await walkTo({db, person: ada}, 'kept');
		const first = await newestDraft(db, ada);
		expect(first.body.photos).toHaveLength(2);
		expect(first.version).toBe(1);
		await ada.photo(png(220, 100));
		expect(ada.sees.text).toContain('I added the photo to this find.');
		const later = await newestDraft(db, ada);
		expect(later.body.photos).toHaveLength(3);
		expect(later.body.photos.map(({hash}) => hash?.length)).toEqual([64, 64, 64]);
		expect(later.version).toBeGreaterThan(1);
		expect(later.find.id).toBe(first.find.id);
	},
);

journeyTest('the same photo sent twice counts once and is answered', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'photo');
	await ada.photo(png(300, 300));
	const shown = ada.all.length;
	await ada.photo(png(300, 300));
	expect(ada.all.length).toBe(shown + 1);
	expect(ada.sees.text).toContain('I have one photo.');
	expect((await newestFind(db, ada.id)).standing.facts.photos).toHaveLength(1);
});

journeyTest('a photo taken back and sent again is in the find', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'photo');
	await ada.photo(png(300, 300));
	await ada.presses('Back');
	expect((await newestFind(db, ada.id)).standing.facts.photos).toEqual([]);
	expect(ada.sees.text).toContain('Please send a photo of the top');
	await ada.photo(png(300, 300));
	expect((await newestFind(db, ada.id)).standing.facts.photos).toHaveLength(1);
	await ada.presses('Go on');
	await walkTo({db, person: ada}, 'kept');
	expect((await newestDraft(db, ada)).body.photos).toHaveLength(1);
});
