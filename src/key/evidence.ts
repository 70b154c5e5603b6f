/** Evidence ranked: how likely each taxon of a region is, given what was seen and measured. */
import {coastShare} from './coast.ts';
import {cantTell, type Observed} from './observed.ts';
import type {Region, Taxon} from './region.ts';
import {flatShare, sizeShare} from './size-share.ts';

/** The name that stands for all that the region's profiles do not hold. */
export const somethingElse = 'something-else';

/** A taxon and how likely it is, from 0 to 1. */
export type Ranked = {readonly taxon: string; readonly probability: number};

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

function likelihood(region: Region, taxon: Taxon, observed: Observed): number {
	let product = 1;
	for (const [character, state] of Object.entries(observed.seen)) {
		if (state !== cantTell) product *= stateShare(region, taxon, {character, state});
	}
	const {length, width} = region.key.possibleMm;
	return (
		product *
		sizeShare(taxon, {measure: taxon.lengthMm, sized: observed.length, possibleMm: length}) *
		sizeShare(taxon, {measure: taxon.widthMm, sized: observed.width, possibleMm: width})
	);
}

function likelihoodElse(region: Region, observed: Observed): number {
	let product = 1;
	for (const [character, state] of Object.entries(observed.seen)) {
		if (state !== cantTell) product /= region.key.characters[character]?.states.length ?? 1;
	}
	const {length, width} = region.key.possibleMm;
	return product * flatShare(length, observed.length) * flatShare(width, observed.width);
}
