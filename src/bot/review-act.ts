/** What a verifier's press does to a draft. */
import {findById} from '../store/finds.ts';
import {atHome, reviewedOf, sayAndGoOn, showDraft, showNext} from './commands/review.ts';
import {decide} from './decide.ts';
import {type Desk, readerAt, sayHere, shelfOf} from './desk.ts';
import {promptHere} from './prompt.ts';
import {type ReviewDeed, reviewButton, reviewDeed} from './review-button.ts';
import type {Reviewed} from './review-card.ts';
import {nameKeyboard, reasonKeyboard, reviewKeyboard} from './review-choices.ts';
import {decisionText} from './review-words.ts';
import {saidBy} from './said-by.ts';

/** Does what a button of reviewing asks for; its presser is a verifier. */
export async function actOnReview(desk: Desk, parts: readonly string[]): Promise<void> {
	const deed = reviewDeed(parts);
	const home = await atHome(desk);
	if (!home) return;
	const {say} = readerAt(home);
	if (deed?.act === 'next') return showNext(home, deed.find);
	const row = deed && (await findById(home.tx, deed.find));
	const reviewed = row && (await reviewedOf(home, row));
	if (!deed || !reviewed) return sayAndGoOn(home, say.say('review-gone'), {find: deed?.find ?? 0});
	// Nobody checks their own finds.
	if (reviewed.row.person === home.person.id)
		return sayAndGoOn(home, say.say('review-own'), {find: deed.find});
	if (deed.act === 'open') return showDraft(home, reviewed, deed.what === 'sure' ? 'sure' : 'ask');
	if (reviewed.decisions.length > deed.known) return tellMeanwhile(home, reviewed, deed);
	return choose(home, reviewed, deed);
}

async function choose(desk: Desk, reviewed: Reviewed, deed: ReviewDeed): Promise<void> {
	const {row} = reviewed;
	const {say} = readerAt(desk, row.region);
	const {region} = shelfOf(desk.house, row.region).flow;
	switch (deed.act) {
		case 'menu':
			return sayHere(desk, say.say('review-menu', {number: String(row.id)}), reviewKeyboard(reviewed, say));
		case 'kinds':
		case 'ranks':
			return sayHere(
				desk,
				say.say(deed.act === 'kinds' ? 'review-which' : 'review-which-higher'),
				nameKeyboard(reviewed, {deed, region, say}),
			);
		case 'ask':
			return promptHere(desk, say.say('review-ask-how', {number: String(row.id)}), {
				expects: reviewButton(deed),
			});
		case 'agree':
			return decide(desk, reviewed, {outcome: 'agreed'});
		case 'kind':
		case 'rank':
		case 'nothing': {
			if (deed.why === undefined) return sayHere(desk, say.say('review-why'), reasonKeyboard(deed, say));
			if (deed.why === 'own')
				return promptHere(desk, say.say('review-why-how'), {expects: reviewButton(deed)});
			const said = saidBy(deed, region);
			return said ? decide(desk, reviewed, said) : sayHere(desk, say.say('review-gone'));
		}
		case 'open':
		case 'next':
			throw new Error(`Expected "${deed.act}" to be done before there is a choice`);
	}
}

/** Another decision was made since this was shown: said first, and both may stand. */
async function tellMeanwhile(desk: Desk, {row, decisions}: Reviewed, deed: ReviewDeed): Promise<void> {
	const reader = readerAt(desk, row.region);
	const {say} = reader;
	const last = decisions.at(-1);
	if (!last) return;
	const said = decisionText(last, shelfOf(desk.house, row.region).flow.region, reader);
	const known = decisions.length;
	const isOwn = last.person === desk.person.id;
	const on = isOwn
		? {text: say.say('review-change'), data: reviewButton({act: 'open', find: row.id, known, what: 'sure'})}
		: {text: say.say('review-both'), data: reviewButton({...deed, known})};
	const text = say.say(isOwn ? 'review-decided-before' : 'review-meanwhile', {said});
	return sayAndGoOn(desk, text, {find: row.id, more: [[on]]});
}
