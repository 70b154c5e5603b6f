/** A group and its finds: who may answer, one bowl, what is said. Long, since each way of speaking in a group is a journey. */
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

test("anyone in the group answers for a find, which stays its beginner's, and the answer says who gave it", async () => {
	const journey = await twoInAGroup();
	const {db, ada, ben} = journey;
	const question = ada.sees;
	expect(question.text).toContain('Everyone here may answer.');
	await ben.presses('Yes, like that', {on: question});
	expect(textOf(journey, question.id)).toMatch(/→ Yes, like that \(Ben\)$/);
	expect(said(journey).at(-1)).toMatch(/^No\. 3:\nIs anything still living/);
	await ben.deed(() => ben.room.presses(pressed(journey, 'No, empty and light'), place(journey)));
	// A photo and words of Ben's go to it as well, and Ada still sits there.
	await ben.deed(() => ben.room.photo(png(64, 48), {chat: group, replyTo: place(journey).messageId}));
	await ben.deed(() => ben.room.presses(pressed(journey, 'Go on'), place(journey)));
	await ben.deed(() => ben.room.sends('TG 514 131', {chat: group, replyTo: place(journey).messageId}));
	await ada.presses('Yesterday', {on: newest(journey)});
	const {standing, id} = await newestFind(db, ada.id);
	expect(standing.facts).toMatchObject({place: {verbatim: 'TG 514 131'}, date: '2026-05-01'});
	expect(standing.facts.photos).toHaveLength(1);
	expect(id).toBe(3);
	expect((await newestFind(db, ben.id)).trail).toEqual([]);
	await walkTo({db, person: ada}, 'kept');
	const {person} = await db.selectFrom('draft').select('person').executeTakeFirstOrThrow();
	const {platformId} = await db
		.selectFrom('person')
		.select('platformId')
		.where('id', '=', person)
		.executeTakeFirstOrThrow();
	expect(platformId).toBe(ada.id);
	journey.check();
});

test('who helps with a find stays at their own, so that no words go astray', async () => {
	const journey = await twoInAGroup();
	const {db, ada, ben} = journey;
	for (const person of [ada, ben]) await walkTo({db, person}, 'length');
	await ben.presses('Back', {on: ada.sees});
	await ben.presses('One is torn off', {on: newest(journey)});
	await ben.sends('/say 78 mm');
	expect((await newestFind(db, ben.id)).standing.facts.length).toMatchObject({mm: 78});
	expect((await newestFind(db, ada.id)).standing.facts).toMatchObject({
		aprons: 'incomplete',
		length: undefined,
	});
});

test('words of somebody without a find go to the only open one, and where there are two they are asked which', async () => {
	const journey = await twoInAGroup();
	const {db, ada, ben} = journey;
	const cato = journey.person('Cato', group);
	const bens = ben.sees;
	await walkTo({db, person: ada}, 'where');
	await unchanged(journey, ada.id, () => cato.sends('/say Sennen'));
	expect(said(journey).at(-1)).toContain('reply to the question that you mean');
	const on: Deed = person => person.presses('Yes, like that', {on: bens});
	await walkTo({db, person: ben}, 'kept', {'egg-case': on});
	await cato.sends('/say Sennen');
	expect((await newestFind(db, ada.id)).standing.facts.place).toMatchObject({name: 'Sennen'});
});

test("a find that only its beginner answers for takes no press of anybody else's", async () => {
	const journey = await twoInAGroup();
	const {db, room, ada, ben} = journey;
	const question = ada.sees;
	await ada.presses('Only I answer', {on: question});
	expect(said(journey).at(-1)).toContain('only you answer for find no. 3');
	const before = said(journey).length;
	for (const label of ['Yes, like that', 'Only I answer'])
		await unchanged(journey, ada.id, () => ben.presses(label, {on: question}));
	expect(room.callbackAnswers().at(-1)).toMatchObject({
		person: ben.id,
		text: expect.stringContaining('belongs to somebody else'),
	});
	expect(said(journey)).toHaveLength(before);
	await ada.presses('Everyone may answer', {on: newest(journey)});
	await ben.presses('Yes, like that', {on: question});
	expect((await newestFind(db, ada.id)).standing.at.id).toBe('alive');
});

test('/onlyme does the same at any question, and tells those who have no find how', async () => {
	const journey = await twoInAGroup();
	const {db, ada, ben} = journey;
	await walkTo({db, person: ada}, 'where');
	const question = ada.sees;
	await ada.sends('/onlyme');
	await unchanged(journey, ada.id, () =>
		ben.deed(() => ben.room.sends('Sennen', {chat: group, replyTo: question.id})),
	);
	const cato = journey.person('Cato', group);
	await cato.sends('/onlyme');
	expect(said(journey).at(-1)).toContain('Begin one with /find');
	await ada.deed(() => ada.room.sends('Sennen', {chat: group, replyTo: question.id}));
	await walkTo({db, person: ada}, 'kept');
	await ada.presses('One more of this walk');
	expect(ada.sees.text).toContain('Only you answer.');
});

test('others may answer everything for a find, but not throw it away', async () => {
	const journey = await twoInAGroup();
	const {db, ada, ben} = journey;
	await walkTo({db, person: ada}, 'result');
	const result = ada.sees;
	await unchanged(journey, ada.id, () => ben.presses('Throw it away', {on: result}));
	await ben.presses('Save this find', {on: result});
	expect((await newestFind(db, ada.id)).state).toBe('kept');
});

test.each(['words', 'pin', 'photo'] as const)(
	'a reply with %s to a find that only its beginner answers for changes nothing of it',
	async what => {
		const journey = await twoInAGroup();
		const {db, ada, ben} = journey;
		await walkTo({db, person: ada}, 'where');
		const reply = {chat: group, replyTo: ada.sees.id};
		await ada.sends('/onlyme');
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
	expect(ada.sees.text).toMatch(/^Ada, no\. 3:/);
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
	expect(said(journey).at(-1)).toMatch(new RegExp(`^No\\. ${id}:\nYour bowl is ready`));
	await ada.presses('Softer now');
	expect((await newestFind(db, ada.id)).standing.at.id).toBe('aprons');
});

test('a group has one bowl together: it rings once, anyone opens what is in it and adds to it', async () => {
	const journey = await twoInAGroup();
	const {db, ada, ben} = journey;
	const dry = {condition: press('Dry and stiff'), where: write('Sennen')};
	for (const person of [ada, ben]) await walkTo({db, person}, 'soaking', dry);
	const [adas, bens] = [await newestFind(db, ada.id), await newestFind(db, ben.id)];
	const bowls = await db.selectFrom('find').select('bowl').where('state', '=', 'soaking').execute();
	expect(bowls).toEqual([{bowl: adas.id}, {bowl: adas.id}]);
	const cato = journey.person('Cato', group);
	await cato.sends('/bowl');
	expect(said(journey).at(-1)).toMatch(
		new RegExp(`^In the bowl of this group:\n• No\\. ${adas.id}:.*\n• No\\. ${bens.id}:`),
	);
	await cato.presses('Add a case to this bowl', {on: newest(journey)});
	expect(await walkTo({db, person: cato}, 'soaking')).toEqual(['alive', 'photo', 'count', 'broken']);
	expect((await newestFind(db, cato.id)).standing.facts.place).toMatchObject({name: 'Sennen'});
	await journey.forward(2 * hourMs + 1000);
	expect(said(journey).filter(text => text.includes('Your bowl is ready'))).toHaveLength(1);
	expect(said(journey).at(-1)).toContain('2 more cases of this bowl are waiting in /bowl');
	await cato.sends('/bowl');
	await cato.presses(`Open no. ${bens.id}`, {on: newest(journey)});
	await cato.presses('Softer now', {on: newest(journey)});
	expect((await newestFind(db, ben.id)).standing.at.id).toBe('aprons');
	journey.check();
});

test('in private, a person finds all that they have in water, also what they left in a group', async () => {
	const journey = await twoInAGroup();
	const {db, ada} = journey;
	await walkTo({db, person: ada}, 'soaking', {condition: press('Dry and stiff')});
	const {id} = await newestFind(db, ada.id);
	const alone = journey.person('Ada');
	await alone.sends('/bowl');
	await alone.presses(`Open no. ${id}`);
	await alone.presses('It is soft now');
	await alone.presses('Softer now');
	await walkTo({db, person: alone}, 'kept');
	// The question that stands in the group is closed there.
	const inGroup = journey.room.messages(group).filter(({text}) => text.includes('in the bowl since'));
	expect(inGroup.map(({buttons}) => buttons)).toEqual([[]]);
	expect((await newestDraft(db, alone)).find.id).toBe(id);
	journey.check();
});

test('a group that throws the bot out and lets it in again has its bowl, its finds and its open question still', async () => {
	const journey = await twoInAGroup();
	const {db, ada, ben} = journey;
	await walkTo({db, person: ada}, 'soaking', {condition: press('Dry and stiff')});
	await walkTo({db, person: ben}, 'where');
	// What is asked while the bot goes is not heard by anybody.
	journey.room.refuse({
		method: 'sendMessage',
		chat: group,
		times: 1,
		error: {error_code: 403, description: 'Forbidden: bot was kicked from the supergroup chat'},
	});
	await ben.sends('Sennen');
	await ada.deed(() => ada.room.removesBot(group));
	const before = said(journey).length;
	await journey.forward(3 * hourMs);
	expect(said(journey)).toHaveLength(before);
	await ada.deed(() => ada.room.addsBot(group));
	await journey.forward(1000);
	const heard = said(journey).slice(before);
	expect(heard).toEqual(
		expect.arrayContaining([
			expect.stringMatching(/^Ben, no\. 4:\nWhich day/),
			expect.stringContaining('Write /find when you have found'),
			expect.stringContaining('I could not write at 12:30'),
			expect.stringMatching(/^No\. 3:\nYour bowl is ready/),
		]),
	);
	expect(heard).toHaveLength(4);
	await walkTo({db, person: ben}, 'kept', {
		when: person => person.presses('Today', {on: asked('Which day')}),
	});
	await ada.presses('Softer now', {on: asked('Your bowl is ready')});
	await walkTo({db, person: ada}, 'kept');
	journey.check();

	function asked(words: string) {
		const message = journey.room.messages(group).findLast(({text}) => text.includes(words));
		if (!message) throw new Error(`Expected a message with "${words}"; there is none`);
		return message;
	}
});

test('one find that cannot be read keeps neither the bowl from being shown nor the others from waking', async () => {
	const journey = await twoInAGroup();
	const {db, ada, ben, errors} = journey;
	for (const person of [ada, ben]) await walkTo({db, person}, 'soaking', {condition: press('Dry and stiff')});
	await db.updateTable('find').set({trail: '[{"question":'}).where('id', '=', 3).execute();
	await ben.sends('/bowl');
	expect(said(journey).at(-1)).toMatch(
		/• No\. 3: I cannot read this find any more\..*\n• No\. 4: since 10:30/,
	);
	expect(
		newest(journey)
			.buttons.flat()
			.map(({text}) => text),
	).toEqual(['Open no. 4', 'Add a case to this bowl']);
	await journey.forward(2 * hourMs + 1000);
	expect(said(journey).at(-1)).toMatch(/^No\. 4:\nYour bowl is ready/);
	expect(errors[0]).toMatchObject({what: 'trail not readable', find: 3});
});

/** The bot's newest message in the group, whoever it is for. */
function newest({room}: Journey) {
	const message = room.messages(group).findLast(({from}) => from === 'bot');
	if (!message) throw new Error('Expected a message of the bot in the group; there is none');
	return message;
}

function pressed(journey: Journey, label: string): string {
	return dataOf(newest(journey), label);
}

function place(journey: Journey) {
	return {chat: group, messageId: newest(journey).id};
}

function textOf({room}: Journey, id: number): string | undefined {
	return room.messages(group).find(message => message.id === id)?.text;
}

function press(label: string): Deed {
	return person => person.presses(label);
}

function write(text: string): Deed {
	return person => person.sends(text);
}
