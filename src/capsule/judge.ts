/** Whether the borders found on a body can be trusted, and how far off its sizes may be. */
import {type Axis, walkOut} from './axis.ts';
import type {Body} from './bodies.ts';
import {type BodySize, meanOf} from './body-size.ts';
import type {Border} from './border.ts';
import type {Found} from './flat-fit.ts';

/** Why a body was not measured. */
export type Doubt =
	| 'cut-off'
	| 'far-reference'
	| 'too-small-case'
	| 'odd-shape'
	| 'unclear-ends'
	| 'tilted'
	| 'blurred';

/** What the judging looks at. */
export type Evidence = {
	readonly body: Body;
	readonly axis: Axis;
	readonly size: BodySize;
	readonly found: Found;
	readonly mmPerPx: number;
	/** How far off the scale may be here, one sigma as a share. */
	readonly scaleSigma: number;
	/** What a length has to be multiplied by for what the lens bends. */
	readonly lens: number;
};

/** From the middle to both ends of an interval, in millimetres. */
export type Spread = {readonly lengthMm: number; readonly widthMm: number};

// Sizes that published egg cases have, with room; beyond them the reference or the body was mistaken.
const sizesMm = [22, 260] as const;
const leastPx = 42;
const mostTilt = 38;
/** A scale that is less sure than this, nine times in ten, is no measure (our choice). */
const mostScale = 0.03;
/** Steps of the grid by which the mask of a case with keels may be narrower than it (tuned on made-up trays). */
const coarseSteps = 5;
/** Two cases that overlap are less alike on both sides and fill less of their frame than any of 270 single made-up ones. */
const overlapping = {symmetry: 0.94, fullness: 0.9} as const;
/** Of the way to an end, where the body must still be so much of its width (our choice; an ellipse has 0.39 there). */
const [nearEnd, leastAtEnd] = [0.92, 0.42];

/** Of the length: two ends farther apart than this are shown to be chosen from. */
const farShare = 0.03;

/** The first doubt about a body; undefined when there is none. */
export function doubtOf(evidence: Evidence): Doubt | undefined {
	const {body, axis, size, found, mmPerPx, scaleSigma} = evidence;
	if (found.pose.tilt > mostTilt) return 'tilted';
	if (body.isCut) return 'cut-off';
	const {lengthMm} = size;
	if (lengthMm < sizesMm[0] || lengthMm / mmPerPx < leastPx) return 'too-small-case';
	if (ofBell * scaleSigma > mostScale) return 'far-reference';
	const slim = axis.widthMm / lengthMm;
	if (lengthMm > sizesMm[1] || slim < 0.2 || slim > 1.12) return 'odd-shape';
	if (axis.symmetry < 0.84 || axis.fullness < 0.86 || axis.fullness > 1.15) return 'odd-shape';
	const coarseMm = coarseSteps * body.grid.stepMm;
	if (isAskew(axis, coarseMm)) return 'odd-shape';
	// One case that lies over another is broad somewhere only, and its two flanks are not alike.
	const broaderMm = Math.abs((size.widthMm ?? 0) - axis.widthMm);
	if (axis.symmetry < 0.92 && broaderMm > Math.max(0.12 * axis.widthMm, coarseMm)) return 'odd-shape';
	if (axis.symmetry < 0.92 && !hasFlanks(size)) return 'odd-shape';
	if (isNarrow(evidence, 0) || isNarrow(evidence, 1)) return 'odd-shape';
	// A pale apron is not in the mask that the axis comes from, so an end may lie farther out sooner than farther in.
	const beyond = lengthMm - axis.lengthMm;
	if (beyond < -1.5 - 0.05 * lengthMm || isFarBeyond(axis, lengthMm)) return 'unclear-ends';
	const isSeen = ([0, 1] as const).every(
		end =>
			isClear(size.chosen[end]) ||
			isPale(evidence, end) ||
			(size.isApron[end] && isEvenlySeen(size.chosen[end])) ||
			(isDim(size.chosen[end]) && hasFarRival(evidence, end)),
	);
	return isSeen ? undefined : 'unclear-ends';
}

/** Whether the two halves differ and the corners are empty by more than a coarse grid makes of a small case. */
function isAskew({symmetry, fullness, widthMm}: Axis, coarseMm: number): boolean {
	const emptyMm = (1 - fullness) * widthMm;
	return symmetry < overlapping.symmetry && fullness < overlapping.fullness && emptyMm > coarseMm;
}

/** Whether a length goes farther beyond the mask than any apron that the mask has not. */
function isFarBeyond(axis: Axis, lengthMm: number): boolean {
	return lengthMm - axis.lengthMm > 2 + 0.1 * lengthMm;
}

function isClear({score, seen, strength, trust}: Border): boolean {
	return score > 0.28 && seen > 0.55 && strength > 6 && trust > 0.6;
}

/** Paper's own colour on both sides leaves little to trust, but no shadow ends as sharply and evenly as a pale apron. */
function isPale({size, axis}: Evidence, end: 0 | 1): boolean {
	const {seen, strength, scatterMm, trust} = size.chosen[end];
	const isWithin = size.ends[end] < axis.lengthMm / 2 - 0.6;
	return !isWithin && seen > 0.95 && strength > 25 && scatterMm < 0.06 && trust > 0.38;
}

/** An apron told by its colour has little else to be trusted by: its edge is as pale as paper on both sides (tuned on photos by the second maker). */
function isEvenlySeen({seen, strength, scatterMm}: Border): boolean {
	return seen > 0.85 && strength > 12 && scatterMm < 0.25;
}

/** Crossed horns are no end, however clear their edge: the body under it is narrow there. */
function isNarrow({body, axis, size}: Evidence, end: 0 | 1): boolean {
	const half = axis.lengthMm / 2;
	// A pale apron is not in the mask, and no longer than so much.
	const isApron = size.isApron[end] || size.ends[end] - half < 1 + 0.12 * axis.widthMm;
	const u = (end === 0 ? -1 : 1) * nearEnd * (isApron ? Math.min(half, size.ends[end]) : size.ends[end]);
	const widthMm = walkOut(axis, body, {u, v: 0, side: -1}) + walkOut(axis, body, {u, v: 0, side: 1});
	return widthMm < leastAtEnd * axis.widthMm;
}

/** Whether a flank is plain to see: it has more to be seen by than an end, so less will not do. */
export function isPlain({score, seen, strength, trust, scatterMm}: Border): boolean {
	return score > 0.4 && seen > 0.7 && strength > 12 && trust > 0.88 && scatterMm < 0.32;
}

function hasFlanks({flanks}: BodySize): boolean {
	return flanks.every(border => border !== undefined && isPlain(border));
}

/** Not clear by itself, and yet worth showing beside another. */
function isDim({score, seen, strength, trust}: Border): boolean {
	return score > 0.2 && seen > 0.45 && strength > 5 && trust > 0.45;
}

/** Whether an end that is not clear may be asked about, since another may be it just as well. */
function hasFarRival({size, axis}: Evidence, end: 0 | 1): boolean {
	return size.rivals[end].some(border => {
		const apart = Math.abs(meanOf(border, axis.widthMm) - size.ends[end]);
		return isDim(border) && apart > farShare * size.lengthMm;
	});
}

/** Another place where an end may be: which end, and how far out. */
export type Rival = {
	readonly end: 0 | 1;
	readonly atMm: number;
	/** Too far off to be held by one interval. */
	readonly isFar: boolean;
	/** As likely as the end that was chosen, and not only possible. */
	readonly isLikely: boolean;
	/** The border of a band that may be an apron. */
	readonly isApron: boolean;
};

/** The places where either end may be as well, when little tells them from those chosen. */
export function rivalsOf({size, axis}: Evidence): readonly Rival[] {
	return ([0, 1] as const).flatMap(end => {
		const chosen = size.chosen[end];
		const least = isClear(chosen) ? 0.75 * chosen.score : 0.5 * chosen.score;
		// Beside a clear end, horns that cross far out are no rival.
		const mayBe = (border: Border) =>
			!isClear(chosen) ||
			(border.trust > 0.75 &&
				!isFarBeyond(axis, size.lengthMm - size.ends[end] + meanOf(border, axis.widthMm)));
		const rivals = size.rivals[end].filter(border => isDim(border) && border.score > least && mayBe(border));
		const told = (border: Border, isLikely: boolean): Rival => {
			const atMm = meanOf(border, axis.widthMm);
			const isFar = Math.abs(atMm - size.ends[end]) > farShare * size.lengthMm;
			return {end, atMm, isLikely, isFar, isApron: border === size.paler[end]?.border};
		};
		const paler = size.paler[end];
		return [
			...(paler ? [told(paler.border, paler.isTinged)] : []),
			...rivals.map(border => told(border, true)),
		];
	});
}

/** Both ends farther out, where each has a band that may be an apron and both together are too far off for one interval. */
export function apronsOf({size}: Evidence, rivals: readonly Rival[]): readonly [number, number] | undefined {
	const [front, back] = ([0, 1] as const).map(end => rivals.find(one => one.isApron && one.end === end));
	if (!front || !back) return undefined;
	const apart = front.atMm + back.atMm - size.lengthMm;
	return apart > farShare * size.lengthMm ? [front.atMm, back.atMm] : undefined;
}

/** The outline lies anywhere from 0 to 4 mm over the ground: nine in ten are within so much of the middle. */
const liftMm = 1.8;
/** Nine in ten of a bell curve, in sigmas. */
const ofBell = 1.645;
/** Borders are off by more than their edges scatter: shadows and curled rims are not in it (fitted to made-up photos). */
const unseen = {sheet: 1.9, card: 1.4} as const;

/** The half-width of the 90 % intervals. */
export function spreadOf({size, found, axis, mmPerPx, scaleSigma}: Evidence): Spread {
	const {pose, flat} = found;
	const away = flat.kind === 'card' ? 0.002 : 0.0018;
	const whole = Math.hypot(away, 0.00008 * pose.tilt);
	const borderMm = ({scatterMm, strength, trust, unsureMm = 0}: Border) =>
		0.14 * mmPerPx + 0.2 * scatterMm + (1.2 * mmPerPx) / strength + 0.5 * (1 - trust) + 0.5 * unsureMm;
	const ends = Math.hypot(...size.chosen.map(borderMm));
	const flanks = Math.hypot(...size.flanks.map(border => (border ? borderMm(border) : 2)));
	const ninety = ofBell * (flat.kind === 'card' ? unseen.card : unseen.sheet);
	const given = Math.hypot(liftMm / pose.distanceMm, ofBell * scaleSigma);
	return {
		lengthMm: Math.hypot(given * size.lengthMm, ninety * Math.hypot(whole * size.lengthMm, ends)),
		widthMm: Math.hypot(
			given * axis.widthMm,
			ninety * Math.hypot(whole * axis.widthMm, flanks, 0.006 * axis.widthMm),
		),
	};
}

/** Whether the width can be given: both flanks seen, and in keeping with the body. */
export function hasWidth({size, axis}: Evidence): boolean {
	// Where an apron is as pale as paper, keels may be, too.
	const isSeen = size.chosen.every(isClear) && hasFlanks(size);
	const off = Math.abs((size.widthMm ?? 0) - axis.widthMm);
	return isSeen && off < 1 + 0.1 * axis.widthMm;
}
