/** Evidence ranked: how likely each taxon of a region is, given what was seen and measured. */
import {coastShare} from './coast.ts';
import {cantTell, type Observed, type Sized} from './observed.ts';
import type {Measure, Region, Taxon} from './region.ts';

/** The name that stands for all that the region's profiles do not hold. */
export const somethingElse = 'something-else';

/** A taxon and how likely it is, from 0 to 1. */
export type Ranked = {readonly taxon: string; readonly probability: number};

/** How sure the ranking is: one name at 0.9 or at 0.7, several names, or none of ours. */
export type Sureness = 'very-likely' | 'likely' | 'shortlist' | 'unknown';

/** What may be said of a ranking: how sure it is, and the names. */
export type Conclusion = {
	readonly sure: Sureness;
	/** The names to be said, best first; never empty unless `sure` is `unknown`. */
	readonly names: readonly Ranked[];
};

/** Shortlists stop when they hold this share, or at five names. */
const shortlistShare = 0.95;
const shortlistMost = 5;
/** A key that ends at more names than these leads nowhere in particular. */
const fewLeaves = 3;

/** Posterior over all taxa of the region and something else, best first; sums to 1. */
export function rank(region: Region, observed: Observed): readonly Ranked[] {
	const {key, profiles} = region;
	const taxa = Object.entries(profiles.taxa).map(([id, taxon]) => ({
		id,
		taxon,
		common: (key.howCommon[taxon.howCommon] ?? 0) * coastShare(key, taxon, observed.spot),
	}));
	const total = taxa.reduce((sum, {common}) => sum + common, 0);
	const weighed = taxa.map(({id, taxon, common}) => ({
		taxon: id,
		weight: (common / total) * (1 - key.somethingElse) * likelihood(region, taxon, observed),
	}));
	const all = [
		...weighed,
		{taxon: somethingElse, weight: key.somethingElse * likelihoodElse(region, observed)},
	];
	const evidence = all.reduce((sum, entry) => sum + entry.weight, 0);
	return all
		.map(({taxon, weight}) => ({taxon, probability: evidence > 0 ? weight / evidence : 0}))
		.sort((one, other) => other.probability - one.probability || one.taxon.localeCompare(other.taxon));
}

/**
 * What may honestly be said of a ranking beside the names the key led to. Where the two disagree,
 * neither is said alone: the shortlist holds both.
 */
export function conclude(ranking: readonly Ranked[], leaves: readonly string[]): Conclusion {
	const led = leaves.length <= fewLeaves ? leaves : [];
	const best = ranking[0];
	if (!best || (best.taxon === somethingElse && led.length === 0)) return {sure: 'unknown', names: []};
	const agrees = led.length === 0 || led.includes(best.taxon);
	if (agrees && best.probability >= 0.9) return {sure: 'very-likely', names: [best]};
	if (agrees && best.probability >= 0.7) return {sure: 'likely', names: [best]};
	return {sure: 'shortlist', names: shortlist(ranking, led)};
}

function shortlist(ranking: readonly Ranked[], led: readonly string[]): readonly Ranked[] {
	const names: Ranked[] = [];
	let held = 0;
	for (const entry of ranking) {
		const isFull = held >= shortlistShare || names.length >= shortlistMost;
		if (entry.taxon !== somethingElse && (!isFull || led.includes(entry.taxon))) names.push(entry);
		held += entry.probability;
	}
	return names;
}

/** P(state | taxon) for what a person reports, slips included; 1 over the number of states where unknown. */
export function stateShare(region: Region, taxon: Taxon, seen: {character: string; state: string}): number {
	const character = region.key.characters[seen.character];
	if (!character) return 1;
	const others = character.states.length - 1;
	const share = taxon.states[seen.character]?.[seen.state];
	const shares = taxon.states[seen.character];
	const seenShare = shares ? (share ?? 0) : 1 / character.states.length;
	return (1 - character.error) * seenShare + (character.error * (1 - seenShare)) / others;
}

/** Middle and spread in millimetres: as published, else the middle and a quarter of the range. */
export function spreadOf(measure: Measure): {readonly mean: number; readonly sd: number} {
	const [low, high] = measure.range;
	return {mean: measure.mean ?? (low + high) / 2, sd: measure.sd ?? (high - low) / 4};
}

function likelihood(region: Region, taxon: Taxon, observed: Observed): number {
	let product = 1;
	for (const [character, state] of Object.entries(observed.seen)) {
		if (state !== cantTell) product *= stateShare(region, taxon, {character, state});
	}
	const {length, width} = region.key.possibleMm;
	return (
		product *
		sizeDensity(taxon.lengthMm, observed.length, length) *
		sizeDensity(taxon.widthMm, observed.width, width)
	);
}

function likelihoodElse(region: Region, observed: Observed): number {
	let product = 1;
	for (const [character, state] of Object.entries(observed.seen)) {
		if (state !== cantTell) product /= region.key.characters[character]?.states.length ?? 1;
	}
	const {length, width} = region.key.possibleMm;
	return product * flatLikelihood(length, observed.length) * flatLikelihood(width, observed.width);
}

/** Normal density (per mm) for a measured size, the upper tail for a lower bound; flat where nothing was published. */
export function sizeDensity(
	measure: Measure | undefined,
	sized: Sized | undefined,
	possibleMm: readonly [number, number],
): number {
	if (!sized || sized.kind === 'unknown') return 1;
	if (!measure) return flatLikelihood(possibleMm, sized);
	const {mean, sd} = spreadOf(measure);
	const spread = Math.hypot(sd, sized.uncertaintyMm);
	const z = (sized.mm - mean) / spread;
	if (sized.kind === 'at-least') return upperTail(z);
	return Math.exp(-(z * z) / 2) / (spread * Math.sqrt(2 * Math.PI));
}

function flatLikelihood([low, high]: readonly [number, number], sized: Sized | undefined): number {
	if (!sized || sized.kind === 'unknown') return 1;
	// Beyond the largest possible size there is still something else, if hardly.
	if (sized.kind === 'at-least') return Math.max(1e-6, (high - sized.mm) / (high - low));
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
