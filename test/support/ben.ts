/** Ben, who has finds of his own in the group while Ada goes on with hers. */
import {type Actor, dataOf} from './actor.ts';

/** The word on safety is read in private, so that it is no news in the group. */
export async function welcome(person: Actor): Promise<void> {
	await person.sends('/start');
	await person.presses('I have read this, begin');
}

/** Ben's finds in the group, over and over, up to the photo. */
const stumbles = ['/find', 'Yes, like that', 'No, empty and light', '/say where is the button'] as const;

/** Ben has finds of his own and answers them while Ada goes on; what he does is not waited for. */
export function stumbling(ben: Actor): () => Promise<void> {
	let done = 0;
	return async () => {
		const stumble = stumbles[done++ % stumbles.length] ?? '/find';
		if (stumble.startsWith('/')) ben.room.sends(stumble, {chat: ben.chat});
		else pressOwn(ben, stumble);
	};
}

/** Not every message of the group says whom it is for; Ben's questions do. */
function pressOwn(ben: Actor, label: string): void {
	const own = ben.all.findLast(({text}) => text.startsWith('Ben, no. '));
	if (own) ben.room.presses(dataOf(own, label), {chat: ben.chat, messageId: own.id});
}
