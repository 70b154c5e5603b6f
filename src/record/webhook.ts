/** Messages about records to whoever keeps them, signed as Standard Webhooks 1.0.0 says. */
import {Webhook} from 'standardwebhooks';
import type {CheckedRecord} from './checked-record.ts';
import type {Occurrence} from './darwin-core.ts';

/** What happened to a record, when (UTC ms), and the record as it is now. */
export type RecordNews = {
	readonly type: 'record.submitted' | 'record.changed' | 'record.verified' | 'record.withdrawn';
	readonly at: number;
	readonly data: Occurrence | CheckedRecord;
};

/** The body of a message; it is signed and sent byte for byte as it stands. */
export function messageFor(news: RecordNews): string {
	return JSON.stringify({type: news.type, timestamp: new Date(news.at).toISOString(), data: news.data});
}

/**
 * The headers of one try at `now` (UTC ms): the id stays the same over all tries, the time and the signature are new.
 * Throws an Error when the id holds anything that could be taken for another part of what is signed.
 */
export function signedHeaders(signing: {
	readonly secret: string;
	readonly webhookId: string;
	readonly now: number;
	readonly body: string;
}): Readonly<Record<string, string>> {
	const {secret, webhookId, now, body} = signing;
	if (!/^[\w-]+$/.test(webhookId))
		throw new Error(`Expected a webhook id of letters, digits, _ and -; got "${webhookId}"`);
	return {
		'content-type': 'application/json',
		'webhook-id': webhookId,
		'webhook-timestamp': String(Math.floor(now / 1000)),
		'webhook-signature': new Webhook(secret).sign(webhookId, new Date(now), body),
	};
}
