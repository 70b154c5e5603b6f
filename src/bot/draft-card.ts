/** A draft in few words, for lists, cards and verifiers. */
import type {Draft} from '../record/draft.ts';
import type {Say, Values} from '../text/text.ts';
import {dayText} from './words.ts';

/** The values that the sentences about a draft take. */
export function draftCard(draft: Draft, {say, number}: {say: Say; number: number}): Values {
	return {
		number: String(number),
		name: draftName(draft, say),
		date: dayText(draft.foundOn, {say}),
		place: placeText(draft),
		count: String(draft.count ?? 1),
		note: draft.note ?? say.say('draft-none'),
		photos: String(draft.photos.length),
		unusual: draft.unusual.length > 0 ? 'yes' : 'no',
		length: lengthText(draft, say),
	};
}

/** How long it is; of several measured on one photo, how many and from which to which length. */
export function lengthText({length, lengths = []}: Draft, say: Say): string {
	const values = lengths.map(({mm}) => Math.round(mm));
	if (values.length > 0) {
		const span = {least: Math.min(...values), most: Math.max(...values)};
		return say.say('draft-lengths', {count: values.length, ...span});
	}
	return length ? say.say('chosen-length', {mm: length.mm, plusMinus: length.plusMinusMm}) : '–';
}

/** The name as far as it is sure: one name, or the first of a shortlist and how many more. */
export function draftName(draft: Draft, say: Say): string {
	if (draft.kind === 'left-alive') return say.say('draft-live');
	const names = draft.said.map(taxon => (say.has(`taxon-${taxon}`) ? say.say(`taxon-${taxon}`) : taxon));
	const [first, ...others] = names;
	if (first === undefined) return say.say('draft-unnamed');
	return others.length === 0 ? first : say.say('draft-shortlist', {name: first, others: others.length});
}

function placeText({place}: Draft): string {
	if (place.kind === 'named') return place.name;
	return place.verbatim ?? `${place.latitude.toFixed(4)}, ${place.longitude.toFixed(4)}`;
}
