import {expect} from 'vitest';
import {journeyTest, newestFind} from '../support/journey.ts';
import {begin, newestDraft, press, questionOf, walkTo, write} from '../support/steps.ts';

journeyTest('how many is pressed or written, and kept', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'count');
	expect(ada.labels()).toEqual(['1', '2', '3', '4', '5', '6', 'Back', 'Why?']);
	await ada.presses('6');
	expect((await newestFind(db, ada.id)).standing.facts.count).toBe(6);
	await ada.presses('Back');
	await ada.sends('about 40');
	await walkTo({db, person: ada}, 'kept');
	expect((await newestDraft(db, ada)).body.count).toBe(40);
});

journeyTest('none, too many and no number are answered with what to write', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'count');
	for (const [text, says] of [
		['0', 'Please write a number'],
		['-3', 'Please write a number'],
		['lots', 'Please write a number'],
		['1000', 'I can note at most 999'],
	] as const) {
		await ada.sends(text);
		expect(ada.sees.text).toContain(says);
		expect(ada.sees.text).toContain('How many cases just like this one');
	}
	expect(await newestFind(db, ada.id)).toMatchObject({
		standing: {at: {id: 'count'}, facts: {count: undefined}},
	});
	await ada.sends('999');
	expect((await newestFind(db, ada.id)).standing.facts.count).toBe(999);
});

journeyTest('broken parts are ticked and unticked in the same message', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'broken');
	const shown = {id: ada.sees.id, count: ada.all.length};
	expect(ada.labels()).toEqual([
		'Horns or strings gone',
		'Side edges torn off',
		'Surface worn smooth',
		'All there, go on',
		'Back',
		'Why?',
	]);
	await ada.presses('Horns or strings gone');
	expect(ada.labels().slice(0, 4)).toEqual([
		'✓ Horns or strings gone',
		'Side edges torn off',
		'Surface worn smooth',
		'Go on',
	]);
	await ada.presses('Surface worn smooth');
	await ada.presses('✓ Horns or strings gone');
	expect(ada.labels().slice(0, 4)).toEqual([
		'Horns or strings gone',
		'Side edges torn off',
		'✓ Surface worn smooth',
		'Go on',
	]);
	expect({id: ada.sees.id, count: ada.all.length}).toEqual(shown);
	expect(ada.sees.edited).toBe(true);
	await ada.presses('Go on');
	const closed = ada.all.find(({id}) => id === shown.id);
	expect(closed?.text).toContain('→ one part gone');
	expect(closed?.buttons).toEqual([]);
	await walkTo({db, person: ada}, 'kept');
	expect((await newestDraft(db, ada)).body.lost).toEqual(['surface']);
});

// With horns gone neither corners nor back horns can be seen: every way of the key that would ask for them.
const hornless = [
	{outline: press('Longer than two widths'), length: write('60 mm')},
	{outline: press('Longer than two widths'), length: write('95 mm')},
	{keel: press('Yes, a thin blade'), taper: press('Narrower at one end'), length: write('75 mm')},
	{outline: press("Can't tell"), length: write('72 mm'), taper: press("Can't tell")},
	{keel: press("Can't tell"), taper: press("Can't tell"), length: press("I can't measure it")},
] as const;

for (const [index, answers] of hornless.entries()) {
	journeyTest(
		`lost horns are never asked about, way ${index + 1}`,
		async ({ada, db}) => {
			const person = {db, person: ada};
			await begin(ada);
			await walkTo(person, 'broken');
			await ada.presses('Horns or strings gone');
			await ada.presses('Go on');
			const asked = await walkTo(person, 'result', answers);
			expect(asked).not.toContain('corners');
			expect(asked).not.toContain('back-horns');
			await ada.presses('Back');
			await walkTo(person, 'kept', answers);
			const {body} = await newestDraft(db, ada);
			expect(body.lost).toEqual(['horns']);
			expect(body.seen.map(({character}) => character)).not.toContain('corners');
			expect(body.leaves.length).toBeGreaterThan(0);
		},
		// The other ways change nothing about what is asked; one of them is enough.
		index === 0 ? ['plain', 'two at once in a group'] : ['plain'],
	);
}

journeyTest(
	'with whole horns the same answers do lead to the corners and the back horns',
	async ({ada, db}) => {
		await begin(ada);
		const asked = await walkTo({db, person: ada}, 'corners', hornless[0]);
		expect(asked.at(-1)).toBe('outline');
		await ada.presses('Back');
		await ada.presses('Back');
		await walkTo({db, person: ada}, 'back-horns', hornless[2]);
		expect(await questionOf(db, ada)).toBe('back-horns');
	},
	['plain'],
);
