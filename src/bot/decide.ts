/** A verifier's decision takes effect: kept, passed on, told to the finder. */
import {keepDecision, type Said} from '../store/decisions.ts';
import {raiseVersion} from '../store/drafts.ts';
import {settleReview} from '../store/review.ts';
import {sharingOf} from '../store/sharing.ts';
import {headOf} from './asking.ts';
import {sayAndGoOn} from './commands/review.ts';
import {type Desk, postHere, readerAt, shelfOf} from './desk.ts';
import {draftName} from './draft-card.ts';
import {deskOfFind} from './happenings.ts';
import {passOn} from './keep-record.ts';
import {reviewButton} from './review-button.ts';
import type {Reviewed} from './review-card.ts';
import {finderText, outcomeText} from './review-words.ts';
import {escaped} from './words.ts';

/** Keeps a decision after those made before, and tells everybody whom it concerns. */
export async function decide(desk: Desk, reviewed: Reviewed, said: Said): Promise<void> {
	const {tx, now, person} = desk;
	const {row, decisions} = reviewed;
	const find = row.id;
	const version = await raiseVersion(tx, {find, now});
	if (version === undefined) throw new Error(`Expected a draft of find ${find} to decide on; there is none`);
	await keepDecision(tx, {find, person: person.id, version: version - 1, said, now});
	await settleReview(tx, {find, now});
	await passOn(desk, find, 'record.verified');
	const isTold = await tellFinder(desk, reviewed, said);
	const {say} = readerAt(desk, row.region);
	const {region} = shelfOf(desk.house, row.region).flow;
	const values = {number: String(find), what: outcomeText(said, region, say), told: isTold ? 'yes' : 'no'};
	const change = {act: 'open', find, known: decisions.length + 1, what: 'sure'} as const;
	return sayAndGoOn(desk, say.say('review-kept', values), {
		find,
		more: [[{text: say.say('review-change'), data: reviewButton(change)}]],
	});
}

async function tellFinder(desk: Desk, {row, draft, decisions}: Reviewed, said: Said): Promise<boolean> {
	const there = await deskOfFind(desk.house, desk.tx, row);
	if (!there) return false;
	const {say} = readerAt(there, row.region);
	const {publicName} = await sharingOf(desk.tx, desk.person.id);
	const decision = {
		...said,
		find: row.id,
		person: desk.person.id,
		publicName,
		at: desk.now,
		version: 0,
		isFirst: decisions.length === 0,
	};
	const told = finderText(decision, {
		number: String(row.id),
		name: draftName(draft, say),
		region: shelfOf(desk.house, row.region).flow.region,
		say,
	});
	const head = headOf(there, row);
	const html = escaped(head === undefined ? told : `${head}\n${told}`);
	await postHere(there, {kind: 'send', html, keyboard: []}, {role: 'say', find: row.id});
	return true;
}
