/** What a verifier writes when a button asked for words: a question to the finder, or the reason for a name. */
import type {Message} from 'grammy/types';
import {findById} from '../store/finds.ts';
import {rolesOf} from '../store/roles.ts';
import {reviewedOf, sayAndGoOn} from './commands/review.ts';
import {decide} from './decide.ts';
import {type Desk, readerAt, shelfOf} from './desk.ts';
import {askFinder, wordsIn} from './letters.ts';
import {promptHere} from './prompt.ts';
import {reviewButton, reviewDeed} from './review-button.ts';
import {saidBy} from './said-by.ts';

/** Does what the button stood for with the words that it asked for; its presser may have lost the role since. */
export async function hearVerifier(desk: Desk, parts: readonly string[], message: Message): Promise<void> {
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
