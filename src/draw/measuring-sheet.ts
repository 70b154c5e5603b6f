/** The sheet on which cases are laid to be measured from a photo, on one page of A4. */
import type {Say} from '../text/text.ts';
import {wrapHard} from './flow.ts';
import {a4, heightOfLines, type Page, type PageDrawing, type PageWords} from './page.ts';
import {colours} from './palette.ts';
import {drawRuler} from './ruler.ts';

/** A mark to print: its black square with white cells, row by row, 1 for white. */
export type SheetMark = {
	readonly xMm: number;
	readonly yMm: number;
	readonly sideMm: number;
	readonly cells: string;
};

/** The outline that a bank card must fill: ISO/IEC 7810, ID-1. */
const card = {widthMm: 85.6, heightMm: 53.98, cornerMm: 3.18, topMm: 229} as const;
/** Between the marks. */
const column = {leftMm: 42, widthMm: 126} as const;

/** Lays out the sheet: marks in its corners, a ruler and a card's outline to check the print, the middle left white. */
export function measuringSheet(marks: readonly SheetMark[], say: Say): Page {
	const title = say.say('measuring-sheet-title');
	const advice = wrapHard(say.say('measuring-sheet-print'), column.widthMm, {size: 3.2});
	const middle = a4.widthMm / 2;
	const words = {kind: 'words', xMm: middle, anchor: 'middle'} as const;
	return {
		...a4,
		items: [
			{...words, lines: [title], footMm: 17, sizeMm: 5, weight: 'bold', role: 'title'},
			{...words, lines: advice, footMm: 22.5, sizeMm: 3.2},
			...drawRuler({
				xMm: middle - 50,
				yMm: 22.5 + heightOfLines(advice.length, 3.2),
				alt: say.say('crib-ruler-alt'),
			}),
			...marks.map(drawMark),
			cardOutline(say.say('measuring-sheet-card-alt')),
			...cardWords(say),
		],
	};
}

function drawMark({xMm, yMm, sideMm, cells}: SheetMark): PageDrawing {
	const across = Math.sqrt(cells.length);
	const all = across + 2;
	const white = [...cells].flatMap((cell, index) =>
		cell === '1' ? [`M${1 + (index % across)} ${1 + Math.floor(index / across)}h1v1h-1z`] : [],
	);
	// One path each: cells drawn one by one show hairlines between them.
	const svg = `<path d="M0 0H${all}V${all}H0Z" fill="#000000"/><path d="${white.join('')}" fill="${colours.white}"/>`;
	const box = {left: 0, top: 0, right: all, bottom: all};
	return {kind: 'drawing', svg, box, xMm, yMm, widthMm: sideMm, heightMm: sideMm};
}

function cardOutline(alt: string): PageDrawing {
	const {widthMm, heightMm, cornerMm, topMm} = card;
	// Half of the line's width stands over on each side.
	const half = 0.15;
	const svg = `<rect x="0" y="0" width="${widthMm}" height="${heightMm}" rx="${cornerMm}" fill="none" stroke="${colours.quiet}" stroke-width="${2 * half}"/>`;
	const box = {left: -half, top: -half, right: widthMm + half, bottom: heightMm + half};
	return {
		...{svg, box, alt, xMm: (a4.widthMm - widthMm) / 2 - half, yMm: topMm - half},
		widthMm: widthMm + 2 * half,
		heightMm: heightMm + 2 * half,
		kind: 'drawing',
	};
}

function cardWords(say: Say): readonly PageWords[] {
	const lines = wrapHard(say.say('measuring-sheet-card'), card.widthMm - 16, {size: 3.2});
	const footMm = card.topMm + card.heightMm - 4 - heightOfLines(lines.length - 1, 3.2);
	return [
		{kind: 'words', lines, xMm: a4.widthMm / 2, anchor: 'middle', footMm, sizeMm: 3.2, fill: colours.quiet},
	];
}
