/** Many cases on one photo, from the photo to the records. */
import {expect} from 'vitest';
import type {MeasuredCase, Outcome} from '../../src/capsule/outcome.ts';
import {png} from '../room/picture.ts';
import {type Journey, journeyTest, newestFind} from '../support/journey.ts';
import {storedPhotos} from '../support/photo.ts';
import {inventPhoto} from '../support/photos/invent.ts';
import {shoot} from '../support/photos/shoot.ts';
import {begin, draftOf, newestDraft, press, questionOf, walkTo} from '../support/steps.ts';

/** The photo of all is there already. */
const answers = {width: press("I can't measure it"), photo: press('Go on')};
const photo = png(1200, 900);

function caseAt(index: number, lengthMm: number, shape: 'long' | 'broad'): MeasuredCase {
	const x = 100 + 200 * index;
	return {
		lengthMm,
		lengthIntervalMm: [lengthMm - 0.7, lengthMm + 0.7],
		lengthLinePx: [
			[x, 200],
			[x, 200 + 3 * lengthMm],
		],
		outlinePx: [
			[x - 50, 200],
			[x + 50, 200],
			[x + 50, 200 + 3 * lengthMm],
			[x - 50, 200 + 3 * lengthMm],
		],
		shape,
	};
}

/** Three broad ones of about 66 mm, two long ones of about 54 mm, and something that was not measured. */
const tray: Outcome = {
	kind: 'measured',
	reference: 'a4',
	referencePx: [],
	cases: [
		caseAt(0, 65, 'broad'),
		caseAt(1, 54, 'long'),
		caseAt(2, 67, 'broad'),
		caseAt(3, 66, 'broad'),
		caseAt(4, 53, 'long'),
	],
	unsure: [{atPx: [1100, 700], why: 'unclear-ends'}],
};

/** Up to the saved record of the set that was chosen. */
async function save({db}: Pick<Journey, 'db'>, ada: Journey['ada']): Promise<readonly string[]> {
	return walkTo({db, person: ada}, 'kept', answers);
}

journeyTest(
	'one photo of two kinds becomes two kept records, each with its count and its lengths',
	async journey => {
		const {ada, db, folder} = journey;
		await begin(ada);
		await ada.sends('/tray');
		expect(ada.sees.text).toContain('send me one photo of all');
		await ada.photo(photo);
		expect(ada.sees.photo).toBeDefined();
		expect(ada.sees.text).toContain(
			'I measured 5 cases, 53 to 67 mm long. What has no number is not counted. One thing',
		);
		expect(ada.labels().slice(0, 7)).toEqual([
			...['Long ones: 2, 5', 'Broad ones: 1, 3, 4'],
			...['1', '2', '3', '4', '5'],
		]);
		await ada.presses('Broad ones: 1, 3, 4');
		await ada.presses('These are one kind');
		const first = (await newestFind(db, ada.id)).id;
		expect(ada.sees.text).toContain('about these 3 cases');
		const asked = await walkTo({db, person: ada}, 'result', answers);
		expect(asked).not.toContain('count');
		expect(asked).not.toContain('length');
		expect(ada.all.some(({text}) => text.includes('Your 3 cases are 65 to 67 mm long.'))).toBe(true);
		await ada.presses('Save this find');
		const body = (await draftOf(db, first))?.body;
		expect(body).toMatchObject({count: 3, length: {mm: 66, method: 'photo', reference: 'a4'}});
		expect(body?.lengths?.map(({mm, plusMinusMm}) => [mm, plusMinusMm])).toEqual([
			[65, 0.7],
			[67, 0.7],
			[66, 0.7],
		]);
		// The next set is asked for by itself.
		expect(ada.sees.text).toContain('2 cases are left, 53 to 54 mm long.');
		await ada.presses('All 2');
		await ada.presses('These are one kind');
		const next = await save(journey, ada);
		for (const known of ['where', 'when', 'count', 'length']) expect(next).not.toContain(known);
		const second = await newestDraft(db, ada);
		expect(second.find.id).not.toBe(first);
		expect(second.body).toMatchObject({count: 2, length: {mm: 53.5}, place: body?.place});
		const [kept] = await storedPhotos(db, {find: second.find.id, folder});
		expect(second.body.photos).toEqual([{id: kept?.id, hash: kept?.hash}]);
		expect(body?.photos[0]?.hash).toBe(kept?.hash);
		// Nothing is left: the end says what may come next, and no third find is begun.
		expect(ada.sees.text).toContain('Saved as a draft');
	},
	{measure: async () => tray},
);

journeyTest(
	'cases of a tray sent for a length are chosen, what is put aside hands the rest on, and old buttons do nothing',
	async journey => {
		const {ada, db} = journey;
		await begin(ada);
		await walkTo({db, person: ada}, 'length');
		await ada.photo(photo);
		const first = await newestFind(db, ada.id);
		const shown = ada.sees;
		await ada.presses('1');
		expect(ada.labels()).toContain('✓ 1');
		await ada.presses('Not quite: a line is off');
		await ada.presses('4');
		// The tick stayed.
		await ada.presses('3');
		await ada.presses('These are one kind');
		expect(await questionOf(db, ada)).toBe('outline');
		expect((await newestFind(db, ada.id)).standing.facts).toMatchObject({count: 2, length: {mm: 66}});
		const closed = journey.room.messages(ada.chat).find(({id}) => id === shown.id);
		expect(closed?.buttons).toEqual([]);
		const late = shown.buttons.flat().find(({text}) => text === '2')?.data ?? '';
		await journey.forward(6000);
		await ada.deed(() => ada.room.presses(late, {chat: ada.chat, messageId: shown.id}));
		expect(ada.sees.text).toContain('already answered');
		await ada.sends('/cancel');
		const rest = await newestFind(db, ada.id);
		expect(rest.id).not.toBe(first.id);
		expect(ada.sees.text).toContain('2 cases are left');
		await ada.presses('Leave the rest');
		expect(ada.sees.text).toContain('I leave the other cases');
		expect((await newestFind(db, ada.id)).state).toBe('thrown');
	},
	{measure: async () => tray},
);

journeyTest(
	'the print of a measuring sheet is asked about once, and anew for a new sheet',
	async journey => {
		const {ada, db} = journey;
		await begin(ada);
		await ada.sends('/tray');
		await ada.photo(photo);
		expect(ada.sees.text).toContain('exactly 100 mm long');
		await ada.presses("I can't check");
		await ada.presses('Broad ones: 1, 3, 4');
		await ada.presses('These are one kind');
		await walkTo({db, person: ada}, 'aprons', answers);
		await ada.presses('Both are there');
		// The worst one has 0.7 mm and 6 % of 67, and three that differ have a scatter.
		expect((await newestFind(db, ada.id)).standing.facts.length).toMatchObject({uncertaintyMm: 5});
		await ada.sends('/tray');
		await ada.photo(png(1200, 901));
		expect(ada.sees.text).toContain('I measured 5 cases');
		await ada.sends('/sheet');
		await ada.sends('/tray');
		await ada.photo(png(1200, 902));
		expect(ada.sees.text).toContain('exactly 100 mm long');
		await ada.presses('No');
		expect(ada.sees.text).toContain('Then I do not use these lengths');
		expect(ada.sees.text).toContain('send me one photo of all');
		await ada.photo(png(1200, 903));
		expect(ada.sees.text).toContain('is not printed at its true size');
	},
	{measure: async () => ({...tray, reference: 'sheet'}), modes: ['plain', 'restarted after each update']},
);

journeyTest(
	'a coin is no measure: a hint, what to lay down, and nothing in the find',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'length');
		await ada.photo(photo);
		expect(ada.sees.text).toContain('A coin tells no length');
		expect(ada.sees.text).toContain('About 5 to 8 cm');
		expect((await newestFind(db, ada.id)).standing.facts.length).toBeUndefined();
		await ada.sends('66 mm');
		expect(await questionOf(db, ada)).toBe('outline');
	},
	{measure: async () => ({kind: 'declined', why: 'coin', aboutMm: [52, 81]}), modes: ['plain']},
);

journeyTest(
	'a real photo of a tray is numbered and measured',
	async ({ada, db}) => {
		const {scene, cases, pick} = await inventPhoto({
			seed: 1,
			reference: 'a4',
			level: 'clean',
			subject: 'tray',
		});
		await begin(ada);
		await ada.sends('/tray');
		await ada.photo(await shoot(scene, pick));
		const {trayed} = (await newestFind(db, ada.id)).standing;
		const measured = trayed?.tray?.cases ?? [];
		expect(measured.length).toBeGreaterThan(cases.length / 2);
		for (const {length} of measured) {
			const nearest = Math.min(...cases.map(({lengthMm}) => Math.abs(lengthMm - length.mm)));
			expect(nearest).toBeLessThan(3);
		}
	},
	['plain'],
);
