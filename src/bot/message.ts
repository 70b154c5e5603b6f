/** A message that is no command: words, a photo, a place, or something that no question takes. */
import type {Message} from 'grammy/types';
import type {FindEvent} from '../find/events.ts';
import {packButton} from './button.ts';
import {hearPlaceIn} from './commands/tellme.ts';
import {hearPlan} from './day-plan.ts';
import {type Ctx, type Desk, readerAt, sayHere} from './desk.ts';
import {eventIn, pictureIn} from './event.ts';
import {turnFind} from './find-turn.ts';
import {answerLetter} from './letters.ts';
import {purposeOf, type SpokenOf} from './next-words.ts';
import {takePicture} from './take-picture.ts';
import {hearVerifier} from './verifier-words.ts';
import {mayAnswer} from './whose.ts';

/** Hands a message to what it is for. */
export async function hearMessage(ctx: Ctx): Promise<void> {
	const {desk, message} = ctx;
	if (!message || message.new_chat_members || message.left_chat_member || message.pinned_message) return;
	// An administrator bot hears a whole group: what is not said to us is not for us.
	if (desk.chat.kind === 'group' && message.reply_to_message?.from?.id !== ctx.me.id) return;
	const purpose = await purposeOf(desk, message);
	switch (purpose.kind) {
		case 'verifier':
			return hearVerifier(desk, purpose.parts, message);
		case 'letter':
			return answerLetter(desk, purpose.letter, message);
		case 'plan':
			return hearPlan(desk, purpose.day, message);
		case 'place':
			return hearPlaceIn(desk, message);
		case 'find':
			return hearAbout(desk, purpose.find, message);
	}
}

/** Hands what a message says to a find. */
export async function hearAbout(desk: Desk, spokenOf: SpokenOf, message: Message): Promise<void> {
	const picture = pictureIn(message);
	if (!picture) return hearEvent(desk, spokenOf, eventIn(message));
	if ('refused' in picture) return hearEvent(desk, spokenOf, {kind: 'odd', what: picture.refused});
	// A photo never goes to a find that its sender may not answer for.
	if (spokenOf === 'none' || spokenOf === 'which' || !mayAnswer(desk, spokenOf))
		return hearEvent(desk, spokenOf, {kind: 'odd', what: 'other'});
	return hearEvent(desk, spokenOf, await takePicture(desk, spokenOf, {...picture, message}));
}

/** Hands an event to a find, if there is one and the person may answer for it. */
export async function hearEvent(desk: Desk, spokenOf: SpokenOf, event: FindEvent): Promise<void> {
	const {say} = readerAt(desk);
	if (spokenOf === 'which') return sayHere(desk, say.say('say-which'));
	if (spokenOf === 'none') {
		const begin = {text: say.say('begin'), data: packButton({kind: 'begin'})};
		return sayHere(desk, say.say('nothing-open'), [[begin]]);
	}
	if (!mayAnswer(desk, spokenOf)) return sayHere(desk, say.say('not-yours'));
	await turnFind(desk, spokenOf, event);
}
