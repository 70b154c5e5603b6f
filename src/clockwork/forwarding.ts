/** Sends the messages about records to whoever keeps them, one at a time, until they are heard or given up. */
import type {Receiver} from '../settings.ts';
import {
	buryForward,
	claimForward,
	type Forward,
	markForwarded,
	nextToForward,
	postponeForward,
} from '../store/forwards.ts';
import type {Db} from '../store/schema.ts';
import {postToAddress} from './forward-address.ts';
import {putIntoFolder} from './forward-folder.ts';
import type {Outcome} from './forward-outcome.ts';

/** What forwarding needs from outside; `now` is UTC ms, `jitter` gives 0 to 1. */
export type ForwardTools = {
	readonly db: Db;
	readonly now: number;
	readonly forward: Receiver | undefined;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
	readonly jitter: () => number;
	/** How long an answer is waited for; 20 s unless given. */
	readonly timeoutMs?: number;
};

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
	const outcome = await deliver(tools, forward, message);
	const tried = {forward: id, record: message.record, attempt: attempts + 1};
	switch (outcome.kind) {
		case 'heard':
			await markForwarded(db, {id, now});
			tools.log({what: 'forward-sent', ...tried});
			return true;
		case 'gone':
			await buryForward(db, {id, error: outcome.error});
			tools.log({what: 'forward-dead', ...tried, error: outcome.error});
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
		log({what: 'forward-dead', ...tried});
		return;
	}
	const patienceMs = Math.min(retryAfterMs, longestPatienceMs);
	const delayMs = Math.round(Math.max(pauseMs, patienceMs) * (1 + jitterShare * jitter()));
	await postponeForward(db, {id, notBefore: now + delayMs, error});
	log({what: 'forward-later', ...tried, delayMs});
}

function deliver({now, timeoutMs}: ForwardTools, receiver: Receiver, message: Forward): Promise<Outcome> {
	return receiver.kind === 'folder'
		? putIntoFolder(receiver.folder, message)
		: postToAddress({url: receiver.url, secret: receiver.secret, now, timeoutMs}, message);
}

function never(value: never): never {
	throw new Error(`Expected a known outcome of a try; got ${JSON.stringify(value)}`);
}
