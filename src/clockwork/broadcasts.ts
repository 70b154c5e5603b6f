/** Tells many: broadcasts whose hour has come are listed, sent within the limits, shown to their coordinator, and done. */
import {type Broadcast, broadcastsAtWork, markProgress, moveBroadcast} from '../store/broadcasts.ts';
import {dropWaiting, isUnderWay, type Ledger, ledgerOf} from '../store/deliveries.ts';
import type {Tx} from '../store/schema.ts';
import {type DeliveringTools, openDelivering} from './delivering.ts';
import {type GatheringTools, gatherNext} from './gathering.ts';

/** What telling many works with. */
export type BroadcastTools = GatheringTools &
	DeliveringTools & {
		/** Shows the coordinator how far a broadcast is, as rows of the outbox. */
		readonly onProgress: (tx: Tx, broadcast: Broadcast, ledger: Ledger) => Promise<void>;
		/** Wakes this loop after so many milliseconds. */
		readonly wakeIn: (ms: number) => void;
	};

/** The coordinator's message is not changed more often than this. */
const progressMs = 10_000;

/** Opens the broadcaster; `work` does what may be done now and says whether anything was. */
export function openBroadcasts(tools: BroadcastTools, onDone: () => void) {
	const delivering = openDelivering(tools, onDone);
	return {
		work: async (): Promise<boolean> => {
			const atWork = await broadcastsAtWork(tools.db, tools.now());
			let isDoing = false;
			for (const broadcast of atWork) isDoing = (await advance(tools, broadcast)) || isDoing;
			const running = atWork.filter(({state}) => state === 'running');
			const started = await delivering.start(running);
			for (const broadcast of running) await attend(tools, broadcast);
			if (!isDoing && started === 0 && running.length > 0) tools.wakeIn(tools.pace.opensAt() - tools.now());
			return isDoing || started > 0;
		},
		/** Resolves when nothing is in flight. */
		drained: delivering.drained,
	};
}

/** Begins a broadcast, or makes its list longer; what would be of no use by now is dropped. */
async function advance(tools: BroadcastTools, broadcast: Broadcast): Promise<boolean> {
	const {db, now} = tools;
	const {id, state} = broadcast;
	if (now() >= broadcast.uselessAt) return finish(tools, broadcast, 'useless');
	if (state === 'running') return false;
	if (state === 'waiting') return moveBroadcast(db, {id, from: ['waiting'], to: 'gathering'});
	try {
		await gatherNext(tools, broadcast);
	} catch (error) {
		tools.log({level: 'error', what: 'broadcast failed', broadcast: id, error: String(error)});
		return finish(tools, broadcast, 'stopped');
	}
	return true;
}

async function finish(
	tools: BroadcastTools,
	broadcast: Broadcast,
	state: 'useless' | 'stopped',
): Promise<boolean> {
	await dropWaiting(tools.db, {broadcast: broadcast.id}, state);
	await conclude(tools, broadcast);
	return false;
}

/** A broadcast that has nothing left to do is done; its coordinator is shown how far it is, but not too often. */
async function attend(tools: BroadcastTools, broadcast: Broadcast): Promise<void> {
	const {db, now} = tools;
	if (!(await isUnderWay(db, broadcast.id))) return conclude(tools, broadcast);
	if (broadcast.progressRow === null) return;
	if (now() - (broadcast.progressAt ?? broadcast.dueAt) < progressMs) return;
	await show(tools, broadcast);
}

async function conclude(tools: BroadcastTools, broadcast: Broadcast): Promise<void> {
	const from = ['waiting', 'gathering', 'running'] as const;
	if (!(await moveBroadcast(tools.db, {id: broadcast.id, from, to: 'done'}))) return;
	const ledger = await ledgerOf(tools.db, broadcast.id);
	tools.log({level: 'info', what: 'broadcast done', broadcast: broadcast.id, ...ledger});
	if (broadcast.progressRow !== null) await show(tools, {...broadcast, state: 'done'});
}

async function show({db, now, onProgress}: BroadcastTools, broadcast: Broadcast): Promise<void> {
	const ledger = await ledgerOf(db, broadcast.id);
	await db.transaction().execute(async tx => {
		await markProgress(tx, {id: broadcast.id, now: now()});
		await onProgress(tx, broadcast, ledger);
	});
}
