/** How to measure a case: it lies beside a ruler, and what does not count is crossed out. */
import {plainShape, withParts} from '../key/shape.ts';
import {drawCapsule} from './capsule.ts';
import {placed} from './choices.ts';
import {outlineOf} from './contour.ts';
import {hornLine} from './horns.ts';
import {drawLines, lineHeight, wrapWords} from './lettering.ts';
import {card, colours, letters, lines} from './palette.ts';
import {drawPath, upTo} from './path.ts';
import {type Drawn, onCard} from './picture.ts';

/** The words that stand in the picture. */
export type MeasuringWords = {
	readonly from: string;
	readonly to: string;
	/** How the case lies. */
	readonly flat: string;
	/** What is crossed out. */
	readonly leftOut: string;
	/** What the picture shows, in words. */
	readonly title: string;
};

/** What is measured: from apron to apron, or across with the blades. */
export type Measured = 'length' | 'width';

const unitsPerMm = 5.4;
const middle = {x: 190, y: 330} as const;
/** Millimetres of the ruler between two longer marks. */
const tens = 10;

/** The picture of measuring a plain case with blades. */
export function drawMeasuring(which: Measured, words: MeasuringWords): Drawn {
	const shape = withParts(plainShape, {
		size: {lengthMm: 70, widthMm: 50},
		frontHorns: {length: 0.3},
		backHorns: {length: 0.26},
		blades: {width: 0.09},
	});
	const capsule = drawCapsule(shape, {unitsPerMm});
	const [half, side] = [(shape.size.lengthMm / 2) * unitsPerMm, (shape.size.widthMm / 2) * unitsPerMm];
	const figure = placed(capsule, {
		middle: middle.x,
		top: middle.y + capsule.box.top * unitsPerMm,
		tall: (capsule.box.bottom - capsule.box.top) * unitsPerMm,
		unitsPerMm,
	});
	const isLength = which === 'length';
	const outline = outlineOf(shape);
	const tips = (['front', 'back'] as const).flatMap(end => {
		const line = hornLine(shape, outline, end);
		const [x, y] = line.at(-8) ?? [0, 0];
		return [
			drawCross(middle.x + x * unitsPerMm, middle.y + y * unitsPerMm),
			drawCross(middle.x - x * unitsPerMm, middle.y + y * unitsPerMm),
		];
	});
	const inside = isLength
		? [
				drawRuler({x: 352, y: middle.y - half, long: shape.size.lengthMm, isUpright: true}),
				...[-half, half].map(at => drawEdge(`M${middle.x - side} ${middle.y + at}L430 ${middle.y + at}`)),
			]
		: [
				drawRuler({x: middle.x - side, y: middle.y + half + 130, long: shape.size.widthMm, isUpright: false}),
				...[-side, side].map(at =>
					drawEdge(`M${middle.x + at} ${middle.y - half * 0.5}L${middle.x + at} ${middle.y + half + 200}`),
				),
			];
	return onCard([figure, ...inside, ...tips, drawSaid(words, {isLength, half})].join(''), {
		heightUnits: isLength ? 660 : 770,
		title: words.title,
	});
}

function drawSaid(words: MeasuringWords, {isLength, half}: {isLength: boolean; half: number}): string {
	const x = 448;
	const room = card.widthUnits - x - card.margin;
	const lettering = {x, size: letters.small};
	const said = (text: string, y: number) => drawLines(wrapWords(text, room, lettering), {...lettering, y});
	if (isLength) {
		return [
			said(words.from, middle.y - half + 12),
			said(words.flat, middle.y - 70),
			said(words.leftOut, middle.y + 30),
			said(words.to, middle.y + half + 12),
		].join('');
	}
	const all = [words.from, words.to, words.flat, words.leftOut];
	const lines = all.map(text => wrapWords(text, room, lettering).length);
	return all
		.map((text, index) => {
			const before = lines.slice(0, index).reduce((sum, count) => sum + count * lineHeight + 0.7, 0);
			return said(text, middle.y - 130 + before * letters.small);
		})
		.join('');
}

type Ruler = {readonly x: number; readonly y: number; readonly long: number; readonly isUpright: boolean};

/** A ruler with a mark for each millimetre pair and a longer one for each ten. */
function drawRuler({x, y, long, isUpright}: Ruler): string {
	const deep = 70;
	const end = long * unitsPerMm;
	const [wide, high] = isUpright ? [deep, end] : [end, deep];
	const marks = upTo(long / 2).map(index => {
		const at = index * 2;
		const reach = at % tens === 0 ? 36 : 18;
		const place = at * unitsPerMm;
		return isUpright ? `M${x} ${y + place}l${reach} 0` : `M${x + place} ${y}l0 ${reach}`;
	});
	return (
		`<rect x="${x}" y="${y}" width="${wide}" height="${high}" fill="${colours.white}" stroke="${colours.ink}" stroke-width="${lines.plain}"/>` +
		drawPath(marks.join(''), {stroke: colours.ink, 'stroke-width': lines.thin})
	);
}

function drawEdge(d: string): string {
	return drawPath(d, {stroke: colours.mark, 'stroke-width': lines.plain, 'stroke-dasharray': '3 11'});
}

function drawCross(x: number, y: number): string {
	const d = `M${x - 19} ${y - 19}l38 38m0 -38l-38 38`;
	return (
		drawPath(d, {stroke: colours.card, 'stroke-width': 15}) +
		drawPath(d, {stroke: colours.wrong, 'stroke-width': lines.bold})
	);
}
