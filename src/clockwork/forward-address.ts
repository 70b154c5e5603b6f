/** An address that receives records: one signed message for each, as Standard Webhooks says. */
import {signedHeaders} from '../record/webhook.ts';
import type {Forward} from '../store/forwards.ts';
import type {Outcome} from './forward-outcome.ts';

/** Where messages go, with what they are signed, and at what time (UTC ms) by which patience. */
export type Addressed = {
	readonly url: string;
	readonly secret: string;
	readonly now: number;
	/** How long an answer is waited for; 20 s unless given. */
	readonly timeoutMs?: number | undefined;
};

const secondMs = 1000;
// Standard Webhooks 1.0.0 advises 15 to 30 s.
const usualTimeoutMs = 20 * secondMs;

/** Sends a message once; every failure comes back as a value. */
export async function postToAddress(
	{url, secret, now, timeoutMs}: Addressed,
	{webhookId, body}: Pick<Forward, 'webhookId' | 'body'>,
): Promise<Outcome> {
	const headers = signedHeaders({secret, webhookId, now, body});
	// A redirect would carry a signed record to an address that the keeper never named.
	const call = {method: 'POST', headers, body, redirect: 'manual'} as const;
	try {
		const signal = AbortSignal.timeout(timeoutMs ?? usualTimeoutMs);
		const answer = await fetch(url, {...call, signal});
		await answer.body?.cancel();
		if (answer.ok) return {kind: 'heard'};
		const error = `answered ${answer.status}`;
		if (answer.status === 410) return {kind: 'gone', error};
		return {kind: 'failed', error, retryAfterMs: retryAfter(answer.headers.get('retry-after'), now)};
	} catch (error) {
		return {kind: 'failed', error: nameOf(error), retryAfterMs: 0};
	}
}

/** Seconds or a date (RFC 9110, 10.2.3) as milliseconds from `now`; 0 when there is nothing readable. */
function retryAfter(header: string | null, now: number): number {
	if (header === null) return 0;
	if (/^\d+$/.test(header)) return Number(header) * secondMs;
	const at = Date.parse(header);
	return Number.isNaN(at) ? 0 : Math.max(0, at - now);
}

/** The short name of a network error; its message could hold the address. */
function nameOf(error: unknown): string {
	if (!(error instanceof Error)) return 'unknown error';
	const {cause} = error;
	if (cause instanceof Error && 'code' in cause && typeof cause.code === 'string') return cause.code;
	return error.name;
}
