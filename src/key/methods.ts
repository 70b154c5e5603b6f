/** Ways of naming the same find, to be compared: ours, three simple ones, and the best that is possible. */
import {type Ranked, rank, somethingElse} from './evidence.ts';
import {exactRanking, firstOf} from './exact-ranking.ts';
import {answersOf, type SimulatedFind, sharesOf} from './model.ts';
import {type Named, nameSpecimen} from './name.ts';
import type {Observed} from './observed.ts';
import {oneOf, type Pick} from './random.ts';
import type {Region} from './region.ts';
import {spreadOf} from './size-share.ts';
import {compileKey} from './states.ts';
import {followStrictly, type StrictWay} from './strict-key.ts';

/** What every method made of one find. */
export type Compared = {
	readonly ours: Named;
	/** The first name said by each method, by its name. */
	readonly firsts: Readonly<Record<MethodName, string>>;
	/** The ranking by everything the finder could answer, under the model itself. */
	readonly best: readonly Ranked[];
	readonly strict: StrictWay;
};

/** The methods; the two in the middle show how far questions not asked and how far our weighing limit us. */
export const methodNames = [
	'ours',
	'sameQuestions',
	'allAnswers',
	'best',
	'strict',
	'nearest',
	'commonest',
] as const;
/** One of the methods. */
export type MethodName = (typeof methodNames)[number];

/** Builds what names a find in every way; `pick` is for guesses alone. */
export function comparer(region: Region, pick: Pick): (find: SimulatedFind) => Compared {
	const machine = compileKey(region);
	const exactly = exactRanking(region);
	const commonest = sharesOf(region).toSorted(([, one], [, other]) => other - one)[0]?.[0] ?? somethingElse;
	return find => {
		const answers = answersOf(find);
		const ours = nameSpecimen(region, machine, answers);
		const best = exactly(answers, find.isDry);
		const strict = followStrictly(region, answers, pick);
		return {
			...{ours, best, strict},
			firsts: {
				ours: firstSaid(ours),
				sameQuestions: firstOf(exactly(ours.observed, find.isDry)),
				allAnswers: firstOf(rank(region, answers)),
				best: firstOf(best),
				strict: strict.name,
				nearest: nearestByLength(region, answers, pick),
				commonest,
			},
		};
	};
}

/** The name said first; something else where nothing is named. */
export function firstSaid({conclusion}: Named): string {
	return conclusion.names[0]?.taxon ?? somethingElse;
}

/** All that is said: the names, those possible beside them, and something else where nothing is named or it is given a word. */
export function allSaid({conclusion}: Named): readonly string[] {
	const {names, also, elsePossible} = conclusion;
	const taxa = [...names, ...also].map(({taxon}) => taxon);
	return names.length === 0 || elsePossible ? [...taxa, somethingElse] : taxa;
}

/** The taxon whose middle length is nearest; a guess where nothing was measured. */
export function nearestByLength(region: Region, {length}: Observed, pick: Pick): string {
	const taxa = Object.entries(region.profiles.taxa);
	if (!length || length.kind === 'unknown') return oneOf(pick, taxa)[0];
	const [nearest] = taxa
		.flatMap(([id, {lengthMm}]) =>
			lengthMm ? [{id, away: Math.abs(spreadOf(lengthMm).mean - length.mm)}] : [],
		)
		.sort((one, other) => one.away - other.away);
	return nearest?.id ?? somethingElse;
}
