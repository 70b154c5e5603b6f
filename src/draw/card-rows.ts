/** The lower part of a card: each name with its published lengths as a bar, and what was measured across them. */
import type {Shape} from '../key/shape.ts';
import {drawCapsule, type Part} from './capsule.ts';
import {type CardPart, fittingScale} from './card-figures.ts';
import {innerWidth} from './chart.ts';
import {placed} from './choices.ts';
import {
	axisTall,
	barTall,
	drawAxis,
	drawEnds,
	drawMeasured,
	drawRange,
	type LengthRange,
	type LengthScale,
	type MeasuredLength,
	scaleOfLengths,
} from './length-scale.ts';
import {drawLines, lineHeight, wrapWords} from './lettering.ts';
import {card, colours, letters, lines} from './palette.ts';
import {drawNarrowScaleBar} from './scale-bar.ts';

/** Words of a card: how they are set, and whether they are said more quietly or as the finder's own. */
export type CardWords = {readonly text: string; readonly how: 'plain' | 'bold' | 'quiet' | 'own'};

/** One name of a card. */
export type CardRow = {
	readonly words: readonly CardWords[];
	readonly range: LengthRange | undefined;
	/** Drawn small beside its words. */
	readonly shape: Shape | undefined;
};

/** Names, what was measured, and how millimetres are said. */
export type Rows = {
	readonly rows: readonly CardRow[];
	readonly lost: readonly Part[];
	readonly measured: MeasuredLength | undefined;
	readonly sayMm: (mm: number) => string;
};

const figure = {wide: 138, tall: 164};
/** Lines of small drawings are thinner by this. */
const finer = 1.8;
const gap = 20;
const barGap = 14;
/** Room beside the bars for their numbers. */
const numberRoom = 74;
/** Where words begin. */
export const wordsLeft = card.margin + 8;

/** Draws the names from `top` down, all their drawings and all their bars in one scale each. */
export function drawRows({rows, lost, measured, sayMm}: Rows, top: number): CardPart {
	const shapes = rows.flatMap(({shape}) => shape ?? []);
	const hasFigures = shapes.length > 0;
	const left = wordsLeft + (hasFigures ? figure.wide + gap : 0);
	const width = card.widthUnits - wordsLeft - left;
	const ranges = rows.flatMap(({range}) => range ?? []);
	const inset = hasFigures ? numberRoom : 28;
	const scale =
		ranges.length === 0
			? undefined
			: scaleOfLengths(ranges, measured, {left: left + inset, width: width - 2 * inset});
	const unitsPerMm = Math.min(...shapes.map(shape => fittingScale(shape, figure, finer)));
	const parts: string[] = [];
	let foot = top;
	for (const row of rows) {
		const drawn = drawRow(row, {top: foot, left, width, scale, measured, lost, unitsPerMm});
		parts.push(drawn.svg);
		foot = drawn.foot;
	}
	if (scale) parts.push(drawAxis(scale, measured, foot + barGap));
	if (hasFigures) {
		const middle = wordsLeft + figure.wide / 2;
		parts.push(drawNarrowScaleBar({middle, top: foot + 4, room: figure.wide, unitsPerMm, say: sayMm}));
	}
	return {svg: parts.join('\n'), foot: foot + (scale || hasFigures ? barGap + axisTall + 12 : 0)};
}

/** Words under one another from `top` down, broken where they are too wide. */
export function drawParagraphs(
	paragraphs: readonly CardWords[],
	{left, width, top}: {readonly left: number; readonly width: number; readonly top: number},
): CardPart {
	const svg: string[] = [];
	let foot = top;
	for (const {text, how} of paragraphs) {
		const weight = how === 'bold' || how === 'own' ? 'bold' : 'plain';
		const fill = how === 'quiet' ? colours.quiet : how === 'own' ? colours.mark : colours.ink;
		const words = wrapWords(text, width, {size: letters.small, weight});
		svg.push(drawLines(words, {x: left, y: foot + letters.small, size: letters.small, weight, fill}));
		foot += words.length * letters.small * lineHeight;
	}
	return {svg: svg.join(''), foot};
}

type Placing = {
	readonly top: number;
	readonly left: number;
	readonly width: number;
	readonly scale: LengthScale | undefined;
	readonly measured: MeasuredLength | undefined;
	readonly lost: readonly Part[];
	readonly unitsPerMm: number;
};

function drawRow({words, range, shape}: CardRow, placing: Placing): CardPart {
	const {top, scale, measured} = placing;
	const paragraphs = drawParagraphs(words, placing);
	const svg = [paragraphs.svg];
	let {foot} = paragraphs;
	if (scale && range) {
		const bar = foot + barGap;
		svg.push(drawRange(scale, range, bar));
		if (shape) svg.push(drawEnds(scale, range, {top: bar, measured}));
		if (measured) svg.push(drawMeasured(scale, measured, bar));
		foot = bar + barTall + 10;
	}
	if (shape) {
		foot = Math.max(foot, top + figure.tall);
		svg.push(drawSmall(shape, placing, foot), divider(foot + 9));
	}
	return {svg: svg.join(''), foot: foot + 14};
}

function drawSmall(shape: Shape, {top, lost, unitsPerMm}: Placing, foot: number): string {
	const drawing = drawCapsule(shape, {unitsPerMm: unitsPerMm * finer, lost});
	const middle = wordsLeft + figure.wide / 2;
	return placed(drawing, {middle, top: top + 6, tall: foot - top - 6, unitsPerMm});
}

function divider(y: number): string {
	const d = `M${card.margin} ${y.toFixed(1)}h${innerWidth}`;
	return `<path d="${d}" stroke="${colours.quiet}" stroke-width="${lines.hair}" stroke-dasharray="2 10"/>`;
}
