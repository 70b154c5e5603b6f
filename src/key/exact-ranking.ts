/** Bayes' rule under the model that draws the finds: nobody who has only the answers can be right more often. */
import {type Ranked, somethingElse} from './evidence.ts';
import {sharesOf, stateShares} from './model.ts';
import type {Shrunk} from './model-sizes.ts';
import {cantTell, type Observed, type Sized} from './observed.ts';
import type {Region} from './region.ts';
import {type SizeChance, sizeTable} from './size-table.ts';

/** Ranks by answers, and by whether the case was measured dry; best first, sums to 1. */
export type ExactRanking = (observed: Observed, isDry: boolean) => readonly Ranked[];

/**
 * Builds the exact ranking of a region. What is lost, what cannot be told, how dry a case is and who can
 * measure does not depend on the taxon in the model, so none of it speaks for a name by itself.
 */
export function exactRanking(region: Region): ExactRanking {
	const tables = new Map<string, SizeChance>();
	const tableOf = (taxon: string, {isDry, lost}: Shrunk): SizeChance => {
		const shortened = ['aprons', 'sides'].filter(part => lost.includes(part));
		const name = [taxon, isDry, ...shortened].join(' ');
		const table = tables.get(name) ?? sizeTable(region, taxon, {isDry, lost});
		tables.set(name, table);
		return table;
	};
	return (observed, isDry) => {
		const readMm = {length: readOf(observed.length), width: readOf(observed.width)};
		const shares = sharesOf(region, observed.spot);
		const weighed = shares.map(([taxon, share]) => ({
			taxon,
			weight:
				share * reported(region, taxon, observed) * tableOf(taxon, {isDry, lost: observed.lost})(readMm),
		}));
		const total = weighed.reduce((sum, {weight}) => sum + weight, 0);
		return weighed
			.map(({taxon, weight}) => ({taxon, probability: total > 0 ? weight / total : share(shares, taxon)}))
			.sort((one, other) => other.probability - one.probability);
	};
}

function share(shares: readonly (readonly [string, number])[], taxon: string): number {
	return shares.find(([id]) => id === taxon)?.[1] ?? 0;
}

/** The chance of the states reported, slips included. */
function reported(region: Region, taxon: string, {seen}: Observed): number {
	return Object.entries(seen)
		.filter(([, state]) => state !== cantTell)
		.reduce((product, [id, state]) => {
			const character = region.key.characters[id];
			if (!character) return product;
			const {error, states} = character;
			const isTrue = stateShares(region, taxon, id).find(([name]) => name === state)?.[1] ?? 0;
			// A slip goes to each of the other states alike.
			return product * ((1 - error) * isTrue + (error * (1 - isTrue)) / (states.length - 1));
		}, 1);
}

function readOf(sized: Sized | undefined): number | undefined {
	return sized === undefined || sized.kind === 'unknown' ? undefined : sized.mm;
}

/** The first name of a ranking. */
export function firstOf(ranking: readonly Ranked[]): string {
	return ranking[0]?.taxon ?? somethingElse;
}
