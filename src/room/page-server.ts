import type {HttpBindings} from '@hono/node-server';
import type {Hono} from 'hono';
import type {Core} from './core.ts';

/** What the page needs from the room. */
export type PageRoom = {
	readonly core: Core;
	readonly stopping: AbortSignal;
	readonly forward: (ms: number) => void;
};

/** Serves the web page. */
export function servePage(_app: Hono<{Bindings: HttpBindings}>, _room: PageRoom): void {}
