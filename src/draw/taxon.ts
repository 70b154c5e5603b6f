/** One kind as its profile describes it: its case on a card, with its name. */
import type {TaxonShape} from '../key/drawn.ts';
import {drawCapsule, type Part} from './capsule.ts';
import {placed} from './choices.ts';
import {drawLines, lineHeight, wrapWords} from './lettering.ts';
import {card, colours, letters} from './palette.ts';
import {type Drawn, onCard} from './picture.ts';

/** What is said in the picture of a kind. */
export type TaxonWords = {
	readonly name: string;
	/** Said when the size is a stand-in. */
	readonly standIn: string;
	readonly title: string;
};

const tall = 700;

/** The picture of a kind; parts in `lost` are pale and broken. */
export function drawTaxon(
	{shape, isStandIn}: TaxonShape,
	{words, lost}: {words: TaxonWords; lost: readonly Part[]},
): Drawn {
	const wide = card.widthUnits - 4 * card.margin;
	const {box} = drawCapsule(shape, {unitsPerMm: 5});
	const unitsPerMm = Math.min(wide / (box.right - box.left), tall / (box.bottom - box.top));
	const figure = drawCapsule(shape, {unitsPerMm, lost});
	const name = wrapWords(words.name, wide, {size: letters.plain, weight: 'bold'});
	const remark = isStandIn ? wrapWords(words.standIn, wide, {size: letters.small}) : [];
	const [x, foot] = [card.widthUnits / 2, card.margin + tall + 70];
	const below = foot + name.length * letters.plain * lineHeight;
	return onCard(
		[
			placed(figure, {middle: x, top: card.margin + 8, tall, unitsPerMm}),
			drawLines(name, {x, y: foot, size: letters.plain, weight: 'bold', anchor: 'middle'}),
			drawLines(remark, {x, y: below, size: letters.small, anchor: 'middle', fill: colours.quiet}),
		].join(''),
		{heightUnits: below + remark.length * letters.small * lineHeight - 8, title: words.title},
	);
}
