/** Hairs along the sides of a case, with grains of sand in them; in millimetres. */
import type {Shape} from '../key/shape.ts';
import type {Outline} from './contour.ts';
import {colours, lines} from './palette.ts';
import {drawPath, type Point, scattered, upTo} from './path.ts';
import type {Pen} from './surface.ts';

/** Both rims, or nothing where the shape has no hairs there. */
export function drawRim({rim}: Shape, outline: Outline, pen: Pen): string {
	if (!rim.hairs) return '';
	const longMm = 26 / pen.unitsPerMm;
	const count = Math.max(10, Math.round(((rim.to - rim.from) * outline.lengthMm) / (longMm * 0.42)));
	const feet = [-1, 1].flatMap(side =>
		upTo(count - 1).map(index => {
			const along = rim.from + ((rim.to - rim.from) * (index + 0.5)) / count;
			const out = outline.halfAt(along) + outline.bladeAt(along);
			return {side, index, foot: [side * out, outline.downAt(along)] satisfies Point};
		}),
	);
	const hairs = feet.map(({side, index, foot: [x, y]}) => {
		const long = longMm * (0.6 + scattered(index + side) * 0.8);
		const lean = (scattered(index + 11 * side) - 0.5) * longMm * 1.2;
		return `M${(x - (side * longMm) / 5).toFixed(2)} ${y.toFixed(2)}q${((side * long) / 2).toFixed(2)} ${(-lean).toFixed(2)} ${(side * long).toFixed(2)} ${lean.toFixed(2)}`;
	});
	const sand = feet
		.filter(({index}) => index % 3 === 1)
		.map(({side, index, foot: [x, y]}) => {
			const [across, down] = [x + side * longMm * (0.3 + scattered(index) * 0.6), y + longMm * 0.15];
			return `<circle cx="${across.toFixed(2)}" cy="${down.toFixed(2)}" r="${(4.5 / pen.unitsPerMm).toFixed(2)}" fill="${colours.ink}"/>`;
		});
	return (
		drawPath(hairs.join(''), {stroke: colours.ink, 'stroke-width': lines.thin / pen.unitsPerMm}) +
		sand.join('')
	);
}

/** How far the hairs stand out beyond the sides, in millimetres; 0 where there are none. */
export function rimReach({rim}: Shape, pen: Pen): number {
	return rim.hairs ? 38 / pen.unitsPerMm : 0;
}
