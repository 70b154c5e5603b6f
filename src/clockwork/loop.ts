/** A piece of work done again and again: while there is some, then whenever it is woken, else after a pause. */

export type Loop = {readonly wake: () => void; readonly stop: () => Promise<void>};

/** One kind of work done again and again, and how long it rests when there is nothing to do. */
export type LoopWork = {
	readonly name: string;
	/** Does one piece; true when there may be more. */
	readonly work: () => Promise<boolean>;
	readonly pauseMs: number;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
};

/** Starts a loop; an error in one piece is logged and the loop goes on after its pause. */
export function startLoop({name, work, pauseMs, log}: LoopWork): Loop {
	let isStopping = false;
	let isWoken = false;
	let wakeSleeper: (() => void) | undefined;
	const sleep = () =>
		new Promise<void>(resolve => {
			const timer = setTimeout(resolve, pauseMs);
			wakeSleeper = () => {
				clearTimeout(timer);
				resolve();
			};
		});
	const run = async () => {
		while (!isStopping) {
			isWoken = false;
			const hasMore = await work().catch(error => {
				log({level: 'error', what: 'clockwork', loop: name, error: String(error)});
				return false;
			});
			// Without giving way here a busy loop would starve the updates.
			if (hasMore) await new Promise(resolve => setImmediate(resolve));
			else if (!isWoken && !isStopping) await sleep();
		}
	};
	const done = run();
	const wake = () => {
		isWoken = true;
		wakeSleeper?.();
	};
	return {
		wake,
		stop: async () => {
			isStopping = true;
			wake();
			await done;
		},
	};
}
