/** The thing of known size in a photo: a sheet of A4 or a card, told from everything else that has four sides. */
import {type Corners, type Outline, outlinesOf} from './four-sided.ts';
import {outlinesOfLines} from './long-lines.ts';
import {findPose, type Pose} from './pose.ts';
import {type Point, type Raster, readColour, shrink} from './raster.ts';
import {areaOf} from './regions.ts';
import {shadesOf} from './shades.ts';
import {type Placed, placeSides} from './sides.ts';
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
};

/** How finely outlines are looked for: each pixel of the rough picture stands for so many of the photo, squared. */
const coarse = 4;
const mostLooked = 10;
const cornerSigmaPx = 0.7;
/** True sheets and cards stay below 2 in made-up photos; the rest is room for bent paper and lenses. */
const mostMisfit = 6;

/** Everything in a photo that fits a sheet of A4, of Letter or a card, surest first; `half` is it at half its size. */
export function findFlats(raster: Raster, half: Raster): readonly Found[] {
	const shades = shadesOf(shrink(half, coarse / 2));
	const sight = {raster, half};
	const found = lookAt(outlinesOf(shades), sight);
	// Long lines are the slower way, and only a sheet has them.
	const isFound = found.some(one => (one.flat.kind === 'card' ? isPlainCard(one) : one.score > 0.3));
	const more = isFound ? [] : lookAt(outlinesOfLines(shades), sight);
	return [...found, ...more].toSorted((a, b) => b.score - a.score);
}

type Both = {readonly raster: Raster; readonly half: Raster};

/** Looks at outlines in their order until enough were looked at, or a sheet is plain to see. */
function lookAt(outlines: readonly Outline[], {raster, half}: Both): readonly Found[] {
	const found: Found[] = [];
	let looked = 0;
	for (const outline of outlines) {
		if (looked === mostLooked || found.some(isPlain)) break;
		const isKnown = found.some(({placed}) => isSame(placed.corners, inPixels(outline.corners, coarse)));
		if (isKnown || !mayBe(outline, raster)) continue;
		looked += 1;
		const first = placeSides(half, inPixels(outline.corners, coarse / 2), {reachPx: 5, skip: 0.1});
		const placed = first && placeSides(raster, inPixels(first.corners, 2), {reachPx: 4, skip: 0.09});
		if (placed && isSeen(placed)) found.push(...fitFlats(placed, raster));
	}
	return found;
}

function isPlain({flat, score, pose, placed}: Found): boolean {
	return flat.kind === 'a4' && score > 0.45 && pose.misfit < 2 && placed.sides.every(({seen}) => seen > 0.85);
}

function isPlainCard({pose, placed}: Found): boolean {
	return pose.misfit < 2 && placed.sides.every(({seen, contrast}) => seen > 0.9 && contrast > 8);
}

function isSame(one: Corners, other: Corners): boolean {
	return one.every(([x, y]) => other.some(([ox, oy]) => Math.hypot(x - ox, y - oy) < 6));
}

/** The flats that four placed sides fit, with the pose of each. */
export function fitFlats(placed: Placed, raster: Raster): readonly Found[] {
	const share = areaOf(placed.corners) / (raster.width * raster.height);
	return [a4, letter, card].flatMap((flat): readonly Found[] => {
		const isLikely = flat.kind === 'card' ? standsAlone : isPaper;
		if (!isLikely(raster, placed.corners)) return [];
		// Nothing lies over a card, so its sides are seen whole; those of a case taken for one are not.
		if (flat.kind === 'card' && placed.sides.some(({seen}) => seen < 0.75)) return [];
		// A card beside a case takes up little of a photo, a sheet below one much (our choice).
		if (flat.kind === 'card' ? share > 0.32 : share < 0.07) return [];
		const fits = [0, 1].flatMap(turn => {
			const halfMm =
				turn === 0
					? ([flat.longMm / 2, flat.shortMm / 2] as const)
					: ([flat.shortMm / 2, flat.longMm / 2] as const);
			const pose = poseOf(placed.corners, halfMm, raster);
			return pose ? [{pose, halfMm}] : [];
		});
		const [best] = fits.toSorted((a, b) => a.pose.misfit - b.pose.misfit);
		if (!best || best.pose.misfit > mostMisfit) return [];
		const seen = placed.sides.reduce((least, side) => Math.min(least, side.seen), 1);
		const score = Math.sqrt(share) * (0.3 + seen) * (1 - best.pose.misfit / (2 * mostMisfit));
		return [{flat, ...best, placed, score}];
	});
}

/** Paper just inside its edge is nearly the brightest there is, and hardly coloured, whatever the light. */
function isPaper(raster: Raster, corners: Corners): boolean {
	const [cx, cy] = [0, 1].map(axis => corners.reduce((sum, corner) => sum + (corner[axis] ?? 0), 0) / 4);
	const colour = new Float32Array(3);
	const [lights, tones]: [number[], number[]] = [[], []];
	for (const [index, [x, y]] of corners.entries()) {
		const [nextX, nextY] = corners[(index + 1) % 4] ?? [x, y];
		for (let share = 0.05; share < 1; share += 0.1) {
			const at = [x + share * (nextX - x), y + share * (nextY - y)] as const;
			const inside: Point = [at[0] + 0.06 * ((cx ?? 0) - at[0]), at[1] + 0.06 * ((cy ?? 0) - at[1])];
			if (!readColour(raster, ...inside, colour)) continue;
			const most = Math.max(...colour);
			lights.push(colour[1] ?? 0);
			tones.push((most - Math.min(...colour)) / (most + 1));
		}
	}
	const bright = brightOf(raster);
	return middleOf(lights) > 0.45 * bright && middleOf(tones) < 0.42;
}

/** The green of the brightest twentieth of a photo. */
function brightOf({rgb}: Raster): number {
	const some = Uint8Array.from(
		{length: 2000},
		(_, index) => rgb[Math.floor((index * rgb.length) / 6000) * 3 + 1] ?? 0,
	);
	return some.toSorted()[1900] ?? 255;
}

function middleOf(values: readonly number[]): number {
	return values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
}

/** The pose for which four corners, clockwise from the upper left, are those of a flat of these half sizes. */
export function poseOf(corners: Corners, [x, y]: Point, raster: Raster, rounds = 40): Pose | undefined {
	const own: Corners = [
		[-x, -y],
		[x, -y],
		[x, y],
		[-x, y],
	];
	return findPose(
		corners.map((px, index) => ({px, mm: own[index] ?? [0, 0], sigmaPx: cornerSigmaPx})),
		raster,
		rounds,
	);
}

/** Quick and generous: is there a camera for which these rough corners are any of the flats. */
function mayBe({corners}: Outline, raster: Raster): boolean {
	const px = inPixels(corners, coarse);
	const [a = 0, b = 0, c = 0, d = 0] = lengthsOf(px);
	const slim = (a + c) / (b + d);
	if (slim > 2.4 || slim < 1 / 2.4 || Math.min(a / c, c / a, b / d, d / b) < 0.5) return false;
	return [a4, card].some(flat =>
		[0, 1].some(turn => {
			const [x, y] = [flat.longMm / 2, flat.shortMm / 2];
			const pose = poseOf(px, turn === 0 ? [x, y] : [y, x], raster, 4);
			return pose !== undefined && pose.misfit < 900;
		}),
	);
}

function lengthsOf(corners: Corners): readonly number[] {
	return corners.map(([x, y], index) => {
		const [nextX, nextY] = corners[(index + 1) % 4] ?? [x, y];
		return Math.hypot(nextX - x, nextY - y);
	});
}

function isSeen({sides, corners}: Placed): boolean {
	const isClear = sides.every(({seen, scatterPx, contrast}) => seen > 0.4 && scatterPx < 0.9 && contrast > 3);
	return isClear && Math.min(...lengthsOf(corners)) > 40;
}

/** Corners of a shrunken picture in the pixels of the larger one. */
function inPixels([a, b, c, d]: Corners, by: number): Corners {
	const grown = ([x, y]: Point): Point => [(x + 0.5) * by - 0.5, (y + 0.5) * by - 0.5];
	return [grown(a), grown(b), grown(c), grown(d)];
}
