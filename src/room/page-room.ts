import type {Core} from './core.ts';

/** What the page needs from the room. */
export type PageRoom = {
	readonly core: Core;
	/** Aborts when the room closes. */
	readonly stopping: AbortSignal;
	/** Moves the room's time ahead. */
	readonly forward: (ms: number) => void;
};
