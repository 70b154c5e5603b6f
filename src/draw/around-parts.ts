/** The parts of a case by name: one of a skate or ray, one of a catshark. */
import {plainShape, withParts} from '../key/shape.ts';
import type {Say} from '../text/text.ts';
import {drawCapsule} from './capsule.ts';
import {placed} from './choices.ts';
import {outlineOf} from './contour.ts';
import {hornLine, tendrilLine} from './horns.ts';
import {drawLines, drawWords} from './lettering.ts';
import {card, colours, letters, lines} from './palette.ts';
import {drawPath, type Point} from './path.ts';
import {type Drawn, onCard} from './picture.ts';

const ray = {
	shape: withParts(plainShape, {blades: {width: 0.09}, frontHorns: {length: 0.3}}),
	unitsPerMm: 4.4,
};
const shark = {
	shape: withParts(plainShape, {
		size: {lengthMm: 62, widthMm: 25},
		sides: {front: 0.72, back: 0.72},
		frontHorns: {length: 0},
		backHorns: {length: 0},
		tendrils: {front: 0.5, back: 0.5, thickness: 0.08},
	}),
	unitsPerMm: 4,
};
const top = card.margin + 10;
const tall = 470;
const middles = {ray: 160, shark: 604} as const;
const wordsLeft = 344;

/** Draws both cases, with a line from each part to its name. */
export function drawParts(say: Say, title: string): Drawn {
	const centre = top + tall / 2;
	const drawn = [ray, shark].map(({shape, unitsPerMm}) => drawCapsule(shape, {unitsPerMm}));
	const shift = drawn.map(
		({box}, index) => ((box.top + box.bottom) / 2) * (index === 0 ? ray : shark).unitsPerMm,
	);
	const onRay = ([x, y]: Point): Point => [
		middles.ray + x * ray.unitsPerMm,
		centre + y * ray.unitsPerMm - (shift[0] ?? 0),
	];
	const onShark = ([x, y]: Point): Point => [
		middles.shark + x * shark.unitsPerMm,
		centre + y * shark.unitsPerMm - (shift[1] ?? 0),
	];
	const outline = outlineOf(ray.shape);
	const horn = hornLine(ray.shape, outline, 'front').at(-9) ?? [0, 0];
	const strings = tendrilLine(shark.shape, outlineOf(shark.shape), 'back') ?? [];
	const string = strings.at(strings.length * 0.3) ?? [0, 0];
	const half = ray.shape.size.widthMm / 2;
	const named = [
		{part: 'horn', at: [onRay([Math.abs(horn[0]), horn[1]])]},
		{part: 'apron', at: [onRay([9, outline.frontMm - 2.2])]},
		{part: 'capsule', at: [onRay([12, -12]), onShark([-7, -8])]},
		{part: 'blade', at: [onRay([half - 2, 8])]},
		{part: 'string', at: [onShark([-Math.abs(string[0]), string[1]])]},
	] as const;
	const labels = named.map(({part, at}, index) => {
		const y = top + 56 + index * 92;
		return drawName(say.say(`drawn-${part}`), {y, at});
	});
	const foot = top + tall + letters.small + 24;
	const under = (words: string, x: number) =>
		drawLines([words], {x, y: foot, size: letters.small, weight: 'bold', anchor: 'middle'});
	return onCard(
		[
			...drawn.map((drawing, index) =>
				placed(drawing, {
					middle: index === 0 ? middles.ray : middles.shark,
					top,
					tall,
					unitsPerMm: (index === 0 ? ray : shark).unitsPerMm,
				}),
			),
			...labels,
			under(say.say('drawn-skate'), middles.ray + 14),
			under(say.say('drawn-catshark'), middles.shark - 8),
		].join('\n'),
		{heightUnits: foot + card.margin + 4, title},
	);
}

/** A name with a line to each place that bears it. */
function drawName(words: string, {y, at}: {y: number; at: readonly Point[]}): string {
	const middle = y - letters.small * 0.34;
	const ends = at.map(([x, down]) => {
		const isLeft = x < wordsLeft;
		const from = isLeft ? wordsLeft - 8 : wordsLeft + 150;
		return (
			drawPath(`M${from} ${middle.toFixed(1)}L${x.toFixed(1)} ${down.toFixed(1)}`, {
				stroke: colours.mark,
				'stroke-width': lines.thin,
			}) +
			`<circle cx="${x.toFixed(1)}" cy="${down.toFixed(1)}" r="9" fill="${colours.mark}" stroke="${colours.white}" stroke-width="${lines.thin}"/>`
		);
	});
	return ends.join('') + drawWords(words, {x: wordsLeft, y, size: letters.small});
}
