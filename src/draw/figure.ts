/** One option of a question as it stands in a picture: a case, or the part of it that is looked at. */
import type {Character} from '../key/region.ts';
import {plainShape, type Shape, withParts} from '../key/shape.ts';
import {drawCapsule} from './capsule.ts';
import {drawCompared} from './compared.ts';
import {outlineOf} from './contour.ts';
import {colours, lines} from './palette.ts';
import {type Box, boxAround} from './path.ts';
import type {Drawing} from './profile.ts';
import {drawSurface, type Pen} from './surface.ts';

/** From where a state is looked at, and what it is compared with. */
export type Sight = Pick<Character, 'where' | 'against'>;

/** A shape as its question wants it looked at, in millimetres. */
export function drawFigure(shape: Shape, {where = 'whole', against}: Sight, pen: Pen): Drawing {
	if (against) return drawCompared(shape, against, pen);
	switch (where) {
		case 'whole':
			return drawCapsule(shape, pen);
		case 'front':
		case 'back':
			return drawEnd(shape, where, pen);
		case 'rim':
			return drawRimPart(shape, pen);
		case 'surface':
			return drawPatch(shape, pen);
		case 'cut':
			return stacked(
				[drawCapsule(shape, pen), drawCapsule(shape, {...pen, view: 'cut'})],
				shape.size.lengthMm * 0.12,
			);
		case 'section':
			return drawCapsule(shape, {...pen, view: 'cut'});
		case 'lying':
			return drawCapsule(shape, {...pen, view: 'side'});
		case 'faces':
			return beside(
				[drawCapsule(shape, pen), drawCapsule(shape, {...pen, view: 'under'})],
				shape.size.widthMm * 0.18,
			);
	}
}

/** One end of a case, the rest cut off by a wavy line. */
function drawEnd(shape: Shape, end: 'front' | 'back', pen: Pen): Drawing {
	const whole = drawCapsule(shape, pen);
	const cutMm = shape.size.lengthMm * 0.08;
	const box: Box = end === 'front' ? {...whole.box, bottom: cutMm} : {...whole.box, top: -cutMm};
	return cropped(whole.svg, box, pen);
}

/** The long side of a case, near by. */
function drawRimPart(shape: Shape, pen: Pen): Drawing {
	const {lengthMm, widthMm} = shape.size;
	const whole = drawCapsule(withParts(shape, {frontHorns: {length: 0}, backHorns: {length: 0}}), pen);
	const room = 44 / pen.unitsPerMm;
	return cropped(
		whole.svg,
		{left: widthMm * 0.12, right: widthMm / 2 + room, top: -lengthMm * 0.24, bottom: lengthMm * 0.24},
		pen,
	);
}

/** A round piece of surface, as through a magnifying glass. */
function drawPatch(shape: Shape, pen: Pen): Drawing {
	const flat = withParts(plainShape, shape, {sides: {front: 1, back: 1}, blades: {width: 0}});
	const outline = outlineOf(flat);
	const radius = shape.size.widthMm * 0.34;
	const mark = `patch-${idOf(JSON.stringify(shape))}`;
	const circle = (values: string) => `<circle r="${radius.toFixed(2)}" ${values}/>`;
	const svg = [
		`<clipPath id="${mark}">${circle('')}</clipPath>`,
		circle(`fill="${colours.capsule}"`),
		`<g clip-path="url(#${mark})">${drawSurface(flat, outline, {pen, face: 'top'})}</g>`,
		circle(`fill="none" stroke="${colours.ink}" stroke-width="${(lines.bold / pen.unitsPerMm).toFixed(2)}"`),
	];
	return {svg: svg.join(''), box: {left: -radius, right: radius, top: -radius, bottom: radius}};
}

/** What lies in a box, with broken lines where it was cut off. */
function cropped(svg: string, box: Box, {unitsPerMm}: Pen): Drawing {
	const mark = `crop-${idOf(svg)}`;
	const rect = `x="${box.left.toFixed(2)}" y="${box.top.toFixed(2)}" width="${(box.right - box.left).toFixed(2)}" height="${(box.bottom - box.top).toFixed(2)}"`;
	const frame = `<rect ${rect} fill="none" stroke="${colours.quiet}" stroke-width="${(lines.thin / unitsPerMm).toFixed(2)}" stroke-dasharray="${(7 / unitsPerMm).toFixed(2)}"/>`;
	return {
		svg: `<clipPath id="${mark}"><rect ${rect}/></clipPath><g clip-path="url(#${mark})">${svg}</g>${frame}`,
		box,
	};
}

/** Drawings side by side. */
function beside(drawings: readonly Drawing[], gapMm: number): Drawing {
	let x = 0;
	const moved = drawings.map(({svg, box}) => {
		const shift = x - box.left;
		x += box.right - box.left + gapMm;
		return {
			svg: `<g transform="translate(${shift.toFixed(2)} 0)">${svg}</g>`,
			box: {...box, left: box.left + shift, right: box.right + shift},
		};
	});
	return {svg: moved.map(({svg}) => svg).join(''), box: boxAround(moved.map(({box}) => box))};
}

/** Drawings one above the other. */
function stacked(drawings: readonly Drawing[], gapMm: number): Drawing {
	let y = 0;
	const moved = drawings.map(({svg, box}) => {
		const shift = y - box.top;
		y += box.bottom - box.top + gapMm;
		return {
			svg: `<g transform="translate(0 ${shift.toFixed(2)})">${svg}</g>`,
			box: {...box, top: box.top + shift, bottom: box.bottom + shift},
		};
	});
	return {svg: moved.map(({svg}) => svg).join(''), box: boxAround(moved.map(({box}) => box))};
}

/** A short name for what is clipped, the same for the same drawing. */
function idOf(text: string): string {
	let hash = 0;
	for (const letter of text) hash = (Math.imul(hash, 31) + (letter.codePointAt(0) ?? 0)) | 0;
	return (hash >>> 0).toString(36);
}
