/** Sizes of a simulated find: the true ones, what is left of them, and what is read off the ruler. */

import {between, normal, type Pick} from './random.ts';
import type {Measure, Region} from './region.ts';
import {dryFactor, type Ends, factorOf} from './shrink.ts';
import {spreadOf} from './size-share.ts';
import {beyondRange, errorMm, errorShare, sizeCorrelation} from './wear.ts';

/** How a true size is spread: a normal curve cut off at both ends, or every size in between alike. */
export type SizeCurve =
	| {readonly kind: 'normal'; readonly mean: number; readonly sd: number; readonly ends: Ends}
	| {readonly kind: 'flat'; readonly ends: Ends};

/** The curves of one kind; where both are published, length and width go together. */
export type SizeCurves = {
	readonly length: SizeCurve;
	readonly width: SizeCurve;
	readonly correlation: number;
};

/** What makes a case measure smaller than it was. */
export type Shrunk = {readonly isDry: boolean; readonly lost: readonly string[]};

/** The sizes of a taxon, or of something else when it has no profile; flat over all possible sizes where nothing is published. */
export function curvesOf(region: Region, taxon: string): SizeCurves {
	const profile = region.profiles.taxa[taxon];
	const {possibleMm} = region.key;
	return {
		length: curveOf(profile?.lengthMm, possibleMm.length),
		width: curveOf(profile?.widthMm, possibleMm.width),
		correlation: profile?.lengthMm && profile.widthMm ? sizeCorrelation : 0,
	};
}

function curveOf(measure: Measure | undefined, possible: Ends): SizeCurve {
	if (!measure) return {kind: 'flat', ends: possible};
	const [low, high] = measure.range;
	const spread = spreadOf(measure);
	// A single published size has no ends of its own: two spreads hold 95 in 100.
	const beyond = low === high ? 2 * spread.sd : (high - low) * beyondRange;
	return {kind: 'normal', ...spread, ends: [low - beyond, high + beyond]};
}

/** A true length and width in millimetres, drawn anew until both lie inside their ends. */
export function drawSizes(
	{length, width, correlation}: SizeCurves,
	pick: Pick,
): {length: number; width: number} {
	for (;;) {
		const shared = normal(pick);
		const own = correlation * shared + Math.sqrt(1 - correlation ** 2) * normal(pick);
		const drawn = {length: sizeAt(length, shared, pick), width: sizeAt(width, own, pick)};
		if (isInside(drawn.length, length.ends) && isInside(drawn.width, width.ends)) return drawn;
	}
}

function sizeAt(curve: SizeCurve, z: number, pick: Pick): number {
	return curve.kind === 'flat' ? between(pick, curve.ends) : curve.mean + curve.sd * z;
}

function isInside(mm: number, [low, high]: Ends): boolean {
	return mm >= low && mm <= high;
}

/** Between which factors each size may have been shortened; drying shortens both by the same factor. */
export function factorsOf(
	region: Region,
	taxon: string,
	{isDry, lost}: Shrunk,
): {readonly dry: Ends; readonly length: Ends; readonly width: Ends} {
	const profile = region.profiles.taxa[taxon];
	return {
		dry: isDry ? dryFactor : [1, 1],
		length: lost.includes('aprons') ? factorOf(profile, 'aprons') : [1, 1],
		width: lost.includes('sides') ? factorOf(profile, 'sides') : [1, 1],
	};
}

/** The spread in millimetres of readings of one size. */
export function errorOf(mm: number): number {
	return Math.hypot(errorMm, errorShare * mm);
}

/** What is read off the ruler: whole millimetres; what the bot would refuse as impossible is the nearest possible. */
export function readOff(mm: number, [low, high]: Ends, pick: Pick): number {
	const read = Math.round(mm + errorOf(mm) * normal(pick));
	return Math.min(Math.floor(high), Math.max(Math.ceil(low), read));
}
