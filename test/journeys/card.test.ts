/** The card that comes with a result: what is on it, and what becomes of it. */
import {expect} from 'vitest';
import {callSchema} from '../../src/store/call.ts';
import type {CallCard} from '../../src/store/picture.ts';
import type {Db} from '../../src/store/schema.ts';
import {chooseSharing} from '../../src/store/sharing.ts';
import {png} from '../room/picture.ts';
import {beginJourney, journeyTest, newestFind} from '../support/journey.ts';
import {storedPhotos} from '../support/photo.ts';
import {begin, press, walkTo, write} from '../support/steps.ts';

journeyTest('a result comes with its card, and its buttons close under it', async ({ada, db, folder}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'photo');
	await ada.photo(png(640, 480));
	await walkTo({db, person: ada}, 'result', {photo: press('Go on')});
	expect(ada.sees.text).toContain('Thornback ray');
	expect(ada.sees.photo).toBeDefined();
	const [card] = await cardsOf(db);
	const [photo] = await storedPhotos(db, {find: (await newestFind(db, ada.id)).id, folder});
	expect(card).toMatchObject({
		kind: 'card',
		names: [{taxon: 'raja-clavata'}],
		length: {mm: 66, plusMinusMm: 1, isLeast: false},
		lost: [],
		photo: {hash: photo?.hash},
	});
	const shown = ada.sees;
	await ada.presses('Save this find');
	const closed = ada.all.find(({id}) => id === shown.id);
	expect(closed?.buttons).toEqual([]);
	expect(closed?.text).toContain('→ Save this find');
	expect(ada.sees.text).toContain('Saved as a draft');
});

journeyTest('a card says no more of the place than may be shown', async () => {
	const shownBy = async (how: {where: string; coarseM?: number; isGroup?: boolean}) => {
		const journey = await beginJourney(how.isGroup ? {mode: 'two at once in a group'} : {});
		const {ada, db} = journey;
		await begin(ada);
		await walkTo({db, person: ada}, 'length', {where: write(how.where)});
		if (how.coarseM !== undefined) {
			const {person} = await db.selectFrom('find').select('person').executeTakeFirstOrThrow();
			await chooseSharing(db, person, {coarseM: how.coarseM});
		}
		await walkTo({db, person: ada}, 'result');
		return (await cardsOf(db)).at(-1)?.found;
	};
	expect(await shownBy({where: 'SW 465 304'})).toBe('Found on 2 May 2026, SW 465 304');
	expect(await shownBy({where: 'Larkin Sands'})).toBe('Found on 2 May 2026, Larkin Sands');
	expect(await shownBy({where: 'SW 465 304', coarseM: 10_000})).toBe(
		'Found on 2 May 2026, somewhere in grid square SW 4 3',
	);
	expect(await shownBy({where: '50.12, -5.53', isGroup: true})).toBe(
		'Found on 2 May 2026, somewhere in grid square SW 4 3',
	);
	expect(await shownBy({where: 'Larkin Sands', isGroup: true})).toBe('Found on 2 May 2026');
}, ['plain']);

journeyTest(
	'a case measured dry, with parts lost, is drawn at a usual size and with those parts pale',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'broken');
		await ada.presses('Horns or strings gone');
		await ada.presses('Go on');
		await walkTo({db, person: ada}, 'result', {aprons: press('One is torn off')});
		expect((await cardsOf(db)).at(-1)).toMatchObject({length: {isLeast: true}, lost: ['horns', 'aprons']});
	},
	['plain'],
);

/** The cards that were put in the queue, oldest first. */
async function cardsOf(db: Db): Promise<readonly CallCard[]> {
	const rows = await db.selectFrom('outbox').select('content').orderBy('id').execute();
	return rows.flatMap(({content}) => {
		const call = callSchema.parse(JSON.parse(content));
		return call.kind === 'send' && call.picture?.kind === 'card' ? [call.picture] : [];
	});
}
