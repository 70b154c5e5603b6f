/** What stands on the card of a result: its data put in words, and its kinds as they are drawn. */
import {taxonShape} from '../key/drawn.ts';
import type {Region, Taxon} from '../key/region.ts';
import {type Shape, withParts} from '../key/shape.ts';
import type {CallCard} from '../store/picture.ts';
import type {Say} from '../text/text.ts';
import type {CardContent, CardKind} from './find-card.ts';
import type {LengthRange} from './length-scale.ts';
import type {DrawnFrom} from './wanted.ts';

/** More small drawings than these cannot be told apart on a phone. */
const mostKinds = 4;
/** In lengths of the case: longer strings would leave no room for the case itself. */
const longestStrings = 0.7;

/** The content of a card; `aspect` is how wide its photo is for its height. */
export function cardContent(card: CallCard, from: DrawnFrom, aspect: number | undefined): CardContent {
	const {say} = from;
	const isShortlist = card.sure === 'shortlist';
	const shown = isShortlist ? card.names.slice(0, mostKinds) : card.names.slice(0, 1);
	const kinds = shown.map(name => kindOf(name, {card, from}));
	const [first] = kinds;
	const isScaled = !isShortlist && card.photo?.ends !== undefined && card.length?.isLeast === false;
	const more = card.names.length - shown.length;
	const lost = card.lost.map(part => say.say(`picture-lost-${part}`)).join(', ');
	const content = {
		headline: say.say(`sure-${card.sure}`, {name: first?.name ?? ''}),
		kinds,
		isShortlist,
		drawnWords: drawnWords(card, from),
		lost: card.lost,
		photo:
			aspect === undefined
				? undefined
				: {aspect, isScaled, words: say.say(isScaled ? 'card-photo-scaled' : 'card-photo')},
		measured: card.length && {...card.length, words: measuredWords(card.length, say)},
		notes: [
			...(isShortlist && kinds.some(({range}) => range) ? [say.say('card-bars')] : []),
			...(isShortlist && more > 0 ? [say.say('card-more', {count: more})] : []),
			...(lost === '' ? [] : [say.say('card-lost', {lost})]),
		],
		found: card.found,
		sayMm: (mm: number) => say.say('card-mm', {mm}),
	};
	return {...content, title: titleOf(content, say)};
}

function kindOf(
	{taxon: id, percent}: CallCard['names'][number],
	{card, from}: {card: CallCard; from: DrawnFrom},
): CardKind {
	const {region, say} = from;
	const taxon = region.profiles.taxa[id];
	if (!taxon) throw new Error(`Expected a taxon of ${region.id} for a card; got "${id}"`);
	const short = withShortStrings(taxonShape(region, id).shape);
	const range = rangeOf(taxon, region);
	return {
		name: say.say(`taxon-${id}`),
		scientificName: taxon.scientificName,
		share: say.say('card-share', {percent: String(percent)}),
		second: say.say('result-scientific', {scientific: taxon.scientificName, percent: String(percent)}),
		shape: isDrawnAsMeasured(card) ? asLong(short, card.length.mm) : short,
		range,
		rangeWords: rangeWords(range, say),
	};
}

function isDrawnAsMeasured(card: CallCard): card is CallCard & {length: NonNullable<CallCard['length']>} {
	return card.length?.isLeast === false;
}

function drawnWords(card: CallCard, {region, say}: DrawnFrom): string {
	const isShortlist = card.sure === 'shortlist';
	const all = isShortlist ? '-all' : '';
	if (isDrawnAsMeasured(card)) return say.say(`card-as-measured${all}`);
	if (isShortlist) return say.say('card-usual-all');
	const {shape, isStandIn} = taxonShape(region, card.names[0]?.taxon ?? '');
	return isStandIn
		? say.say('picture-stand-in')
		: say.say('card-usual', {mm: Math.round(shape.size.lengthMm)});
}

/** The same case larger or smaller, so that it is as long as was measured. */
function asLong(shape: Shape, mm: number): Shape {
	const {lengthMm, widthMm} = shape.size;
	return withParts(shape, {size: {lengthMm: mm, widthMm: (widthMm * mm) / lengthMm}});
}

function withShortStrings(shape: Shape): Shape {
	const {front, back} = shape.tendrils;
	return withParts(shape, {
		tendrils: {front: Math.min(front, longestStrings), back: Math.min(back, longestStrings)},
	});
}

function rangeOf({lengthMm}: Taxon, {profiles}: Region): LengthRange | undefined {
	if (!lengthMm) return undefined;
	const [lowMm, highMm] = lengthMm.range;
	return {lowMm, highMm, isFromMemory: profiles.sources[lengthMm.source]?.fromMemory ?? false};
}

function rangeWords(range: LengthRange | undefined, say: Say): string {
	if (!range) return say.say('card-range-none');
	const [low, high] = [Math.round(range.lowMm), Math.round(range.highMm)];
	return say.say('card-range', {
		range: say.say('result-range', {low, high, ends: low === high ? 'one' : 'two'}),
		worth: range.isFromMemory ? 'memory' : 'published',
	});
}

function measuredWords({mm, plusMinusMm, isLeast}: NonNullable<CallCard['length']>, say: Say): string {
	return isLeast ? say.say('card-yours-least', {mm}) : say.say('card-yours', {mm, plusMinus: plusMinusMm});
}

/** The alternative text: what is to be seen, and every figure of it. */
function titleOf(content: Omit<CardContent, 'title'>, say: Say): string {
	const {kinds, photo, measured, isShortlist, headline, notes, found} = content;
	const names = kinds.map(({name}) => name).join(', ');
	const shows = say.say(isShortlist ? 'card-alt-shortlist' : 'card-alt', {
		names,
		photo: photo === undefined ? 'no' : photo.isScaled ? 'scaled' : 'yes',
	});
	const lines = kinds.map(({name, second, rangeWords: words}) =>
		say.say('card-alt-line', {name, second, words}),
	);
	const all = [shows, isShortlist ? undefined : headline, ...lines, measured?.words, ...notes, found];
	return all.filter(line => line !== undefined).join('\n');
}
