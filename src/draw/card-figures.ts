/** The middle of a card with one name: the photo on the left, the drawing on the right, each with what it is. */
import type {Shape} from '../key/shape.ts';
import {drawCapsule, type Part} from './capsule.ts';
import {innerWidth} from './chart.ts';
import {placed} from './choices.ts';
import {drawLines, lineHeight, wrapWords} from './lettering.ts';
import {card, colours, letters, lines} from './palette.ts';
import {drawScaleBar, scaleBarTall} from './scale-bar.ts';

/** A photo that goes on a card: how wide it is for its height, and whether the scale of what it shows is known. */
export type CardPhoto = {readonly aspect: number; readonly isScaled: boolean; readonly words: string};

/** Where a photo goes, in units; with `unitsPerMm` it is cut out to that scale, its case upright in the middle. */
export type PhotoPlace = {
	readonly left: number;
	readonly top: number;
	readonly width: number;
	readonly height: number;
	readonly unitsPerMm?: number;
};

/** A part of a card: its SVG, where it ends, and where a photo goes in it. */
export type CardPart = {readonly svg: string; readonly foot: number; readonly photoAt?: PhotoPlace};

/** One drawing with its photo, if there is one. */
export type Figures = {
	readonly shape: Shape;
	readonly lost: readonly Part[];
	readonly photo: CardPhoto | undefined;
	/** How long the case is drawn, in words. */
	readonly words: string;
	readonly sayMm: (mm: number) => string;
};

const tall = 430;
const longestBar = 400;
const gap = 28;

/** Draws photo and drawing side by side, or the drawing alone in the middle. */
export function drawFigures({shape, lost, photo, words, sayMm}: Figures, top: number): CardPart {
	const room = photo ? (innerWidth - gap) / 2 : innerWidth;
	const left = card.margin + (photo ? room + gap : 0);
	const middle = left + room / 2;
	const unitsPerMm = fittingScale(shape, {wide: room, tall});
	const figure = drawCapsule(shape, {unitsPerMm, lost});
	const barTop = top + tall + 18;
	const foot = barTop + scaleBarTall + 12;
	const notes = [
		{text: words, x: middle},
		...(photo ? [{text: photo.words, x: card.margin + room / 2}] : []),
	].map(({text, x}) => ({x, lines: wrapWords(text, room, {size: letters.small})}));
	const photoAt = photo && placeOf(photo, {room, top, unitsPerMm});
	const svg = [
		placed(figure, {middle, top, tall, unitsPerMm}),
		drawScaleBar({middle, top: barTop, room: Math.min(room, longestBar), unitsPerMm, say: sayMm}),
		...notes.map(note =>
			drawLines(note.lines, {
				x: note.x,
				y: foot + letters.small,
				size: letters.small,
				anchor: 'middle',
				fill: colours.quiet,
			}),
		),
		photoAt ? drawFrame(photoAt) : '',
	].join('');
	const most = Math.max(...notes.map(note => note.lines.length));
	return {
		svg,
		foot: foot + most * letters.small * lineHeight + 20,
		...(photoAt ? {photoAt} : {}),
	};
}

/** A photo as large as it goes into a box, in its middle. */
export function fittedPhoto(
	aspect: number,
	box: {readonly left: number; readonly top: number; readonly wide: number; readonly tall: number},
): PhotoPlace {
	const width = Math.min(box.wide, box.tall * aspect);
	const height = width / aspect;
	return {
		left: box.left + (box.wide - width) / 2,
		top: box.top + (box.tall - height) / 2,
		width,
		height,
	};
}

/** The edge round a photo. */
export function drawFrame({left, top, width, height}: PhotoPlace): string {
	return `<rect x="${left.toFixed(1)}" y="${top.toFixed(1)}" width="${width.toFixed(1)}" height="${height.toFixed(1)}" fill="${colours.white}" stroke="${colours.ink}" stroke-width="${lines.thin}"/>`;
}

/** The largest scale at which a case fits; its lines are thinner by `finer`. */
export function fittingScale(
	shape: Shape,
	{wide, tall}: {readonly wide: number; readonly tall: number},
	finer = 1,
): number {
	let unitsPerMm = 5;
	// What stands out beyond a case keeps its size on the card, so the scale settles in a few rounds.
	for (let round = 0; round < 3; round++) {
		const {left, right, top, bottom} = drawCapsule(shape, {unitsPerMm: unitsPerMm * finer}).box;
		unitsPerMm = Math.min(wide / (right - left), tall / (bottom - top)) * 0.985;
	}
	return unitsPerMm;
}

function placeOf(
	photo: CardPhoto,
	{room, top, unitsPerMm}: {room: number; top: number; unitsPerMm: number},
): PhotoPlace {
	if (photo.isScaled) return {left: card.margin, top, width: room, height: tall, unitsPerMm};
	return fittedPhoto(photo.aspect, {left: card.margin, top, wide: room, tall: tall + 18 + scaleBarTall});
}
