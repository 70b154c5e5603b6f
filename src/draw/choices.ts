/** The options of a question side by side, lettered as its buttons are. */
import type {Shape} from '../key/shape.ts';
import {drawFigure, type Sight} from './figure.ts';
import {letterOf} from './letter.ts';
import {capitalHeight, drawLines, drawWords, lineHeight, wrapWords} from './lettering.ts';
import {card, colours, letters, lines} from './palette.ts';
import {boxAround, drawPath} from './path.ts';
import {type Drawn, onCard} from './picture.ts';
import type {Drawing} from './profile.ts';

/** One option: what its button says, and what it stands for. */
export type Choice = {readonly label: string; readonly shape: Shape};

/** What a picture of choices is made of; `title` says in words what it shows. */
export type Choices = {readonly choices: readonly Choice[]; readonly sight: Sight; readonly title: string};

/** Tallest figure of an option, by how many stand in a row. */
const mostTall = {2: 400, 3: 400} as const;
const gap = 20;

/** Draws two to four options; throws for any other number. */
export function drawChoices({choices, sight, title}: Choices): Drawn {
	if (choices.length < 2 || choices.length > 4) {
		throw new Error(`Expected two to four options to draw; got ${choices.length}`);
	}
	const perRow = choices.length === 3 ? 3 : 2;
	const cellWide = (card.widthUnits - 2 * card.margin - (perRow - 1) * gap) / perRow;
	const fit = {wide: cellWide - 16, tall: mostTall[perRow]};
	const unitsPerMm = scaleFor(choices, sight, fit);
	const figures = choices.map(({shape}) => drawFigure(shape, sight, {unitsPerMm}));
	const tall = Math.max(...figures.map(({box}) => (box.bottom - box.top) * unitsPerMm));
	const labels = choices.map(({label}) => wrapWords(label, cellWide - 8, {size: letters.small}));
	const labelLines = Math.max(...labels.map(({length}) => length));
	const headTall = letters.option * capitalHeight + 26;
	const cellTall = headTall + tall + 30 + labelLines * letters.small * lineHeight;
	const cells = choices.map((_, index) => {
		const [column, row] = [index % perRow, Math.floor(index / perRow)];
		const [left, top] = [card.margin + column * (cellWide + gap), card.margin + row * (cellTall + gap)];
		const figure = figures[index];
		const middle = left + cellWide / 2;
		return [
			drawWords(letterOf(index), {
				x: left + 8,
				y: top + letters.option * capitalHeight + 4,
				size: letters.option,
				weight: 'bold',
			}),
			figure ? placed(figure, {middle, top: top + headTall, tall, unitsPerMm}) : '',
			drawLines(labels[index] ?? [], {
				x: middle,
				y: top + headTall + tall + 24 + letters.small * 0.8,
				size: letters.small,
				anchor: 'middle',
			}),
			column === 0 ? '' : divider(left - gap / 2, top, cellTall),
		].join('');
	});
	const rows = Math.ceil(choices.length / perRow);
	return onCard(cells.join('\n'), {heightUnits: 2 * card.margin + rows * cellTall + (rows - 1) * gap, title});
}

/** One scale for all options, since size may be what parts them. */
function scaleFor(
	choices: readonly Choice[],
	sight: Sight,
	{wide, tall}: {wide: number; tall: number},
): number {
	let unitsPerMm = 5;
	// What stands out beyond a case keeps its size in the picture, so the scale settles in a few rounds.
	for (let round = 0; round < 4; round++) {
		const box = boxAround(
			choices.map(({shape}) => {
				const {left, right, top, bottom} = drawFigure(shape, sight, {unitsPerMm}).box;
				return {left: 0, top: 0, right: right - left, bottom: bottom - top};
			}),
		);
		unitsPerMm = Math.min(wide / box.right, tall / box.bottom) * (round === 3 ? 0.99 : 1);
	}
	return unitsPerMm;
}

type Place = {
	readonly middle: number;
	readonly top: number;
	readonly tall: number;
	readonly unitsPerMm: number;
};

/** A drawing in millimetres put in its place on the card. */
export function placed({svg, box}: Drawing, {middle, top, tall, unitsPerMm}: Place): string {
	const x = middle - ((box.left + box.right) / 2) * unitsPerMm;
	const y = top + tall / 2 - ((box.top + box.bottom) / 2) * unitsPerMm;
	return `<g transform="translate(${x.toFixed(1)} ${y.toFixed(1)}) scale(${unitsPerMm.toFixed(3)})">${svg}</g>`;
}

function divider(x: number, top: number, tall: number): string {
	return drawPath(`M${x} ${top}L${x} ${top + tall}`, {
		stroke: colours.quiet,
		'stroke-width': lines.hair,
		'stroke-dasharray': '2 10',
	});
}
