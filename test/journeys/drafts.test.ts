import {expect} from 'vitest';
import {png} from '../room/picture.ts';
import {journeyTest, newestFind} from '../support/journey.ts';
import {begin, draftOf, newestDraft, press, questionOf, walkTo, write} from '../support/steps.ts';

journeyTest('who has saved nothing is told how to begin', async ({ada}) => {
	await ada.sends('/drafts');
	expect(ada.sees.text).toContain('You have no saved finds yet');
	expect(ada.sees.buttons).toEqual([]);
});

journeyTest('a saved find is listed and opens as a card', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'photo');
	await ada.photo(png(60, 40));
	await walkTo({db, person: ada}, 'kept', {
		photo: press('Go on'),
		where: write('Sennen Cove'),
		count: press('3'),
	});
	const {id} = await newestFind(db, ada.id);
	await ada.sends('/drafts');
	expect(ada.sees.text).toContain('You have one saved find.');
	expect(ada.sees.text).toContain(`No. ${id}: Thornback ray, 2 May 2026, Sennen Cove`);
	await ada.presses(`Open no. ${id}`);
	for (const line of ['Sennen Cove', 'How many: 3', 'Note: no', 'Photos: 1', 'Checked: not yet']) {
		expect(ada.sees.text).toContain(line);
	}
	expect(ada.labels()).toEqual(['Change place', 'Change day', 'Change how many', 'Add a note', 'Delete']);
});

// Eight finds are a long walk; what pages show does not depend on the mode.
journeyTest(
	'more than six drafts are shown page by page, newest first',
	async ({ada, db}) => {
		await begin(ada);
		const ids: number[] = [];
		for (let made = 0; made < 8; made++) {
			if (made > 0) await ada.sends('/find');
			await walkTo({db, person: ada}, 'kept', {alive: press('Tied to weed or rock')});
			ids.unshift((await newestFind(db, ada.id)).id);
		}
		const label = (id: number) => `Open no. ${id}`;
		await ada.sends('/drafts');
		expect(ada.sees.text).toContain('You have 8 saved finds.');
		expect(ada.labels()).toEqual([...ids.slice(0, 6).map(label), 'Older ones']);
		await ada.presses('Older ones');
		expect(ada.labels().slice(0, 2)).toEqual(ids.slice(6).map(label));
		expect(ada.labels()).not.toContain('Older ones');
		await ada.presses(label(ids[7] ?? 0));
		expect(ada.labels()).toEqual(['Change place', 'Change day', 'Add a note', 'Delete']);
	},
	['plain', 'two at once in a group'],
);

journeyTest('place, day and number of a draft are mended, and nothing else changes', async ({ada, db}) => {
	const {before, card} = await keptCard();
	await card('Change place');
	expect(ada.sees.text).toContain('Where did you find it?');
	expect((await draftOf(db, before.find.id))?.body?.place).toEqual(before.body.place);
	await ada.sends('Whitesand Bay');
	expect(ada.sees.text).toContain('The draft is changed.');
	await card('Change day');
	await ada.sends('1 May');
	await card('Change how many');
	await ada.sends('many');
	expect(ada.sees.text).toContain('Please write a number');
	await ada.presses('6');
	expect(ada.sees.text).toContain('The draft is changed.');
	const after = await newestDraft(db, ada);
	expect(after.find.state).toBe('kept');
	expect(after.version).toBe(before.version + 3);
	expect(after.body).toEqual({
		...before.body,
		place: {kind: 'named', name: 'Whitesand Bay'},
		foundOn: '2026-05-01',
		count: 6,
		// A place that is only a name no longer speaks for kinds of its coast.
		ranking: after.body.ranking,
		trail: after.body.trail,
	});

	async function keptCard() {
		await begin(ada);
		await walkTo({db, person: ada}, 'kept');
		const kept = await newestDraft(db, ada);
		return {
			before: kept,
			card: async (label: string) => {
				await ada.sends('/drafts');
				await ada.presses(`Open no. ${kept.find.id}`);
				await ada.presses(label);
			},
		};
	}
});

journeyTest('a note is added, changed, and never longer than 500 letters', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'kept');
	const {find, version} = await newestDraft(db, ada);
	await openCard('Add a note');
	expect(ada.sees.text).toContain('Write a note for this find');
	await ada.sends('x'.repeat(501));
	expect(ada.sees.text).toContain('1 to 500 letters');
	expect(await questionOf(db, ada)).toBe('note');
	await ada.sends('Under <weed> & stones');
	expect(ada.sees.text).toContain('The draft is changed.');
	expect((await newestDraft(db, ada)).body.note).toBe('Under <weed> & stones');
	await openCard('Change note');
	await ada.sends('In a rock pool');
	expect(await newestDraft(db, ada)).toMatchObject({version: version + 2, body: {note: 'In a rock pool'}});
	await ada.sends('/drafts');
	await ada.presses(`Open no. ${find.id}`);
	expect(ada.sees.text).toContain('Note: In a rock pool');

	async function openCard(label: string): Promise<void> {
		await ada.sends('/drafts');
		await ada.presses(`Open no. ${find.id}`);
		await ada.presses(label);
	}
});

journeyTest('who goes Back from mending leaves the draft as it was', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'kept');
	const before = await newestDraft(db, ada);
	for (const label of ['Change day', 'Add a note']) {
		await ada.sends('/drafts');
		await ada.presses(`Open no. ${before.find.id}`);
		await ada.presses(label);
		await ada.presses('Back');
		expect(await questionOf(db, ada)).toBe('kept');
	}
	const after = await newestDraft(db, ada);
	expect({...after.body, trail: []}).toEqual({...before.body, trail: []});
	expect(after.find.trail).toEqual(before.find.trail);
});
