/** A verifier's question to a finder, and the answer on its way back. */
import type {Message} from 'grammy/types';
import {type FindRow, findById} from '../store/finds.ts';
import {keepLetter, type Letter} from '../store/letters.ts';
import {restUntil} from '../store/review.ts';
import {headOf} from './asking.ts';
import {menuButton} from './button.ts';
import {sayAndGoOn} from './commands/review.ts';
import {type Desk, readerAt, sayHere} from './desk.ts';
import {pictureIn} from './event.ts';
import {turnFind} from './find-turn.ts';
import {deskOfFind} from './happenings.ts';
import {promptHere} from './prompt.ts';
import {reviewButton} from './review-button.ts';
import {takePicture} from './take-picture.ts';
import {tell} from './tell.ts';
import {mayAnswer} from './whose.ts';

/** Under this name a message says that a reply to it answers a letter; no button has it. */
export const letterMenu = 'letter';

/** A draft about which its finder was asked is offered to nobody for so long. */
const patienceMs = 3 * 24 * 3_600_000;
/** More is no question any more. */
const longestWords = 500;

/** The words of a message as a letter takes them; nothing when there are none or too many. */
export function wordsIn({text = ''}: Message): string | undefined {
	const words = text.trim();
	return words === '' || words.startsWith('/') || [...words].length > longestWords ? undefined : words;
}

/** Sends a verifier's question to the finder, where the find is spoken of. */
export async function askFinder(desk: Desk, row: FindRow, words: string): Promise<void> {
	const {tx, now, person} = desk;
	const number = String(row.id);
	const {say} = readerAt(desk);
	const there = await deskOfFind(desk.house, tx, row);
	if (!there) return sayAndGoOn(desk, say.say('letter-unreachable', {number}), {find: row.id});
	const letter = await keepLetter(tx, {find: row.id, person: person.id, words, now});
	await restUntil(tx, {find: row.id, until: now + patienceMs});
	const asked = readerAt(there, row.region).say.say('letter-question', {number, words});
	const head = headOf(there, row);
	const expects = menuButton(letterMenu, String(letter));
	await promptHere(there, head === undefined ? asked : `${head}\n${asked}`, {expects, find: row.id});
	return sayAndGoOn(desk, say.say('letter-sent', {number}), {find: row.id});
}

/** Takes a finder's answer, in words or as a photo, and hands it to whoever asked. */
export async function answerLetter(desk: Desk, letter: Letter, message: Message): Promise<void> {
	const {tx, now, person} = desk;
	const row = await findById(tx, letter.find);
	const {say} = readerAt(desk);
	if (!row || !mayAnswer(desk, row)) return sayHere(desk, say.say('not-yours'));
	const picture = pictureIn(message);
	const words = wordsIn(message);
	if (picture && !('refused' in picture)) {
		const event = await takePicture(desk, row, {...picture, message});
		await turnFind(desk, row, event, 'quietly');
		if (event.kind !== 'photo') return sayHere(desk, say.say('letter-known-photo'));
		const {photo} = event;
		await keepLetter(tx, {find: row.id, person: person.id, answers: letter.id, photo, now});
		return handBack(desk, letter, {photo});
	}
	if (words === undefined) return sayHere(desk, say.say('letter-how'));
	await keepLetter(tx, {find: row.id, person: person.id, answers: letter.id, words, now});
	return handBack(desk, letter, {words});
}

async function handBack(
	desk: Desk,
	{find, person}: Letter,
	answer: {readonly words: string} | {readonly photo: number},
): Promise<void> {
	// The draft waits again for whoever looks first, most likely for the one who asked.
	await restUntil(desk.tx, {find, until: undefined});
	const {say} = readerAt(desk);
	if (person !== undefined) {
		await tell(desk, person, ({say: theirs}) => ({
			text:
				'words' in answer
					? theirs.say('letter-answer', {number: String(find), words: answer.words})
					: theirs.say('letter-answer-photo', {number: String(find)}),
			keyboard: [[{text: theirs.say('review-look'), data: reviewButton({act: 'open', find})}]],
			with: 'photo' in answer ? {photo: answer.photo} : {},
		}));
	}
	return sayHere(desk, say.say('letter-thanks', {number: String(find)}));
}
