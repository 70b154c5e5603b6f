/** Whether four sides found in a photo are those of a sheet or a card, and how the camera stood then. */
import type {Corners} from './four-sided.ts';
import type {PaperTest} from './paper.ts';
import {type Frame, findPose, type Pose} from './pose.ts';
import type {Point, Raster} from './raster.ts';
import {areaOf} from './regions.ts';
import {movedPastShadows} from './shadow-edges.ts';
import {joinSides, type Placed} from './sides.ts';
import {a4, card, type Flat, letter} from './sizes.ts';
import {standsAlone} from './surroundings.ts';

/** A sheet or card as found in a photo. */
export type Found = {
	readonly flat: Flat;
	readonly pose: Pose;
	readonly placed: Placed;
	/** Half its sizes along its own x and y, in millimetres; its middle is at 0, 0. */
	readonly halfMm: Point;
	/** Higher is surer. */
	readonly score: number;
	/** Of a measuring sheet: the scale it was printed at, as its paper tells; 1 where only its marks are seen. */
	readonly printScale?: number;
	/** A coin as if it were a flat: its scale is a guess, so nobody asks how sure it is. */
	readonly isGuess?: boolean;
};

/** A photo, and what tells paper in it. */
export type Lit = {readonly raster: Raster; readonly isPaper: PaperTest};

/** How far off a corner may be, one sigma in pixels. */
const cornerSigmaPx = 0.7;
const bowShare = 0.6;
/** Room for bent paper, lenses and shaded sides; how far off the scale is then is told apart (`scale-doubt.ts`). */
const mostMisfit = 9;
/** A card is flat and lies still; cards of other sizes fit worse than this, if their sides are not too like (tried on drawn corners). */
const mostCardMisfit = 5;
/** Nobody photographs a case so much from the side; stripes and planks fit a sheet that is (our choice). */
const mostTilt = 60;
/** Most true sheets and cards fit better than this, so nothing better need be looked for (our choice). */
export const plainMisfit = 2;
/** With all sides moved, below this nothing else is tried. */
const surelyMoved = 0.3;
/** What leaving a side counts where shade is seen beyond it; little, since a pattern looks like shade, too (tuned on 37 made-up cards). */
const unmovedCost = 0.35;

/**
 * The flats that four sides fit, each moved past the edge of a shadow where one is seen. What looks like a shadow may be
 * a pattern that runs off a card, or a card of the ground's own colour; so sides stay where the whole fits far better.
 */
export function fitPastShadows(placed: Placed, lit: Lit): readonly Found[] {
	const moved = movedPastShadows(lit.raster, placed);
	const fits = (stays: number) => {
		const sides = placed.sides.map((side, index) => ((stays >> index) & 1 ? side : (moved[index] ?? side)));
		const joined = joinSides(sides);
		return joined ? fitFlats(joined, lit) : [];
	};
	const all = fits(0);
	if (all.some(({pose}) => pose.misfit < surelyMoved)) return all;
	const some = moved.reduce((mask, side, index) => (side ? mask | (1 << index) : mask), 0);
	const choices = Array.from({length: 16}, (_, stays) => stays).filter(stays => (stays & some) === stays);
	const [best] = choices
		.map(stays => ({list: fits(stays), cost: unmovedCost * countOf(stays)}))
		.toSorted((a, b) => a.cost + leastMisfit(a.list) - b.cost - leastMisfit(b.list));
	return best?.list ?? [];
}

function leastMisfit(list: readonly Found[]): number {
	return Math.min(...list.map(({pose}) => pose.misfit));
}

function countOf(bits: number): number {
	return [0, 1, 2, 3].filter(index => (bits >> index) & 1).length;
}

/** The flats that four placed sides fit, with the pose of each; of A4 and Letter only the one that fits better. */
function fitFlats(placed: Placed, {raster, isPaper}: Lit): readonly Found[] {
	const share = areaOf(placed.corners) / (raster.width * raster.height);
	const least = placed.sides.reduce((sum, side) => Math.min(sum, side.seen), 1);
	// A card beside a case takes up little of a photo, a sheet below one much (our choice).
	const papers = share > 0.07 && isPaper(placed.corners) ? [a4, letter] : [];
	// Nothing lies over a card, so its sides are seen whole; those of a case taken for one are not.
	const cards = share < 0.32 && least >= 0.75 && standsAlone(raster, placed.corners) ? [card] : [];
	return [papers, cards].flatMap(flats => {
		const [best] = flats
			.flatMap(flat => fitFlat(flat, placed, raster))
			.toSorted((a, b) => a.pose.misfit - b.pose.misfit);
		const most = best?.flat.kind === 'card' ? mostCardMisfit : mostMisfit;
		if (!best || best.pose.misfit > most || best.pose.tilt > mostTilt) return [];
		const score = Math.sqrt(share) * (0.3 + least) * (1 - best.pose.misfit / (2 * mostMisfit));
		return [{...best, placed, score}];
	});
}

/** The poses of a flat that lies along or across. */
function fitFlat({longMm, shortMm, ...rest}: Flat, placed: Placed, raster: Raster) {
	const sizes: readonly Point[] = [
		[longMm / 2, shortMm / 2],
		[shortMm / 2, longMm / 2],
	];
	return sizes.flatMap(halfMm => {
		const pose = poseOf(placed, halfMm, raster);
		return pose ? [{flat: {longMm, shortMm, ...rest}, pose, halfMm}] : [];
	});
}

/** The pose for which four corners, clockwise from the upper left, are those of a flat of these half sizes. */
export function poseOf({corners, sides}: Placed, [x, y]: Point, frame: Frame, rounds = 40): Pose | undefined {
	// A lens that bows all four sides the same way puts the corners off by about as much.
	const bowPx = sides.reduce((sum, side) => sum + side.bowPx, 0) / Math.max(1, sides.length);
	const sigmaPx = Math.hypot(cornerSigmaPx, bowShare * bowPx);
	const own: Corners = [
		[-x, -y],
		[x, -y],
		[x, y],
		[-x, y],
	];
	return findPose(
		corners.map((px, index) => ({px, mm: own[index] ?? [0, 0], sigmaPx})),
		frame,
		rounds,
	);
}
