import {expect, vi} from 'vitest';
import {decisionsOf} from '../../src/store/decisions.ts';
import {png} from '../room/picture.ts';
import {dataOf} from '../support/actor.ts';
import {type Journey, journeyTest, newestFind} from '../support/journey.ts';
import {oneToReview} from '../support/review.ts';
import {begin, type Deed, walkTo} from '../support/steps.ts';
import {trust} from '../support/team.ts';

vi.setConfig({testTimeout: 60_000});

const photo: Deed = async person => {
	await person.photo(png(640, 480));
	await person.presses('Go on');
};

/** What was decided about Ada's find, oldest first. */
async function decided({db, ada}: Journey) {
	return decisionsOf(db, (await newestFind(db, ada.id)).id);
}

journeyTest(
	'a verifier sees photo, length and facts of a find and agrees with one press, and the finder hears of it',
	async journey => {
		const {ada, ben} = await oneToReview(journey, {photo});
		await ben.sends('/review');
		const album = ben.all.filter(({photo: shown}) => shown !== undefined);
		expect(album.map(({photo: shown}) => shown?.width)).toEqual([640, 270]);
		for (const fact of [
			'Find no.',
			'Place: SW 465 304 (50.11989, -5.54696), ± 75 m',
			'Length: 66 ± 1 mm',
			'Thornback ray: 55 to 90 mm long, fits',
			'Likely: Thornback ray',
			'What speaks for it:',
		]) {
			expect(ben.sees.text).toContain(fact);
		}
		expect(ben.labels()).toEqual([
			'I agree',
			'Another kind',
			'Genus or family only',
			'Not an egg case',
			'Ask the finder',
			'Next find',
		]);
		await ben.presses('I agree');
		expect(ben.sees.text).toMatch(/Kept for find no\. \d+: agreed\. I have told the finder\./);
		expect(ada.sees.text).toContain('A verifier looked at your find no.');
		expect(ada.sees.text).toContain('and agrees: Thornback ray.');
		expect(await decided(journey)).toMatchObject([{outcome: 'agreed', version: 1}]);
		await ben.sends('/review');
		expect(ben.sees.text).toContain('No find waits to be checked.');
	},
);

journeyTest(
	'another name takes three presses, and its reason goes to the finder and to the card of the find',
	async journey => {
		const {ada, ben} = await oneToReview(journey);
		await ben.sends('/review');
		await ben.presses('Another kind');
		expect(ben.labels()[0]).toBe('Thornback ray');
		const first = ben.labels();
		await ben.presses('More');
		expect(ben.labels().filter(label => first.includes(label))).toEqual(['Back', 'More']);
		await ben.presses('Back');
		await ben.presses('Another kind');
		await ben.presses('Spotted ray');
		expect(ben.labels().slice(0, 2)).toEqual(['The size', 'The shape']);
		await ben.presses('The size');
		expect(ada.sees.text).toContain('names it: Spotted ray (Raja montagui).');
		expect(ada.sees.text).toContain('The reason: because of its size');
		await ada.sends('/drafts');
		await ada.presses(ada.labels()[0] ?? '');
		expect(ada.sees.text).toContain('takes it for Spotted ray (because of its size)');
		expect(await decided(journey)).toMatchObject([
			{outcome: 'other-name', name: 'Raja montagui', reason: 'size'},
		]);
	},
	['plain', 'delivered twice'],
);

journeyTest(
	'a genus or family is as far as it goes, and a reason may be written',
	async journey => {
		const {ada, ben} = await oneToReview(journey);
		await ben.sends('/review');
		await ben.presses('Genus or family only');
		expect(ben.labels().slice(0, 2)).toEqual(['Genus Raja', 'Family Rajidae']);
		await ben.presses('Genus Raja');
		await ben.presses('Write the reason');
		await ben.sends('x'.repeat(501));
		expect(ben.sees.text).toContain('up to 500 letters');
		await ben.sends('Both horns are <gone>.');
		expect(ada.sees.text).toContain('It belongs to the genus Raja');
		expect(ada.sees.text).toContain('The reason: Both horns are <gone>.');
		expect(await decided(journey)).toMatchObject([
			{outcome: 'higher-rank', name: 'Raja', words: 'Both horns are <gone>.'},
		]);
	},
	['plain', 'restarted after each update'],
);

journeyTest(
	'of two verifiers the second hears who was first, and both decisions are kept',
	async journey => {
		const {db, ada, ben, cato} = {...journey, ...(await oneToReview(journey))};
		await ben.sends('/review');
		const {id} = await newestFind(db, ada.id);
		const opening = dataOf(ben.sees, 'Not an egg case').replace('nothing', 'open');
		await cato.sends('/review');
		expect(cato.sees.text).toContain('No find waits to be checked.');
		await cato.makesUp(opening);
		expect(cato.sees.text).toMatch(/^A verifier is looking at this find, since \d\d:\d\d\.$/);
		await cato.presses('Look all the same');
		const card = cato.sees;
		await ben.presses('I agree');
		const heard = ada.all.length;
		await cato.presses('Not an egg case', {on: card});
		expect(cato.sees.text).toMatch(/^Somebody looked at this find first\. A verifier, \d\d:\d\d: agreed/);
		expect(await decisionsOf(db, id)).toHaveLength(1);
		expect(ada.all).toHaveLength(heard);
		await cato.presses('Add mine as well');
		await cato.presses('No reason');
		expect(await decisionsOf(db, id)).toMatchObject([{outcome: 'agreed'}, {outcome: 'not-an-egg-case'}]);
		expect(ada.sees.text).toContain('once more. It is not an egg case.');
		// His own press again, as a phone without a line sends it.
		await ben.makesUp(dataOf(card, 'I agree'));
		expect(await decisionsOf(db, id)).toHaveLength(2);
	},
	['plain', 'delivered twice'],
);

journeyTest(
	'a decision can be changed by its verifier, and the first stays on record',
	async journey => {
		const {ben} = await oneToReview(journey);
		await ben.sends('/review');
		const card = ben.sees;
		await ben.presses('I agree');
		await ben.presses('I agree', {on: card});
		expect(ben.sees.text).toContain('You looked at this find before.');
		await ben.presses('Change this decision');
		expect(ben.sees.text).toMatch(/A verifier, \d\d:\d\d: agreed$/m);
		await ben.presses('Not an egg case');
		await ben.presses('Too worn');
		expect(await decided(journey)).toMatchObject([
			{outcome: 'agreed', version: 1},
			{outcome: 'not-an-egg-case', reason: 'worn', version: 2},
		]);
	},
	['plain'],
);

journeyTest(
	'a question goes to the finder and the answers, in words and as a photo, back to who asked',
	async journey => {
		const {ada, ben, cato} = await oneToReview(journey);
		await ben.sends('/review');
		await ben.presses('Ask the finder');
		await ben.sends('Is there a rim?');
		expect(ben.sees.text).toContain('I have asked the finder');
		expect(ada.sees.text).toContain('“Is there a rim?”');
		await cato.sends('/review');
		expect(cato.sees.text).toContain('No find waits to be checked.');
		const question = ada.sees;
		await ada.deed(() => ada.room.sends('Yes & a wide one', {chat: ada.chat, replyTo: question.id}));
		expect(ada.sees.text).toContain('Thank you. I pass it on');
		expect(ben.sees.text).toContain('“Yes & a wide one”');
		await ada.deed(() => ada.room.photo(png(320, 200), {chat: ada.chat, replyTo: question.id}));
		expect(ben.sees).toMatchObject({photo: {width: 320}});
		const {standing} = await newestFind(journey.db, ada.id);
		expect(standing.facts.photos).toHaveLength(1);
		await ben.presses('Look at it');
		expect(ben.sees.text).toContain(
			'Asked: Is there a rim?\nAnswered: Yes & a wide one\nAnswered with a photo.',
		);
		await ben.presses('I agree');
		expect(await decided(journey)).toHaveLength(1);
	},
);

journeyTest(
	'nobody checks their own finds, and nobody without the role sees any',
	async journey => {
		const {db, ada, person} = journey;
		const {ben} = await oneToReview(journey);
		await trust(db, ada, 'verifier');
		await ada.sends('/review');
		expect(ada.sees.text).toContain('No find waits to be checked.');
		await ben.sends('/review');
		await ada.makesUp(dataOf(ben.sees, 'I agree'));
		expect(ada.sees.text).toContain('This is a find of your own');
		const dora = person('Dora');
		await dora.sends('/review');
		expect(dora.sees.text).toContain('only for people who help');
		await dora.makesUp(dataOf(ben.sees, 'I agree'));
		expect(dora.sees.text).toContain('only for people who help');
		expect(await decided(journey)).toEqual([]);
	},
	['plain'],
);

journeyTest(
	'what one verifier does not decide within an hour is shown to the next',
	async journey => {
		const {ben, cato} = await oneToReview(journey);
		await ben.sends('/review');
		await cato.sends('/review');
		expect(cato.sees.text).toContain('No find waits to be checked.');
		await journey.forward(3_600_000);
		await cato.sends('/review');
		expect(cato.labels()).toContain('I agree');
	},
	['plain'],
);

journeyTest(
	'a find that its finder takes back meanwhile is not decided on',
	async journey => {
		const {ada, ben} = await oneToReview(journey);
		await ben.sends('/review');
		await ada.sends('/drafts');
		for (const label of [ada.labels()[0] ?? '', 'Delete', 'Yes, delete it']) await ada.presses(label);
		await ben.presses('I agree');
		expect(ben.sees.text).toContain('This find is not there any more');
		expect(await decided(journey)).toEqual([]);
	},
	['plain'],
);

journeyTest(
	'Next find leads through all that waits, unusual ones first, and frees what was passed over',
	async journey => {
		const {db, ada, ben, cato} = {...journey, ...(await oneToReview(journey))};
		await ada.sends('/find');
		await walkTo({db, person: ada}, 'kept', {length: person => person.sends('70 mm')});
		await ben.sends('/review');
		expect(ben.sees.text).toContain('Length: 66');
		await ben.presses('Next find');
		expect(ben.sees.text).toContain('Length: 70');
		await cato.sends('/review');
		expect(cato.sees.text).toContain('Length: 66');
		await ben.presses('I agree');
		expect(ben.labels()).toEqual(['Change this decision']);
		await begin(journey.person('Dora'));
	},
	['plain'],
);
