import {createHmac} from 'node:crypto';
import {Webhook} from 'standardwebhooks';
import {expect, test} from 'vitest';
import {messageFor, signedHeaders} from '../../src/record/webhook.ts';

// The first vector is the one that the libraries of the Standard Webhooks specification test themselves with (public
// repository standard-webhooks/standard-webhooks, commit b2fa7b8). The second is ours: secret bytes 00 to 1f, a letter
// outside ASCII in the body; made with standardwebhooks 1.1.1 and with node:crypto, equal.
const vectors = [
	{
		secret: 'whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw',
		webhookId: 'msg_p5jXN8AQM9LWM0D4loKWxJek',
		timestamp: 1614265330,
		body: '{"test": 2432232314}',
		signature: 'v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=',
	},
	{
		secret: 'whsec_AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8=',
		webhookId: 'msg_0001',
		timestamp: 1777714260,
		body: '{"type":"record.submitted","timestamp":"2026-05-02T09:30:00Z","data":{"id":"rec_0001","count":3,"place":"Plage de l’Écluse"}}',
		signature: 'v1,naZxJhi+KepbNLvhGqh7tQgaO4Ja9YsNdQL4vVjQwXs=',
	},
];

test.each(vectors)('message $webhookId is signed as published', vector => {
	const {secret, webhookId, timestamp, body, signature} = vector;
	expect(signedHeaders({secret, webhookId, now: timestamp * 1000 + 999, body})).toEqual({
		'content-type': 'application/json',
		'webhook-id': webhookId,
		'webhook-timestamp': String(timestamp),
		'webhook-signature': signature,
	});
});

// HMAC-SHA256 (RFC 2104) over id, timestamp and body joined by full stops (Standard Webhooks 1.0.0).
test.each(vectors)('the signature of $webhookId is the plain HMAC of its parts', vector => {
	const key = Buffer.from(vector.secret.slice('whsec_'.length), 'base64');
	const signed = `${vector.webhookId}.${vector.timestamp}.${vector.body}`;
	const expected = `v1,${createHmac('sha256', key).update(signed).digest('base64')}`;
	expect(vector.signature).toBe(expected);
	const headers = signedHeaders({...vector, now: vector.timestamp * 1000});
	expect(headers['webhook-signature']).toBe(expected);
});

test('a receiver takes what we sign, and nothing with one byte changed', () => {
	const [{secret}] = [vectors[1] ?? {secret: ''}];
	const data = {occurrenceID: 'urn:uuid:1', modified: '2026-05-02T09:30:00.000Z', informationWithheld: 'é'};
	const body = messageFor({type: 'record.changed', at: Date.UTC(2026, 4, 2, 9, 30), data});
	const headers = {...signedHeaders({secret, webhookId: 'msg-2', now: Date.now(), body})};
	const receiver = new Webhook(secret);
	expect(receiver.verify(body, headers)).toEqual({
		type: 'record.changed',
		timestamp: '2026-05-02T09:30:00.000Z',
		data,
	});
	expect(() => receiver.verify(`${body} `, headers)).toThrow('No matching signature');
});

// Standard Webhooks 1.0.0: neither id nor timestamp may hold a full stop, which parts what is signed.
test('an id that could be read as another part of the message is an error', () => {
	const [vector] = vectors;
	for (const webhookId of ['a.b', '', 'a b', 'a\nb'])
		expect(() => signedHeaders({secret: vector?.secret ?? '', webhookId, now: 0, body: ''})).toThrow(
			'Expected a webhook id',
		);
});
