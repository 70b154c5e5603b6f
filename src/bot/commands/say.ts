/** /say: an answer in a group, where plain words do not reach a bot. */
import {type Ctx, readerAt, sayHere} from '../desk.ts';
import {hearEvent} from '../message.ts';
import {findSpokenOf} from '../next-words.ts';

/** Takes the words after the command as the answer to the person's present question, or to the only one of the group. */
export async function say(ctx: Ctx): Promise<void> {
	const words = typeof ctx.match === 'string' ? ctx.match.trim() : '';
	if (words === '') return sayHere(ctx.desk, readerAt(ctx.desk).say.say('say-how'));
	return hearEvent(ctx.desk, await findSpokenOf(ctx.desk), {kind: 'text', text: words});
}
