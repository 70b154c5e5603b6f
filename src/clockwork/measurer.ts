/** Has photos measured in a thread of their own, which may die or hang without harm to any conversation. */
import {fileURLToPath} from 'node:url';
import {Worker} from 'node:worker_threads';
import {type Outcome, outcomeSchema} from '../capsule/outcome.ts';

/** What a photo is measured with; another script and patience only in tests. */
export type MeasurerTools = {readonly script?: string | URL; readonly longestMs?: number};

/** What comes back when a thread died or hung: the photo was not measured, and nobody knows why. */
export type Failed = {readonly kind: 'failed'; readonly error: string};

const mostMemoryMb = 300;

/** Measures one photo in a new thread; never rejects, and always ends within the given time. */
export function measureInThread(
	bytes: Uint8Array,
	{script = ownScript(), longestMs = 20_000}: MeasurerTools = {},
): Promise<Outcome | Failed> {
	return new Promise(resolve => {
		const resourceLimits = {maxOldGenerationSizeMb: mostMemoryMb};
		const worker = new Worker(script, {workerData: {bytes}, resourceLimits});
		worker.unref();
		const end = (outcome: Outcome | Failed) => {
			clearTimeout(timer);
			resolve(outcome);
			void worker.terminate();
		};
		const timer = setTimeout(() => end({kind: 'failed', error: 'the measuring took too long'}), longestMs);
		worker.on('message', (message: unknown) => {
			const read = outcomeSchema.safeParse(message);
			end(read.success ? read.data : {kind: 'failed', error: 'no outcome came of the measuring'});
		});
		worker.on('error', error => end({kind: 'failed', error: String(error)}));
		worker.on('exit', code => end({kind: 'failed', error: `the thread left with ${code}`}));
	});
}

/** The thread's script; Node 20 reads no TypeScript, so from source the last build is taken. */
function ownScript(): string {
	const beside = fileURLToPath(new URL('./measuring-thread.js', import.meta.url));
	return import.meta.url.endsWith('.ts')
		? beside.replace(/([\\/])src([\\/]clockwork[\\/])/, '$1dist$1src$2')
		: beside;
}
