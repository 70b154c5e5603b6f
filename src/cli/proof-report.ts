/** A proof in words and tables, the same every time it is made anew. */
import {somethingElse} from '../key/evidence.ts';
import type {MethodName} from '../key/methods.ts';
import type {Region} from '../key/region.ts';
import type {Asked, Figures, Level, Proof} from './proof.ts';
import {assumptions, readings} from './proof-assumptions.ts';
import {inHundred, inHundredths, inThousands, targetsOf} from './proof-targets.ts';

/** What each level is called. */
export const levelWords: Readonly<Record<Level, string>> = {
	all: 'all finds',
	intact: 'intact',
	worn: 'worn',
	broken: 'badly broken',
};

/** What each method is called. */
export const methodWords: Readonly<Record<MethodName, string>> = {
	ours: 'ours',
	sameQuestions: 'our questions, weighed by the model',
	allAnswers: 'all answers, weighed our way',
	best: 'best possible',
	strict: 'strict key',
	nearest: 'nearest middle length',
	commonest: 'always the commonest kind',
};

/** The report as Markdown; `name` is what the region is called. */
export function reportOf(proof: Proof, name: string): string {
	const {levels, size, region} = proof;
	return [
		`# How far names can be trusted: ${name}`,
		`Made by \`npm run key -- prove ${region.id} --finds ${size.finds} --seed ${size.seed} --write\` from region version ${region.version}. Nobody has seen these finds: they are drawn by chance from the region's own profiles. So this shows how well the questions and the weighing work if the profiles are right, and nothing about whether they are. \`proof.svg\` draws how sure we are beside how often we are right, and what is named first.`,
		'## Targets',
		tableOf(
			['target', 'came to', ''],
			targetsOf(levels).map(({aim, came, isMet}) => [aim, came, isMet ? 'met' : '**not met**']),
		),
		'## Named first, in 100 finds',
		firstsTable(levels, ['ours', 'best', 'strict', 'nearest', 'commonest']),
		'## What is said',
		saidTable(levels),
		'## How sure, and how often right',
		...levels.flatMap(reliability),
		'## Questions',
		questionsTable(levels),
		'## What limits it',
		firstsTable(levels, ['ours', 'sameQuestions', 'allAnswers', 'best']),
		limits(levels),
		'## What is taken for what',
		...levels.flatMap(figures => confusion(proof, figures)),
		'## Published figures that are not used',
		notUsed(region),
		'## What is assumed',
		listOf(assumptions(region)),
		'## How to read this',
		listOf(readings),
		'',
	]
		.join('\n\n')
		.replace(/\n+$/, '\n');
}

function firstsTable(levels: readonly Figures[], methods: readonly MethodName[]): string {
	return tableOf(
		['', 'finds', ...methods.map(method => methodWords[method])],
		levels.map(({level, count, firsts}) => [
			levelWords[level],
			`${count}`,
			...methods.map(method => inHundred(firsts[method])),
		]),
	);
}

function saidTable(levels: readonly Figures[]): string {
	return tableOf(
		[
			'',
			'the truth is said',
			'one name alone',
			'of these right',
			'names in a shortlist',
			'95 in 100 have at most',
			'names said in all',
			'95 in 100 have at most',
		],
		levels.map(({level, said, alone, shortlist, names}) => [
			levelWords[level],
			inHundred(said),
			inHundred(alone.share),
			inHundred(alone.right),
			inHundredths(shortlist.mean),
			`${shortlist.most}`,
			inHundredths(names.mean),
			`${names.most}`,
		]),
	);
}

function reliability({level, bins, calibrationError, brier}: Figures): readonly string[] {
	return [
		`**${levelWords[level]}**: expected calibration error ${inThousands(calibrationError.ours)} (best possible ${inThousands(calibrationError.best)}), Brier score over all names ${inThousands(brier.ours)} (best possible ${inThousands(brier.best)})`,
		tableOf(
			['probability of the best name', 'finds', 'mean', 'right'],
			bins.map(({from, to, count, meanProbability, shareRight}) => [
				`${from.toFixed(1)} to ${to.toFixed(1)}`,
				`${count}`,
				count === 0 ? '–' : inThousands(meanProbability),
				count === 0 ? '–' : inThousands(shareRight),
			]),
		),
	];
}

function questionsTable(levels: readonly Figures[]): string {
	const cells = ({mean, most}: Asked) => [inHundredths(mean), `${most}`];
	return tableOf(
		[
			'',
			'ours, mean',
			'95 in 100',
			'strict key, mean',
			'95 in 100',
			'finds with more than one question more',
		],
		levels.map(({level, asked, strictAsked, asksMore}) => [
			levelWords[level],
			...cells(asked),
			...cells(strictAsked),
			inHundred(asksMore),
		]),
	);
}

function limits(levels: readonly Figures[]): string {
	return tableOf(
		['truth not said, in 100 finds', 'another name alone', 'not in the shortlist', 'said to be unknown'],
		levels.map(({level, missed}) => [
			levelWords[level],
			inHundred(missed.alone),
			inHundred(missed.shortlist),
			inHundred(missed.unknown),
		]),
	);
}

function confusion({region}: Proof, {level, confusion}: Figures): readonly string[] {
	const nameOf = (taxon: string) =>
		taxon === somethingElse ? 'something else' : `*${region.profiles.taxa[taxon]?.scientificName ?? taxon}*`;
	return [
		`**${levelWords[level]}**`,
		tableOf(
			['truth', 'finds', 'named first', 'wrong names, most frequent first'],
			confusion.map(({truth, count, shareRight, wrong}) => [
				nameOf(truth),
				`${count}`,
				inHundred(shareRight),
				wrong.map(([taxon, times]) => `${nameOf(taxon)} ${times}`).join(', ') || '–',
			]),
		),
	];
}

function notUsed({profiles}: Region): string {
	const rows = Object.values(profiles.taxa).flatMap(({scientificName, notUsed, lengthMm, widthMm}) =>
		notUsed.map(({what, range, mean, why, source}) => {
			const used = what === 'length' ? lengthMm : widthMm;
			return [
				`*${scientificName}*`,
				`${what} ${range.join(' to ')}, mean ${mean} (${source})`,
				why,
				used ? `${used.range.join(' to ')} (${used.source})` : 'any possible size',
			];
		}),
	);
	return rows.length === 0
		? 'None is flagged.'
		: tableOf(['taxon', 'as printed, mm', 'why it is not used', 'used instead, mm'], rows);
}

/** Rows of a Markdown table under their heads. */
export function tableOf(heads: readonly string[], rows: readonly (readonly string[])[]): string {
	const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
	return [line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n');
}

function listOf(points: readonly string[]): string {
	return points.map(point => `- ${point}`).join('\n');
}
