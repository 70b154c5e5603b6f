import {expect, test, vi} from 'vitest';
import {groups} from '../../src/room/people.ts';
import {png} from '../room/picture.ts';
import {actorIn, dataOf} from '../support/actor.ts';
import {changeNewest} from '../support/drafts.ts';
import {beginJourney} from '../support/journey.ts';
import {begin, walkTo} from '../support/steps.ts';
import {trust} from '../support/team.ts';

vi.setConfig({testTimeout: 60_000});

const table = groups[1].id;

async function atTheTable() {
	const journey = await beginJourney({environment: {VERIFIERS_CHAT: String(table)}});
	await begin(journey.ada);
	return {...journey, shown: () => journey.room.messages(table)};
}

test('verifiers see a new draft with its photo, once', async () => {
	const {db, ada, shown, settle, check} = await atTheTable();
	await walkTo({db, person: ada}, 'photo');
	await ada.photo(png(640, 480));
	await ada.presses('Go on');
	await walkTo({db, person: ada}, 'kept');
	expect(shown()).toHaveLength(1);
	const [message] = shown();
	expect(message).toMatchObject({from: 'bot', photo: {width: 640, height: 480}});
	expect(message?.buttons.flat().map(({text}) => text)).toEqual(['Look at it']);
	expect(message?.text).toContain('New draft no. 1: Thornback ray');
	expect(message?.text).toContain('SW 465 304');
	expect(message?.text).not.toMatch(/\bAda\b/);
	await changeNewest(ada, 'Change how many', '4');
	await settle();
	expect(shown()).toHaveLength(1);
	check();
});

test('verifiers see a draft without photos as words', async () => {
	const {db, ada, shown, check} = await atTheTable();
	await walkTo({db, person: ada}, 'kept');
	expect(shown()).toHaveLength(1);
	expect(shown()[0]).toMatchObject({text: expect.stringContaining('Photos: 0')});
	expect(shown()[0]?.photo).toBeUndefined();
	check();
});

/** Ada, who keeps a find whose photo the platform does not give out for so many tries. */
async function keepsWithoutPhoto(tries: number) {
	const journey = await atTheTable();
	const {room, db, clock, ada} = journey;
	await walkTo({db, person: ada}, 'photo');
	room.refuse({
		method: 'getFile',
		times: tries,
		error: {error_code: 500, description: 'Internal Server Error'},
	});
	const settle = () =>
		vi.waitFor(async () => {
			const rows = await db
				.selectFrom('outbox')
				.innerJoin('chatAddress', 'chatAddress.chat', 'outbox.chat')
				.select('notBefore')
				.where('platformId', '=', ada.id)
				.where('state', 'in', ['waiting', 'sending'])
				.execute();
			// The question waits for more photos of an album.
			const waitMs = Math.max(0, ...rows.map(({notBefore}) => notBefore - clock.now()));
			if (waitMs > 0) clock.forward(waitMs);
			expect(rows.length + room.pendingUpdates()).toBe(0);
		}, 20_000);
	const hasty = actorIn({...journey, settle}, 'Ada');
	await hasty.photo(png(640, 480));
	await hasty.presses('Go on');
	await walkTo({db, person: hasty}, 'kept');
	expect(await db.selectFrom('photo').select('state').execute()).toEqual([{state: 'wanted'}]);
	return {...journey, hasty};
}

test('what verifiers see waits for the photo that is still being fetched', async () => {
	const {shown, clock, settle, check} = await keepsWithoutPhoto(2);
	expect(shown()).toEqual([]);
	// Two seconds to the second try, four more to the third.
	clock.forward(6000);
	await vi.waitFor(() => {
		clock.forward(1000);
		expect(shown()).toHaveLength(1);
	}, 20_000);
	expect(shown()[0]).toMatchObject({photo: {width: 640}, text: expect.stringContaining('Photos: 1')});
	await settle();
	check();
});

test('what verifiers see does not wait for ever', async () => {
	const {db, shown, clock} = await keepsWithoutPhoto(99);
	const tries = async () => {
		const rows = db.selectFrom('outbox').select('attempts').where('content', 'like', '%New draft%');
		return (await rows.executeTakeFirstOrThrow()).attempts;
	};
	const before = await tries();
	clock.forward(118_000);
	await vi.waitFor(async () => expect(await tries()).toBeGreaterThan(before), 20_000);
	expect(shown()).toEqual([]);
	clock.forward(5000);
	await vi.waitFor(() => expect(shown()).toHaveLength(1), 20_000);
	expect(shown()[0]?.photo).toBeUndefined();
});

test('verifiers are not shown a draft that its finder deleted in the meantime', async () => {
	const {db, ada, room, clock, shown, hasty} = await keepsWithoutPhoto(99);
	await changeNewest(hasty, 'Delete', 'Yes, delete it');
	clock.forward(200_000);
	await ada.sends('/help');
	expect(shown()).toEqual([]);
	expect(await db.selectFrom('outbox').select('id').where('state', '=', 'waiting').execute()).toEqual([]);
	expect(room.messages(ada.id).at(-1)?.text).toContain('What I can do');
});

test('a chat of verifiers that the bot may not enter keeps no finder waiting', async () => {
	const journey = await beginJourney({environment: {VERIFIERS_CHAT: '-1009999999999'}});
	const {db, ada} = journey;
	await begin(ada);
	await walkTo({db, person: ada}, 'kept');
	expect(ada.sees.text).toContain('Saved as a draft');
	await ada.presses('Look at another find');
	await walkTo({db, person: ada}, 'kept');
	expect(await db.selectFrom('draft').select('find').execute()).toHaveLength(2);
	journey.check();
});

test('the button below a new draft leads a verifier to it in private, and nobody else', async () => {
	const journey = await atTheTable();
	const {db, ada, room, settle, person, check} = journey;
	await trust(db, person('Ben'), 'verifier');
	await walkTo({db, person: ada}, 'kept');
	const [draft] = journey.shown();
	const look = async (name: string) => {
		const data = draft ? dataOf(draft, 'Look at it') : '';
		room.person(name).presses(data, {chat: table, messageId: draft?.id ?? 0});
		await settle();
		return journey.shown().at(-1)?.text;
	};
	expect(await look('Dora')).toContain('I cannot do this for you here.');
	expect(await look('Ben')).toContain('I show it to you in our private chat.');
	expect(person('Ben').labels()).toContain('I agree');
	expect(journey.shown().some(({text}) => text.includes('50.11989'))).toBe(false);
	await trust(db, person('Cato'), 'verifier');
	room.person('Cato').blocks();
	await settle();
	expect(await look('Cato')).toContain('write /start to me in a private chat first');
	check();
});
