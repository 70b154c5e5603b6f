/** What a measured body looks like: its outline, and whether it is long or broad. */
import {type Axis, fromAxis, walkOut} from './axis.ts';
import type {Body} from './bodies.ts';
import type {BodySize} from './body-size.ts';
import type {FlatView} from './flat-view.ts';
import type {Point} from './raster.ts';

/** Places along an end and along a flank, as shares of half the width and of half the length. */
const endPlaces = [-0.86, -0.7, -0.5, -0.25, 0, 0.25, 0.5, 0.7, 0.86] as const;
const flankPlaces = [-0.84, -0.7, -0.5, -0.25, 0, 0.25, 0.5, 0.7, 0.84] as const;
/** So far from the middle line an end's border was seen; beyond it the mask is all there is. */
const endSeen = 0.38;

/** The outline of a body without horns and tendrils, as points of the plane, once round it. */
export function outlineOf(body: Body, axis: Axis, {chosen, flanks, ends}: BodySize): readonly Point[] {
	const halves = {length: (ends[0] + ends[1]) / 2, width: axis.widthMm / 2};
	const middle = (ends[1] - ends[0]) / 2;
	const end = (way: -1 | 1) =>
		endPlaces.map((share): Point => {
			const v = share * halves.width;
			const border = chosen[way < 0 ? 0 : 1];
			const far = Math.abs(share) <= endSeen ? border.at(v) : walkOut(axis, body, {u: 0, v, end: way});
			return fromAxis(axis, [way * far, v]);
		});
	const flank = (way: -1 | 1) =>
		flankPlaces.map((share): Point => {
			const u = middle + share * halves.length;
			const far = flanks[way < 0 ? 0 : 1]?.at(u) ?? walkOut(axis, body, {u, v: 0, side: way});
			return fromAxis(axis, [u, way * far]);
		});
	return [...flank(-1), ...end(1), ...flank(1).toReversed(), ...end(-1).toReversed()];
}

/** Below this share of width to length a case is slim, above the other it is broad (our choice, with a gap between). */
const [slim, broad] = [0.55, 0.6];
/** What stands out of a body at its ends is a tendril below this thickness, and a horn above. */
const hornMm = {least: 2.6, ofWidth: 0.07} as const;

/** What the shape of a body suggests; undefined when it is neither. */
export function shapeOf(
	{whole}: Body,
	{axis, view, widthMm, lengthMm}: {axis: Axis; view: FlatView; widthMm: number; lengthMm: number},
): 'long' | 'broad' | undefined {
	const ratio = widthMm / lengthMm;
	const {regions, region, depth} = whole;
	let thickest = 0;
	for (let row = region.top; row <= region.bottom; row += 1) {
		for (let column = region.left; column <= region.right; column += 1) {
			const at = row * regions.width + column;
			if (regions.labels[at] !== region.label || (depth.values[at] ?? 0) <= thickest) continue;
			const dx = view.from[0] + column * view.stepMm - axis.middle[0];
			const dy = view.from[1] + row * view.stepMm - axis.middle[1];
			const beyondMm = Math.abs(dx * axis.along[0] + dy * axis.along[1]) - lengthMm / 2;
			const isBeside = Math.abs(-dx * axis.along[1] + dy * axis.along[0]) < widthMm;
			if (beyondMm > 1 + 0.1 * widthMm && beyondMm < widthMm && isBeside) thickest = depth.values[at] ?? 0;
		}
	}
	const isHorned = 2 * thickest * view.stepMm > Math.max(hornMm.least, hornMm.ofWidth * widthMm);
	if (ratio < slim && !isHorned) return 'long';
	return ratio > broad && isHorned ? 'broad' : undefined;
}
