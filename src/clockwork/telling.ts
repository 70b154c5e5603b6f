/** The loop that tells many: woken when something is to be told, and when the limits let the next message through. */
import {recoverDeliveries} from '../store/deliveries.ts';
import {type BroadcastTools, openBroadcasts} from './broadcasts.ts';
import {startLoop} from './loop.ts';

/** What telling works with; it wakes itself. */
export type TellingTools = Omit<BroadcastTools, 'wakeIn'> & {
	/** Looks for days that are over; true when there may be more. */
	readonly afterDays: () => Promise<boolean>;
	/** Called when rows were put into the outbox. */
	readonly onPosted: () => void;
};

/** The running loop. */
export type Telling = {readonly wake: () => void; readonly stop: () => Promise<void>};

const pauseMs = 500;
const afterDaysPauseMs = 60_000;

/** Starts telling; what was in hand when the program died is marked first. */
export async function startTelling(tools: TellingTools): Promise<Telling> {
	await recoverDeliveries(tools.db);
	let timer: NodeJS.Timeout | undefined;
	const wakeIn = (ms: number) => {
		clearTimeout(timer);
		timer = setTimeout(() => loop.wake(), Math.max(1, ms));
	};
	const onProgress: BroadcastTools['onProgress'] = async (...progress) => {
		await tools.onProgress(...progress);
		tools.onPosted();
	};
	const broadcasts = openBroadcasts({...tools, onProgress, wakeIn}, () => loop.wake());
	const loop = startLoop({name: 'broadcasts', work: broadcasts.work, pauseMs, log: tools.log});
	const after = startLoop({
		name: 'days over',
		work: tools.afterDays,
		pauseMs: afterDaysPauseMs,
		log: tools.log,
	});
	return {
		wake: loop.wake,
		stop: async () => {
			await Promise.all([loop.stop(), after.stop()]);
			clearTimeout(timer);
			await broadcasts.drained();
		},
	};
}
