/** Has photos measured in a thread of their own; a photo that kills it harms nobody. */
import {type Outcome, outcomeSchema} from '../capsule/outcome.ts';
import {openThread, scriptBeside} from './thread.ts';

/** Measures photos until it is stopped. */
export type Measurer = {
	/** What is measured on a photo; rejects when the thread dies, leaves or takes too long. */
	readonly measure: (photo: Uint8Array) => Promise<Outcome>;
	readonly stop: () => Promise<void>;
};

/** What a photo is measured with; another script and patience only in tests. */
export type MeasurerTools = {readonly script?: string | URL; readonly longestMs?: number};

/** Room for a photo of the largest size that is taken, several times over. */
const mostMemoryMb = 512;
/** A photo makes many small points; with room for them a sixth of its processor time was saved on sixty made-up ones. */
const youngMemoryMb = 96;

/** Opens a measurer; its thread starts with the first photo, and anew after it died or hung. */
export function openMeasurer({
	script = scriptBeside(import.meta.url, './measuring-thread.js'),
	longestMs = 20_000,
}: MeasurerTools = {}): Measurer {
	const thread = openThread({
		script,
		workerData: undefined,
		longestMs,
		mostMemoryMb,
		youngMemoryMb,
		work: 'the measuring',
	});
	return {
		measure: async photo => outcomeSchema.parse(await thread.ask(photo)),
		stop: thread.stop,
	};
}
