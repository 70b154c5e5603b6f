/** Has pictures drawn in a thread of their own, so that no conversation waits for a drawing. */
import {fileURLToPath} from 'node:url';
import {Worker} from 'node:worker_threads';
import {z} from 'zod';
import type {CallPicture} from '../store/call.ts';
import type {StudioFolders} from './studio.ts';

/** Draws pictures until it is stopped. */
export type Drawer = {
	/** The bytes of a PNG; rejects when it cannot be drawn or takes too long. */
	readonly draw: (picture: CallPicture) => Promise<Uint8Array>;
	readonly stop: () => Promise<void>;
};

/** What the thread works with; another script and patience only in tests. */
export type DrawerTools = StudioFolders & {readonly script?: string | URL; readonly longestMs?: number};

const answerSchema = z.object({
	id: z.number().int(),
	bytes: z.instanceof(Uint8Array).optional(),
	error: z.string().optional(),
});

type Waiting = {
	readonly resolve: (bytes: Uint8Array) => void;
	readonly reject: (error: Error) => void;
	readonly timer: NodeJS.Timeout;
};

/** Opens a drawer; its thread starts with the first picture, and anew after it died or hung. */
export function openDrawer({script = ownScript(), longestMs = 20_000, ...folders}: DrawerTools): Drawer {
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
		const started = new Worker(script, {workerData: folders});
		started.unref();
		started.on('message', (message: unknown) => {
			const {id, bytes, error} = answerSchema.parse(message);
			settle(id, ({resolve, reject}) =>
				bytes ? resolve(bytes) : reject(new Error(error ?? 'nothing was drawn')),
			);
		});
		started.on('error', error => {
			if (worker === started) void dropThread(String(error));
		});
		worker = started;
		return started;
	};
	return {
		draw: picture =>
			new Promise((resolve, reject) => {
				const id = ++last;
				const timer = setTimeout(() => void dropThread('the drawing took too long'), longestMs);
				timer.unref();
				waiting.set(id, {resolve, reject, timer});
				thread().postMessage({id, picture});
			}),
		stop: async () => {
			await dropThread('the program stops');
		},
	};
}

/** The thread's script; Node 20 reads no TypeScript, so from source the last build is taken. */
function ownScript(): string {
	const beside = fileURLToPath(new URL('./drawing-thread.js', import.meta.url));
	return import.meta.url.endsWith('.ts')
		? beside.replace(/([\\/])src([\\/]clockwork[\\/])/, '$1dist$1src$2')
		: beside;
}
