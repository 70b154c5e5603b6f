import {expect, test, vi} from 'vitest';
import {png} from '../room/picture.ts';
import {beginJourney, newestFind} from '../support/journey.ts';
import {begin, newestDraft, walkTo} from '../support/steps.ts';

vi.setConfig({testTimeout: 60_000});

const hourMs = 3_600_000;

test('a person who blocks the bot is left in peace, keeps the finds, and goes on when back', async () => {
	const journey = await beginJourney();
	const {room, db, ada} = journey;
	await begin(ada);
	await walkTo({db, person: ada}, 'soaking', {condition: person => person.presses('Dry and stiff')});
	const seen = ada.all.length;
	await ada.deed(ada.room.blocks);
	const calls = room.calls().length;
	await journey.forward(3 * hourMs);
	expect(
		room
			.calls()
			.slice(calls)
			.filter(({chat}) => chat === ada.id),
	).toEqual([]);
	expect(ada.all).toHaveLength(seen);
	const {state, trail} = await newestFind(db, ada.id);
	expect({state, length: trail.length}).toMatchObject({state: 'soaking'});
	await ada.deed(ada.room.unblocks);
	// The bell that could not be rung is rung now.
	await journey.forward(1000);
	expect(ada.all.slice(seen).map(({text}) => text)).toEqual([
		expect.stringContaining('I could not write at 12:30'),
		expect.stringContaining('Your bowl is ready'),
	]);
	await ada.sends('/bowl');
	expect(ada.sees.text).toContain('In the bowl');
	await ada.presses('Open no. 1');
	await ada.presses('Softer now');
	await walkTo({db, person: ada}, 'kept');
	expect((await newestDraft(db, ada)).body.soak).toMatchObject({state: 'soaked', hours: 3});
	journey.check();
});

test('a chat that is found gone in sending is back with the next message of the person', async () => {
	const journey = await beginJourney();
	const {room, db, ada} = journey;
	await begin(ada);
	const error = {error_code: 403, description: 'Forbidden: user is deactivated'};
	room.refuse({method: 'sendMessage', chat: ada.id, times: 1, error});
	await ada.presses('Yes, like that');
	const gone = () => db.selectFrom('chat').select('id').where('goneAt', 'is not', null).execute();
	expect(await gone()).toHaveLength(1);
	await ada.sends('/start');
	expect(await gone()).toEqual([]);
	// The question that was lost comes after all.
	expect(ada.all.at(-2)?.text).toContain('Is anything still living in it?');
	await ada.presses('Go on with it');
	await walkTo({db, person: ada}, 'kept');
	journey.check();
});

test('a question whose connection breaks comes again; both copies work, once', async () => {
	const journey = await beginJourney();
	const {room, db, ada} = journey;
	await begin(ada);
	room.dropConnection({method: 'sendMessage', times: 1, when: 'after'});
	await ada.presses('Yes, like that');
	const copies = ada.all.filter(({text}) => text.includes('Is anything still living in it?'));
	expect(copies).toHaveLength(2);
	const [first] = copies;
	if (!first) throw new Error('Expected a first copy of the question');
	await ada.presses('No, empty and light', {on: first});
	expect((await newestFind(db, ada.id)).trail).toHaveLength(2);
	await ada.presses('No, empty and light', {on: first});
	expect((await newestFind(db, ada.id)).trail).toHaveLength(2);
	room.dropConnection({method: 'sendMessage', times: 1, when: 'before'});
	await walkTo({db, person: ada}, 'kept');
	journey.check();
});

test('a whole find goes through a platform that fails, limits and drops at every turn', async () => {
	const journey = await beginJourney();
	const {room, db, ada} = journey;
	const limit = {
		error_code: 429,
		description: 'Too Many Requests: retry after 1',
		parameters: {retry_after: 1},
	};
	await begin(ada);
	for (const question of ['alive', 'photo', 'where', 'count', 'aprons', 'length', 'result', 'kept']) {
		room.refuse({method: 'sendMessage', times: 1, error: limit});
		room.refuse({method: 'editMessageText', times: 1, error: limit});
		room.dropConnection({method: 'answerCallbackQuery', times: 1, when: 'after'});
		room.dropConnection({method: 'sendMessage', times: 1, when: 'before'});
		await walkTo({db, person: ada}, question);
	}
	expect(ada.sees.text).toContain('Saved as a draft');
	expect(await db.selectFrom('draft').select('version').execute()).toEqual([{version: 1}]);
	expect(await db.selectFrom('outbox').select('id').where('state', '=', 'failed').execute()).toEqual([]);
	journey.check();
});

test('a drawing that the platform refuses comes as words, with the same buttons, and the find goes on', async () => {
	const journey = await beginJourney();
	const {room, db, ada} = journey;
	await begin(ada);
	const labels = ada.labels().filter(label => label !== 'Why?');
	const error = {error_code: 400, description: 'Bad Request: PHOTO_INVALID_DIMENSIONS'};
	room.refuse({method: 'sendPhoto', times: 1, error});
	await ada.presses('Why?');
	const explained = ada.sees;
	expect(explained.photo).toBeUndefined();
	expect(explained.text).toContain('lay their eggs in tough cases');
	expect(ada.labels()).toEqual(labels);
	await ada.presses('Yes, like that');
	const closed = room.messages(ada.id).find(({id}) => id === explained.id);
	expect(closed).toMatchObject({edited: true, buttons: []});
	expect(closed?.text).toContain('→ Yes, like that');
	await walkTo({db, person: ada}, 'kept');
	journey.check();
});

test('a message that was deleted on the phone does not keep the find from going on', async () => {
	const journey = await beginJourney();
	const {room, db, ada} = journey;
	await begin(ada);
	await fetch(`${room.url}/bot${room.token}/deleteMessage?chat_id=${ada.id}&message_id=${ada.sees.id}`);
	const {id, turn} = await newestFind(db, ada.id);
	await ada.deed(() => ada.room.presses(`f.${id}.${turn}.yes`, {messageId: 1, inaccessible: true}));
	expect(ada.sees.text).toContain('Is anything still living in it?');
	await walkTo({db, person: ada}, 'kept');
	journey.check();
});

test('photos come through a platform that fails, and the finder is told of one that does not', async () => {
	const journey = await beginJourney();
	const {room, db, clock, ada} = journey;
	await begin(ada);
	await walkTo({db, person: ada}, 'photo');
	room.refuse({method: 'getFile', times: 1, error: {error_code: 500, description: 'Internal Server Error'}});
	ada.room.photo(png(64, 48));
	await room.idle();
	await vi.waitFor(async () => {
		clock.forward(1000);
		const states = await db.selectFrom('photo').select('state').execute();
		expect(states).toEqual([{state: 'kept'}]);
	}, 20_000);
	await journey.settle();
	await ada.photo(Buffer.from('not a picture'));
	expect(ada.all.some(({text}) => text.includes('I could not read a photo of find no. 1'))).toBe(true);
	journey.check();
});
