import {expect, test, vi} from 'vitest';
import {groups} from '../../src/room/people.ts';
import {png} from '../room/picture.ts';
import {dataOf} from '../support/actor.ts';
import {beginJourney, type Journey, newestFind} from '../support/journey.ts';
import {begin, type Deed, newestDraft, walkTo} from '../support/steps.ts';

vi.setConfig({testTimeout: 60_000});

const group = groups[0].id;
const hourMs = 3_600_000;

/** Ada and Ben, who read the word on safety in private, and each begin a find in the group. */
async function twoInAGroup() {
	const journey = await beginJourney();
	for (const name of ['Ada', 'Ben']) await begin(journey.person(name));
	const ada = journey.person('Ada', group);
	const ben = journey.person('Ben', group);
	for (const person of [ada, ben]) await person.sends('/find');
	return {...journey, ada, ben};
}

/** All that the bot said in the group, newest last. */
function said({room}: Journey): readonly string[] {
	return room
		.messages(group)
		.filter(({from}) => from === 'bot')
		.map(({text}) => text);
}

async function unchanged({db}: Journey, person: number, deed: () => Promise<void>): Promise<void> {
	const {trail, turn, state} = await newestFind(db, person);
	await deed();
	expect(await newestFind(db, person)).toMatchObject({trail, turn, state});
}

test('two people with finds of their own in one group never mix', async () => {
	const journey = await twoInAGroup();
	const {db, ada, ben} = journey;
	const cases = [
		{person: ada, answers: {count: press('2'), length: write('66 mm')}, place: 'SW 465 304'},
		{person: ben, answers: {count: press('3'), length: write('78 mm')}, place: 'TG 514 131'},
	];
	for (const question of ['where', 'count', 'aprons', 'kept']) {
		for (const {person, answers, place} of cases) {
			await walkTo({db, person}, question, {...answers, where: write(place)});
		}
	}
	const [adas, bens] = [await newestDraft(db, ada), await newestDraft(db, ben)];
	expect(adas.body).toMatchObject({count: 2, length: {mm: 66}, place: {verbatim: 'SW 465 304'}});
	expect(bens.body).toMatchObject({count: 3, length: {mm: 78}, place: {verbatim: 'TG 514 131'}});
	expect(adas.find.id).not.toBe(bens.find.id);
	journey.check();
});

test("a button of somebody else's find is answered and changes nothing", async () => {
	const journey = await twoInAGroup();
	const {room, ada, ben} = journey;
	const before = said(journey).length;
	await unchanged(journey, ada.id, () => ben.presses('Yes, like that', {on: ada.sees}));
	expect(room.callbackAnswers().at(-1)).toMatchObject({
		person: ben.id,
		text: expect.stringContaining('belongs to somebody else'),
	});
	expect(said(journey)).toHaveLength(before);
	await ben.presses('Yes, like that');
	expect((await newestFind(journey.db, ben.id)).standing.at.id).toBe('alive');
});

test.each(['words', 'pin', 'photo'] as const)(
	"a reply with %s to somebody else's question changes nothing of that find",
	async what => {
		const journey = await twoInAGroup();
		const {db, ada, ben} = journey;
		await walkTo({db, person: ada}, 'where');
		const reply = {chat: group, replyTo: ada.sees.id};
		await unchanged(journey, ada.id, () =>
			ben.deed(() => {
				if (what === 'words') ben.room.sends('TG 514 131', reply);
				if (what === 'pin') ben.room.location(50.1, -5.5, reply);
				if (what === 'photo') ben.room.photo(png(64, 48), reply);
			}),
		);
		expect(said(journey).at(-1)).toContain('belongs to somebody else');
		expect(await db.selectFrom('photo').select('find').execute()).toEqual([]);
	},
);

test('the bot hears commands, replies to it and presses, and not what people say to each other', async () => {
	const journey = await twoInAGroup();
	const {db, ada} = journey;
	await walkTo({db, person: ada}, 'where');
	const question = ada.sees;
	await unchanged(journey, ada.id, async () => {
		await ada.deed(() => ada.room.sends('SW 465 304', {chat: group}));
		await ada.deed(() => ada.room.sends('@pursekey_bot SW 465 304', {chat: group}));
	});
	expect(ada.sees).toEqual(question);
	await ada.deed(() => ada.room.sends('SW 465 304', {chat: group, replyTo: question.id}));
	expect((await newestFind(db, ada.id)).standing.facts.place).toMatchObject({verbatim: 'SW 465 304'});
});

test('a reply to any message of a find is about that find, however old', async () => {
	const journey = await twoInAGroup();
	const {db, ada} = journey;
	const begun = ada.sees;
	await walkTo({db, person: ada}, 'where');
	const first = await newestFind(db, ada.id);
	await ada.deed(() => ada.room.sends('SW 465 304', {chat: group, replyTo: begun.id}));
	expect((await newestFind(db, ada.id)).standing.at.id).toBe('when');
	await ada.sends('/find');
	const second = await newestFind(db, ada.id);
	expect(second.id).not.toBe(first.id);
	// The reply goes to the older find, though she sits at the newer one.
	await ada.deed(() => ada.room.sends('1 May 2026', {chat: group, replyTo: begun.id}));
	expect((await newestFind(db, ada.id)).trail).toEqual(second.trail);
	const row = await db
		.selectFrom('find')
		.select('trail')
		.where('id', '=', first.id)
		.executeTakeFirstOrThrow();
	expect(row.trail).toContain('2026-05-01');
});

test('/say carries an answer, and alone it explains itself', async () => {
	const journey = await twoInAGroup();
	const {db, ada} = journey;
	await walkTo({db, person: ada}, 'where');
	expect(ada.sees.text).toMatch(/^Ada:/);
	expect(ada.sees.text).toMatch(/reply to this message.*\/say/);
	await unchanged(journey, ada.id, () => ada.sends('/say'));
	expect(said(journey).at(-1)).toContain('/say 62 mm');
	await ada.sends('/say@pursekey_bot SW 465 304');
	await walkTo({db, person: ada}, 'length');
	await ada.sends('/say 62 mm');
	expect((await newestFind(db, ada.id)).standing.facts).toMatchObject({
		place: {verbatim: 'SW 465 304'},
		length: {mm: 62},
	});
});

test('a group hears hello when the bot is let in, and nothing while it is out', async () => {
	const journey = await beginJourney();
	const ada = journey.person('Ada', group);
	await ada.deed(() => ada.room.removesBot(group));
	expect(said(journey)).toEqual([]);
	await ada.deed(() => ada.room.addsBot(group));
	expect(said(journey)).toEqual([expect.stringContaining('Write /find when you have found')]);
	await ada.sends('/help');
	expect(said(journey).at(-1)).toContain('/say');
});

test('a bowl that is due in a group names the number of its find, not its finder', async () => {
	const journey = await twoInAGroup();
	const {db, ada} = journey;
	await walkTo({db, person: ada}, 'soaking', {condition: press('Dry and stiff')});
	const {id} = await newestFind(db, ada.id);
	await journey.forward(2 * hourMs + 1000);
	expect(said(journey).at(-1)).toContain(`Finder of no. ${id}:`);
	expect(said(journey).at(-1)).toContain('Your bowl is ready');
	expect(
		await db.selectFrom('outbox').select('content').where('content', 'like', '%Finder of%Ada%').execute(),
	).toEqual([]);
	await ada.presses('Softer now');
	expect((await newestFind(db, ada.id)).standing.at.id).toBe('aprons');
});

test('bowls of one group are told apart: each rings for its own finder', async () => {
	const journey = await twoInAGroup();
	const {db, ada, ben} = journey;
	for (const person of [ada, ben]) {
		await walkTo({db, person}, 'soaking', {condition: press('Dry and stiff')});
	}
	await journey.forward(2 * hourMs + 1000);
	const ready = journey.room.messages(group).filter(({text}) => text.includes('Your bowl is ready'));
	expect(ready).toHaveLength(2);
	const [adas] = ready;
	if (!adas) throw new Error('Expected a message for each bowl');
	await unchanged(journey, ada.id, () =>
		ben.deed(() => ben.room.presses(dataOf(adas, 'Softer now'), {chat: group, messageId: adas.id})),
	);
	expect(journey.room.callbackAnswers().at(-1)?.text).toContain('belongs to somebody else');
});

function press(label: string): Deed {
	return person => person.presses(label);
}

function write(text: string): Deed {
	return person => person.sends(text);
}
