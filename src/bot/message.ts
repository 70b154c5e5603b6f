/** A message that is no command: words, a photo, a place, or something that no question takes. */
import type {FindEvent} from '../find/turn.ts';
import {findById} from '../store/finds.ts';
import {findOfMessage} from '../store/outbox.ts';
import {seatOf} from '../store/people.ts';
import {wantPhoto} from '../store/photos.ts';
import {packButton} from './button.ts';
import {ownFind} from './commands/drafts.ts';
import {type Ctx, type Desk, readerAt, sayHere} from './desk.ts';
import {eventIn, pictureIn} from './event.ts';
import {turnFind} from './find-turn.ts';

/** Hands a message to the find it is about. */
export async function hearMessage(ctx: Ctx): Promise<void> {
	const {desk, message} = ctx;
	if (!message || message.new_chat_members || message.left_chat_member || message.pinned_message) return;
	const replied = message.reply_to_message?.message_id;
	// An administrator bot hears a whole group: what is not said to us is not for us.
	if (desk.chat.kind === 'group' && message.reply_to_message?.from?.id !== ctx.me.id) return;
	const picture = pictureIn(message);
	if (!picture) return hearForSeat(desk, replied, eventIn(message));
	if ('refused' in picture) return hearForSeat(desk, replied, {kind: 'odd', what: picture.refused});
	const find = await findSpokenOf(desk, replied);
	if (find === undefined) return hearForSeat(desk, replied, {kind: 'odd', what: 'other'});
	const row = await findById(desk.tx, find);
	// A photo is never put with somebody else's find.
	if (row?.person !== desk.person.id) return sayHere(desk, readerAt(desk).say.say('not-yours'));
	const {id} = await wantPhoto(desk.tx, {find, ...picture, now: desk.now});
	return hearForSeat(desk, replied, {kind: 'photo', photo: id});
}

/** Hands an event to the find that a reply is about, else to the one the person sits at. */
export async function hearForSeat(desk: Desk, replied: number | undefined, event: FindEvent): Promise<void> {
	const find = await findSpokenOf(desk, replied);
	const row = find === undefined ? undefined : await findById(desk.tx, find);
	const {say} = readerAt(desk);
	if (!row) {
		const begin = {text: say.say('begin'), data: packButton({kind: 'begin'})};
		return sayHere(desk, say.say('nothing-open'), [[begin]]);
	}
	if (row.person !== desk.person.id) return sayHere(desk, say.say('not-yours'));
	await turnFind(desk, row, event);
}

async function findSpokenOf(desk: Desk, replied: number | undefined): Promise<number | undefined> {
	const seat = await seatOf(desk.tx, {chat: desk.chat.id, person: desk.person.id});
	if (replied === undefined) return seat;
	const find = await findOfMessage(desk.tx, {chat: desk.chat.id, messageId: replied});
	if (find === undefined) return seat;
	return (await ownFind(desk, find)) === 'none' ? seat : find;
}
