/** The thing of known size in a photo: a sheet of A4 or a card, told from everything else that has four sides. */

import {type Found, fitPastShadows, plainMisfit, poseOf} from './flat-fit.ts';
import {type Corners, isNear, makeOutlineFinder, type Outline} from './four-sided.ts';
import {outlinesOfLines} from './long-lines.ts';
import {makePaperTest, type PaperTest} from './paper.ts';
import {outlinesOfPieces} from './piece-outlines.ts';
import {halve, type Point, type Raster} from './raster.ts';
import {shadesOf} from './shades.ts';
import {joinSides, type Placed, placeSides, type Side} from './sides.ts';
import {a4, card, type Flat, letter} from './sizes.ts';

/** How finely outlines are looked for: each pixel of the rough picture stands for so many of the photo, squared. */
const coarse = 4;
const mostLooked = 16;
/** Of a side found in the picture at half its size, a pixel counts for two. */
const mostScatterPx = 1.2;
/** So much more is left to rough corners, and to sides that may still lie along a shadow. */
const mostRough = 900;
const mostPlaced = 250;

/** Everything in a photo that fits a sheet of A4, of Letter or a card, surest first; `half` is it at half its size. */
export function findFlats(raster: Raster, half: Raster): readonly Found[] {
	const shades = shadesOf(halve(half));
	const look = makeOutlineFinder(shades);
	const search = openSearch({raster, half, isPaper: makePaperTest(raster)});
	// From the quickest way to the slowest: most sheets stand out by their light alone, and only a sheet has long lines.
	const ways = [
		() => look('light'),
		() => look('colour'),
		() => look('edges'),
		() => outlinesOfLines(shades),
	];
	for (const way of ways) {
		search.lookAt(way());
		if (search.isDone()) break;
	}
	// Striped ground is full of outlines that may be paper, but hardly of any that stand alone as a card does.
	if (!search.isDone()) search.lookAt(outlinesOfPieces(shades), ['card']);
	return search.found().toSorted((a, b) => b.score - a.score);
}

type Sight = {readonly raster: Raster; readonly half: Raster; readonly isPaper: PaperTest};

/** Looks at rough outlines in their order, at each only once, until one is plain to see. */
function openSearch(sight: Sight) {
	const found: Found[] = [];
	const known: Corners[] = [];
	// A white card may be the outline of one that is printed on a sheet.
	const isDone = () =>
		found.some(one => isPlain(one) && !(one.flat.kind === 'card' && sight.isPaper(one.placed.corners)));
	const lookAt = (outlines: readonly Outline[], kinds?: readonly Flat['kind'][]): void => {
		let looked = 0;
		for (const {corners} of outlines) {
			if (looked === mostLooked || found.some(isPlainSheet)) return;
			const rough = inPixels(corners, coarse);
			if (known.some(one => isNear(one, rough, 6))) continue;
			known.push(rough);
			if (!mayBe(rough, sight.raster, mostRough)) continue;
			looked += 1;
			const placed = place(corners, sight);
			// Where nothing fitted, the same sides may still be found better from other rough corners.
			if (!placed || found.some(one => isNear(one.placed.corners, placed.corners, 6))) continue;
			found.push(...fitPastShadows(placed, sight).filter(({flat}) => kinds?.includes(flat.kind) ?? true));
		}
	};
	return {lookAt, isDone, found: () => found};
}

/** Finds the sides in the picture at half its size, where noise is less, and then again more finely. */
function place(corners: Corners, {raster, half}: Sight): Placed | undefined {
	const first = placeSides(half, inPixels(corners, coarse / 2), {reachPx: 5, skip: 0.1});
	if (!first || !mayBe(inPixels(first.corners, 2), raster, mostPlaced)) return undefined;
	const fine = placeSides(raster, inPixels(first.corners, 2), {reachPx: 3, skip: 0.09, together: 3});
	// Where noise or blur hides a side from the finer look, the first one was the better.
	const sides = first.sides.map((side, index) => {
		const finer = fine?.sides[index];
		return finer && finer.seen > side.seen - 0.1 ? finer : doubled(side);
	});
	const placed = joinSides(sides);
	return placed && isSeen(placed) ? placed : undefined;
}

/** A side of the picture at half its size in pixels of the whole one. */
function doubled({line: [a, b, c], ...side}: Side): Side {
	return {...side, line: [a, b, 2 * c + (a + b) / 2], scatterPx: 2 * side.scatterPx, bowPx: 2 * side.bowPx};
}

/** Whether a sheet or card is so plain to see that nothing better need be looked for. */
export function isPlain(one: Found): boolean {
	return isPlainSheet(one) || (one.flat.kind === 'card' && isPlainCard(one));
}

function isPlainSheet({flat, score, pose, placed}: Found): boolean {
	return (
		flat.kind !== 'card' &&
		score > 0.45 &&
		pose.misfit < plainMisfit &&
		placed.sides.every(({seen}) => seen > 0.85)
	);
}

function isPlainCard({pose, placed}: Found): boolean {
	return pose.misfit < plainMisfit && placed.sides.every(({seen, contrast}) => seen > 0.9 && contrast > 8);
}

/** Quick and generous: is there a camera for which these rough corners are any of the flats. */
function mayBe(corners: Corners, raster: Raster, most: number): boolean {
	const [a = 0, b = 0, c = 0, d = 0] = lengthsOf(corners);
	const slim = (a + c) / (b + d);
	if (slim > 2.4 || slim < 1 / 2.4 || Math.min(a / c, c / a, b / d, d / b) < 0.5) return false;
	return [a4, letter, card].some(({longMm, shortMm}) =>
		[slim > 0.8 && ([longMm, shortMm] as const), slim < 1.25 && ([shortMm, longMm] as const)].some(size => {
			const pose = size && poseOf({corners, sides: []}, [size[0] / 2, size[1] / 2], raster, 4);
			return pose && pose.misfit < most;
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
	const isClear = sides.every(
		({seen, scatterPx, contrast}) => seen > 0.4 && scatterPx < mostScatterPx && contrast > 3,
	);
	return isClear && Math.min(...lengthsOf(corners)) > 40;
}

/** Corners of a shrunken picture in the pixels of the larger one. */
function inPixels([a, b, c, d]: Corners, by: number): Corners {
	const grown = ([x, y]: Point): Point => [(x + 0.5) * by - 0.5, (y + 0.5) * by - 0.5];
	return [grown(a), grown(b), grown(c), grown(d)];
}
