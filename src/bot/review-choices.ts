/** What a verifier chooses from: what to do with a draft, another name, and why. */
import type {Region} from '../key/region.ts';
import {higherToName, nameGiven, reasons, taxaToName} from '../record/verification.ts';
import type {Keyboard} from '../store/call.ts';
import type {Say} from '../text/text.ts';
import {type ReviewDeed, reviewButton} from './review-button.ts';
import type {Reviewed} from './review-card.ts';
import {nameText} from './review-words.ts';
import {rowsOf} from './screen.ts';

/** So many names fit a phone. */
const namesPerPage = 6;
/** Platform-limits.json says more, but a phone shows no more. */
const longestLabel = 24;

/** What can be done with a draft; agreeing only where there is one name to agree with. */
export function reviewKeyboard({row, draft, decisions}: Reviewed, say: Say): Keyboard {
	const known = decisions.length;
	const button = (message: string, act: ReviewDeed['act']) => ({
		text: say.say(message),
		data: reviewButton({act, find: row.id, known}),
	});
	const isNamed = draft.kind === 'left-alive' || draft.sure === 'very-likely' || draft.sure === 'likely';
	return [
		...(isNamed ? [[button('review-agree', 'agree')]] : []),
		[button(isNamed ? 'review-other' : 'review-name', 'kinds')],
		[button('review-higher', 'ranks')],
		[button('review-nothing', 'nothing')],
		[button('review-ask', 'ask'), button('review-next', 'next')],
	];
}

/** A page of kinds, or of genera and families, the likeliest first. */
export function nameKeyboard(
	{row, draft}: Reviewed,
	{deed, region, say}: {readonly deed: ReviewDeed; readonly region: Region; readonly say: Say},
): Keyboard {
	const {find, known} = deed;
	const act = deed.act === 'ranks' ? 'rank' : 'kind';
	const names =
		act === 'rank'
			? higherToName(draft, region)
			: taxaToName(draft, region).map(id => region.profiles.taxa[id]?.scientificName ?? id);
	const page = Math.max(0, Number(deed.what ?? 0) || 0);
	const shown = names.slice(page * namesPerPage, (page + 1) * namesPerPage);
	const pages = Math.ceil(names.length / namesPerPage);
	const button = (text: string, next: Parameters<typeof reviewButton>[0]) => ({
		text,
		data: reviewButton(next),
	});
	return [
		...shown.map(name => [button(labelOf(name, {region, say}), {act, find: row.id, known, what: name})]),
		[
			button(say.say('review-back'), {act: 'menu', find, known}),
			...(pages > 1
				? [button(say.say('review-more'), {act: deed.act, find, known, what: String((page + 1) % pages)})]
				: []),
		],
	];
}

/** Why: reasons to tap, words to write, or none at all. */
export function reasonKeyboard({act, find, known, what}: ReviewDeed, say: Say): Keyboard {
	const button = (message: string, why: string) => ({
		text: say.say(message),
		data: reviewButton({act, find, known, what, why}),
	});
	return [
		...rowsOf(reasons.map(reason => button(`review-reason-${reason}`, reason))),
		[button('review-reason-own', 'own')],
		[button('review-reason-none', 'none')],
	];
}

function labelOf(name: string, {region, say}: {readonly region: Region; readonly say: Say}): string {
	const rank = nameGiven(name, region).taxonRank;
	const isKind = Object.values(region.profiles.taxa).some(({scientificName}) => scientificName === name);
	const label = isKind
		? nameText(name, {region, say})
		: say.say(rank === 'family' ? 'review-label-family' : 'review-label-genus', {name});
	return [...label].slice(0, longestLabel).join('');
}
