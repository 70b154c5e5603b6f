/** Has pictures drawn in a thread of their own, so that no conversation waits for a drawing. */
import {z} from 'zod';
import type {CallPicture} from '../store/picture.ts';
import type {StudioFolders} from './studio.ts';
import {openThread, scriptBeside} from './thread.ts';

/** Draws pictures until it is stopped. */
export type Drawer = {
	/** The bytes of a picture; rejects when it cannot be drawn or takes too long. */
	readonly draw: (picture: CallPicture) => Promise<Uint8Array>;
	readonly stop: () => Promise<void>;
};

/** What the thread works with; another script and patience only in tests. */
export type DrawerTools = StudioFolders & {readonly script?: string | URL; readonly longestMs?: number};

const bytesSchema = z.instanceof(Uint8Array);

/** Opens a drawer; its thread starts with the first picture, and anew after it died or hung. */
export function openDrawer({script, longestMs = 20_000, ...folders}: DrawerTools): Drawer {
	const thread = openThread({
		script: script ?? scriptBeside(import.meta.url, './drawing-thread.js'),
		workerData: folders,
		longestMs,
		work: 'the drawing',
	});
	return {
		draw: async picture => bytesSchema.parse(await thread.ask(picture)),
		stop: thread.stop,
	};
}
