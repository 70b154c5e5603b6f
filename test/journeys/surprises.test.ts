import {expect} from 'vitest';
import {journeyTest, newestFind} from '../support/journey.ts';
import {begin, questionOf, walkTo} from '../support/steps.ts';

journeyTest(
	'words where a button is expected are answered with what to do, and the question stays',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'alive');
		const {turn, trail} = await newestFind(db, ada.id);
		await ada.sends('I think it is empty <really>');
		expect(ada.sees.text).toContain('Please press one of the buttons.');
		expect(ada.sees.text).toContain('Is anything still living in it?');
		expect(ada.labels()).toEqual([
			'No, empty and light',
			'Something may be inside',
			'Tied to weed or rock',
			"Can't tell",
			'Back',
			'Why?',
		]);
		expect(await newestFind(db, ada.id)).toMatchObject({turn, trail});
		await ada.presses('No, empty and light');
		expect(await questionOf(db, ada)).toBe('photo');
	},
);

const odd = [
	{what: 'voice', says: 'I cannot listen to voice messages'},
	{what: 'sticker', says: 'That is a nice sticker'},
	{what: 'video', says: 'That is a video. Please send a photo.'},
] as const;

journeyTest(
	'a voice message, a sticker and a film are answered kindly at every kind of question',
	async ({ada, db}) => {
		await begin(ada);
		for (const question of [
			'egg-case',
			'photo',
			'where',
			'when',
			'count',
			'broken',
			'length',
			'outline',
			'result',
		]) {
			await walkTo({db, person: ada}, question);
			const {turn, trail} = await newestFind(db, ada.id);
			for (const {what, says} of odd) {
				await ada.odd(what);
				expect(ada.sees.text).toContain(says);
				expect(ada.labels().length).toBeGreaterThan(0);
			}
			expect(await newestFind(db, ada.id)).toMatchObject({turn, trail});
		}
		await walkTo({db, person: ada}, 'kept');
	},
);

// Edits are heard in private alone: in a group nobody knows whom they are for.
journeyTest(
	'an edited message changes nothing and says so',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'where');
		await ada.sends('Sennen');
		const {trail} = await newestFind(db, ada.id);
		await ada.edits('Whitesand Bay');
		expect(ada.sees.text).toContain('You changed an earlier message.');
		expect(ada.sees.text).toContain('Which day did you find it?');
		expect((await newestFind(db, ada.id)).trail).toEqual(trail);
	},
	['plain', 'delivered twice', 'restarted after each update'],
);

journeyTest('a command nobody knows is never taken for an answer', async ({ada, db}) => {
	await begin(ada);
	for (const question of ['alive', 'where', 'when', 'length']) {
		await walkTo({db, person: ada}, question);
		const {trail} = await newestFind(db, ada.id);
		// In a group a bot hears an unknown command as a reply to it.
		await ada.deed(() => ada.room.sends('/tides today', {chat: ada.chat, replyTo: ada.sees.id}));
		expect(ada.sees.text).toContain('I do not know that command.');
		expect(ada.labels().length).toBeGreaterThan(0);
		expect((await newestFind(db, ada.id)).trail).toEqual(trail);
	}
});

journeyTest('the button of an old question says so and shows the present one', async ({ada, db, forward}) => {
	await begin(ada);
	const first = ada.sees;
	await ada.presses('Yes, like that');
	await ada.presses('No, empty and light');
	const {trail} = await newestFind(db, ada.id);
	await forward(6000);
	await ada.presses('No', {on: first});
	expect(ada.sees.text).toContain('That question is already answered.');
	expect(ada.sees.text).toContain('Please send a photo of the top');
	expect((await newestFind(db, ada.id)).trail).toEqual(trail);
	await ada.presses('No photo, go on');
	expect(await questionOf(db, ada)).toBe('where');
});

journeyTest(
	'a button pressed twice within five seconds counts once and stays quiet',
	async ({ada, db, forward, room}) => {
		await begin(ada);
		const first = ada.sees;
		await ada.presses('Yes, like that');
		const {trail} = await newestFind(db, ada.id);
		const shown = ada.all.length;
		const answered = room.callbackAnswers().length;
		await forward(4000);
		await ada.presses('Yes, like that', {on: first});
		expect(ada.all.length).toBe(shown);
		expect(room.callbackAnswers().length).toBeGreaterThan(answered);
		expect((await newestFind(db, ada.id)).trail).toEqual(trail);
		await forward(2000);
		await ada.presses('Yes, like that', {on: first});
		expect(ada.sees.text).toContain('That question is already answered.');
	},
);

journeyTest('made-up buttons get the present question and change nothing', async ({ada, db, room}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'alive');
	const find = await newestFind(db, ada.id);
	const [id, turn] = [find.id.toString(36), find.turn.toString(36)];
	const madeUp = [
		`f.${id}.${turn}.maybe`,
		`f.${id}.${turn}.keep`,
		`f.${id}.zz.back`,
		'x',
		'f..',
		'd.1',
		'🐚',
	];
	for (const data of madeUp) {
		const answered = room.callbackAnswers().length;
		await ada.makesUp(data);
		expect([data, ada.sees.text]).toEqual([data, expect.stringContaining('Is anything still living in it?')]);
		expect(room.callbackAnswers().length).toBeGreaterThan(answered);
	}
	expect((await newestFind(db, ada.id)).trail).toEqual(find.trail);
	await ada.makesUp('f.zzzz.1.yes');
	expect(ada.sees.text).toContain('This find is not there any more.');
});

journeyTest('a press on a message too old to be shown still counts', async ({ada, db}) => {
	await begin(ada);
	const {data} = ada.sees.buttons[0]?.[0] ?? {data: ''};
	await ada.deed(() => ada.room.presses(data, {chat: ada.chat, messageId: ada.sees.id, inaccessible: true}));
	expect(await questionOf(db, ada)).toBe('alive');
});
