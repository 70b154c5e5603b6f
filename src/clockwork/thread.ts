/** Work done in a thread of its own, so that no conversation waits for it and its death harms none. */
import {fileURLToPath} from 'node:url';
import {Worker} from 'node:worker_threads';
import {z} from 'zod';

/** A thread that answers what it is asked until it is stopped. */
export type Thread = {
	/** Rejects when the thread says why not, dies or takes too long. */
	readonly ask: (question: unknown) => Promise<unknown>;
	readonly stop: () => Promise<void>;
};

/** The script of a thread, what it works with, and how long it may take for one answer. */
export type ThreadTools = {
	readonly script: string | URL;
	readonly workerData: unknown;
	readonly longestMs: number;
	/** The thread dies when it wants more; megabytes, the platform's own limit without it. */
	readonly mostMemoryMb?: number;
	/** Room for what lives only a moment; more of it means that it is cleared away less often. */
	readonly youngMemoryMb?: number;
	/** What the work is called where it fails. */
	readonly work: string;
};

const answerSchema = z.object({
	id: z.number().int(),
	answer: z.unknown().optional(),
	error: z.string().optional(),
});

type Waiting = {
	readonly resolve: (answer: unknown) => void;
	readonly reject: (error: Error) => void;
	readonly timer: NodeJS.Timeout;
};

/** Opens a thread; it starts with the first question, and anew after it died or hung. */
export function openThread({script, workerData, longestMs, work, ...memory}: ThreadTools): Thread {
	const {mostMemoryMb, youngMemoryMb} = memory;
	const resourceLimits = {
		...(mostMemoryMb === undefined ? {} : {maxOldGenerationSizeMb: mostMemoryMb}),
		...(youngMemoryMb === undefined ? {} : {maxYoungGenerationSizeMb: youngMemoryMb}),
	};
	const waiting = new Map<number, Waiting>();
	let worker: Worker | undefined;
	let last = 0;
	const settle = (id: number, how: (one: Waiting) => void) => {
		const one = waiting.get(id);
		if (!one) return;
		clearTimeout(one.timer);
		waiting.delete(id);
		how(one);
	};
	const dropThread = (why: string) => {
		const old = worker;
		worker = undefined;
		for (const id of waiting.keys()) settle(id, ({reject}) => reject(new Error(why)));
		return old?.terminate();
	};
	const thread = (): Worker => {
		if (worker) return worker;
		const started = new Worker(script, {workerData, resourceLimits});
		started.unref();
		started.on('message', (message: unknown) => {
			const read = answerSchema.safeParse(message);
			if (!read.success) return void dropThread(`${work} said what nobody can read`);
			const {id, answer, error} = read.data;
			settle(id, ({resolve, reject}) =>
				error === undefined && answer !== undefined
					? resolve(answer)
					: reject(new Error(error ?? `${work} came to nothing`)),
			);
		});
		started.on('error', error => {
			if (worker === started) void dropThread(String(error));
		});
		started.on('exit', code => {
			if (worker === started) void dropThread(`the thread left with ${code}`);
		});
		worker = started;
		return started;
	};
	return {
		ask: question =>
			new Promise((resolve, reject) => {
				const id = ++last;
				const timer = setTimeout(() => void dropThread(`${work} took too long`), longestMs);
				timer.unref();
				waiting.set(id, {resolve, reject, timer});
				thread().postMessage({id, question});
			}),
		stop: async () => {
			await dropThread('the program stops');
		},
	};
}

/** The built script beside a module; Node 20 reads no TypeScript, so from source the last build is taken. */
export function scriptBeside(module: string, name: string): string {
	const beside = fileURLToPath(new URL(name, module));
	return module.endsWith('.ts') ? beside.replace(/([\\/])src([\\/]clockwork[\\/])/, '$1dist$1src$2') : beside;
}
