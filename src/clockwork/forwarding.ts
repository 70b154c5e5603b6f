/** Sends the messages about records to whoever keeps them, one at a time, until they are heard or given up. */
import {signedHeaders} from '../record/webhook.ts';
import {
	buryForward,
	claimForward,
	type Forward,
	markForwarded,
	nextToForward,
	postponeForward,
} from '../store/forwards.ts';
import type {Db} from '../store/schema.ts';

/** What forwarding needs from outside; `now` is UTC ms, `jitter` gives 0 to 1. */
export type ForwardTools = {
	readonly db: Db;
	readonly now: number;
	readonly forward: {readonly url: string; readonly secret: string} | undefined;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
	readonly jitter: () => number;
	/** How long an answer is waited for; 20 s unless given. */
	readonly timeoutMs?: number;
};

type Outcome =
	| {readonly kind: 'heard'}
	| {readonly kind: 'gone'; readonly error: string}
	| {readonly kind: 'failed'; readonly error: string; readonly retryAfterMs: number};

const secondMs = 1000;
const minuteMs = 60 * secondMs;
const hourMs = 60 * minuteMs;

/** From one try to the next; after the try that follows the last pause a message is given up. */
const pausesMs = [
	5 * secondMs,
	5 * minuteMs,
	30 * minuteMs,
	2 * hourMs,
	5 * hourMs,
	10 * hourMs,
	14 * hourMs,
	20 * hourMs,
	24 * hourMs,
	24 * hourMs,
	24 * hourMs,
] as const;
/** Each pause grows by up to this share, so that what failed together does not come back together. */
const jitterShare = 0.1;
/** A receiver may ask for patience, but not for so much that a slip of its clock loses the message. */
const longestPatienceMs = 24 * hourMs;
// Standard Webhooks 1.0.0 advises 15 to 30 s.
const usualTimeoutMs = 20 * secondMs;
/** A message whose try was cut off by a stop of the program is free again after this time. */
const heldMs = minuteMs;

/** Tries one message that is due; true when one was tried. No transaction is open while the answer is waited for. */
export async function forwardNext(tools: ForwardTools): Promise<boolean> {
	const {db, now, forward} = tools;
	if (!forward) return false;
	const message = await nextToForward(db, now);
	if (!message) return false;
	const {id, attempts} = message;
	if (!(await claimForward(db, {id, attempts, until: now + heldMs}))) return true;
	const outcome = await post(tools, forward, message);
	const tried = {forward: id, record: message.record, attempt: attempts + 1};
	switch (outcome.kind) {
		case 'heard':
			await markForwarded(db, {id, now});
			tools.log({event: 'forward-sent', ...tried});
			return true;
		case 'gone':
			await buryForward(db, {id, error: outcome.error});
			tools.log({event: 'forward-dead', ...tried, error: outcome.error});
			return true;
		case 'failed':
			await putOff(tools, message, outcome);
			return true;
		default:
			return never(outcome);
	}
}

async function putOff(
	{db, now, log, jitter}: ForwardTools,
	{id, record, attempts}: Forward,
	{error, retryAfterMs}: Extract<Outcome, {kind: 'failed'}>,
): Promise<void> {
	const pauseMs = pausesMs[attempts];
	const tried = {forward: id, record, attempt: attempts + 1, error};
	if (pauseMs === undefined) {
		await buryForward(db, {id, error});
		log({event: 'forward-dead', ...tried});
		return;
	}
	const patienceMs = Math.min(retryAfterMs, longestPatienceMs);
	const delayMs = Math.round(Math.max(pauseMs, patienceMs) * (1 + jitterShare * jitter()));
	await postponeForward(db, {id, notBefore: now + delayMs, error});
	log({event: 'forward-later', ...tried, delayMs});
}

async function post(
	{now, timeoutMs}: ForwardTools,
	{url, secret}: NonNullable<ForwardTools['forward']>,
	{webhookId, body}: Forward,
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

function never(value: never): never {
	throw new Error(`Expected a known outcome of a try; got ${JSON.stringify(value)}`);
}
