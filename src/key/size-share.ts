/** How well a size fits a kind. */
import type {Sized} from './observed.ts';
import type {Measure, Taxon} from './region.ts';
import {type Ends, factorOf, type Shortening, stepsBetween} from './shrink.ts';

/** A size beside the one published of a kind, and all sizes in millimetres that are possible. */
export type SizeAsked = {
	readonly measure: Measure | undefined;
	readonly sized: Sized | undefined;
	readonly possibleMm: Ends;
};

/** Over so many steps each shortening is averaged. */
const factorSteps = 6;

/** Middle and spread in millimetres: as published, else the middle and a quarter of the range. */
export function spreadOf(measure: Measure): {readonly mean: number; readonly sd: number} {
	const [low, high] = measure.range;
	return {mean: measure.mean ?? (low + high) / 2, sd: measure.sd ?? (high - low) / 4};
}

/**
 * How likely a size is for a kind: the density (per mm) of what is left of it, where it is known why it may
 * be too short; the upper tail where that is not known; 1 where nothing was measured.
 */
export function sizeShare(taxon: Taxon, {measure, sized, possibleMm}: SizeAsked): number {
	if (!sized || sized.kind === 'unknown' || !measure) return flatShare(possibleMm, sized);
	if (sized.kind === 'exact' || !sized.shortBy?.length) return sizeDensity(measure, sized, possibleMm);
	const {mean, sd} = spreadOf(measure);
	const left = shortenings(taxon, sized.shortBy).map(factor =>
		density(sized.mm - mean * factor, Math.hypot(sd * factor, sized.uncertaintyMm)),
	);
	return left.reduce((sum, one) => sum + one, 0) / left.length;
}

/** All factors that several reasons may come to, each alike likely. */
function shortenings(taxon: Taxon, because: readonly Shortening[]): readonly number[] {
	return because.reduce<readonly number[]>(
		(factors, reason) =>
			factors.flatMap(factor =>
				stepsBetween(factorOf(taxon, reason), factorSteps).map(step => factor * step),
			),
		[1],
	);
}

/** Normal density (per mm) for a measured size, the upper tail for a lower bound; flat where nothing was published. */
export function sizeDensity(
	measure: Measure | undefined,
	sized: Sized | undefined,
	possibleMm: readonly [number, number],
): number {
	if (!sized || sized.kind === 'unknown') return 1;
	if (!measure) return flatShare(possibleMm, sized);
	const {mean, sd} = spreadOf(measure);
	const spread = Math.hypot(sd, sized.uncertaintyMm);
	if (sized.kind === 'at-least') return upperTail((sized.mm - mean) / spread);
	return density(sized.mm - mean, spread);
}

function density(awayMm: number, spreadMm: number): number {
	return Math.exp(-((awayMm / spreadMm) ** 2) / 2) / (spreadMm * Math.sqrt(2 * Math.PI));
}

/** How likely a size is where nothing was published: every possible one alike. */
export function flatShare([low, high]: Ends, sized: Sized | undefined): number {
	if (!sized || sized.kind === 'unknown') return 1;
	// Beyond the largest possible size there is still something else, if hardly.
	if (sized.kind === 'at-least' && !sized.shortBy?.length)
		return Math.max(1e-6, (high - sized.mm) / (high - low));
	return 1 / (high - low);
}

/**
 * P(Z > z) of the standard normal, off by less than 1.5e-7
 * (Abramowitz & Stegun 1964, Handbook of Mathematical Functions, 7.1.26).
 */
export function upperTail(z: number): number {
	const x = Math.abs(z) / Math.SQRT2;
	const t = 1 / (1 + 0.3275911 * x);
	const sum =
		t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
	const tail = (sum * Math.exp(-x * x)) / 2;
	return z >= 0 ? tail : 1 - tail;
}
