/** What a verifier's buttons say about a draft. */
import type {Region} from '../key/region.ts';
import {reasons} from '../record/verification.ts';
import type {Said} from '../store/decisions.ts';
import type {ReviewDeed} from './review-button.ts';

/** The decision that a deed stands for; nothing when its name is none of the region's. */
export function saidBy({act, what = '', why}: ReviewDeed, region: Region, words?: string): Said | undefined {
	const reason = reasons.find(one => one === why);
	const grounds = {...(reason === undefined ? {} : {reason}), ...(words === undefined ? {} : {words})};
	const taxa = Object.values(region.profiles.taxa);
	switch (act) {
		case 'kind':
			return taxa.some(({scientificName}) => scientificName === what)
				? {outcome: 'other-name', name: what, ...grounds}
				: undefined;
		case 'rank': {
			const isKnown = taxa.some(
				({scientificName, family}) => family === what || scientificName.split(' ')[0] === what,
			);
			return isKnown ? {outcome: 'higher-rank', name: what, ...grounds} : undefined;
		}
		case 'nothing':
			return {outcome: 'not-an-egg-case', ...grounds};
		default:
			return undefined;
	}
}
