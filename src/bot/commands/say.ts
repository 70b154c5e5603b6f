/** /say: an answer in a group, where plain words do not reach a bot. */
import {type Ctx, readerAt, sayHere} from '../desk.ts';
import {hearForSeat} from '../message.ts';

/** Takes the words after the command as the answer to the person's present question. */
export async function say(ctx: Ctx): Promise<void> {
	const words = typeof ctx.match === 'string' ? ctx.match.trim() : '';
	if (words === '') return sayHere(ctx.desk, readerAt(ctx.desk).say.say('say-how'));
	return hearForSeat(ctx.desk, undefined, {kind: 'text', text: words});
}
