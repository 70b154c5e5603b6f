/** Words and photos that a message of ours asked for: a verifier's question or reason, a finder's answer. */
import type {Message} from 'grammy/types';
import {findById} from '../store/finds.ts';
import {letterById} from '../store/letters.ts';
import {seatOf} from '../store/people.ts';
import {expectedLast, expectedOf} from '../store/prompts.ts';
import {rolesOf} from '../store/roles.ts';
import {unpackButton} from './button.ts';
import {reviewedOf, sayAndGoOn} from './commands/review.ts';
import {decide} from './decide.ts';
import {type Desk, readerAt, shelfOf} from './desk.ts';
import {answerLetter, askFinder, letterMenu, wordsIn} from './letters.ts';
import {promptHere} from './prompt.ts';
import {reviewButton, reviewDeed, reviewMenu} from './review-button.ts';
import {saidBy} from './said-by.ts';
import {isOpen} from './whose.ts';

/** Takes a message that was asked for; false when nothing was, so that it is about a find. */
export async function hearExpected(desk: Desk, message: Message): Promise<boolean> {
	const expected = await expectedHere(desk, message);
	const button = expected === undefined ? undefined : unpackButton(expected);
	if (button?.kind !== 'menu') return false;
	if (button.menu === letterMenu) {
		const letter = await letterById(desk.tx, Number(button.parts[0]));
		if (!letter) return false;
		await answerLetter(desk, letter, message);
		return true;
	}
	if (button.menu !== reviewMenu) return false;
	await hearVerifier(desk, button.parts, message);
	return true;
}

/** What the message replies to asks for; in private also what was asked for last, if no find is open. */
async function expectedHere(
	{tx, chat, person}: Desk,
	{reply_to_message: replied}: Message,
): Promise<string | undefined> {
	if (replied) return expectedOf(tx, {chat: chat.id, messageId: replied.message_id});
	if (chat.kind === 'group') return undefined;
	const last = await expectedLast(tx, chat.id);
	if (last === undefined || !last.startsWith(`m.${letterMenu}.`)) return last;
	const seat = await seatOf(tx, {chat: chat.id, person: person.id});
	const row = seat === undefined ? undefined : await findById(tx, seat);
	// In the middle of a find, words without a reply answer its question.
	return row && isOpen(row) ? undefined : last;
}

async function hearVerifier(desk: Desk, parts: readonly string[], message: Message): Promise<void> {
	const {say} = readerAt(desk);
	const deed = reviewDeed(parts);
	const row = deed && (await findById(desk.tx, deed.find));
	const reviewed = row && (await reviewedOf(desk, row));
	const isVerifier = (await rolesOf(desk.tx, desk.person.id)).includes('verifier');
	if (!deed || !reviewed || !isVerifier)
		return sayAndGoOn(desk, say.say('review-gone'), {find: deed?.find ?? 0});
	const words = wordsIn(message);
	if (words === undefined) return promptHere(desk, say.say('review-words'), {expects: reviewButton(deed)});
	if (deed.act === 'ask') return askFinder(desk, reviewed.row, words);
	const said = saidBy(deed, shelfOf(desk.house, reviewed.row.region).flow.region, words);
	return said ? decide(desk, reviewed, said) : sayAndGoOn(desk, say.say('review-gone'), {find: deed.find});
}
