import {expect} from 'vitest';
import {journeyTest, newestFind, waysOfEntry} from '../support/journey.ts';
import {begin, newestDraft, press, questionOf, walkTo, write} from '../support/steps.ts';

// What is typed, and what it comes to in millimetres: an inch is 25.4 mm exactly (agreement of 1959).
const written = [
	{typed: '62', mm: 62, shown: '62 mm'},
	{typed: '6.2 cm', mm: 62, shown: '62 mm'},
	{typed: '2 3/8 in', mm: 60.3, shown: '60.3 mm'},
	{typed: 'between 60 and 64 mm', mm: 62, shown: '62 mm, give or take 2'},
] as const;

for (const [index, {typed, mm, shown}] of written.entries()) {
	journeyTest(
		`the length “${typed}” is ${mm} mm, and kept as it was typed`,
		async ({ada, db}) => {
			await begin(ada);
			await walkTo({db, person: ada}, 'length');
			await ada.sends(typed);
			expect(await questionOf(db, ada)).toBe('outline');
			expect(ada.all.some(({text}) => text.includes(`→ ${shown}`))).toBe(true);
			await walkTo({db, person: ada}, 'kept');
			expect((await newestDraft(db, ada)).body.length).toMatchObject({mm, typed, countsAs: 'exact'});
		},
		waysOfEntry(index),
	);
}

const units = [
	{press: '6 cm', mm: 60},
	{press: '6 in', mm: 152.4},
] as const;

for (const [index, {press: unit, mm}] of units.entries()) {
	journeyTest(
		`“about 6” is asked for its unit, and ${unit} is ${mm} mm`,
		async ({ada, db}) => {
			await begin(ada);
			await walkTo({db, person: ada}, 'length');
			await ada.sends('about 6');
			expect(ada.sees.text).toContain('about 6');
			expect(await questionOf(db, ada)).toBe('length');
			const labels = ada.labels().filter(label => label !== 'Back');
			expect(labels).toHaveLength(2);
			await ada.presses(labels[unit === '6 cm' ? 0 : 1] ?? '');
			const find = await newestFind(db, ada.id);
			expect(find.standing.facts.length).toMatchObject({mm, typed: 'about 6'});
			expect(find.standing.at.id).toBe('outline');
		},
		waysOfEntry(index),
	);
}

journeyTest('who is asked for the unit may write the length anew', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'length');
	await ada.sends('about 6');
	await ada.sends('63 mm');
	const find = await newestFind(db, ada.id);
	expect(find.standing.facts.length).toMatchObject({mm: 63});
	expect(find.standing.at.id).toBe('outline');
	await ada.presses('Back');
	expect(await questionOf(db, ada)).toBe('length');
});

journeyTest('a length that cannot be is refused with its reason', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'length');
	const {trail, turn} = await newestFind(db, ada.id);
	for (const [text, says] of [
		['5 mm', '“5 mm” would be 5 mm. No egg case here is that small'],
		['40 cm', '“40 cm” would be 400 mm. No egg case here is that large'],
		['20 to 90 mm', 'are too far apart for one measurement'],
		['62 mm and 40 mm', 'I see two measurements'],
		['as long as my thumb', 'I cannot read “as long as my thumb” as a length'],
	] as const) {
		await ada.sends(text);
		expect(ada.sees.text).toContain(says);
		expect(ada.sees.text).toContain('How long is the capsule?');
		expect(ada.labels()).toEqual(["I can't measure it", 'Back', 'Why?']);
	}
	expect(await newestFind(db, ada.id)).toMatchObject({trail, turn});
});

journeyTest('a case that cannot be measured is still looked at and kept', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'length');
	await ada.presses("I can't measure it");
	await walkTo({db, person: ada}, 'result');
	expect(ada.sees.text).not.toContain('Its length is');
	await walkTo({db, person: ada}, 'kept');
	const {body} = await newestDraft(db, ada);
	expect(body.length).toBeUndefined();
	expect(body.seen.length).toBeGreaterThan(0);
});

for (const [index, label] of ['One is torn off', 'Both are torn off', "Can't tell"].entries()) {
	journeyTest(
		`with aprons answered “${label}” the length is said to be at least so long`,
		async ({ada, db}) => {
			await begin(ada);
			await walkTo({db, person: ada}, 'result', {aprons: press(label)});
			expect(ada.sees.text).toContain('at least 66 mm');
			expect(ada.sees.text).toContain('apron');
			await walkTo({db, person: ada}, 'kept');
			const {body} = await newestDraft(db, ada);
			expect(body.length).toMatchObject({mm: 66, countsAs: 'at-least', because: ['aprons']});
			expect(body.aprons).toBe(label === "Can't tell" ? 'unknown' : 'incomplete');
		},
		waysOfEntry(index),
	);
}

const large = {length: write('150 mm'), coat: press('A coat like bark')};

journeyTest('a width is asked for only where it is expected to tell something', async ({ada, db}) => {
	await begin(ada);
	const slim = {
		outline: press('Longer than two widths'),
		length: write('115 mm'),
		corners: press('Curly strings'),
	};
	expect(await walkTo({db, person: ada}, 'result', slim)).not.toContain('width');
	await ada.presses('Throw it away');
	await ada.presses('Look at another find');
	const asked = await walkTo({db, person: ada}, 'width', large);
	expect(asked.at(-1)).toBe('coat');
	expect(ada.sees.text).toContain('How wide is the capsule');
	await ada.sends('400 mm');
	expect(ada.sees.text).toContain('I can take 10 to 180 mm');
	expect(await questionOf(db, ada)).toBe('width');
	await ada.sends('7.5 cm');
	expect(await questionOf(db, ada)).toBe('result');
	expect(ada.sees.text).toContain('width is 75 mm');
	await walkTo({db, person: ada}, 'kept');
	const {body} = await newestDraft(db, ada);
	expect(body.width).toMatchObject({mm: 75, typed: '7.5 cm', countsAs: 'exact'});
	expect(body.leaves).toEqual(['dipturus-batis']);
});

journeyTest('torn side edges make the width a lower bound', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'broken');
	await ada.presses('Side edges torn off');
	await ada.presses('Go on');
	await walkTo({db, person: ada}, 'width', large);
	await ada.sends('75 mm');
	await walkTo({db, person: ada}, 'result');
	expect(ada.sees.text).toContain('at least 75 mm');
	await walkTo({db, person: ada}, 'kept');
	const {body} = await newestDraft(db, ada);
	expect(body.width).toMatchObject({mm: 75, countsAs: 'at-least', because: ['sides']});
	expect(body.length).toMatchObject({countsAs: 'exact'});
});
