import {afterEach, expect, test} from 'vitest';
import {type ForwardTools, forwardNext} from '../../src/clockwork/forwarding.ts';
import {queueForward} from '../../src/store/forwards.ts';
import {openStore} from '../../src/store/open.ts';
import type {Db} from '../../src/store/schema.ts';
import {newFile} from '../record/kept.ts';
import {type Receiver, startReceiver} from './receiver.ts';

// Bytes 00 to 1f in base64.
const secret = 'whsec_AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8=';
const minuteMs = 60_000;
const open: (() => Promise<void>)[] = [];

afterEach(async () => {
	for (const close of open.splice(0)) await close();
});

type Scene = {
	readonly db: Db;
	readonly receiver: Receiver;
	readonly lines: readonly object[];
	readonly tools: (change?: Partial<ForwardTools>) => ForwardTools;
};

/** The clock of the scene starts at the real time, since a receiver refuses signatures of another day. */
const begin = Date.now();

async function scene(file = newFile()): Promise<Scene> {
	const receiver = await startReceiver(secret);
	open.push(receiver.close);
	const db = await openStore(file);
	const lines: object[] = [];
	const forward = {kind: 'address', url: receiver.url, secret} as const;
	const log = (line: object) => void lines.push(line);
	return {
		db,
		receiver,
		lines,
		tools: change => ({db, now: begin, forward, log, jitter: () => 0, ...change}),
	};
}

const message = (webhookId: string, record = 'a') => ({
	record,
	version: 1,
	webhookId,
	body: `{"type":"record.submitted","data":{"verbatimLocality":"Plage de l’Écluse, ${webhookId}"}}`,
	now: begin,
});

function stateOf(db: Db) {
	return db
		.selectFrom('forward')
		.select(['state', 'attempts', 'notBefore', 'lastError', 'sentAt'])
		.where('id', '=', 1)
		.executeTakeFirstOrThrow();
}

test('a message arrives once, signed, byte for byte', async () => {
	const {db, receiver, lines, tools} = await scene();
	await queueForward(db, message('msg-1'));
	expect(await forwardNext(tools())).toBe(true);
	expect(await forwardNext(tools())).toBe(false);
	expect(receiver.heard).toEqual([{webhookId: 'msg-1', body: message('msg-1').body, valid: true}]);
	expect(await stateOf(db)).toMatchObject({state: 'sent', attempts: 1, sentAt: begin, lastError: null});
	expect(lines).toEqual([{what: 'forward-sent', forward: 1, record: 'a', attempt: 1}]);
});

test('without an address nothing is tried and nothing is lost', async () => {
	const {db, receiver, tools} = await scene();
	await queueForward(db, message('msg-1'));
	expect(await forwardNext(tools({forward: undefined}))).toBe(false);
	expect(receiver.heard).toEqual([]);
	expect(await stateOf(db)).toMatchObject({state: 'waiting', attempts: 0});
});

test('a secret that the receiver does not share is seen in the signature', async () => {
	const {db, receiver, tools} = await scene();
	await queueForward(db, message('msg-1'));
	const other = `whsec_${Buffer.alloc(32, 7).toString('base64')}`;
	const forward = {kind: 'address', url: receiver.url, secret: other} as const;
	await forwardNext(tools({forward}));
	expect(receiver.heard).toMatchObject([{valid: false}]);
});

test.each([500, 503, 429, 404, 401, 302])(
	'after answer %d the message is tried again with the same id',
	async status => {
		const {db, receiver, tools} = await scene();
		await queueForward(db, message('msg-1'));
		receiver.answer({status, headers: {location: '/elsewhere'}});
		expect(await forwardNext(tools())).toBe(true);
		expect(await stateOf(db)).toMatchObject({
			state: 'waiting',
			attempts: 1,
			notBefore: begin + 5000,
			lastError: `answered ${status}`,
		});
		expect(await forwardNext(tools({now: begin + 4999}))).toBe(false);
		receiver.answer({status: 200});
		expect(await forwardNext(tools({now: begin + 5000}))).toBe(true);
		expect(receiver.heard.map(({webhookId}) => webhookId)).toEqual(['msg-1', 'msg-1']);
		expect(receiver.heard.every(({valid}) => valid)).toBe(true);
		expect(await stateOf(db)).toMatchObject({state: 'sent', attempts: 2});
	},
);

test('an address that is gone for good is not tried again', async () => {
	const {db, receiver, lines, tools} = await scene();
	await queueForward(db, message('msg-1'));
	receiver.answer({status: 410});
	await forwardNext(tools());
	expect(await stateOf(db)).toMatchObject({state: 'dead', lastError: 'answered 410'});
	expect(await forwardNext(tools({now: begin + 1e9}))).toBe(false);
	expect(lines).toMatchObject([{what: 'forward-dead'}]);
});

// The plan of Standard Webhooks 1.0.0 (at once, 5 s, 5 min, 30 min, 2 h, 5 h, 10 h, 14 h, 20 h, 24 h), then daily.
test('the pauses grow as planned, and after twelve tries the message is given up', async () => {
	const {db, receiver, lines, tools} = await scene();
	await queueForward(db, message('msg-1'));
	receiver.answer({status: 500});
	const minutes: number[] = [];
	let now = begin;
	for (let tries = 0; tries < 11; tries++) {
		await forwardNext(tools({now}));
		const {notBefore} = await stateOf(db);
		minutes.push((notBefore - now) / minuteMs);
		now = notBefore;
	}
	expect(minutes).toEqual([1 / 12, 5, 30, 120, 300, 600, 840, 1200, 1440, 1440, 1440]);
	await forwardNext(tools({now}));
	expect(await stateOf(db)).toMatchObject({state: 'dead', attempts: 12});
	expect(receiver.heard).toHaveLength(12);
	expect(new Set(receiver.heard.map(({webhookId}) => webhookId))).toEqual(new Set(['msg-1']));
	expect(lines.at(-1)).toMatchObject({what: 'forward-dead', attempt: 12});
});

test('chance makes a pause up to a tenth longer', async () => {
	const {db, receiver, tools} = await scene();
	await queueForward(db, message('msg-1'));
	receiver.answer({status: 500});
	await forwardNext(tools({jitter: () => 1}));
	expect(await stateOf(db)).toMatchObject({notBefore: begin + 5500});
});

const wholeSecond = Math.ceil(begin / 1000) * 1000;
test.each([
	['in seconds', '90', begin + 90_000],
	['as a date', new Date(wholeSecond + 90_000).toUTCString(), wholeSecond + 90_000],
	['shorter than our own pause', '1', begin + 5000],
	['in the past', new Date(begin - 9e6).toUTCString(), begin + 5000],
	['of a year, which is cut to a day', '31536000', begin + 24 * 60 * minuteMs],
	['that says nothing', 'soon', begin + 5000],
])('a Retry-After %s is heeded', async (_, retryAfter, notBefore) => {
	const {db, receiver, tools} = await scene();
	await queueForward(db, message('msg-1'));
	receiver.answer({status: 429, headers: {'retry-after': retryAfter}});
	await forwardNext(tools());
	expect(await stateOf(db)).toMatchObject({notBefore});
});

test('messages of one record keep their order while another record goes on', async () => {
	const {db, receiver, tools} = await scene();
	for (const one of [message('a-1'), message('a-2'), message('b-1', 'b')]) await queueForward(db, one);
	receiver.answer({status: 500});
	await forwardNext(tools());
	receiver.answer({status: 200});
	expect(await forwardNext(tools())).toBe(true);
	expect(await forwardNext(tools())).toBe(false);
	const later = {now: begin + 5000};
	expect([await forwardNext(tools(later)), await forwardNext(tools(later))]).toEqual([true, true]);
	expect(receiver.heard.map(({webhookId}) => webhookId)).toEqual(['a-1', 'b-1', 'a-1', 'a-2']);
});

test('a receiver that never answers is given up on for now', async () => {
	const {db, receiver, tools} = await scene();
	await queueForward(db, message('msg-1'));
	receiver.answer('hang');
	expect(await forwardNext(tools({timeoutMs: 60}))).toBe(true);
	expect(await stateOf(db)).toMatchObject({state: 'waiting', attempts: 1, lastError: 'TimeoutError'});
});

test('a receiver that is not there is tried again, and the log holds no address and no words of people', async () => {
	const {db, receiver, lines, tools} = await scene();
	await queueForward(db, message('msg-1'));
	await receiver.close();
	expect(await forwardNext(tools())).toBe(true);
	expect(await stateOf(db)).toMatchObject({state: 'waiting', lastError: 'ECONNREFUSED'});
	expect(lines).toHaveLength(1);
	expect(JSON.stringify(lines)).not.toMatch(/127\.0\.0\.1|Écluse|whsec/);
});

test('other work goes on in the store while an answer is waited for', async () => {
	const {db, receiver, tools} = await scene();
	await queueForward(db, message('msg-1'));
	receiver.answer(() => queueForward(db, message('msg-2', 'b')));
	await forwardNext(tools({timeoutMs: 2000}));
	expect(await db.selectFrom('forward').select(['webhookId', 'state']).orderBy('id').execute()).toEqual([
		{webhookId: 'msg-1', state: 'sent'},
		{webhookId: 'msg-2', state: 'waiting'},
	]);
});

test('a program killed between the answer and the mark repeats the message under the same id', async () => {
	const file = newFile();
	const first = await scene(file);
	await queueForward(first.db, message('msg-1'));
	// The connection to the store dies while the receiver already holds the message.
	first.receiver.answer(() => first.db.destroy());
	await expect(forwardNext(first.tools())).rejects.toThrow();
	expect(first.receiver.heard).toMatchObject([{webhookId: 'msg-1', valid: true}]);

	const second = await scene(file);
	expect(await forwardNext(second.tools({now: begin + minuteMs - 1}))).toBe(false);
	expect(await forwardNext(second.tools({now: begin + minuteMs}))).toBe(true);
	expect(second.receiver.heard).toEqual(first.receiver.heard);
	expect(await stateOf(second.db)).toMatchObject({state: 'sent', attempts: 2});
	expect(await forwardNext(second.tools({now: begin + 1e9}))).toBe(false);
});

test('two that forward at once send a message once', async () => {
	const {db, receiver, tools} = await scene();
	await queueForward(db, message('msg-1'));
	await Promise.all([forwardNext(tools()), forwardNext(tools())]);
	expect(receiver.heard).toHaveLength(1);
});
