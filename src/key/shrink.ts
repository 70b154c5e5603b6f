/** What makes a case measure smaller than it was, and by how much: figures that ranking and model share. */
import type {Taxon} from './region.ts';

/** Why a size is a lower bound; `perhaps-aprons` where nobody could say whether they are there. */
export type Shortening = 'dry' | 'aprons' | 'perhaps-aprons' | 'sides';

/** Two ends, smaller first. */
export type Ends = readonly [number, number];

/** A case measured dry shows this much of its size, length and width alike: no figure was published. */
export const dryFactor: Ends = [0.85, 1];
/**
 * Without both its aprons a case of large aprons is a quarter to two fifths shorter (capsules.md, "Read
 * this first", 2); where one is left, half of that. Any size in between is taken to be alike likely.
 */
export const largeApronFactor: Ends = [0.6, 0.9];
/** Without its aprons any other case is at most a tenth shorter: no figure was published. */
export const smallApronFactor: Ends = [0.9, 1];
/** Without its keels or edges a case shows this much of its width: judged by keels of a sixth of the width. */
export const sidesFactor: Ends = [0.8, 1];

/** Between which shares of its true size a case of this kind, or of something else, shows for one reason. */
export function factorOf(taxon: Taxon | undefined, because: Shortening): Ends {
	const aprons = taxon?.largeAprons ? largeApronFactor : smallApronFactor;
	switch (because) {
		case 'dry':
			return dryFactor;
		case 'aprons':
			return aprons;
		case 'perhaps-aprons':
			return [aprons[0], 1];
		case 'sides':
			return sidesFactor;
		default:
			return never(because);
	}
}

/** Middles of equal steps between two ends; one where the ends are the same. */
export function stepsBetween([from, to]: Ends, count: number): readonly number[] {
	if (from === to) return [from];
	return Array.from({length: count}, (_, index) => from + ((index + 0.5) * (to - from)) / count);
}

function never(because: never): never {
	throw new Error(`Expected a known reason for a lower bound; got ${JSON.stringify(because)}`);
}
