/** Has photos measured in a thread of their own; a photo that kills it harms nobody. */
import {type PhotoReading, photoReadingSchema} from '../capsule/reading.ts';
import {openThread, scriptBeside} from './thread.ts';

/** Measures photos until it is stopped. */
export type Measurer = {
	/** What is read from an upright photo, its pixels as given; rejects when the thread dies or takes too long. */
	readonly measure: (photo: Uint8Array) => Promise<PhotoReading>;
	readonly stop: () => Promise<void>;
};

/** Opens a measurer; its thread starts with the first photo, and anew after it died or hung. */
export function openMeasurer({
	script = scriptBeside(import.meta.url, './measuring-thread.js'),
	longestMs = 20_000,
}: {
	readonly script?: string | URL;
	readonly longestMs?: number;
} = {}): Measurer {
	const thread = openThread({script, workerData: undefined, longestMs, work: 'the measuring'});
	return {
		measure: async photo => photoReadingSchema.parse(await thread.ask(photo)),
		stop: thread.stop,
	};
}
