/** The card of a result: what the clockwork draws beside its words. */
import type {Facts} from '../find/facts.ts';
import type {ResultView} from '../find/result.ts';
import type {Standing} from '../find/stand.ts';
import type {CoarseSideM} from '../place/coarse-square.ts';
import type {Place} from '../place/place.ts';
import {shownPlace} from '../place/shown-place.ts';
import {coarseSideFrom} from '../record/for-export.ts';
import type {FindRow} from '../store/finds.ts';
import {photosOf} from '../store/photos.ts';
import type {CallCard} from '../store/picture.ts';
import {sharingOf} from '../store/sharing.ts';
import type {Say} from '../text/text.ts';
import {type Desk, readerAt, shelfOf} from './desk.ts';
import {spoken} from './result-screen.ts';
import {dayText} from './words.ts';

/** What others see too shows a place no finer than a square of this side; ours, no rule was published. */
const inGroupsM: CoarseSideM = 10_000;

/** The card of a result; nothing where no name is said, since a drawing would be taken for one. */
export async function resultCard(
	desk: Desk,
	row: FindRow,
	{result, standing}: {result: ResultView; standing: Standing},
): Promise<CallCard | undefined> {
	const {sure, names, length} = result;
	if (sure === 'unknown' || names.length === 0) return undefined;
	const {say} = readerAt(desk, row.region);
	const {region} = shelfOf(desk.house, row.region).flow;
	const photos = await photosOf(desk.tx, row.id);
	const hash = photos.find(photo => photo.state === 'kept')?.hash ?? undefined;
	const {coarseM} = await sharingOf(desk.tx, row.person);
	const sides = [
		coarseSideFrom(coarseM),
		desk.chat.kind === 'group' ? inGroupsM : undefined,
		...[...names, ...result.also].map(({taxon}) => region.profiles.taxa[taxon]?.protected?.sideM),
	].filter(side => side !== undefined);
	return {
		kind: 'card',
		region: region.id,
		language: say.language,
		sure,
		names: names.map(({taxon, percent}) => ({taxon, percent: Number(spoken(percent))})),
		lost: lostParts(standing),
		...(length
			? {
					length: {
						mm: length.mm,
						plusMinusMm: length.plusMinusMm,
						isLeast: length.lowerBound.length > 0,
					},
				}
			: {}),
		...(hash === undefined ? {} : {photo: endsOf(standing.facts) ?? {hash}}),
		...foundWords(standing.facts, sides, say),
	};
}

/** The photo on which the length was measured, with both ends of its line: it can be shown to scale. */
function endsOf({length, measuredOn}: Facts): CallCard['photo'] {
	if (typeof length !== 'object' || length.method !== 'photo' || !measuredOn) return undefined;
	const line = measuredOn.lengths.find(({mm}) => mm === length.mm)?.line;
	return line && {hash: measuredOn.hash, ends: {front: line[0], back: line[1]}};
}

const parts = ['horns', 'sides', 'surface', 'aprons'] as const;

/** What is lost of the find, as far as it can be drawn. */
function lostParts({found}: Standing): CallCard['lost'] {
	return parts.filter(part => found?.observed.lost.includes(part));
}

/** Day and place in words. */
function foundWords({date, place}: Facts, sides: readonly CoarseSideM[], say: Say): Pick<CallCard, 'found'> {
	if (date === undefined) return {};
	const day = dayText(date, {say});
	const where = place && placeWords(place, sides, say);
	return {
		found:
			where === undefined
				? say.say('card-found-day', {date: day})
				: say.say('card-found', {date: day, place: where}),
	};
}

function placeWords(place: Place, sides: readonly CoarseSideM[], say: Say): string | undefined {
	const shown = shownPlace(place, sides);
	if (shown === undefined) return undefined;
	if (shown.kind === 'square') {
		const {name, system} = shown.square;
		return say.say(system === 'degrees, WGS 84' ? 'card-square-degrees' : 'card-square-grid', {square: name});
	}
	if (shown.place.kind === 'named') return shown.place.name;
	const {verbatim, latitude, longitude} = shown.place;
	return verbatim ?? say.say('card-spot', {latitude: latitude.toFixed(3), longitude: longitude.toFixed(3)});
}
