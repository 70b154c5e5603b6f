/** What may honestly be said of a ranking. */
import {type Ranked, somethingElse} from './evidence.ts';

/** How sure the ranking is: one name at 0.9 or at 0.7, several names, or none of ours. */
export type Sureness = 'very-likely' | 'likely' | 'shortlist' | 'unknown';

/** What may be said of a ranking: how sure it is, and the names. */
export type Conclusion = {
	readonly sure: Sureness;
	/** The names to be said, best first; never empty unless `sure` is `unknown`. */
	readonly names: readonly Ranked[];
	/** Names beside these that are less likely and still possible; empty beside a shortlist, which holds them. */
	readonly also: readonly Ranked[];
	/** Whether something that no profile holds is still possible. */
	readonly elsePossible: boolean;
};

/** From these probabilities on one name is said alone. */
const sureFrom = {veryLikely: 0.9, likely: 0.7} as const;
/** Names are said until they hold this share: fewer than two truths in a hundred may go unsaid. */
const saidShare = 0.975;
/** From this probability on something else is worth a word whatever the names hold. */
const worthAWord = 0.1;
/** A key that ends at more names than these leads nowhere in particular. */
const fewLeaves = 3;

/**
 * What may be said of a ranking beside the names the key led to. Where the two disagree, neither is
 * said alone: the shortlist holds both.
 */
export function conclude(ranking: readonly Ranked[], leaves: readonly string[]): Conclusion {
	const led = leaves.length <= fewLeaves ? leaves : [];
	const best = ranking[0];
	const possible = untilSaid(ranking);
	const names = possible.filter(({taxon}) => taxon !== somethingElse);
	const elsePossible = ranking.some(
		entry => entry.taxon === somethingElse && (possible.includes(entry) || entry.probability >= worthAWord),
	);
	if (!best || (best.taxon === somethingElse && led.length === 0)) {
		return {sure: 'unknown', names: [], also: names, elsePossible};
	}
	const agrees = led.length === 0 || led.includes(best.taxon);
	if (agrees && best.probability >= sureFrom.likely) {
		const sure = best.probability >= sureFrom.veryLikely ? 'very-likely' : 'likely';
		return {sure, names: [best], also: names.filter(name => name !== best), elsePossible};
	}
	const listed = ranking.filter(
		entry => entry.taxon !== somethingElse && (names.includes(entry) || led.includes(entry.taxon)),
	);
	return {sure: 'shortlist', names: listed, also: [], elsePossible};
}

function untilSaid(ranking: readonly Ranked[]): readonly Ranked[] {
	let held = 0;
	return ranking.filter(({probability}) => {
		const isWanted = held < saidShare;
		held += probability;
		return isWanted;
	});
}
