import {expect} from 'vitest';
import {journeyTest, newestFind, waysOfEntry} from '../support/journey.ts';
import {begin, draftOf, questionOf} from '../support/steps.ts';

const others = [
	{press: 'Leaf, stem or air bubble', end: 'weed', says: 'dried seaweed'},
	{press: 'A clump of papery balls', end: 'whelk', says: 'egg clump of a whelk'},
	{press: 'White, chalky and oval', end: 'cuttlebone', says: 'cuttlebone'},
	{press: 'Plastic, rope or rubber', end: 'plastic', says: 'made by people'},
	{press: "Can't tell", end: 'other', says: 'I cannot say what it is'},
] as const;

for (const [index, {press, end, says}] of others.entries()) {
	journeyTest(
		`what is no egg case but ${end} is named, and nothing is stored`,
		async ({ada, db}) => {
			await begin(ada);
			await ada.presses('No');
			await ada.presses(press);
			expect(ada.sees.text).toContain(says);
			expect(ada.sees.text).toContain('Nothing was stored');
			expect(ada.labels()).toEqual(['Look at another find', 'Back']);
			const find = await newestFind(db, ada.id);
			expect(find.state).toBe('not-a-case');
			expect(find.standing.at.id).toBe(end);
			expect(await draftOf(db, find.id)).toBeUndefined();
		},
		waysOfEntry(index),
	);
}

journeyTest('somebody who mistook a case for weed goes back and looks again', async ({ada, db}) => {
	await begin(ada);
	await ada.presses('No');
	await ada.presses('Leaf, stem or air bubble');
	const {id} = await newestFind(db, ada.id);
	await ada.presses('Back');
	expect(ada.sees.text).toContain('Which is it most like?');
	await ada.presses('Back');
	expect(ada.sees.text).toContain('four corners');
	expect(await newestFind(db, ada.id)).toMatchObject({id, trail: [], state: 'open'});
	await ada.presses('Yes, like that');
	expect(await questionOf(db, ada)).toBe('alive');
});

journeyTest('after something else the next find begins with a clean trail', async ({ada, db}) => {
	await begin(ada);
	await ada.presses('No');
	await ada.presses('Plastic, rope or rubber');
	const first = await newestFind(db, ada.id);
	await ada.presses('Look at another find');
	expect(ada.sees.text).toContain('four corners');
	expect(ada.labels()).not.toContain('Back');
	const second = await newestFind(db, ada.id);
	expect(second.id).toBeGreaterThan(first.id);
	expect(second).toMatchObject({trail: [], state: 'open'});
});

journeyTest('who cannot tell at first is asked what it is like inside', async ({ada, db}) => {
	await begin(ada);
	await ada.presses("Can't tell");
	expect(ada.sees.text).toContain('Squeeze it gently');
	await ada.presses('A leaf or stem of weed');
	expect(await newestFind(db, ada.id)).toMatchObject({state: 'not-a-case', standing: {at: {id: 'weed'}}});
	await ada.presses('Back');
	await ada.presses('Solid, hard or spongy');
	expect(await questionOf(db, ada)).toBe('what-else');
	await ada.presses('Back');
	await ada.presses('A hollow leathery pouch');
	const sure = await newestFind(db, ada.id);
	expect(sure.standing.at.id).toBe('alive');
	expect(sure.standing.facts.doubt).toBe(false);
	await ada.presses('Back');
	await ada.presses("Can't tell");
	const unsure = await newestFind(db, ada.id);
	expect(unsure.standing.at.id).toBe('alive');
	expect(unsure.standing.facts.doubt).toBe(true);
});
