/** /review: the finds that wait for somebody who knows egg cases, one after another. */
import {draftSchema} from '../../record/draft.ts';
import {privateChatOf} from '../../store/chats.ts';
import {decisionsOf} from '../../store/decisions.ts';
import {draftOfFind} from '../../store/drafts.ts';
import {type FindRow, findById} from '../../store/finds.ts';
import {lettersOf} from '../../store/letters.ts';
import {claimOf, claimReview, countToReview, nextToReview, releaseClaims} from '../../store/review.ts';
import {type Ctx, type Desk, postHere, readerAt, sayHere} from '../desk.ts';
import {reviewButton} from '../review-button.ts';
import {type Reviewed, reviewAlbum, reviewText} from '../review-card.ts';
import {reviewKeyboard} from '../review-choices.ts';
import {verifierName} from '../review-words.ts';
import {timeText} from '../words.ts';

/** Shows the find that waits longest; unusual ones come first. */
export async function showReview({desk}: Ctx): Promise<void> {
	const home = await atHome(desk);
	return home ? showNext(home, undefined) : undefined;
}

/** The desk of a person's private chat, to which a group's button leads; nothing while they have none. */
export async function atHome(desk: Desk): Promise<Desk | undefined> {
	if (desk.chat.kind === 'private') return desk;
	const chat = await privateChatOf(desk.tx, desk.person.id);
	if (!chat) {
		await sayHere(desk, readerAt(desk).say.say('review-come'));
		return undefined;
	}
	await sayHere(desk, readerAt(desk).say.say('review-there'));
	return {...desk, chat, name: undefined, thread: undefined};
}

/** Shows what waits after a find, and lets go of that one. */
export async function showNext(desk: Desk, after: number | undefined): Promise<void> {
	const {tx, person, now} = desk;
	if (after !== undefined) await releaseClaims(tx, {person: person.id, find: after});
	const next = await nextToReview(tx, {person: person.id, now, after});
	const row = next === undefined ? undefined : await findById(tx, next);
	const reviewed = row && (await reviewedOf(desk, row));
	if (!reviewed) return sayHere(desk, readerAt(desk).say.say('review-none'));
	return showDraft(desk, reviewed, 'sure');
}

/** Shows a draft and notes who looks at it; one that another looks at only when that is wished for. */
export async function showDraft(desk: Desk, reviewed: Reviewed, wish: 'sure' | 'ask'): Promise<void> {
	const {tx, now, person} = desk;
	const {row, decisions} = reviewed;
	const reader = readerAt(desk, row.region);
	const {say} = reader;
	const claim = await claimOf(tx, row.id, now);
	const known = decisions.length;
	if (claim && claim.person !== person.id && wish === 'ask') {
		const values = {who: verifierName(claim.publicName, say), since: timeText(claim.claimedAt, reader)};
		return sayHere(desk, say.say('review-claimed', values), [
			[
				{
					text: say.say('review-all-the-same'),
					data: reviewButton({act: 'open', find: row.id, known, what: 'sure'}),
				},
			],
			[{text: say.say('review-next'), data: reviewButton({act: 'next', find: row.id})}],
		]);
	}
	await claimReview(tx, {find: row.id, person: person.id, now});
	const album = reviewAlbum(desk, reviewed);
	if (album) await postHere(desk, album, {role: 'say'});
	return sayHere(desk, reviewText(desk, reviewed), reviewKeyboard(reviewed, say));
}

/** A draft with all that was said about it; nothing when it was taken back. */
export async function reviewedOf({tx}: Desk, row: FindRow): Promise<Reviewed | undefined> {
	const kept = await draftOfFind(tx, row.id, draftSchema);
	if (kept?.kind !== 'draft') return undefined;
	const [decisions, letters] = [await decisionsOf(tx, row.id), await lettersOf(tx, row.id)];
	return {row, draft: kept.body, decisions, letters};
}

/** Says something with the way on to what waits next. */
export async function sayAndGoOn(
	desk: Desk,
	text: string,
	{find, more = []}: {readonly find: number; readonly more?: Parameters<typeof sayHere>[2]},
): Promise<void> {
	const {tx, person, now} = desk;
	const {say} = readerAt(desk);
	const count = await countToReview(tx, {person: person.id, now});
	const next =
		count === 0
			? []
			: [[{text: say.say('review-next-count', {count}), data: reviewButton({act: 'next', find})}]];
	return sayHere(desk, text, [...next, ...(more ?? [])]);
}
