/** A whole case with a ring round the part that a question is about. */
import type {Character} from '../key/region.ts';
import {type PartialShape, plainShape, type Shape, type ShapeGroup, withParts} from '../key/shape.ts';
import {drawCapsule} from './capsule.ts';
import {placed} from './choices.ts';
import {outlineOf} from './contour.ts';
import {drawLines, wrapWords} from './lettering.ts';
import {card, colours, letters, lines} from './palette.ts';
import {type Box, boxAround, drawPath} from './path.ts';
import {type Drawn, onCard} from './picture.ts';

/** Groups of a shape that are told from the whole case; nothing of it is ringed alone. */
const ofTheWhole: ReadonlySet<string> = new Set(['form', 'size', 'sides'] satisfies ShapeGroup[]);
const tall = 470;

/** The groups of a shape that the states of a character draw. */
export function groupsOf({draws = {}}: Pick<Character, 'draws'>): readonly string[] {
	return [...new Set(Object.values(draws).flatMap(part => Object.keys(part)))];
}

/** The picture of where to look; `name` is said under it. */
export function drawPart(character: Character, {name, title}: {name: string; title: string}): Drawn {
	const groups = groupsOf(character);
	const shape = exampleOf(character, groups);
	const first = drawCapsule(shape, {unitsPerMm: 5});
	const unitsPerMm = Math.min(
		(card.widthUnits - 120) / (first.box.right - first.box.left),
		tall / (first.box.bottom - first.box.top),
	);
	const capsule = drawCapsule(shape, {unitsPerMm});
	const rings = ringsOf(shape, groups, capsule.box).map(box => drawRing(box, unitsPerMm));
	const box = boxAround([capsule.box]);
	const words = wrapWords(name, card.widthUnits - 4 * card.margin, {size: letters.plain, weight: 'bold'});
	const top = card.margin + 24;
	const foot = top + tall + 80;
	return onCard(
		placed({svg: capsule.svg + rings.join(''), box}, {middle: card.widthUnits / 2, top, tall, unitsPerMm}) +
			drawLines(words, {
				x: card.widthUnits / 2,
				y: foot,
				size: letters.plain,
				weight: 'bold',
				anchor: 'middle',
			}),
		{heightUnits: foot + words.length * letters.plain * 1.2, title},
	);
}

/** A plain case that has what is to be ringed. */
function exampleOf({on, draws = {}}: Character, groups: readonly string[]): Shape {
	const [first] = Object.values(draws);
	const blade: PartialShape = {blades: {width: 0.09}};
	const isOfWhole = groups.every(group => ofTheWhole.has(group));
	return withParts(plainShape, isOfWhole ? {} : blade, on ?? {}, first ?? {});
}

/** Where the rings go, in millimetres. */
function ringsOf(shape: Shape, groups: readonly string[], whole: Box): readonly Box[] {
	const outline = outlineOf(shape);
	const half = outline.widthMm / 2;
	const corner = (side: number, isFront: boolean): Box => {
		const middle = side * outline.halfAt(isFront ? 0 : 1) * 0.9;
		const room = half * 0.36;
		const [top, bottom] = isFront
			? [whole.top, outline.frontMm + room * 0.6]
			: [outline.backMm - room * 0.6, whole.bottom];
		const reach =
			side < 0
				? {left: Math.min(whole.left, middle - room), right: middle + room}
				: {left: middle - room, right: Math.max(whole.right, middle + room)};
		return {...(isLong(shape) ? reach : {left: middle - room, right: middle + room}), top, bottom};
	};
	const side = (way: number): Box => ({
		left: way < 0 ? -half * 1.12 : outline.halfAt(0.5) * 0.78,
		right: way < 0 ? -outline.halfAt(0.5) * 0.78 : half * 1.12,
		top: outline.frontMm,
		bottom: outline.backMm,
	});
	const apron = (isFront: boolean): Box => ({
		left: -outline.halfAt(isFront ? 0 : 1) * 0.95,
		right: outline.halfAt(isFront ? 0 : 1) * 0.95,
		top: isFront ? -outline.lengthMm * 0.54 : outline.backMm - outline.lengthMm * 0.03,
		bottom: isFront ? outline.frontMm + outline.lengthMm * 0.03 : outline.lengthMm * 0.54,
	});
	const face: Box = {
		left: -half * 0.62,
		right: half * 0.62,
		top: -outline.lengthMm * 0.3,
		bottom: outline.lengthMm * 0.3,
	};
	const rings: Readonly<Record<string, readonly Box[]>> = {
		frontHorns: [corner(-1, true), corner(1, true)],
		backHorns: [corner(-1, false), corner(1, false)],
		tendrils: [corner(-1, true), corner(1, true), corner(-1, false), corner(1, false)],
		frontApron: [apron(true)],
		backApron: [apron(false)],
		blades: [side(-1), side(1)],
		rim: [side(-1), side(1)],
		grain: [face],
		surface: [face],
	};
	const found = groups.filter(group => !ofTheWhole.has(group)).flatMap(group => rings[group] ?? []);
	const all = found.length > 0 ? found : [whole];
	return [...new Map(all.map(box => [JSON.stringify(box), box])).values()];
}

function isLong({tendrils}: Shape): boolean {
	return tendrils.front > 0;
}

/** A broken ring with a light one under it, so that it shows on light and on dark. */
function drawRing({left, right, top, bottom}: Box, unitsPerMm: number): string {
	const room = 10 / unitsPerMm;
	const [wide, high] = [right - left + 2 * room, bottom - top + 2 * room];
	const bend = Math.min(wide / 2, high / 2, 60 / unitsPerMm);
	const [x, y] = [left - room + bend, top - room];
	const arc = (across: number, down: number) => `a${bend} ${bend} 0 0 1 ${across} ${down}`;
	const d = `M${x} ${y}h${wide - 2 * bend}${arc(bend, bend)}v${high - 2 * bend}${arc(-bend, bend)}h${2 * bend - wide}${arc(-bend, -bend)}v${2 * bend - high}${arc(bend, -bend)}Z`;
	return (
		drawPath(d, {stroke: colours.white, 'stroke-width': (lines.bold * 1.9) / unitsPerMm}) +
		drawPath(d, {
			stroke: colours.mark,
			'stroke-width': lines.bold / unitsPerMm,
			'stroke-dasharray': `${18 / unitsPerMm} ${11 / unitsPerMm}`,
		})
	);
}
