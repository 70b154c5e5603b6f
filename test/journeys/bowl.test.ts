import {expect} from 'vitest';
import {journeyTest, newestFind, replayed} from '../support/journey.ts';
import {
	begin,
	newestDraft,
	press,
	questionOf,
	remindersToCome,
	timesWoken,
	walkTo,
	write,
} from '../support/steps.ts';

const hourMs = 3_600_000;
const dry = {condition: press('Dry and stiff')};

journeyTest('/bowl says that nothing is soaking when nothing is', async ({ada}) => {
	await begin(ada);
	await ada.sends('/bowl');
	expect(ada.sees.text).toContain('Nothing is soaking');
	expect(ada.sees.buttons).toEqual([]);
});

journeyTest('a case added to a bowl is not asked again for what it shares', async ({ada, db, forward}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'soaking', {...dry, where: write('Sennen'), when: press('Yesterday')});
	const first = await newestFind(db, ada.id);
	await forward(hourMs / 2);
	await ada.presses('Add a case to this bowl');
	const begun = await newestFind(db, ada.id);
	expect(begun.id).toBeGreaterThan(first.id);
	const asked = await walkTo({db, person: ada}, 'soaking', {count: press('4')});
	expect(asked).toEqual(['alive', 'photo', 'count', 'broken']);
	const second = await newestFind(db, ada.id);
	expect(second.standing.facts).toMatchObject({
		place: {kind: 'named', name: 'Sennen'},
		date: '2026-05-01',
		count: 4,
		soak: 'dry',
		bowl: first.standing.facts.bowl,
	});
	const bowls = await db.selectFrom('find').select('bowl').where('id', 'in', [first.id, second.id]).execute();
	expect(bowls).toEqual([{bowl: first.id}, {bowl: first.id}]);
});

journeyTest(
	'the cases of one bowl are told once: the first is asked about, the others wait in /bowl',
	async ({ada, db, forward}) => {
		const person = {db, person: ada};
		await begin(ada);
		await walkTo(person, 'soaking', {...dry, count: press('2')});
		const ids = [(await newestFind(db, ada.id)).id];
		for (const count of ['3', '4']) {
			await ada.presses('Add a case to this bowl');
			await walkTo(person, 'soaking', {count: press(count)});
			ids.push((await newestFind(db, ada.id)).id);
		}
		expect(await remindersToCome(db)).toHaveLength(3);
		await ada.sends('/bowl');
		expect(ada.sees.text.match(/ready at 12:30/g)).toHaveLength(3);
		expect(ada.labels()).toEqual([...ids.map(id => `Open no. ${id}`), 'Add a case to this bowl']);

		const shown = ada.all.length;
		await forward(2 * hourMs);
		expect(ada.all.slice(shown).map(({text}) => text)).toEqual([
			expect.stringContaining('Your bowl is ready'),
			expect.stringContaining('2 more cases of this bowl are waiting in /bowl'),
		]);
		expect(timesWoken(ada)).toBe(1);
		const ready = ada.all.findLast(({text}) => text.includes('Your bowl is ready'));
		if (!ready) throw new Error('Expected the question about softness; it is not there');
		await ada.presses('Softer now', {on: ready});
		expect(await standsAt(ids[0])).toBe('2 at aprons');

		await ada.sends('/bowl');
		expect(ada.sees.text).not.toContain(`No. ${ids[0]}:`);
		expect(ada.sees.text).toContain(`No. ${ids[1]}: since 10:30, ready`);
		await ada.presses(`Open no. ${ids[1]}`);
		expect(ada.sees.text).toContain('Your bowl is ready');
		await ada.presses('Softer now');
		expect(await standsAt(ids[1])).toBe('3 at aprons');
		expect(await standsAt(ids[2])).toBe('4 at softness');
		await forward(24 * hourMs);
		expect(timesWoken(ada)).toBe(2);

		async function standsAt(find: number | undefined): Promise<string> {
			const {trail} = await db
				.selectFrom('find')
				.select('trail')
				.where('id', '=', find ?? 0)
				.executeTakeFirstOrThrow();
			const {facts, at} = replayed(trail).standing;
			return `${facts.count} at ${at.id}`;
		}
	},
);

journeyTest(
	'after saving, one more case of the walk keeps place and day and asks all the rest',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'kept', {where: write('SW 4651 3048'), when: press('Yesterday')});
		const first = await newestDraft(db, ada);
		await ada.presses('One more of this walk');
		expect(ada.sees.text).toContain('four corners');
		expect(ada.labels()).not.toContain('Back');
		const asked = await walkTo({db, person: ada}, 'kept', {length: write('70 mm')});
		expect(asked.slice(0, 5)).toEqual(['egg-case', 'alive', 'photo', 'count', 'broken']);
		const second = await newestDraft(db, ada);
		expect(second.find.id).not.toBe(first.find.id);
		expect(second.body.id).not.toBe(first.body.id);
		expect(second.body).toMatchObject({foundOn: '2026-05-01', place: first.body.place, length: {mm: 70}});
		expect(first.body).toMatchObject({foundOn: '2026-05-01', length: {mm: 66}});
	},
);

journeyTest(
	'after saving a case out of a bowl, the next one of the bowl is as soft and soaked as long',
	async ({ada, db, forward}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'soaking', dry);
		await forward(2 * hourMs);
		await walkTo({db, person: ada}, 'kept');
		await ada.presses('One more of this bowl');
		const asked = await walkTo({db, person: ada}, 'aprons');
		expect(asked).toEqual(['alive', 'photo', 'count', 'broken']);
		expect(await remindersToCome(db)).toEqual([]);
		await walkTo({db, person: ada}, 'kept', {length: write('61 mm')});
		expect((await newestDraft(db, ada)).body.soak).toEqual({state: 'soaked', hours: 2});
	},
);

journeyTest('other finds can be looked at while a bowl soaks', async ({ada, db, forward}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'soaking', dry);
	const soaking = await newestFind(db, ada.id);
	await ada.sends('/find');
	await walkTo({db, person: ada}, 'count');
	await forward(2 * hourMs);
	expect(ada.sees.text).toContain('Your bowl is ready');
	expect(await questionOf(db, ada)).toBe('count');
	await ada.presses('Softer now');
	const {state} = await db
		.selectFrom('find')
		.select('state')
		.where('id', '=', soaking.id)
		.executeTakeFirstOrThrow();
	expect(state).toBe('open');
	const other = ada.all.findLast(({text}) => text.includes('How many cases'));
	if (!other) throw new Error('Expected the other question; it is not there');
	await ada.presses('5', {on: other});
	expect((await newestFind(db, ada.id)).standing.facts.count).toBe(5);
});
