/** Words in a private chat that are for no find: answers to the plan of a day, or a place to be told about. */
import type {Message} from 'grammy/types';
import {earOf} from '../store/ears.ts';
import {findOfMessage} from '../store/outbox.ts';
import {hearPlaceToTell} from './commands/tellme.ts';
import {hearPlan, planEventIn} from './day-plan.ts';
import type {Desk} from './desk.ts';

/** Gives a message to what its writer was asked last, if that was no find; false when it is for a find. */
export async function hearElsewhere(desk: Desk, message: Message): Promise<boolean> {
	if (desk.chat.kind !== 'private') return false;
	const ear = await earOf(desk.tx, {chat: desk.chat.id, person: desk.person.id});
	if (!ear || message.text?.startsWith('/') || (await isAboutFind(desk, message))) return false;
	if (ear.kind === 'plan') return hearPlan(desk, message);
	const event = planEventIn(message);
	if (event?.kind === 'pin') await hearPlaceToTell(desk, event);
	else await hearPlaceToTell(desk, event?.kind === 'text' ? event.text : '');
	return true;
}

/** A reply to a question of a find is its answer, whatever was asked since. */
async function isAboutFind({tx, chat}: Desk, {reply_to_message: replied}: Message): Promise<boolean> {
	if (!replied) return false;
	return (await findOfMessage(tx, {chat: chat.id, messageId: replied.message_id})) !== undefined;
}
