/** The result of a find on one card: its photo, drawings of the names, their lengths, how sure, day and place. */
import type {Shape} from '../key/shape.ts';
import type {Part} from './capsule.ts';
import {
	type CardPart,
	type CardPhoto,
	drawFigures,
	drawFrame,
	fittedPhoto,
	type PhotoPlace,
} from './card-figures.ts';
import {type CardRow, type CardWords, drawParagraphs, drawRows, wordsLeft} from './card-rows.ts';
import type {LengthRange, MeasuredLength} from './length-scale.ts';
import {drawLines, lineHeight, wrapWords} from './lettering.ts';
import {card, letters} from './palette.ts';
import {type Drawn, onCard} from './picture.ts';

/** One name, its case as it is drawn, and its published lengths. */
export type CardKind = {
	readonly name: string;
	readonly scientificName: string;
	/** How likely, in words. */
	readonly share: string;
	/** The last two as one sentence. */
	readonly second: string;
	readonly shape: Shape;
	readonly range: LengthRange | undefined;
	readonly rangeWords: string;
};

/** What stands on a card; `title` says in words what it shows. */
export type CardContent = {
	readonly headline: string;
	/** One name, or up to four of a shortlist. */
	readonly kinds: readonly CardKind[];
	readonly isShortlist: boolean;
	/** How long cases are drawn. */
	readonly drawnWords: string;
	readonly lost: readonly Part[];
	readonly photo: CardPhoto | undefined;
	readonly measured: (MeasuredLength & {readonly words: string}) | undefined;
	/** Below all: how many more names there are, which parts are pale. */
	readonly notes: readonly string[];
	/** Day and place. */
	readonly found: string | undefined;
	readonly sayMm: (mm: number) => string;
	readonly title: string;
};

/** A finished card, and where its photo goes. */
export type DrawnCard = Drawn & {readonly photoAt: PhotoPlace | undefined};

const listed = {photoWide: 318, photoTall: 260, gap: 24} as const;
const wordsWide = card.widthUnits - 2 * wordsLeft;

/** Draws a card; throws without a name. */
export function drawFindCard(content: CardContent): DrawnCard {
	const [first] = content.kinds;
	if (!first) throw new Error('Expected at least one name on a card; got none');
	const head = drawHead(content, first);
	const middle = content.isShortlist
		? drawListHead(content, head.foot)
		: drawFigures({...content, shape: first.shape, words: content.drawnWords}, head.foot);
	const rows = drawRows({...content, rows: rowsOf(content)}, middle.foot);
	const foot = drawParagraphs(footOf(content), {left: wordsLeft, width: wordsWide, top: rows.foot});
	const drawn = onCard([head.svg, middle.svg, rows.svg, foot.svg].join('\n'), {
		heightUnits: foot.foot + card.margin,
		title: content.title,
	});
	return {...drawn, photoAt: middle.photoAt};
}

function drawHead({headline, isShortlist}: CardContent, first: CardKind): CardPart {
	const bold = {size: letters.large, weight: 'bold'} as const;
	const words = wrapWords(headline, wordsWide, bold);
	const y = card.margin + letters.large;
	const foot = y + (words.length - 1) * letters.large * lineHeight + 12;
	const second = isShortlist ? [] : [{text: first.second, how: 'plain'} as const];
	const below = drawParagraphs(second, {left: wordsLeft, width: wordsWide, top: foot});
	return {svg: drawLines(words, {...bold, x: wordsLeft, y}) + below.svg, foot: below.foot + 22};
}

/** Above a list of names: the photo, and beside it what was measured, where and when. */
function drawListHead({photo, measured, found}: CardContent, top: number): CardPart {
	const own: readonly CardWords[] = [
		...(measured ? [{text: measured.words, how: 'own'} as const] : []),
		...(found === undefined ? [] : [{text: found, how: 'plain'} as const]),
	];
	if (!photo) {
		const words = drawParagraphs(own, {left: wordsLeft, width: wordsWide, top});
		return {svg: words.svg, foot: words.foot + 22};
	}
	const box = {left: wordsLeft, top, wide: listed.photoWide, tall: listed.photoTall};
	const fitted = fittedPhoto(photo.aspect, box);
	const photoAt = {...fitted, left: wordsLeft, top};
	const left = wordsLeft + fitted.width + listed.gap;
	const words = drawParagraphs([...own, {text: photo.words, how: 'quiet'}], {
		left,
		width: card.widthUnits - wordsLeft - left,
		top: top - 6,
	});
	const foot = Math.max(words.foot, top + fitted.height) + 26;
	return {svg: drawFrame(photoAt) + words.svg, foot, photoAt};
}

function rowsOf({kinds, isShortlist, measured}: CardContent): readonly CardRow[] {
	return kinds.map(({name, scientificName, share, shape, range, rangeWords}): CardRow => {
		const quiet = {text: rangeWords, how: 'quiet'} as const;
		if (!isShortlist) {
			const own = measured ? [{text: measured.words, how: 'own'} as const] : [];
			return {words: [...own, quiet], range, shape: undefined};
		}
		// The bar has its own numbers; what it cannot say is said.
		const isSaid = range === undefined || range.isFromMemory;
		const words: readonly CardWords[] = [
			{text: name, how: 'bold'},
			{text: scientificName, how: 'plain'},
			{text: share, how: 'plain'},
		];
		return {words: isSaid ? [...words, quiet] : words, range, shape};
	});
}

function footOf({notes, found, drawnWords, isShortlist}: CardContent): readonly CardWords[] {
	const quiet = isShortlist ? [drawnWords, ...notes] : notes;
	return [
		...quiet.map(text => ({text, how: 'quiet'}) as const),
		...(isShortlist || found === undefined ? [] : [{text: found, how: 'plain'} as const]),
	];
}
