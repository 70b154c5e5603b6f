/** A message that asks for a reply, and says of itself what the reply is. */
import {type Desk, postHere} from './desk.ts';
import {escaped} from './words.ts';

/** Asks for words or a photo; `expects` is what a reply means, as the data of a button says it. */
export async function promptHere(
	desk: Desk,
	text: string,
	{expects, find}: {readonly expects: string; readonly find?: number},
): Promise<void> {
	const about = {role: 'prompt', ...(find === undefined ? {} : {find})} as const;
	const html = escaped(text);
	return postHere(desk, {kind: 'send', html, keyboard: [], forceReply: true, expects}, about);
}
