/** One more question after the key, where it is expected to settle the name and the part it needs is there. */
import {type Ranked, stateShare} from './evidence.ts';
import {cantTell, type Observed} from './observed.ts';
import type {Region} from './region.ts';
import {sizeDensity} from './size-share.ts';
import type {Wanted} from './states.ts';

/** A question outside the key's own order. */
export type TieBreak = Exclude<Wanted, {kind: 'done'}>;

/** The question is asked when it is expected to make the best name this much more probable. */
export const worthAsking = 0.05;
/** Beside a way that has come to a name, a question of the key is asked when it is worth this much. */
export const worthAskingOnTheWay = 0.005;
/** The width is measured, where the key did not ask for it, when it is worth this much. */
export const worthMeasuring = 0.01;
/** From this probability on a name is said alone, and no more is asked while the key agrees. */
const settledFrom = 0.7;
/** Steps in millimetres over which widths are summed. */
const widthStepMm = 2;

/** What the key and the evidence have come to so far. */
type SoFar = {
	readonly observed: Observed;
	readonly ranking: readonly Ranked[];
	readonly leaves: readonly string[];
};

/** The width, where it was not measured yet and is expected to tell something. */
export function widthWorthIt(region: Region, {observed, ranking}: SoFar): TieBreak | undefined {
	if (observed.width !== undefined || observed.lost.includes('sides')) return undefined;
	return gainOfWidth(region, ranking) >= worthMeasuring ? {kind: 'width', question: 'width'} : undefined;
}

/**
 * The question worth most, or nothing: asked only when the ranking and the names the key led to
 * disagree or no name is likely, when its part is there, and when it is expected to settle something.
 */
export function tieBreak(region: Region, {observed, ranking, leaves}: SoFar): TieBreak | undefined {
	const best = ranking[0];
	if (!best || (best.probability >= settledFrom && leaves.includes(best.taxon))) return undefined;
	const [most] = Object.entries(region.key.characters)
		.filter(
			([id, {needs}]) => observed.seen[id] === undefined && !needs.some(part => observed.lost.includes(part)),
		)
		.map(([character]) => ({character, gain: gainOfLook(region, ranking, character)}))
		.sort((one, other) => other.gain - one.gain);
	if (!most || most.gain < worthAsking) return undefined;
	return {kind: 'look', question: most.character, character: most.character};
}

/** How much more probable the best name is expected to be once this character is seen. */
export function gainOfLook(region: Region, ranking: readonly Ranked[], character: string): number {
	const states = region.key.characters[character]?.states ?? [];
	const expected = states.reduce(
		(sum, state) =>
			sum +
			most(ranking, taxon => {
				const profile = region.profiles.taxa[taxon];
				return profile ? stateShare(region, profile, {character, state}) : 1 / states.length;
			}),
		0,
	);
	return expected - (ranking[0]?.probability ?? 0);
}

function gainOfWidth(region: Region, ranking: readonly Ranked[]): number {
	const [low, high] = region.key.possibleMm.width;
	let expected = 0;
	for (let mm = low; mm < high; mm += widthStepMm) {
		const sized = {kind: 'exact', mm: mm + widthStepMm / 2, uncertaintyMm: 1} as const;
		expected += most(
			ranking,
			taxon =>
				sizeDensity(region.profiles.taxa[taxon]?.widthMm, sized, region.key.possibleMm.width) * widthStepMm,
		);
	}
	return expected - (ranking[0]?.probability ?? 0);
}

/** The largest joint probability of a name and an answer. */
function most(ranking: readonly Ranked[], chance: (taxon: string) => number): number {
	return Math.max(...ranking.map(({taxon, probability}) => probability * chance(taxon)));
}

/** Whether an answer may be given to a tie-break, whatever order the key has. */
export function isAnswerTo(region: Region, asks: TieBreak, observed: Observed): boolean {
	if (asks.kind === 'width') return observed.width !== undefined;
	const state = observed.seen[asks.character];
	return (
		state === cantTell || (region.key.characters[asks.character]?.states ?? []).some(known => known === state)
	);
}
