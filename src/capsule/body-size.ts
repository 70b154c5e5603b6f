/** The length and width of one body, from its borders as seen in the full photo. */
import {type Band, findBand, isDarkBetween, type Tones} from './apron.ts';
import type {Axis} from './axis.ts';
import {type Bend, type Border, findBorders} from './border.ts';
import {withoutShadow} from './contact-shadow.ts';
import {edgesOf} from './edges.ts';
import {isRimOf, streakMm} from './streak.ts';
import {readStrip, type Sight, type Strip} from './strip.ts';

type Paler = {readonly border: Border; readonly isTinged: boolean};

/** A body measured: its borders, front and back first, then the two flanks. */
export type BodySize = {
	readonly lengthMm: number;
	readonly widthMm: number | undefined;
	/** Where the axis meets the two end borders, from the middle of the axis. */
	readonly ends: readonly [front: number, back: number];
	/** The end borders that the length was taken from. */
	readonly chosen: readonly [Border, Border];
	/** Other borders that each end may have instead. */
	readonly rivals: readonly [readonly Border[], readonly Border[]];
	/** The border farther out that a pale apron may end at, when it is not sure that there is one. */
	readonly paler: readonly [Paler | undefined, Paler | undefined];
	/** Whether each end is that of an apron, told by its colour. */
	readonly isApron: readonly [boolean, boolean];
	readonly flanks: readonly [Border | undefined, Border | undefined];
	/** Where along the axis the body is widest. */
	readonly widestAt: number;
};

/** Measures a body along and across its axis; undefined when an end is not to be seen. */
export function sizeBody(sight: Sight, axis: Axis): BodySize | undefined {
	const seen = [endOf(sight, axis, -1), endOf(sight, axis, 1)] as const;
	if (!seen[0] || !seen[1]) return undefined;
	const [front, back] = [likeOther(seen[0], seen[1]), likeOther(seen[1], seen[0])];
	const ends = [meanOf(front.chosen, axis.widthMm), meanOf(back.chosen, axis.widthMm)] as const;
	const sides = [flankOf(sight, axis, -1), flankOf(sight, axis, 1)] as const;
	const flanks = [plainBorder(sides[0]), plainBorder(sides[1])] as const;
	const widest = widestOf(flanks, ends);
	return {
		lengthMm: ends[0] + ends[1],
		widthMm: widest?.widthMm,
		ends,
		chosen: [front.chosen, back.chosen],
		rivals: [front.rivals, back.rivals],
		paler: [palerAt(front, sides), palerAt(back, sides)],
		isApron: [front.band?.kind === 'apron', back.band?.kind === 'apron'],
		flanks,
		widestAt: widest?.at ?? 0,
	};
}

/** The mean over the middle tenth of the width, as the length is defined. */
export function meanOf(border: Border, widthMm: number): number {
	const steps = [-1, -0.5, 0, 0.5, 1].map(share => border.at(share * 0.05 * widthMm));
	return steps.reduce((sum, value) => sum + value, 0) / steps.length;
}

/** One side of a body: the border that is taken, and the others that there are. */
type Side = {
	readonly chosen: Border;
	readonly rivals: readonly Border[];
	readonly band: Band | undefined;
	/** The side looked at anew, an apron of these tones being known of. */
	readonly knowing: (like: Tones) => Side;
};

/** A case has its apron at both ends, as a rule: what is too faint to be one by itself may be as the other is. */
function likeOther(side: Side, {band}: Side): Side {
	return side.band?.kind !== 'apron' && band?.kind === 'apron' ? side.knowing(band.tones) : side;
}

function endOf(sight: Sight, axis: Axis, way: -1 | 1): Side | undefined {
	const halfMm = 0.19 * axis.widthMm;
	const near = axis.lengthMm / 2;
	const inMm = Math.min(0.3 * axis.lengthMm, 4 + 0.14 * axis.widthMm);
	const places = evenly(23, halfMm);
	const reach = {side: 'end', way, places, fromMm: near - inMm, toMm: near + 5 + 0.2 * axis.widthMm} as const;
	const bend = {
		...{halfMm, mostBowMm: 0.06 * axis.widthMm, mostSlope: 0.3},
		order: 2,
		reachMm: Math.max(0.45, 1.1 * sight.mmPerPx),
	} as const;
	const strip = readStrip(sight, axis, reach);
	return strip && sideOf(strip, sight.mmPerPx, {bend, apartMm: Math.max(0.8, 0.012 * axis.lengthMm)});
}

function flankOf(sight: Sight, axis: Axis, way: -1 | 1): Side | undefined {
	const halfMm = 0.42 * axis.lengthMm;
	const near = axis.widthMm / 2;
	const inMm = Math.min(0.35 * axis.widthMm, 3 + 0.1 * axis.widthMm);
	const places = evenly(29, halfMm);
	const reach = {
		side: 'flank',
		way,
		places,
		fromMm: near - inMm,
		toMm: near + 3 + 0.12 * axis.widthMm,
	} as const;
	const bend = {
		...{halfMm, mostBowMm: 0.2 * axis.widthMm, mostSlope: 0.25},
		order: 3,
		reachMm: Math.max(0.6, 1.3 * sight.mmPerPx, 0.015 * axis.widthMm),
	} as const;
	const strip = readStrip(sight, axis, reach);
	return strip && sideOf(strip, sight.mmPerPx, {bend, apartMm: 1});
}

function sideOf(
	strip: Strip,
	mmPerPx: number,
	{bend, apartMm}: {bend: Bend; apartMm: number},
): Side | undefined {
	const borders = findBorders(edgesOf(strip, mmPerPx), bend, apartMm);
	const inner = chooseBorder(strip, borders);
	if (!inner) return undefined;
	const told = (like?: Tones): Side => {
		const band = findBand(strip, {inner, borders, like}, mmPerPx);
		return {...withBand(strip, {inner, borders, band}, {mmPerPx, apartMm}), knowing: told};
	};
	return told();
}

type Seen = {readonly inner: Border; readonly borders: readonly Border[]; readonly band: Band | undefined};

function withBand(
	strip: Strip,
	{inner, borders, band}: Seen,
	{mmPerPx, apartMm}: {mmPerPx: number; apartMm: number},
): Omit<Side, 'knowing'> {
	const seen = band?.kind === 'apron' ? band.border : inner;
	const chosen = withoutShadow(strip, seen, mmPerPx);
	// What lies within the shadow or the apron is told already.
	const [from, to] = [Math.min(chosen.at(0), inner.at(0)) - apartMm, seen.at(0) + apartMm];
	const isTold = (border: Border) =>
		border === seen ||
		border === inner ||
		border === band?.border ||
		(seen !== chosen && border.at(0) > from && border.at(0) < to);
	return {chosen, rivals: borders.filter(border => !isTold(border)), band};
}

/** A flank's border, unless a keel may go on beyond it. */
function plainBorder(side: Side | undefined): Border | undefined {
	return side?.band?.kind === 'maybe' ? undefined : side?.chosen;
}

/** A hard shadow falls to one side: a dark band at an end is one only where a flank has a shadow, too. */
function palerAt({band}: Side, flanks: readonly (Side | undefined)[]): Paler | undefined {
	const isShaded = flanks.some(
		flank => flank && (flank.band?.kind === 'dark' || (flank.chosen.insideMm ?? 0) > 0.25),
	);
	if (!band || band.kind === 'apron' || (band.kind === 'dark' && isShaded)) return undefined;
	return {border: band.border, isTinged: band.kind === 'maybe'};
}

/** Beyond a body a horn or the edge of a shadow is a border, too; it ends at the first behind which ground is seen. */
function chooseBorder(strip: Strip, borders: readonly Border[]): Border | undefined {
	const [best] = borders;
	if (!best) return undefined;
	const inner = borders.filter(
		border =>
			border.at(0) < best.at(0) &&
			border.score > 0.75 * best.score &&
			border.trust > 0.75 &&
			// A streak of shine at the rim covers a part of an end only; a tendril beyond it leaves all of it to be seen.
			(border.seen > 0.9 || best.seen < 0.95 || best.at(0) - border.at(0) > streakMm) &&
			// A much weaker edge with no bare ground behind it is one within an apron.
			(border.strength > 0.5 * best.strength || !isDarkBetween(strip, border, best)),
	);
	const first = inner.toSorted((a, b) => a.at(0) - b.at(0))[0] ?? best;
	return borders.find(border => isRimOf(strip, border, first)) ?? first;
}

function widestOf(
	[left, right]: readonly [Border | undefined, Border | undefined],
	[front, back]: readonly [number, number],
): {readonly widthMm: number; readonly at: number} | undefined {
	if (!left || !right) return undefined;
	const middle = (back - front) / 2;
	const half = 0.4 * (front + back);
	let best = {widthMm: 0, at: 0};
	for (let step = 0; step <= 60; step += 1) {
		const at = middle + half * (step / 30 - 1);
		const widthMm = left.at(at) + right.at(at);
		if (widthMm > best.widthMm) best = {widthMm, at};
	}
	return best;
}

function evenly(count: number, half: number): readonly number[] {
	return Array.from({length: count}, (_, index) => (index / (count - 1)) * 2 * half - half);
}
