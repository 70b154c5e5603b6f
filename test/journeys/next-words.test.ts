import {expect, vi} from 'vitest';
import {type Journey, journeyTest} from '../support/journey.ts';
import {oneToReview} from '../support/review.ts';
import {planAnswers} from '../support/survey-days.ts';

vi.setConfig({testTimeout: 60_000});

/** Ada plans a day when Ben asks her something about a find she saved. */
async function askedWhilePlanning(journey: Journey) {
	const owner = journey.person('Ada');
	await owner.sends(`/start ${journey.ownerCode()}`);
	const {ada, ben} = await oneToReview(journey);
	await ada.sends('/day');
	await ada.presses('Plan a new day');
	const plan = ada.sees;
	await ben.sends('/review');
	const card = ben.sees;
	await ben.presses('Ask the finder');
	await ben.sends('Is there a rim?');
	expect(ada.sees.text).toContain('“Is there a rim?”');
	return {ada, ben, plan, card, letter: ada.sees};
}

journeyTest(
	'words go to the plan that is asked for, not to the letter that came meanwhile, unless they reply to that',
	async journey => {
		const {ada, ben, plan, letter} = await askedWhilePlanning(journey);
		const [title = '', spot = ''] = planAnswers;
		await ada.sends(title);
		expect(ada.sees.text).not.toBe(plan.text);
		expect(ben.all.some(({text}) => text.includes(title))).toBe(false);
		await ada.deed(() => ada.room.sends('A wide one', {chat: ada.chat, replyTo: letter.id}));
		expect(ben.sees.text).toContain('“A wide one”');
		await ada.sends(spot);
		const {plan: answers} = await journey.db.selectFrom('day').select('plan').executeTakeFirstOrThrow();
		expect(JSON.parse(answers ?? '')).toMatchObject([
			{answer: {kind: 'words', words: title}},
			{answer: {kind: 'spot', latitude: 50.103}},
		]);
	},
	['plain', 'restarted after each update'],
);

journeyTest(
	'what was asked for without a reply is asked for by the last words alone, and an open find goes before a letter',
	async journey => {
		const {ada, ben, card} = await askedWhilePlanning(journey);
		await ada.sends('/cancel');
		await ada.sends('A wide one');
		expect(ben.all.some(({text}) => text.includes('A wide one'))).toBe(false);
		await ada.sends('/find');
		const options = ada.labels();
		expect(options).toContain('Yes, like that');
		await ben.presses('Ask the finder', {on: card});
		await ben.sends('And ribs?');
		expect(ada.sees.text).toContain('“And ribs?”');
		await ada.sends('Hm');
		expect(ada.labels()).toEqual(options);
		expect(ben.all.some(({text}) => text.includes('“Hm”'))).toBe(false);
	},
	['plain'],
);

journeyTest(
	'an edited answer to a plan is no answer to the find that waits, and leaves the plan where it is',
	async journey => {
		const {ada} = await askedWhilePlanning(journey);
		await ada.sends('Sprng walk');
		const asked = ada.sees;
		await ada.edits('Spring walk');
		expect(ada.sees.text).toContain('You changed an earlier message.');
		await ada.sends(planAnswers[1]);
		expect(ada.sees.text).not.toBe(asked.text);
		const seats = await journey.db.selectFrom('seat').select('ear').where('day', 'is not', null).execute();
		expect(seats).toEqual([{ear: 'plan'}]);
	},
	['plain'],
);
