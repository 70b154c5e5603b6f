/** /find: a new find. */

import type {Ctx} from '../desk.ts';
import {beginFindHere} from '../find-turn.ts';
import {start} from './start.ts';

/** Begins a find; on the first visit the word on safety comes first. */
export async function beginFindCommand(ctx: Ctx): Promise<void> {
	return ctx.desk.person.isWelcomed ? beginFindHere(ctx.desk) : start(ctx);
}
