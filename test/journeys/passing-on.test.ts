import {expect, onTestFinished, test, vi} from 'vitest';
import {z} from 'zod';
import {groups} from '../../src/room/people.ts';
import {type Receiver, startReceiver} from '../clockwork/receiver.ts';
import {png} from '../room/picture.ts';
import {type Actor, actorIn, type Mode} from '../support/actor.ts';
import {beginJourney, newestFind} from '../support/journey.ts';
import {begin, walkTo} from '../support/steps.ts';

vi.setConfig({testTimeout: 60_000});

// Bytes 00 to 1f in base64.
const secret = 'whsec_AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8=';
const minuteMs = 60_000;

const bodySchema = z.object({
	type: z.string(),
	timestamp: z.iso.datetime(),
	data: z.looseObject({occurrenceID: z.string()}),
});

/** Opens the newest draft and presses these buttons. */
async function changeNewest(person: Actor, ...labels: readonly string[]): Promise<void> {
	await person.sends('/drafts');
	await person.presses(person.labels()[0] ?? '');
	for (const label of labels) await person.presses(label);
}

/** A journey whose drafts go to a receiver, which goes by the clock of the journey. */
async function passingOn(mode: Mode = 'plain') {
	const time = {now: () => 0};
	const receiver = await startReceiver(secret, () => time.now());
	onTestFinished(receiver.close);
	const environment = {FORWARD_URL: receiver.url, FORWARD_SECRET: secret};
	const journey = await beginJourney({mode, environment});
	time.now = journey.clock.now;
	await begin(journey.ada);
	return {...journey, receiver};
}

async function heard({heard: all}: Receiver, count: number) {
	await vi.waitFor(() => expect(all.length).toBeGreaterThanOrEqual(count), 20_000);
	expect(all).toHaveLength(count);
	expect(all.map(({valid}) => valid)).toEqual(all.map(() => true));
	return all.map(({webhookId, body}) => ({webhookId, body, ...bodySchema.parse(JSON.parse(body))}));
}

test.each(['plain', 'delivered twice', 'restarted after each update'] as const)(
	'each saved draft is passed on once, signed, under the name it keeps for ever (%s)',
	async mode => {
		const journey = await passingOn(mode);
		const {db, ada, receiver} = journey;
		await walkTo({db, person: ada}, 'kept', {count: person => person.presses('2')});
		const {uuid} = await newestFind(db, ada.id);
		const [first] = await heard(receiver, 1);
		expect(first).toMatchObject({
			type: 'record.submitted',
			webhookId: `${uuid}_1`,
			data: {
				occurrenceID: `urn:uuid:${uuid}`,
				scientificName: 'Raja clavata',
				organismQuantity: 2,
				eventDate: '2026-05-02',
			},
		});
		await ada.presses('Look at another find');
		await walkTo({db, person: ada}, 'kept');
		const [, second] = await heard(receiver, 2);
		expect(second?.data.occurrenceID).not.toBe(first?.data.occurrenceID);
		expect(await db.selectFrom('forward').select('id').execute()).toHaveLength(2);
		journey.check();
	},
);

test('nothing of who found it is passed on', async () => {
	const journey = await passingOn();
	const {db, ada, receiver} = journey;
	await walkTo({db, person: ada}, 'kept');
	const [first] = await heard(receiver, 1);
	expect(first?.body).not.toMatch(/\bAda\b/);
	expect(first?.body).not.toContain(String(ada.id));
});

test('a receiver that fails is tried again after growing pauses, with the same message under the same id', async () => {
	const journey = await passingOn();
	const {db, ada, receiver, clock} = journey;
	receiver.answer({status: 503});
	await walkTo({db, person: ada}, 'kept');
	await heard(receiver, 1);
	const waits: number[] = [];
	for (let tries = 2; tries <= 4; tries++) {
		const at = () =>
			db.selectFrom('forward').select(['notBefore', 'lastError', 'attempts']).executeTakeFirstOrThrow();
		await vi.waitFor(
			async () => expect(await at()).toMatchObject({attempts: tries - 1, lastError: 'answered 503'}),
			20_000,
		);
		const waitMs = (await at()).notBefore - clock.now();
		waits.push(waitMs);
		clock.forward(waitMs - 1);
		await ada.sends('/help');
		expect(receiver.heard).toHaveLength(tries - 1);
		if (tries === 4) receiver.answer({status: 204});
		clock.forward(1);
		await heard(receiver, tries);
	}
	// 5 s, 5 min and 30 min, each up to a tenth longer.
	for (const [index, planMs] of [5000, 5 * minuteMs, 30 * minuteMs].entries()) {
		expect(waits[index]).toBeGreaterThanOrEqual(planMs);
		expect(waits[index]).toBeLessThanOrEqual(planMs * 1.1);
	}
	const all = await heard(receiver, 4);
	expect(new Set(all.map(({webhookId}) => webhookId)).size).toBe(1);
	expect(new Set(all.map(({body}) => body)).size).toBe(1);
	await journey.forward(100 * 3_600_000);
	await ada.sends('/help');
	await heard(receiver, 4);
	journey.check();
});

test('a mended draft is passed on as a change of the same record', async () => {
	const journey = await passingOn();
	const {db, ada, receiver} = journey;
	await walkTo({db, person: ada}, 'kept');
	await heard(receiver, 1);
	await changeNewest(ada, 'Change how many', '5');
	const [first, second] = await heard(receiver, 2);
	expect(second).toMatchObject({type: 'record.changed', data: {organismQuantity: 5}});
	expect(second?.data.occurrenceID).toBe(first?.data.occurrenceID);
	expect(second?.webhookId).not.toBe(first?.webhookId);
	journey.check();
});

test('a deleted draft is withdrawn at the receiver, and nothing of it stays in the queue', async () => {
	const journey = await passingOn();
	const {db, ada, receiver} = journey;
	await walkTo({db, person: ada}, 'kept', {where: person => person.sends('Secret Cove')});
	await heard(receiver, 1);
	await changeNewest(ada, 'Delete', 'Yes, delete it');
	const [first, second] = await heard(receiver, 2);
	expect(second).toMatchObject({type: 'record.withdrawn'});
	expect(second?.data.occurrenceID).toBe(first?.data.occurrenceID);
	const rows = await db.selectFrom('forward').select('body').where('version', '=', 1).execute();
	expect(rows).toEqual([{body: '{}'}]);
	journey.check();
});

test('what a receiver missed while it was away comes in order, and a record taken back meanwhile is only withdrawn', async () => {
	const journey = await passingOn();
	const {db, ada, receiver, clock} = journey;
	receiver.answer({status: 500});
	await walkTo({db, person: ada}, 'kept');
	await changeNewest(ada, 'Change how many', '4');
	await ada.presses('Look at another find');
	await walkTo({db, person: ada}, 'kept');
	const gone = await newestFind(db, ada.id);
	await changeNewest(ada, 'Delete', 'Yes, delete it');
	await vi.waitFor(async () => {
		const waiting = await db.selectFrom('forward').select('lastError').where('attempts', '>', 0).execute();
		expect(waiting.length).toBeGreaterThan(0);
		expect(waiting.every(({lastError}) => lastError === 'answered 500')).toBe(true);
	}, 20_000);
	receiver.answer({status: 200});
	const before = receiver.heard.length;
	await vi.waitFor(
		async () => {
			clock.forward(6 * minuteMs);
			const states = await db.selectFrom('forward').select('state').where('state', '=', 'waiting').execute();
			expect(states).toEqual([]);
		},
		{timeout: 20_000, interval: 300},
	);
	const late = receiver.heard.slice(before).map(({body}) => bodySchema.parse(JSON.parse(body)));
	const told = (uuid: string) =>
		late.filter(({data}) => data.occurrenceID === `urn:uuid:${uuid}`).map(({type}) => type);
	const [kept] = await db.selectFrom('find').select('uuid').orderBy('id').execute();
	expect(told(kept?.uuid ?? '')).toEqual(['record.submitted', 'record.changed']);
	expect(told(gone.uuid)).toEqual(['record.withdrawn']);
});

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
	expect(message).toMatchObject({from: 'bot', photo: {width: 640, height: 480}, buttons: []});
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
