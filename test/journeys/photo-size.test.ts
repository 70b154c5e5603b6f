import {expect} from 'vitest';
import {journeyTest, newestFind} from '../support/journey.ts';
import {inventPhoto} from '../support/photos/invent.ts';
import {shoot} from '../support/photos/shoot.ts';
import {begin, newestDraft, questionOf, walkTo} from '../support/steps.ts';

/** A case on a sheet of A4 with the truth about it, or a case on bare ground. */
async function photoOf(reference: 'a4' | 'none') {
	const {scene, cases, pick} = await inventPhoto({seed: 3, reference, level: 'clean'});
	return {bytes: await shoot(scene, pick), truth: cases[0]};
}

journeyTest(
	'a photo on a sheet of A4 answers for the length and the width once its lines are right',
	async ({ada, db}) => {
		const {bytes, truth} = await photoOf('a4');
		await begin(ada);
		await walkTo({db, person: ada}, 'length');
		await ada.photo(bytes);
		expect(ada.all.some(({text}) => text.includes('I am measuring your photo'))).toBe(true);
		expect(ada.sees.text).toContain('Look at the lines on your photo');
		await ada.presses("That's right");
		const {length, width} = (await newestFind(db, ada.id)).standing.facts;
		if (!truth || typeof length !== 'object' || typeof width !== 'object') throw new Error('Expected sizes');
		expect(Math.abs(length.mm - truth.lengthMm)).toBeLessThan(truth.lengthMm * 0.02);
		expect(await questionOf(db, ada)).toBe('outline');
		await walkTo({db, person: ada}, 'kept');
		const {body} = await newestDraft(db, ada);
		expect(body.length).toMatchObject({method: 'photo', reference: 'a4', mm: length.mm});
		expect(body.width).toMatchObject({method: 'photo'});
	},
);

journeyTest(
	'a photo without a measure says what to lay down, and the length can be written',
	async ({ada, db}) => {
		const {bytes} = await photoOf('none');
		await begin(ada);
		await walkTo({db, person: ada}, 'length');
		await ada.photo(bytes);
		expect(ada.sees.text).toContain('plain white A4 sheet');
		await ada.sends('66 mm');
		expect(await questionOf(db, ada)).toBe('outline');
	},
	['plain'],
);
