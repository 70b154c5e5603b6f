/** A case drawn from its shape, in millimetres: its middle at 0, 0, its front up. */
import {type Shape, withParts} from '../key/shape.ts';
import {apronPart} from './aprons.ts';
import {bladePart, closedPart, type Outline, outlineOf} from './contour.ts';
import {hornPart, tendrilLine} from './horns.ts';
import {colours, lines} from './palette.ts';
import {attributes, boxOf, drawPath, mirrored, type Point, pathOf} from './path.ts';
import {type Drawing, drawCut, drawProfile} from './profile.ts';
import {drawRim, rimReach} from './rim.ts';
import {screwParts} from './screw.ts';
import {drawSurface, type Pen} from './surface.ts';

/** Parts of a case that can be lost, as a key's `needs` names them. */
export type Part = 'horns' | 'sides' | 'surface' | 'aprons';

/** How a case is looked at and drawn. */
export type Look = Pen & {
	readonly view?: 'above' | 'under' | 'side' | 'cut';
	/** Parts drawn pale and broken, since they are lost. */
	readonly lost?: readonly Part[];
	/** Only what is measured: closed part, aprons and blades, filled and without any line round it. */
	readonly only?: 'body';
};

/** A case as SVG in millimetres with the box it fills. */
export function drawCapsule(shape: Shape, look: Look): Drawing {
	if (look.view === 'side') return drawProfile(shape, look);
	if (look.view === 'cut') return drawCut(shape, look);
	return shape.form.kind === 'screw' ? drawScrew(shape, look) : drawPouch(shape, look);
}

type Piece = {readonly part: Part | undefined; readonly points: readonly Point[]; readonly fill: string};

function drawPouch(shape: Shape, look: Look): Drawing {
	const outline = outlineOf(shape);
	const pieces = piecesOf(shape, outline);
	const closed: Piece = {part: undefined, points: closedPart(outline), fill: colours.capsule};
	if (look.only === 'body') return drawBody([...pieces.filter(isMeasured), closed]);
	const tendrils = tendrilsOf(shape, outline);
	const isLost = (part: Part | undefined) => part !== undefined && (look.lost ?? []).includes(part);
	const face = look.view === 'under' ? 'under' : 'top';
	const drawn = [...pieces, closed];
	const svg = [
		...tendrils.map(line => drawTendril(line, {shape, look, isLost: isLost('horns')})),
		drawRim(isLost('sides') ? withParts(shape, {rim: {hairs: false}}) : shape, outline, look),
		...drawn.filter(({part}) => isLost(part)).map(piece => drawLost(piece, look)),
		...drawn.filter(({part}) => !isLost(part)).map(piece => drawPiece(piece, look)),
		// Once more without a line, so that horns grow out of the case instead of standing on it.
		drawPath(pathOf(inward(closed.points, look)), {fill: closed.fill}),
		isLost('surface') ? '' : drawSurface(shape, outline, {pen: look, face}),
	];
	const reach = rimReach(shape, look);
	const all = [...drawn.flatMap(({points}) => points), ...tendrils.flat()];
	const half = outline.widthMm / 2 + reach;
	return {svg: svg.join(''), box: boxOf([...all, [-half, 0], [half, 0]])};
}

/** Blades, aprons and horns, those that lie lower first. */
function piecesOf(shape: Shape, outline: Outline): readonly Piece[] {
	const ends = ['front', 'back'] as const;
	const blade = bladePart(outline);
	const blades = outline.bladeMm === 0 ? [] : [blade, mirrored(blade)];
	const horns = ends.flatMap(end => {
		const horn = hornPart(shape, outline, end);
		return horn ? [horn, mirrored(horn)] : [];
	});
	return [
		...blades.map(points => ({part: 'sides' as const, points, fill: colours.keel})),
		...ends.map(end => ({
			part: 'aprons' as const,
			points: apronPart(shape, outline, end),
			fill: colours.apron,
		})),
		...horns.map(points => ({part: 'horns' as const, points, fill: colours.horn})),
	];
}

function isMeasured({part}: Piece): boolean {
	return part !== 'horns';
}

function drawBody(pieces: readonly Piece[]): Drawing {
	const svg = pieces.map(({points}) => drawPath(pathOf(points), {fill: colours.ink})).join('');
	return {svg, box: boxOf(pieces.flatMap(({points}) => points))};
}

function drawPiece({points, fill}: Piece, {unitsPerMm}: Pen): string {
	return drawPath(pathOf(points), {fill, stroke: colours.ink, 'stroke-width': lines.plain / unitsPerMm});
}

/** What is lost keeps a broken outline and no colour. */
function drawLost({points}: Piece, {unitsPerMm}: Pen): string {
	return drawPath(pathOf(points), {
		stroke: colours.faded,
		'stroke-width': lines.thin / unitsPerMm,
		'stroke-dasharray': `${8 / unitsPerMm} ${8 / unitsPerMm}`,
	});
}

/** The closed part a little smaller, so that its own line stays. */
function inward(points: readonly Point[], {unitsPerMm}: Pen): readonly Point[] {
	const {right, bottom, top} = boxOf(points);
	const thick = lines.plain / unitsPerMm / 2;
	const [across, along] = [1 - thick / right, 1 - thick / ((bottom - top) / 2)];
	const middle = (top + bottom) / 2;
	return points.map(([x, y]) => [x * across, middle + (y - middle) * along]);
}

function tendrilsOf(shape: Shape, outline: Outline): readonly (readonly Point[])[] {
	return (['front', 'back'] as const).flatMap(end => {
		const line = tendrilLine(shape, outline, end);
		return line ? [line, mirrored(line)] : [];
	});
}

function drawTendril(
	line: readonly Point[],
	{shape, look, isLost}: {shape: Shape; look: Look; isLost: boolean},
): string {
	const d = pathOf(line, 'open');
	if (isLost) return drawLost({part: 'horns', points: line, fill: 'none'}, look).replace('Z"', '"');
	const thin = Math.max(shape.tendrils.thickness * shape.size.widthMm, lines.bold / look.unitsPerMm);
	return (
		drawPath(d, {stroke: colours.ink, 'stroke-width': thin + lines.plain / look.unitsPerMm}) +
		drawPath(d, {
			stroke: colours.horn,
			'stroke-width': Math.max(thin - lines.plain / look.unitsPerMm / 2, thin / 2),
		})
	);
}

function drawScrew(shape: Shape, look: Look): Drawing {
	const {cone, blades} = screwParts(shape);
	const pieces = [cone, ...blades];
	if (look.only === 'body') return drawBody(pieces.map(points => ({part: undefined, points, fill: ''})));
	const isLost = (look.lost ?? []).includes('sides');
	const stroke = attributes({'stroke-width': lines.plain / look.unitsPerMm});
	const svg = [
		drawPiece({part: undefined, points: cone, fill: colours.capsule}, look),
		...blades.map(points =>
			(isLost ? drawLost : drawPiece)({part: 'sides', points, fill: colours.horn}, look),
		),
	];
	return {svg: `<g${stroke}>${svg.join('')}</g>`, box: boxOf(pieces.flat())};
}
