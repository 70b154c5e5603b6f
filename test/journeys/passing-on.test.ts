import {expect, onTestFinished, test, vi} from 'vitest';
import {z} from 'zod';
import {type Receiver, startReceiver} from '../clockwork/receiver.ts';
import type {Mode} from '../support/actor.ts';
import {changeNewest} from '../support/drafts.ts';
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
