/** The scale of a map, in the corner where it is least in the way. */
import type {Say} from '../text/text.ts';
import {drawWords, widthOfWords} from './lettering.ts';
import type {MapFrame} from './map-frame.ts';
import {colours, letters, lines} from './palette.ts';

/** Something on the map that the scale should not lie under: its middle and how far it reaches. */
export type Busy = {readonly x: number; readonly y: number; readonly radius: number};

const edge = 12;
const heightUnits = 72;

/** A bar of 1, 2 or 5 times a power of ten, at most a third of the map wide, in the corner that has least in it. */
export function drawScale(frame: MapFrame, busy: readonly Busy[], say: Say): string {
	const mostM = (frame.widthUnits / 3) * frame.metresPerUnit;
	const power = 10 ** Math.floor(Math.log10(mostM));
	const lengthM = power * ([5, 2, 1].find(times => times * power <= mostM) ?? 1);
	const length = lengthM / frame.metresPerUnit;
	const label =
		lengthM < 1000
			? say.say('map-metres', {length: lengthM})
			: say.say('map-kilometres', {length: lengthM / 1000});
	const width = Math.max(length, widthOfWords(label, {size: letters.small})) + 32;
	const [left, top] = freestCorner(frame, width, busy);
	const [x, y] = [left + 16, top + heightUnits - 14];
	return [
		`<rect x="${left}" y="${top}" width="${width.toFixed(1)}" height="${heightUnits}" rx="8" fill="${colours.white}" fill-opacity="0.85"/>`,
		`<path id="scale-bar" d="M${x} ${y - 12}V${y}H${(x + length).toFixed(2)}V${y - 12}" fill="none" stroke="${colours.ink}" stroke-width="${lines.plain}"/>`,
		drawWords(label, {size: letters.small, x, y: y - 20}),
	].join('');
}

/** Bottom left unless another corner has less in it. */
function freestCorner(
	frame: MapFrame,
	width: number,
	busy: readonly Busy[],
): readonly [left: number, top: number] {
	const [right, bottom] = [
		Math.round(frame.widthUnits - edge - width),
		Math.round(frame.heightUnits - edge - heightUnits),
	];
	const corners = [
		[edge, bottom],
		[right, bottom],
		[edge, edge],
		[right, edge],
	] as const;
	const coveredIn = ([left, top]: (typeof corners)[number]) =>
		busy.filter(
			({x, y, radius}) =>
				x + radius > left && x - radius < left + width && y + radius > top && y - radius < top + heightUnits,
		).length;
	return corners.toSorted((a, b) => coveredIn(a) - coveredIn(b))[0] ?? [edge, bottom];
}
