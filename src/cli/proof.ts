/** A proof: many simulated finds of a region, named in every way, and what came of it. */
import type {Ranked} from '../key/evidence.ts';
import {allSaid, type Compared, comparer, type MethodName} from '../key/methods.ts';
import {drawFind, type SimulatedFind} from '../key/model.ts';
import {byShare, seeded} from '../key/random.ts';
import type {Region} from '../key/region.ts';
import {type Wear, wearLevels, wears} from '../key/wear.ts';
import {
	type Bin,
	binsOf,
	brierOf,
	type Claim,
	type Confusion,
	calibrationError,
	confusionOf,
	meanOf,
	ninetyFifth,
} from './proof-figures.ts';

/** How many finds to draw, and from which seed. */
export type ProofSize = {readonly finds: number; readonly seed: number};

/** Finds of one level of wear, or all of them. */
export type Level = 'all' | Wear;

/** What came of the finds of one level. */
export type Figures = {
	readonly level: Level;
	readonly count: number;
	/** The share of finds that each method named first. */
	readonly firsts: Readonly<Record<MethodName, number>>;
	/** The share of finds with the truth in what is said. */
	readonly said: number;
	/** The share of finds for which one name is said, and how often that name is right. */
	readonly alone: {readonly share: number; readonly right: number};
	readonly shortlist: {readonly mean: number; readonly most: number};
	/** Finds whose truth is not said, by what is said instead, as shares of all finds. */
	readonly missed: {readonly alone: number; readonly shortlist: number; readonly unknown: number};
	/** How many names are said in all, less likely ones among them. */
	readonly names: {readonly mean: number; readonly most: number};
	readonly bins: readonly Bin[];
	/** The expected calibration error; that of the best possible is a check of the model itself and near 0. */
	readonly calibrationError: {readonly ours: number; readonly best: number};
	readonly brier: {readonly ours: number; readonly best: number};
	readonly asked: Asked;
	readonly strictAsked: Asked;
	/** The share of finds for which we ask more than the strict key and one question more. */
	readonly asksMore: number;
	readonly confusion: readonly Confusion[];
};

/** How many questions: the mean, and what 95 in 100 finds do not exceed. */
export type Asked = {readonly mean: number; readonly most: number};

/** A whole proof. */
export type Proof = {readonly region: Region; readonly size: ProofSize; readonly levels: readonly Figures[]};

/** One find, reduced to what the figures need. */
type Trial = {
	readonly truth: string;
	readonly wear: Wear;
	readonly firsts: Readonly<Record<MethodName, string>>;
	readonly isSaid: boolean;
	readonly names: number;
	readonly isAlone: boolean;
	readonly allNames: number;
	readonly claim: Claim;
	readonly bestClaim: Claim;
	readonly brier: {readonly ours: number; readonly best: number};
	readonly asked: number;
	readonly strictAsked: number;
};

/** Draws and names the finds; the same region, number and seed give the same proof. */
export function prove(region: Region, size: ProofSize): Proof {
	const pick = seeded(size.seed);
	// Guesses have a run of their own, so that the finds stay the same whatever is guessed.
	const compare = comparer(region, seeded(size.seed + 1));
	const mix = wears.map(wear => [wear, wearLevels[wear].share] as const);
	const trials = Array.from({length: size.finds}, () => {
		const drawn = byShare(pick, mix);
		const find = drawFind(region, pick, wears.find(wear => wear === drawn) ?? 'intact');
		return trialOf(find, compare(find));
	});
	const levels = [
		figuresOf('all', trials),
		...wears.map(wear =>
			figuresOf(
				wear,
				trials.filter(trial => trial.wear === wear),
			),
		),
	];
	return {region, size, levels};
}

function trialOf(find: SimulatedFind, {ours, firsts, best, strict}: Compared): Trial {
	const truth = find.taxon;
	const {sure, names, also} = ours.conclusion;
	return {
		truth,
		wear: find.wear,
		firsts,
		isSaid: allSaid(ours).includes(truth),
		names: names.length,
		allNames: names.length + also.length,
		isAlone: sure === 'very-likely' || sure === 'likely',
		claim: claimOf(ours.ranking, truth),
		bestClaim: claimOf(best, truth),
		brier: {ours: brierOf(ours.ranking, truth), best: brierOf(best, truth)},
		asked: ours.asked.length,
		strictAsked: strict.asked.length,
	};
}

function claimOf([top]: readonly Ranked[], truth: string): Claim {
	return {probability: top?.probability ?? 0, isRight: top?.taxon === truth};
}

function figuresOf(level: Level, trials: readonly Trial[]): Figures {
	const shareOf = (holds: (trial: Trial) => boolean, among = trials) =>
		meanOf(among.map(trial => (holds(trial) ? 1 : 0)));
	const firsts = (method: MethodName) => shareOf(({firsts, truth}) => firsts[method] === truth);
	const alone = trials.filter(({isAlone}) => isAlone);
	const lists = trials.filter(({isAlone, names}) => !isAlone && names > 0).map(({names}) => names);
	const bins = binsOf(trials.map(({claim}) => claim));
	const asked = (of: (trial: Trial) => number): Asked => ({
		mean: meanOf(trials.map(of)),
		most: ninetyFifth(trials.map(of)),
	});
	return {
		level,
		count: trials.length,
		firsts: {
			ours: firsts('ours'),
			sameQuestions: firsts('sameQuestions'),
			allAnswers: firsts('allAnswers'),
			best: firsts('best'),
			strict: firsts('strict'),
			nearest: firsts('nearest'),
			commonest: firsts('commonest'),
		},
		said: shareOf(({isSaid}) => isSaid),
		alone: {
			share: alone.length / Math.max(1, trials.length),
			right: shareOf(({firsts, truth}) => firsts.ours === truth, alone),
		},
		shortlist: {mean: meanOf(lists), most: ninetyFifth(lists)},
		missed: {
			alone: shareOf(({isAlone, isSaid}) => isAlone && !isSaid),
			shortlist: shareOf(({isAlone, isSaid, names}) => !isAlone && names > 0 && !isSaid),
			unknown: shareOf(({isSaid, names}) => names === 0 && !isSaid),
		},
		names: {
			mean: meanOf(trials.map(({allNames}) => allNames)),
			most: ninetyFifth(trials.map(({allNames}) => allNames)),
		},
		bins,
		calibrationError: {
			ours: calibrationError(bins),
			best: calibrationError(binsOf(trials.map(({bestClaim}) => bestClaim))),
		},
		brier: {
			ours: meanOf(trials.map(({brier}) => brier.ours)),
			best: meanOf(trials.map(({brier}) => brier.best)),
		},
		asked: asked(trial => trial.asked),
		strictAsked: asked(trial => trial.strictAsked),
		asksMore: shareOf(trial => trial.asked > trial.strictAsked + 1),
		confusion: confusionOf(trials.map(({truth, firsts}) => ({truth, first: firsts.ours}))),
	};
}
