import {expect} from 'vitest';
import {journeyTest, newestFind, waysOfEntry} from '../support/journey.ts';
import {begin, newestDraft, questionOf, walkTo} from '../support/steps.ts';

journeyTest('a pin without accuracy is taken to be within 30 m', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'where');
	await ada.location(50.1175, -5.5346);
	expect(await questionOf(db, ada)).toBe('when');
	expect(ada.all.some(({text}) => text.includes('→ 50.1175, -5.5346 (within 30 m)'))).toBe(true);
	await walkTo({db, person: ada}, 'kept');
	expect((await newestDraft(db, ada)).body.place).toEqual({
		kind: 'spot',
		latitude: 50.1175,
		longitude: -5.5346,
		uncertaintyM: 30,
		how: 'pin',
		zone: 'Europe/London',
	});
});

journeyTest('the accuracy that a phone shows is doubled', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'where');
	await ada.location(53.3, -6.1, 12.2);
	const {place} = (await newestFind(db, ada.id)).standing.facts;
	expect(place).toMatchObject({uncertaintyM: 25, how: 'pin', zone: 'Europe/Dublin'});
});

const written = [
	{
		text: 'sw 46512 30487',
		place: {how: 'grid', verbatim: 'SW 46512 30487', system: 'EPSG:27700', sideM: 1, zone: 'Europe/London'},
	},
	{
		text: 'O 2345 3456',
		place: {how: 'grid', verbatim: 'O 2345 3456', system: 'EPSG:29903', sideM: 10, zone: 'Europe/Dublin'},
	},
	{
		text: '50.12, -5.53',
		place: {
			how: 'coordinates',
			latitude: 50.12,
			longitude: -5.53,
			verbatim: '50.12, -5.53',
			system: 'EPSG:4326',
		},
	},
	{
		text: `50°7'12"N 5°31'48"W`,
		place: {how: 'coordinates', latitude: 50.12, longitude: -5.53},
	},
] as const;

for (const [index, {text, place}] of written.entries()) {
	journeyTest(
		`the place “${text}” is understood and kept as written`,
		async ({ada, db}) => {
			await begin(ada);
			await walkTo({db, person: ada}, 'where');
			await ada.sends(text);
			expect(await questionOf(db, ada)).toBe('when');
			await walkTo({db, person: ada}, 'kept');
			expect((await newestDraft(db, ada)).body.place).toMatchObject({kind: 'spot', ...place});
		},
		waysOfEntry(index),
	);
}

journeyTest('the name of a beach is a place, and its signs are shown back as they are', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'where');
	await ada.sends('Cove <north> & bay');
	expect(await questionOf(db, ada)).toBe('when');
	expect(ada.all.some(({text}) => text.includes('→ Cove <north> & bay'))).toBe(true);
	await walkTo({db, person: ada}, 'kept');
	expect((await newestDraft(db, ada)).body.place).toEqual({kind: 'named', name: 'Cove <north> & bay'});
});

// Every kind of refusal in one walk, so that the question is seen to stay through all of them.
const refused = [
	{text: 'SW 46530', says: 'has an odd number of digits'},
	{text: 'SW 465 30', says: 'the two numbers are not equally long'},
	{text: 'ZI 465 304', says: 'there is no such square'},
	{text: 'SW 465123 304876', says: 'more digits than a grid reference can have'},
	{text: '95.2, 12.1', says: 'is not a place on the map'},
	{text: '50.12 N', says: 'I see only one number'},
	{text: 'by the sea '.repeat(30), says: 'That is too long for a place'},
] as const;

journeyTest(
	'a faulty place is refused with its reason, and the question is put again each time',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'where');
		const {turn, trail} = await newestFind(db, ada.id);
		for (const {text, says} of refused) {
			await ada.sends(text);
			expect(ada.sees.text).toContain(says);
			expect(ada.sees.text).toContain('Where did you find it?');
			expect(ada.labels()).toEqual(['Send where I am now', 'Back', 'Why?']);
		}
		expect(await newestFind(db, ada.id)).toMatchObject({turn, trail});
		await ada.sends('SW 465 304');
		expect(await questionOf(db, ada)).toBe('when');
	},
);

// The position keyboard exists in private chats alone.
journeyTest(
	'in private a button below the chat sends the position',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'where');
		await ada.presses('Send where I am now');
		expect(ada.sees.keyboard).toEqual([[{text: 'Send my position', requestLocation: true}]]);
		expect(await questionOf(db, ada)).toBe('where');
		await ada.location(50.1, -5.5);
		expect(await questionOf(db, ada)).toBe('when');
	},
	['plain', 'delivered twice', 'restarted after each update'],
);

journeyTest(
	'in a group the position is asked for as a reply',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'where');
		await ada.presses('Send where I am now');
		expect(ada.sees.keyboard).toBeUndefined();
		expect(ada.sees.forceReply).toBe(true);
		await ada.location(50.1, -5.5);
		expect((await newestFind(db, ada.id)).standing.facts.place).toMatchObject({latitude: 50.1, how: 'pin'});
	},
	['two at once in a group'],
);

journeyTest('a pin at another question is not taken for an answer', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'count');
	const {trail} = await newestFind(db, ada.id);
	await ada.location(51, -4);
	expect(ada.sees.text).toContain('I do not need a place for this question');
	expect(ada.sees.text).toContain('How many cases');
	expect((await newestFind(db, ada.id)).trail).toEqual(trail);
});
