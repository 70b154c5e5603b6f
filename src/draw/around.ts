/** Pictures of the questions that all regions share: drawn of plain cases, with words of the reader's language. */
import {plainShape, withParts} from '../key/shape.ts';
import type {Say} from '../text/text.ts';
import type {AroundPicture} from './around-names.ts';
import {drawParts} from './around-parts.ts';
import {drawSoak} from './around-soak.ts';
import {drawCapsule} from './capsule.ts';
import {placed} from './choices.ts';
import {drawLines, lineHeight, wrapWords} from './lettering.ts';
import {card, colours, letters, lines} from './palette.ts';
import {drawPath, upTo} from './path.ts';
import {type Drawn, onCard} from './picture.ts';
import type {Drawing} from './profile.ts';

/** Draws one of the shared pictures; `title` says in words what it shows. */
export function drawAround(which: AroundPicture, {say, title}: {say: Say; title: string}): Drawn {
	switch (which) {
		case 'parts':
			return drawParts(say, title);
		case 'photo':
			return drawPhotos(say, title);
		case 'soak':
			return drawSoak(say, title);
		case 'aprons':
			return drawAprons(say, title);
	}
}

type Cell = {readonly drawing: Drawing; readonly words: string; readonly beside?: string};

const tall = 400;
const middleMm = 0;

/** A case with both aprons, with one torn off, with both torn off. */
function drawAprons(say: Say, title: string): Drawn {
	const unitsPerMm = 3.6;
	const whole = drawCapsule(plainShape, {unitsPerMm});
	const torn = drawCapsule(plainShape, {unitsPerMm, lost: ['aprons']});
	const one = halves(whole, torn);
	const cells = [
		{drawing: whole, words: say.say('drawn-aprons-both')},
		{drawing: one, words: say.say('drawn-aprons-one')},
		{drawing: torn, words: say.say('drawn-aprons-none')},
	];
	return drawCells(cells, {unitsPerMm, title});
}

/** The front half of one drawing above the back half of another. */
function halves(front: Drawing, back: Drawing): Drawing {
	const {left, right, top, bottom} = front.box;
	const half = (id: string, from: number, to: number, svg: string) =>
		`<clipPath id="${id}"><rect x="${left - 2}" y="${from}" width="${right - left + 4}" height="${to - from}"/></clipPath><g clip-path="url(#${id})">${svg}</g>`;
	const svg =
		half('front-half', top - 2, middleMm, front.svg) + half('back-half', middleMm, bottom + 2, back.svg);
	return {svg, box: front.box};
}

/** The top beside a coin, the underside beside a ruler. */
function drawPhotos(say: Say, title: string): Drawn {
	const unitsPerMm = 3.6;
	const smooth = withParts(plainShape, {grain: {count: 0}});
	const cells = [
		{drawing: drawCapsule(plainShape, {unitsPerMm}), words: say.say('drawn-photo-top'), beside: drawCoin()},
		{
			drawing: drawCapsule(smooth, {unitsPerMm, view: 'under'}),
			words: say.say('drawn-photo-under'),
			beside: drawUprightRuler(unitsPerMm),
		},
	];
	return drawCells(cells, {unitsPerMm, title});
}

function drawCoin(): string {
	const circle = (radius: number, width: number) =>
		`<circle r="${radius}" fill="#d5d9dc" stroke="${colours.ink}" stroke-width="${width}"/>`;
	return `<g transform="translate(148 90)">${circle(42, lines.plain)}${circle(30, lines.thin)}</g>`;
}

function drawUprightRuler(unitsPerMm: number): string {
	const [long, wide] = [80 * unitsPerMm, 56];
	const marks = upTo(16).map(index => {
		const at = index * 5 * unitsPerMm - long / 2;
		return `M104 ${at.toFixed(1)}h${index % 2 === 0 ? 28 : 16}`;
	});
	return (
		`<rect x="104" y="${-long / 2}" width="${wide}" height="${long}" fill="${colours.white}" stroke="${colours.ink}" stroke-width="${lines.plain}"/>` +
		drawPath(marks.join(''), {stroke: colours.ink, 'stroke-width': lines.thin})
	);
}

/** Drawings side by side, each with its words below it. */
function drawCells(cells: readonly Cell[], {unitsPerMm, title}: {unitsPerMm: number; title: string}): Drawn {
	const wide = (card.widthUnits - 2 * card.margin) / cells.length;
	const words = cells.map(cell => wrapWords(cell.words, wide - 12, {size: letters.small}));
	const most = Math.max(...words.map(({length}) => length));
	const top = card.margin + 10;
	const foot = top + tall + letters.small + 14;
	const svg = cells.map(({drawing, beside}, index) => {
		const middle = card.margin + wide * (index + 0.5);
		const case_ = middle - (beside === undefined ? 0 : 56);
		const lineX = card.margin + wide * index;
		return [
			placed(drawing, {middle: case_, top, tall, unitsPerMm}),
			beside === undefined
				? ''
				: `<g transform="translate(${case_.toFixed(1)} ${top + tall / 2})">${beside}</g>`,
			drawLines(words[index] ?? [], {x: middle, y: foot, size: letters.small, anchor: 'middle'}),
			index === 0
				? ''
				: drawPath(`M${lineX} ${top}V${foot + 8}`, {
						stroke: colours.quiet,
						'stroke-width': lines.hair,
						'stroke-dasharray': '2 10',
					}),
		].join('');
	});
	const heightUnits = foot + (most - 1) * letters.small * lineHeight + card.margin + 6;
	return onCard(svg.join('\n'), {heightUnits, title});
}
