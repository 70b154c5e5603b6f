/** Figures of a proof: how often names are right, how well sureness is judged, how much is asked. */
import type {Ranked} from '../key/evidence.ts';

/** A name said with a probability, and whether it was right. */
export type Claim = {readonly probability: number; readonly isRight: boolean};

/** Claims of nearly the same probability, and how often they were right. */
export type Bin = {
	readonly from: number;
	readonly to: number;
	readonly count: number;
	readonly meanProbability: number;
	readonly shareRight: number;
};

const binCount = 10;

/** Sorts claims into ten bins of equal width; bins that hold nothing have a count of 0. */
export function binsOf(claims: readonly Claim[]): readonly Bin[] {
	return Array.from({length: binCount}, (_, index) => {
		const [from, to] = [index / binCount, (index + 1) / binCount];
		// A probability of exactly 1 belongs to the last bin.
		const inside = claims.filter(
			({probability}) => Math.min(binCount - 1, Math.floor(probability * binCount)) === index,
		);
		return {
			from,
			to,
			count: inside.length,
			meanProbability: meanOf(inside.map(({probability}) => probability)),
			shareRight: meanOf(inside.map(({isRight}) => (isRight ? 1 : 0))),
		};
	});
}

/** The expected calibration error: how far the probability said and the share right lie apart, weighed by count. */
export function calibrationError(bins: readonly Bin[]): number {
	const total = bins.reduce((sum, {count}) => sum + count, 0);
	if (total === 0) return 0;
	return bins.reduce(
		(sum, {count, meanProbability, shareRight}) =>
			sum + (count / total) * Math.abs(meanProbability - shareRight),
		0,
	);
}

/** The Brier score of one ranking over all its names: 0 where all is on the truth, 2 where all is on another. */
export function brierOf(ranking: readonly Ranked[], truth: string): number {
	const squares = ranking.reduce(
		(sum, {taxon, probability}) => sum + (probability - (taxon === truth ? 1 : 0)) ** 2,
		0,
	);
	return ranking.some(({taxon}) => taxon === truth) ? squares : squares + 1;
}

/** The mean; 0 of nothing. */
export function meanOf(values: readonly number[]): number {
	return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** The smallest value that at least 95 in 100 do not exceed; 0 of nothing. */
export function ninetyFifth(values: readonly number[]): number {
	return values.toSorted((one, other) => one - other)[Math.ceil(values.length * 0.95) - 1] ?? 0;
}

/** What a truth was taken for. */
export type Confusion = {
	readonly truth: string;
	readonly count: number;
	readonly shareRight: number;
	/** Wrong names and how often each was said, the most frequent first, at most three. */
	readonly wrong: readonly (readonly [string, number])[];
};

/** For each truth what it was taken for; the most frequent truth first. */
export function confusionOf(
	named: readonly {readonly truth: string; readonly first: string}[],
): readonly Confusion[] {
	const byTruth = grouped(named, ({truth}) => truth);
	return [...byTruth]
		.map(([truth, all]) => {
			const missed = all.filter(({first}) => first !== truth);
			const byName = grouped(missed, ({first}) => first);
			const wrong = [...byName]
				.map(([name, taken]) => [name, taken.length] as const)
				.sort(([a, one], [b, other]) => other - one || a.localeCompare(b))
				.slice(0, 3);
			return {truth, count: all.length, shareRight: 1 - missed.length / all.length, wrong};
		})
		.sort((one, other) => other.count - one.count || one.truth.localeCompare(other.truth));
}

function grouped<T>(values: readonly T[], nameOf: (value: T) => string): ReadonlyMap<string, readonly T[]> {
	const groups = new Map<string, T[]>();
	for (const value of values) {
		const group = groups.get(nameOf(value));
		if (group) group.push(value);
		else groups.set(nameOf(value), [value]);
	}
	return groups;
}
