import {z} from 'zod';
import type {Core} from './core.ts';
import {readSetting, writeSetting} from './core.ts';
import {badRequest, refusal} from './refusal.ts';
import {confirmUpdates, markDelivered, waitingUpdates} from './updates.ts';

/** One getUpdates call. */
export type PollRequest = {
	readonly offset: number;
	readonly limit: number;
	readonly timeoutS: number;
	readonly allowed: readonly string[] | undefined;
	readonly hangUp: AbortSignal;
};

/** Long polling: one call at a time waits for updates. */
export type Polling = {
	readonly take: (request: PollRequest) => Promise<readonly unknown[]>;
	/** Ends the waiting call with a conflict, telling it why. */
	readonly end: (why: string) => void;
};

type Ended = {readonly kind: 'changed' | 'late' | 'gone'} | {readonly kind: 'conflict'; readonly why: string};

const webhookSet =
	"Conflict: can't use getUpdates method while webhook is active; use deleteWebhook to delete the webhook first";
const otherCall =
	'Conflict: terminated by other getUpdates request; make sure that only one bot instance is running';

/** Makes the one place where bots wait for updates. */
export function openPolling(core: Core): Polling {
	let endCurrent: ((why: string) => void) | undefined;

	async function take(request: PollRequest): Promise<readonly unknown[]> {
		endCurrent?.(otherCall);
		if (readSetting(core, 'webhook', z.object({url: z.string()})) !== undefined)
			throw refusal(409, webhookSet);
		if (request.limit < 1 || !Number.isInteger(request.offset))
			throw badRequest('wrong parameters of getUpdates');
		if (request.allowed !== undefined) writeSetting(core, 'allowed_updates', request.allowed);
		confirmUpdates(core, request.offset);
		const until = Date.now() + request.timeoutS * 1000;
		for (;;) {
			const batch = waitingUpdates(core, request.limit);
			if (batch.length > 0 || Date.now() >= until) {
				markDelivered(core, batch);
				return batch.map(update => JSON.parse(update.body));
			}
			const ended = await wait(until - Date.now(), request.hangUp);
			if (ended.kind === 'conflict') throw refusal(409, ended.why);
			if (ended.kind === 'gone') return [];
		}
	}

	function wait(forMs: number, hangUp: AbortSignal): Promise<Ended> {
		return new Promise(resolve => {
			const finish = (ended: Ended): void => {
				clearTimeout(timer);
				stopListening();
				hangUp.removeEventListener('abort', hungUp);
				if (endCurrent === conflict) endCurrent = undefined;
				resolve(ended);
			};
			const conflict = (why: string): void => finish({kind: 'conflict', why});
			const hungUp = (): void => finish({kind: 'gone'});
			const timer = setTimeout(() => finish({kind: 'late'}), forMs);
			const stopListening = core.changes.listen(() => finish({kind: 'changed'}));
			hangUp.addEventListener('abort', hungUp);
			endCurrent = conflict;
			if (hangUp.aborted) hungUp();
		});
	}

	return {
		take,
		end: why => {
			endCurrent?.(why);
		},
	};
}
