import {expect} from 'vitest';
import {journeyTest, newestFind} from '../support/journey.ts';
import {begin, questionOf, walkTo} from '../support/steps.ts';

journeyTest('the first thing anybody hears is how to stay safe', async ({ada, db}) => {
	await ada.sends('/find');
	for (const words of ['Tide', 'cliff', 'Children', '999 or 112', 'coastguard', 'names of children']) {
		expect(ada.sees.text).toContain(words);
	}
	expect(ada.labels()).toEqual(['I have read this, begin']);
	const finds = () =>
		db
			.selectFrom('find')
			.innerJoin('person', 'person.id', 'find.person')
			.select('find.id')
			.where('person.platformId', '=', ada.id)
			.execute();
	expect(await finds()).toEqual([]);
	await ada.presses('I have read this, begin');
	expect(await finds()).toHaveLength(1);
	await ada.sends('/find');
	expect(ada.sees.text).toContain('four corners');
	expect(ada.sees.text).not.toContain('999');
});

journeyTest('/cancel puts a find aside, and it goes on where it was', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'count');
	const before = await newestFind(db, ada.id);
	await ada.sends('/cancel');
	expect(ada.sees.text).toContain('I put this find aside');
	expect(ada.labels()).toEqual(['Go on with it']);
	const aside = ada.sees;
	await ada.deed(() => ada.room.sends('5', {chat: ada.chat, replyTo: aside.id}));
	expect(ada.sees.text).toContain('I do not have a find open with you here.');
	expect(ada.labels()).toEqual(['Show me a find']);
	await ada.presses('Go on with it', {on: aside});
	expect(ada.sees.text).toContain('How many cases');
	expect(await newestFind(db, ada.id)).toMatchObject({id: before.id, trail: before.trail, turn: before.turn});
	await ada.presses('2');
	expect((await newestFind(db, ada.id)).standing.facts.count).toBe(2);
});

journeyTest('/cancel with nothing open says so', async ({ada, db}) => {
	await ada.sends('/cancel');
	expect(ada.sees.text).toContain('There is nothing to leave.');
	await begin(ada);
	await walkTo({db, person: ada}, 'kept');
	await ada.sends('/cancel');
	expect(ada.sees.text).toContain('There is nothing to leave.');
	expect((await newestFind(db, ada.id)).state).toBe('kept');
});

journeyTest('after /cancel the buttons of the last question still work', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'count');
	const question = ada.sees;
	await ada.sends('/cancel');
	await ada.presses('3', {on: question});
	expect(await questionOf(db, ada)).toBe('broken');
});

journeyTest('/start in the middle of a find offers to go on or to begin anew', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'where');
	const first = await newestFind(db, ada.id);
	await ada.sends('/start');
	expect(ada.sees.text).toContain('Hello again.');
	expect(ada.labels()).toEqual(['Show me a find', 'Go on with it']);
	const greeting = ada.sees;
	await ada.presses('Go on with it');
	expect(ada.sees.text).toContain('Where did you find it?');
	await ada.presses('Show me a find', {on: greeting});
	expect(ada.sees.text).toContain('four corners');
	const second = await newestFind(db, ada.id);
	expect(second.id).toBeGreaterThan(first.id);
	const old = await db.selectFrom('find').select(['state', 'turn']).where('id', '=', first.id).execute();
	expect(old).toEqual([{state: 'open', turn: first.turn}]);
});

journeyTest(
	'/help, /safety and /settings answer at any question and leave the find alone',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'where');
		const {trail, turn} = await newestFind(db, ada.id);
		await ada.sends('/help');
		for (const command of ['/find', '/bowl', '/drafts', '/cancel', '/safety', '/settings']) {
			expect(ada.sees.text).toContain(command);
		}
		await ada.sends('/safety');
		expect(ada.sees.text).toContain('999 or 112');
		await ada.sends('/settings');
		expect(ada.sees.text).toContain('Europe/London');
		expect(ada.labels()).toContain('Europe/Paris');
		expect(await newestFind(db, ada.id)).toMatchObject({trail, turn});
		await ada.sends('Sennen');
		expect((await newestFind(db, ada.id)).standing.facts.place).toEqual({kind: 'named', name: 'Sennen'});
	},
);

journeyTest(
	'a time zone is set by button or in writing, and an unknown one is explained',
	async ({ada, db}) => {
		const zone = () =>
			db.selectFrom('person').select(['zone', 'isZoneChosen']).where('platformId', '=', ada.id).execute();
		await ada.sends('/settings');
		await ada.presses('Europe/Dublin');
		expect(ada.sees.text).toContain('Europe/Dublin');
		expect(await zone()).toEqual([{zone: 'Europe/Dublin', isZoneChosen: 1}]);
		await ada.sends('/settings Atlantis');
		expect(ada.sees.text).toContain('I do not know the time zone “Atlantis”');
		expect(await zone()).toEqual([{zone: 'Europe/Dublin', isZoneChosen: 1}]);
		await ada.sends('/settings America/Vancouver');
		expect(ada.sees.text).toContain('America/Vancouver');
		expect(await zone()).toEqual([{zone: 'America/Vancouver', isZoneChosen: 1}]);
	},
);

journeyTest('words with no find open get a way to begin', async ({ada, db}) => {
	await begin(ada);
	await ada.sends('/cancel');
	await ada.deed(() => ada.room.sends('hello', {chat: ada.chat, replyTo: ada.sees.id}));
	expect(ada.sees.text).toContain('I do not have a find open with you here.');
	await ada.presses('Show me a find');
	expect(ada.sees.text).toContain('four corners');
	expect(await questionOf(db, ada)).toBe('egg-case');
});
