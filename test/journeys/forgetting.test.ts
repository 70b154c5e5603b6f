import {existsSync} from 'node:fs';
import {expect, onTestFinished, test, vi} from 'vitest';
import {z} from 'zod';
import {draftSchema} from '../../src/record/draft.ts';
import {savedAfter} from '../../src/store/saved.ts';
import {chooseSharing} from '../../src/store/sharing.ts';
import {startReceiver} from '../clockwork/receiver.ts';
import {png} from '../room/picture.ts';
import type {Mode} from '../support/actor.ts';
import {changeNewest} from '../support/drafts.ts';
import {beginJourney, newestFind} from '../support/journey.ts';
import {patiently} from '../support/patiently.ts';
import {storedPhotos} from '../support/photo.ts';
import {begin, newestDraft, press, walkTo} from '../support/steps.ts';
import {idOf} from '../support/team.ts';
import {tracesInFiles, tracesInTables} from '../support/traces.ts';

vi.setConfig({testTimeout: 60_000});

// Bytes 00 to 1f in base64.
const secret = 'whsec_AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8=';
const bodySchema = z.object({type: z.string(), data: z.looseObject({occurrenceID: z.string()})});

/** Ada with a checked find, a saved one, one in the bowl and one in the middle; each with words of her own. */
async function scene(mode: Mode) {
	const time = {now: () => 0};
	const receiver = await startReceiver(secret, () => time.now());
	onTestFinished(receiver.close);
	const journey = await beginJourney({
		mode,
		environment: {FORWARD_URL: receiver.url, FORWARD_SECRET: secret},
	});
	time.now = journey.clock.now;
	const {db, ada, folder} = journey;
	await begin(ada);
	await walkTo({db, person: ada}, 'photo');
	await ada.photo(png(60, 40));
	await walkTo({db, person: ada}, 'kept', {
		photo: press('Go on'),
		length: one => one.sends('6,6 cm'),
	});
	await changeNewest(ada, 'Add a note');
	await ada.sends('beside the blue hut');
	const checked = await newestDraft(db, ada);
	const adaId = await idOf(db, ada);
	await patiently(() => chooseSharing(db, adaId, {publicName: 'Sea Glass Annie', coarseM: 10_000}));
	await patiently(() =>
		db
			.insertInto('decision')
			.values({
				find: checked.find.id,
				person: null,
				at: 1,
				version: 1,
				outcome: 'agreed',
				name: null,
				reason: null,
				words: null,
			})
			.execute(),
	);
	await ada.sends('/find');
	await walkTo({db, person: ada}, 'kept', {where: one => one.sends('Secret Cove')});
	const plain = await newestDraft(db, ada);
	await ada.presses('Look at another find');
	await walkTo({db, person: ada}, 'soaking', {
		where: one => one.sends('Secret Cove'),
		condition: one => one.presses('Dry and stiff'),
	});
	await ada.sends('/find');
	await walkTo({db, person: ada}, 'where');
	await ada.sends('Secret Cove');
	const photos = (await storedPhotos(db, {find: checked.find.id, folder})).map(({file}) => file);
	expect(photos).toHaveLength(1);
	return {...journey, receiver, checked, plain, photos, adaId};
}

test.each(['plain', 'delivered twice', 'restarted after each update'] as const)(
	'after /forget nothing of a person is left in any table or file, and receivers hear of it (%s)',
	async mode => {
		const {ada, db, folder, receiver, checked, plain, photos, person, clock, check} = await scene(mode);
		await ada.sends('/forget');
		expect(ada.sees.text).toContain('One of your finds was checked by a person');
		expect(ada.labels()).toEqual(['Yes, erase it all', 'Send me a copy first', 'No, keep it']);
		const asked = ada.sees;
		await ada.presses('No, keep it');
		expect(ada.sees.text).toContain('I keep it all as it was');
		expect((await newestFind(db, ada.id)).trail.length).toBeGreaterThan(2);
		clock.forward(3_600_001);
		await ada.presses('Yes, erase it all', {on: asked});
		expect(ada.sees.text).toContain('Please write /forget again');
		await ada.sends('/forget');
		await ada.presses('Yes, erase it all');
		expect(ada.sees.text).toContain('All that I held on you is erased. What was checked stays without you.');

		// Somebody else's update wakes the housekeeping.
		const words = ['Sea Glass Annie', 'Secret Cove', '6,6 cm', 'blue hut', 'Ada'];
		const hashes = checked.body.photos.map(({hash}) => hash ?? '');
		await person('Cato').sends('/help');
		await expect.poll(() => tracesInTables(db, [ada.id, ...words, ...hashes]), {timeout: 20_000}).toEqual([]);
		await expect.poll(() => photos.filter(existsSync), {timeout: 5000}).toEqual([]);
		await expect
			.poll(() => tracesInFiles(folder, {wanted: [...words, ...hashes], except: 'room'}), {timeout: 5000})
			.toEqual([]);

		const news = receiver.heard.map(({body}) => bodySchema.parse(JSON.parse(body)));
		const told = (uuid: string) => news.filter(({data}) => data.occurrenceID === `urn:uuid:${uuid}`);
		expect(told(plain.body.id).map(({type}) => type)).toEqual(['record.submitted', 'record.withdrawn']);
		expect(told(checked.body.id).at(-1)).toMatchObject({type: 'record.changed', data: {multimedia: []}});
		check();
	},
);

test('a checked record stays without its finder, hidden as they wished, and somebody who comes back is new', async () => {
	const {ada, db, checked, person} = await scene('plain');
	await ada.sends('/forget');
	await ada.presses('Yes, erase it all');
	await person('Cato').sends('/help');
	const [kept, ...others] = await savedAfter(db, {after: -1, limit: 10}, draftSchema);
	expect(others).toEqual([]);
	expect(kept).toMatchObject({find: checked.find.id, sharing: {publicName: undefined, coarseM: 10_000}});
	const {place, foundOn, count, said, seen} = checked.body;
	expect(kept?.body).toMatchObject({
		place,
		foundOn,
		count,
		said,
		seen,
		photos: [],
		trail: [],
		language: 'und',
	});
	expect(kept?.body.length).toMatchObject({mm: 66, typed: '66 mm'});
	await ada.sends('/start');
	expect(ada.sees.text).toContain('First, stay safe');
	await ada.presses('I have read this, begin');
	await ada.sends('/drafts');
	expect(ada.sees.text).toContain('You have no saved finds yet');
	// A button of before reaches nothing.
	await ada.makesUp(`d.${checked.find.id.toString(36)}.open`);
	expect(ada.sees.text).not.toContain('SW 465 304');
});
