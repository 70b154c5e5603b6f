/** Sorting a bowl case by case. Long, since each way of going on is a journey of its own. */
import {expect, test, vi} from 'vitest';
import {groups} from '../../src/room/people.ts';
import {png} from '../room/picture.ts';
import {beginJourney, type Journey, journeyTest, newestFind} from '../support/journey.ts';
import {begin, newestDraft, press, remindersToCome, walkTo, write} from '../support/steps.ts';

vi.setConfig({testTimeout: 60_000});

const group = groups[0].id;
const hourMs = 3_600_000;
const noWidth = {width: press("I can't measure it")};
const same = 'Same as the last one';

const drafts = async ({db}: Pick<Journey, 'db'>) =>
	(await db.selectFrom('draft').select('body').orderBy('find').execute()).map(({body}) => JSON.parse(body));

journeyTest(
	'a bowl is sorted case by case: name, length, save, each a record of its own with its own length',
	async journey => {
		const {ada, db} = journey;
		const person = {db, person: ada};
		await begin(ada);
		await walkTo(person, 'egg-case');
		await ada.sends('/sort');
		expect(ada.all.at(-2)?.text).toContain('Let us sort the bowl');
		const asked = await walkTo(person, 'kept', {
			...noWidth,
			where: write('Sennen'),
			when: press('Yesterday'),
		});
		// Each case is one find.
		expect(asked).not.toContain('count');
		const first = (await newestFind(db, ada.id)).id;
		expect(ada.sees.text).toMatch(
			new RegExp(
				`No\\. ${first} is saved: Thornback ray, 66 mm\\.\nOne case is sorted\\.\nTake the next case`,
			),
		);
		for (const [index, length] of ['65 mm', '6.7 cm', '64 mm'].entries()) {
			await ada.presses(same);
			expect(ada.sees.text).toMatch(/As no\. \d+: Thornback ray\.\n\nHow long is this one/);
			await ada.sends(length);
			// Told in short: it was told at length for the first.
			expect(ada.sees.text).toMatch(/Thornback ray\n.*\n\n/);
			expect(ada.sees.text).not.toContain('Source:');
			expect(ada.sees.text.length).toBeLessThan(400);
			await ada.presses('Save this find');
			expect(ada.sees.text).toContain(`${index + 2} cases are sorted.`);
		}
		const bodies = await drafts(journey);
		const mine = bodies.filter(({place}) => place.name === 'Sennen');
		expect(mine.map(({length}) => length.mm)).toEqual([66, 65, 67, 64]);
		expect(new Set(mine.map(({id}) => id)).size).toBe(4);
		for (const body of mine) expect(body).toMatchObject({foundOn: '2026-05-01', count: 1});
		expect(mine.map(({alike}) => alike === undefined)).toEqual([true, false, false, false]);
		await ada.presses('That was the last one');
		expect(ada.sees.text).toMatch(/All done: 4 cases are sorted\.\n4 cases in 4 finds\.\n• Thornback ray: 4/);
		expect(ada.sees.photo).toBeDefined();
	},
);

journeyTest(
	'sorting is put aside and gone on with, and an old button begins no second case',
	async journey => {
		const {ada, db} = journey;
		const person = {db, person: ada};
		await begin(ada);
		await ada.sends('/sort');
		await walkTo(person, 'kept', noWidth);
		const between = ada.sees;
		await ada.presses('Pause');
		expect(ada.sees.text).toContain('Pause. One case is sorted. Write /sort to go on');
		await ada.sends('/sort');
		expect(ada.sees.text).toContain('One case is sorted.');
		await ada.presses(same);
		const begun = (await newestFind(db, ada.id)).id;
		const closed = journey.room.messages(ada.chat).find(({id}) => id === between.id);
		expect(closed?.buttons).toEqual([]);
		// The button of the first copy, from a phone that did not hear of it.
		const [data] = between.buttons.flat();
		await ada.deed(() => ada.room.presses(data?.data ?? '', {chat: ada.chat, messageId: between.id}));
		await journey.forward(6000);
		await ada.deed(() => ada.room.presses(data?.data ?? '', {chat: ada.chat, messageId: between.id}));
		expect((await newestFind(db, ada.id)).id).toBe(begun);
		expect(ada.sees.text).toContain('How long is this one');
		// In the middle of a case, /sort asks where it was.
		await ada.sends('/sort');
		expect(ada.sees.text).toContain('How long is this one');
		expect((await newestFind(db, ada.id)).id).toBe(begun);
	},
);

journeyTest(
	'what lies in the bowl already is sorted first, soft like the first, and place and day are asked once',
	async journey => {
		const {ada, db} = journey;
		const person = {db, person: ada};
		await begin(ada);
		await walkTo(person, 'soaking', {
			condition: press('Dry and stiff'),
			where: write('Sennen'),
			count: press('2'),
		});
		const first = await newestFind(db, ada.id);
		await ada.presses('Add a case to this bowl');
		await walkTo(person, 'soaking', {count: press('3')});
		const second = await newestFind(db, ada.id);
		await journey.forward(2 * hourMs);
		await ada.sends('/sort');
		expect(ada.sees.text).toContain('Your bowl is ready');
		await ada.presses('Softer now');
		await walk(ada, db, first.id);
		expect(ada.sees.text).toContain(`Next is no. ${second.id}, which lies in this bowl already.`);
		await ada.presses(same);
		await ada.sends('61 mm');
		await ada.presses('Save this find');
		expect(await remindersToCome(db)).toEqual([]);
		expect(ada.sees.text).toContain('2 cases are sorted.\nTake the next case.');
		await ada.presses('It looks different');
		const asked = await walkTo(person, 'kept', {...noWidth, length: write('63 mm')});
		expect(asked.slice(0, 4)).toEqual(['alive', 'photo', 'broken', 'aprons']);
		const bodies = await drafts(journey);
		expect(bodies.filter(({place}) => place.name === 'Sennen')).toMatchObject([
			{count: 2, length: {mm: 66}, soak: {state: 'soaked', hours: 2}},
			{count: 3, length: {mm: 61}, soak: {state: 'soaked', hours: 2}, alike: first.id},
			{count: 1, length: {mm: 63}, soak: {state: 'soaked', hours: 2}},
		]);
	},
);

test('a length that does not fit is said, and the others of the bowl are offered by their names', async () => {
	const journey = await beginJourney();
	const {ada, db} = journey;
	const person = {db, person: ada};
	await begin(ada);
	await ada.sends('/sort');
	await walkTo(person, 'kept', noWidth);
	const ray = (await newestFind(db, ada.id)).id;
	await ada.presses(same);
	await walkTo(person, 'result', {...noWidth, length: write('110 mm')});
	expect(ada.sees.text).toMatch(
		new RegExp(
			`^No\\. ${ray} was named Thornback ray \\(\\d+ to \\d+ mm long\\)\\. This length does not fit`,
		),
	);
	await ada.presses('Change an answer');
	await ada.presses('Length');
	await walkTo(person, 'kept', {...noWidth, length: write('67 mm')});
	await ada.presses('It looks different');
	await walkTo(person, 'kept', {
		outline: press('Longer than two widths'),
		corners: press('Curly strings'),
		length: write('60 mm'),
	});
	expect(ada.sees.text).toMatch(/is saved: Small-spotted catshark, 60 mm\./);
	expect(ada.sees.text).toContain(`• No. ${ray + 1}: Thornback ray`);
	expect(ada.labels().slice(0, 3)).toEqual([same, `Like no. ${ray + 1}`, 'It looks different']);
	await ada.presses(`Like no. ${ray + 1}`);
	await ada.sends('65 mm');
	expect(ada.sees.text).toContain('Thornback ray');
	// One thrown away is not counted, and there is a way back and on.
	await ada.presses('Throw it away');
	expect(ada.sees.text).toContain('Thrown away.');
	expect(ada.sees.text).toContain('3 cases are sorted.');
	await ada.presses(same);
	expect(ada.sees.text).toContain(`As no. ${ray + 2}: Small-spotted catshark.`);
	journey.check();
});

test('one that may be alive goes back to the sea, and the sorting goes on', async () => {
	const journey = await beginJourney();
	const {ada, db} = journey;
	await begin(ada);
	await ada.sends('/sort');
	await walkTo({db, person: ada}, 'kept', noWidth);
	await ada.presses('It looks different');
	await walkTo({db, person: ada}, 'kept', {alive: press('Something may be inside')});
	expect(ada.sees.text).toContain('is saved: Live egg case, left in place.');
	expect((await newestDraft(db, ada)).body.kind).toBe('left-alive');
	// A live one is nothing that others are like.
	await ada.presses(same);
	expect(ada.sees.text).toContain('Thornback ray');
	journey.check();
});

test('an album sent between two cases is one find of photos, and what is changed later asks for no next case', async () => {
	const journey = await beginJourney();
	const {ada, db} = journey;
	await begin(ada);
	await ada.sends('/sort');
	await walkTo({db, person: ada}, 'kept', noWidth);
	const before = ada.all.length;
	await ada.album([png(40, 30), png(41, 30), png(42, 30)]);
	expect(ada.all.slice(before).map(({text}) => text)).toEqual([
		expect.stringMatching(/^I added the photo to this find\.\n.*is saved/),
	]);
	expect((await newestDraft(db, ada)).body.photos).toHaveLength(3);
	await ada.presses('Pause');
	await ada.sends('/drafts');
	await ada.presses(ada.labels()[0] ?? '');
	await ada.presses('Change how many');
	await ada.presses('2');
	expect(ada.sees.text).toContain('The draft is changed.');
	expect(ada.labels()).not.toContain(same);
	journey.check();
});

test('an album stays with the find of its first photo, though its finder has gone on to the next', async () => {
	const journey = await beginJourney();
	const {ada, db, room} = journey;
	const person = {db, person: ada};
	await begin(ada);
	await walkTo(person, 'photo');
	await ada.photo(png(40, 30));
	const first = (await newestFind(db, ada.id)).id;
	// The second photo of the album comes when she is at another find.
	await db.updateTable('photo').set({album: '1'}).execute();
	await ada.sends('/find');
	await ada.album([png(41, 30), png(42, 30)]);
	const albums = await db.selectFrom('photo').select(['find', 'album']).orderBy('id').execute();
	expect(albums).toEqual([1, 2, 3].map(() => ({find: first, album: '1'})));
	expect((await newestFind(db, ada.id)).standing.facts.photos).toEqual([]);
	expect(room.messages(ada.id).at(-1)?.text).toContain('I have 3 photos');
	journey.check();
});

test('a family sorts one bowl together: whoever takes the next case, it is one count', async () => {
	const journey = await beginJourney();
	const {db} = journey;
	for (const name of ['Ada', 'Ben']) await begin(journey.person(name));
	const ada = journey.person('Ada', group);
	const ben = journey.person('Ben', group);
	await ada.sends('/sort');
	await walkTo({db, person: ada}, 'kept', noWidth);
	const between = ada.sees;
	await ben.presses(same, {on: between});
	expect(ben.sees.text).toMatch(/^Ben, no\. 4:\nAs no\. 3: Thornback ray\./);
	expect(ben.sees.text).not.toContain('Everyone here may answer');
	await ben.sends('65 mm');
	await ada.presses('Save this find', {on: ben.sees});
	expect(journey.room.messages(group).at(-1)?.text).toContain('2 cases are sorted.');
	const owners = await db.selectFrom('draft').select('person').orderBy('find').execute();
	expect(new Set(owners.map(({person}) => person)).size).toBe(2);
	await ben.sends('/sort');
	expect(journey.room.messages(group).at(-1)?.text).toContain('2 cases are sorted.');
	journey.check();
});

/** Answers a find, which may not be the newest, until it is saved. */
async function walk(ada: Journey['ada'], db: Journey['db'], find: number): Promise<void> {
	const answers = [
		'Both are there',
		'66 mm',
		'Two widths or less',
		'Long lines or smooth',
		'Yes, a thin blade',
	];
	for (const answer of answers) await (answer.endsWith('mm') ? ada.sends(answer) : ada.presses(answer));
	await ada.presses("I can't measure it");
	await ada.presses('Save this find');
	const {state} = await db
		.selectFrom('find')
		.select('state')
		.where('id', '=', find)
		.executeTakeFirstOrThrow();
	expect(state).toBe('kept');
}
