/** What the next words in a chat are for: one answer, in one order, whatever it was that asked for words. */
import type {Message} from 'grammy/types';
import {type DayRow, dayById} from '../store/days.ts';
import {type FindRow, findById, openFinds} from '../store/finds.ts';
import {type Letter, letterById} from '../store/letters.ts';
import {findOfMessage} from '../store/outbox.ts';
import {findOfAlbum} from '../store/photos.ts';
import {expectedLast, expectedOf} from '../store/prompts.ts';
import {type Seat, seatOf} from '../store/seats.ts';
import {unpackButton} from './button.ts';
import {type Desk, sitterAt} from './desk.ts';
import {letterMenu} from './letters.ts';
import {reviewMenu} from './review-button.ts';
import {isDeleted, isOpen, mayAnswer} from './whose.ts';

/** What a message is for. */
export type Purpose =
	/** A verifier's question or reason; `parts` say which, as those of a button do. */
	| {readonly kind: 'verifier'; readonly parts: readonly string[]}
	/** A finder's answer to a verifier. */
	| {readonly kind: 'letter'; readonly letter: Letter}
	| {readonly kind: 'plan'; readonly day: DayRow}
	/** A place to be told about. */
	| {readonly kind: 'place'}
	| {readonly kind: 'find'; readonly find: SpokenOf};

/** The find that words are about; `which` where several could be meant. */
export type SpokenOf = FindRow | 'none' | 'which';

/** A find this long untouched is not what words without a reply are meant for. */
const freshMs = 12 * 3_600_000;

/**
 * What a message is for, the first of these that there is: what the message it replies to asks for, or the find that
 * one or its album is about; what a verifier has just pressed a button to write; the plan of a day or the place that
 * its writer is asked for; the open find they sit at; a letter that came last; the only open find of a group, or the
 * find they sat at last.
 */
export async function purposeOf(desk: Desk, message: Message): Promise<Purpose> {
	const {tx, chat} = desk;
	const tied = await tiedTo(desk, message);
	if (tied) return tied;
	// What came last is answered without a reply in private alone: in a group others speak, too.
	const isAnswer = chat.kind === 'private' && !message.reply_to_message;
	const asked = isAnswer ? await askedBy(desk, await expectedLast(tx, chat.id)) : undefined;
	if (asked?.kind === 'verifier') return asked;
	const seat = await seatOf(tx, sitterAt(desk));
	const elsewhere = message.text?.startsWith('/') ? undefined : await purposeOfEar(desk, seat);
	if (elsewhere) return elsewhere;
	const find = await findFrom(desk, seat);
	const isInTheMidst = typeof find === 'object' && isOpen(find);
	return asked && !isInTheMidst ? asked : {kind: 'find', find};
}

/** The find that words are about which can be about nothing else: the open one, else as `purposeOf` ends. */
export async function findSpokenOf(desk: Desk): Promise<SpokenOf> {
	return findFrom(desk, await seatOf(desk.tx, sitterAt(desk)));
}

/** What a message is bound to by itself: a reply to what it answers, a photo to the others of its album. */
async function tiedTo(desk: Desk, message: Message): Promise<Purpose | undefined> {
	const {tx, chat} = desk;
	const {reply_to_message: replied, media_group_id: album} = message;
	const to = replied && {chat: chat.id, messageId: replied.message_id};
	const asked = to && (await askedBy(desk, await expectedOf(tx, to)));
	if (asked) return asked;
	const find =
		(album === undefined ? undefined : await findOfAlbum(tx, {chat: chat.id, album})) ??
		(to && (await findOfMessage(tx, to)));
	const row = find === undefined ? undefined : await findById(tx, find);
	return row && !isDeleted(row) ? {kind: 'find', find: row} : undefined;
}

/** What a message of ours asked for, as it says itself. */
async function askedBy(
	{tx}: Desk,
	expects: string | undefined,
): Promise<Extract<Purpose, {kind: 'verifier' | 'letter'}> | undefined> {
	const button = expects === undefined ? undefined : unpackButton(expects);
	if (button?.kind !== 'menu') return undefined;
	const {menu, parts} = button;
	if (menu === reviewMenu) return {kind: 'verifier', parts};
	const letter = menu === letterMenu ? await letterById(tx, Number(parts[0])) : undefined;
	return letter && {kind: 'letter', letter};
}

async function purposeOfEar({tx, person}: Desk, seat: Seat | undefined): Promise<Purpose | undefined> {
	if (seat?.ear?.kind !== 'plan') return seat?.ear;
	const day = await dayById(tx, seat.ear.day);
	return day?.person === person.id ? {kind: 'plan', day} : undefined;
}

async function findFrom(desk: Desk, seat: Seat | undefined): Promise<SpokenOf> {
	const {tx, chat, now} = desk;
	const seated = seat?.find === undefined ? undefined : await findById(tx, seat.find);
	if (seated && isOpen(seated)) return seated;
	// Who put their find aside does not mean those of others.
	const isAside = seat !== undefined && seat.find === undefined;
	const isForOthers = chat.kind === 'group' && !isAside;
	const others = isForOthers ? await openFinds(tx, {chat: chat.id, since: now - freshMs}) : [];
	const [only, ...more] = others.filter(other => mayAnswer(desk, other));
	if (more.length > 0) return 'which';
	return only ?? seated ?? 'none';
}
