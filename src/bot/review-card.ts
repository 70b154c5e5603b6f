/** What a verifier sees of a draft: its photos, the length against those of kinds, and the facts in few lines. */
import {type ResultView, viewResult} from '../find/result.ts';
import {standAt} from '../find/stand.ts';
import type {Place} from '../place/place.ts';
import type {Draft} from '../record/draft.ts';
import type {Call} from '../store/call.ts';
import type {Decision} from '../store/decisions.ts';
import type {FindRow} from '../store/finds.ts';
import type {Letter} from '../store/letters.ts';
import type {Say} from '../text/text.ts';
import {type Desk, readerAt, shelfOf} from './desk.ts';
import {lengthText} from './draft-card.ts';
import {seenText} from './result-screen.ts';
import {decisionText} from './review-words.ts';
import {readTrail} from './stored-trail.ts';
import {dayText, type Reader} from './words.ts';

/** A draft with all that was said about it. */
export type Reviewed = {
	readonly row: FindRow;
	readonly draft: Draft;
	readonly decisions: readonly Decision[];
	readonly letters: readonly Letter[];
};

/** So many kinds of the ranking are told and drawn, and their least share. */
const mostRanked = 4;
const leastShare = 0.01;
const longestNote = 300;

/** The photos of a find and its length beside those of kinds; nothing where there is neither. */
export function reviewAlbum(desk: Desk, {row, draft}: Reviewed): Call | undefined {
	const {say} = readerAt(desk, row.region);
	const {length} = draft;
	const taxa = rankedIn(draft).map(({taxon}) => taxon);
	const {profiles} = shelfOf(desk.house, row.region).flow.region;
	const drawn = taxa.filter(taxon => profiles.taxa[taxon] !== undefined);
	if (draft.photos.length === 0 && (!length || drawn.length === 0)) return undefined;
	return {
		kind: 'album',
		html: say.say('review-album', {number: String(row.id)}),
		photosOf: row.id,
		...(length && drawn.length > 0
			? {
					picture: {
						kind: 'lengths',
						region: row.region,
						language: say.language,
						taxa: drawn,
						mm: length.mm,
						plusMinusMm: length.plusMinusMm,
						countsAs: length.countsAs,
					},
				}
			: {}),
	};
}

/** The facts of a draft, line by line. */
export function reviewText(desk: Desk, reviewed: Reviewed): string {
	const {row, draft, decisions, letters} = reviewed;
	const reader = readerAt(desk, row.region);
	const {say} = reader;
	const {flow} = shelfOf(desk.house, row.region);
	const standing = standAt(flow, readTrail(row));
	const view = standing.found && viewResult(flow, standing, standing.found);
	const lines = [
		say.say('review-head', {
			number: String(row.id),
			date: dayText(draft.foundOn, reader),
			count: draft.count ?? 1,
			unusual: draft.unusual.length > 0 ? 'yes' : 'no',
			kind: draft.kind,
		}),
		placeLine(draft.place, say),
		...measureLines(draft, view, say),
		...nameLines(draft, say),
		...(view ? seenLines(draft, view, say) : []),
		...(draft.doubt ? [say.say('review-doubt')] : []),
		...(draft.note === undefined ? [] : [say.say('review-note', {note: shortened(draft.note)})]),
		...(draft.photos.length === 0 ? [say.say('review-no-photo')] : []),
		...decisions.map(decision => decisionText(decision, flow.region, reader)),
		...letters.map(letter => letterLine(letter, reader)),
	];
	return lines.filter(line => line !== '').join('\n');
}

function placeLine(place: Place, say: Say): string {
	if (place.kind === 'named') return say.say('review-place-named', {place: place.name});
	const point = `${place.latitude.toFixed(5)}, ${place.longitude.toFixed(5)}`;
	const metres = place.uncertaintyM;
	if (place.verbatim === undefined) return say.say('review-place', {place: point, metres});
	return say.say('review-place-point', {place: place.verbatim, point, metres});
}

function measureLines(draft: Draft, view: ResultView | undefined, say: Say): readonly string[] {
	const {soak} = draft;
	const size = (which: 'length' | 'width') => {
		const sized = draft[which];
		if (!sized) return [];
		const values = {mm: sized.mm, plusMinus: sized.plusMinusMm, least: sized.countsAs};
		return [say.say(`review-${which}`, values)];
	};
	const candidates = view?.length?.candidates ?? [];
	return [
		...(soak ? [say.say('review-soak', {state: soak.state, hours: soak.hours ?? 'none'})] : []),
		...size('length'),
		...(draft.lengths ? [say.say('review-lengths', {lengths: lengthText(draft, say)})] : []),
		...size('width'),
		...candidates.map(({taxon, lowMm, highMm, fits, fromMemory}) =>
			say.say('review-range', {
				name: say.say(`taxon-${taxon}`),
				low: Math.round(lowMm),
				high: Math.round(highMm),
				fits: fits ? 'yes' : 'no',
				memory: fromMemory ? 'yes' : 'no',
			}),
		),
	];
}

function nameLines(draft: Draft, say: Say): readonly string[] {
	const ranked = rankedIn(draft).map(({taxon, probability}) =>
		say.say('review-ranked', {
			name: say.has(`taxon-${taxon}`) ? say.say(`taxon-${taxon}`) : say.say('result-also-else'),
			percent: Math.round(probability * 100),
		}),
	);
	return ranked.length === 0 ? [] : [say.say('review-ranking', {sure: draft.sure, names: ranked.join(', ')})];
}

function seenLines(draft: Draft, {seenFor, seenAgainst}: ResultView, say: Say): readonly string[] {
	const told = [...seenFor, ...seenAgainst];
	const rest = draft.seen.filter(
		({character, state}) =>
			say.has(`seen-${character}-${state}`) && !told.some(one => one.character === character),
	);
	const lost = draft.lost.filter(part => say.has(`picture-lost-${part}`));
	return [
		seenText(seenFor, {say, message: 'result-for'}),
		seenAgainst.length === 0 && draft.said.length > 0
			? say.say('review-nothing-against')
			: seenText(seenAgainst, {say, message: 'result-against'}),
		seenText(rest, {say, message: 'review-also-seen'}),
		...(lost.length === 0
			? []
			: [say.say('review-lost', {parts: lost.map(part => say.say(`picture-lost-${part}`)).join(', ')})]),
	];
}

function letterLine({answers, words, photo}: Letter, {say}: Reader): string {
	if (answers === undefined) return say.say('review-asked', {words: words ?? ''});
	return photo === undefined
		? say.say('review-answered', {words: words ?? ''})
		: say.say('review-answered-photo');
}

function rankedIn({ranking}: Draft): Draft['ranking'] {
	return ranking.filter(({probability}) => probability >= leastShare).slice(0, mostRanked);
}

// By code points, so that no emoji is cut in half.
function shortened(note: string): string {
	const letters = Array.from(note);
	return letters.length > longestNote ? `${letters.slice(0, longestNote).join('')}…` : note;
}
