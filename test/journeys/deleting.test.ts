import {expect} from 'vitest';
import {png} from '../room/picture.ts';
import {journeyTest, newestFind} from '../support/journey.ts';
import {fileWithHash, storedPhotos} from '../support/photo.ts';
import {begin, draftOf, newestDraft, press, walkTo} from '../support/steps.ts';

journeyTest(
	'a draft is deleted after a second question, and its place, words and photos with it',
	async ({ada, db, folder}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'photo');
		await ada.album([png(50, 40), png(51, 40)]);
		await walkTo({db, person: ada}, 'kept', {photo: press('Go on')});
		const {find, body, version} = await newestDraft(db, ada);
		const files = (await storedPhotos(db, {find: find.id, folder})).map(({file}) => file);
		expect(files.map(file => fileWithHash(file)?.sha256)).toEqual(body.photos.map(({hash}) => hash));

		await ada.sends('/drafts');
		await ada.presses(`Open no. ${find.id}`);
		await ada.presses('Delete');
		expect(ada.sees.text).toContain(`Shall I delete find no. ${find.id}, with its photos?`);
		await ada.presses('No, keep it');
		expect(ada.sees.text).toContain('How many: 1');
		expect(await draftOf(db, find.id)).toMatchObject({status: 'draft', version});

		await ada.presses('Delete');
		await ada.presses('Yes, delete it');
		expect(ada.sees.text).toContain(`Find no. ${find.id} is deleted, with its photos.`);
		expect(await draftOf(db, find.id)).toEqual({status: 'withdrawn', version: version + 1, body: undefined});
		expect(await newestFind(db, ada.id)).toMatchObject({id: find.id, trail: [], state: 'thrown'});
		expect(await storedPhotos(db, {find: find.id, folder})).toEqual([]);
		const said = await db.selectFrom('outbox').select('content').where('find', '=', find.id).execute();
		expect(said).toEqual([]);
		await expect.poll(() => files.map(fileWithHash), {timeout: 5000}).toEqual([undefined, undefined]);
		await ada.sends('/drafts');
		expect(ada.sees.text).toContain('You have no saved finds yet');
	},
);

journeyTest(
	'a photo that another find also shows stays on disk until that one is deleted too',
	async ({ada, db, folder}) => {
		await begin(ada);
		const ids: number[] = [];
		for (const label of ['begin', 'another']) {
			if (label === 'another') await ada.presses('One more of this walk');
			await walkTo({db, person: ada}, 'photo');
			await ada.photo(png(70, 70));
			await walkTo({db, person: ada}, 'kept', {photo: press('Go on')});
			ids.push((await newestFind(db, ada.id)).id);
		}
		const [first = 0, second = 0] = ids;
		const [photo] = await storedPhotos(db, {find: second, folder});
		const file = photo?.file ?? '';
		await deleteFind(first);
		expect(await db.selectFrom('erasing').select('hash').execute()).toEqual([]);
		expect(fileWithHash(file)?.sha256).toBe(photo?.hash);
		await deleteFind(second);
		await expect.poll(() => fileWithHash(file), {timeout: 5000}).toBeUndefined();

		async function deleteFind(id: number): Promise<void> {
			await ada.sends('/drafts');
			await ada.presses(`Open no. ${id}`);
			await ada.presses('Delete');
			await ada.presses('Yes, delete it');
		}
	},
);

journeyTest('old buttons of a deleted find say that it is gone', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'result');
	const result = ada.sees;
	await ada.presses('Save this find');
	const {find} = await newestDraft(db, ada);
	await ada.sends('/drafts');
	const list = ada.sees;
	await ada.presses(`Open no. ${find.id}`);
	const card = ada.sees;
	await ada.presses('Delete');
	await ada.presses('Yes, delete it');
	await ada.presses(`Open no. ${find.id}`, {on: list});
	expect(ada.sees.text).toContain('This find is not there any more.');
	await ada.presses('Change place', {on: card});
	expect(ada.sees.text).toContain('This find is not there any more.');
	// The buttons of the result were taken away; a client may send them all the same.
	const keep = `f.${find.id.toString(36)}.${(find.turn - 1).toString(36)}.keep`;
	await ada.makesUp(keep);
	expect(ada.sees.text).toContain('This find is not there any more.');
	expect(result.id).toBeLessThan(ada.sees.id);
	expect(await draftOf(db, find.id)).toMatchObject({status: 'withdrawn'});
	expect((await newestFind(db, ada.id)).trail).toEqual([]);
});

// Cato speaks in private, where no button of Ada's was ever shown: all of it is made up.
journeyTest('somebody else reaches no draft by made-up buttons', async ({ada, db, person, room}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'kept', {where: other => other.sends('Secret Cove')});
	const before = await newestDraft(db, ada);
	const id = before.find.id.toString(36);
	const turn = before.find.turn.toString(36);
	const cato = person('Cato');
	await begin(cato);
	const acts = ['open', 'place', 'note', 'delete', 'really-delete'].map(act => `d.${id}.${act}`);
	const presses = ['back', 'another', 'correct', 'fix-where', 'why', 'keep'].map(
		act => `f.${id}.${turn}.${act}`,
	);
	const shown = cato.all.length;
	for (const data of [...acts, ...presses, `r.${id}`]) {
		await cato.makesUp(data);
		expect([data, room.callbackAnswers().at(-1)?.text]).toEqual([
			data,
			'This find belongs to somebody else, and only they can do that. Write /find to begin your own.',
		]);
	}
	expect(cato.all.length).toBe(shown);
	await cato.makesUp(`l.${id}`);
	expect(cato.sees.text).toContain('You have no saved finds yet');
	await cato.sends('Whitesand Bay');
	expect(cato.all.map(({text}) => text).join()).not.toContain('Secret Cove');
	expect(await newestDraft(db, ada)).toEqual(before);
});
