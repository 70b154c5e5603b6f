/** What a proof assumes and how its tables are to be read, said in sentences. */
import type {Region} from '../key/region.ts';
import {dryFactor, largeApronFactor, sidesFactor, smallApronFactor} from '../key/shrink.ts';
import {
	beyondRange,
	cantTellShare,
	errorMm,
	errorShare,
	placedShare,
	recordedUncertaintyMm,
	sizeCorrelation,
	type Wear,
	wearLevels,
	wears,
} from '../key/wear.ts';

/** How the tables are to be read. */
export const readings: readonly string[] = [
	'*Named first*: the first name said is the truth. For a find of something else it is right to name nothing.',
	'*The truth is said*: it is the one name, stands in the shortlist, or among the less likely names said beside one name. For a find of something else: nothing is named, or something else is given a word beside the names.',
	'*Best possible*: Bayes’ rule under the very model that drew the finds, with all answers. In the long run nothing that has only the answers is right more often; its own calibration error is what chance leaves.',
	'*Strict key*: one way through the key; where nothing decides (a state that cannot be told, a part lost, no size, a size across a border) one of the open ways is guessed. A size that is only a lower bound is read at its face.',
	'*Nearest middle length*: the taxon whose published mean, or middle of the range, is nearest; a guess where nothing was measured.',
	'*Questions*: all that is asked after the length, the width among them. What cannot be seen since its part is lost is not asked by us and not counted for the strict key.',
	'*Our questions, weighed by the model* has the answers that we asked for and knows the model; *all answers, weighed our way* has every answer and our own weighing. The first lacks what was not asked, the second what our weighing leaves out.',
	'Expected calibration error: ten bins of equal width by the probability of the best name, the distance of the mean probability from the share right, weighed by the number of finds. Brier score: the sum over all names of the squared distance from 1 for the truth and 0 for the others, in the mean over finds.',
];

/** What the model assumes of a region's finds. */
export function assumptions({profiles}: Region): readonly string[] {
	const flagged = Object.values(profiles.taxa).flatMap(({notUsed}) => notUsed).length;
	const lacking = Object.values(profiles.taxa).filter(({lengthMm}) => !lengthMm).length;
	return [
		'Taxa come as often as the region’s weights say, something else among them. Of something else every state and every possible size is alike likely. Each find lies in one of the areas, all alike often, where each taxon is as frequent as its coast says; ' +
			`${hundred(placedShare)} in 100 finders say where (ours).`,
		`Sizes: a normal curve with the published mean and spread, or the middle and a quarter of the range, cut off ${hundred(beyondRange)} in 100 of the range beyond its ends; any possible size where nothing is published (${lacking} taxa). Length and width of a case go together with a correlation of ${sizeCorrelation} (ours).`,
		`Suspect published values (${flagged} are listed under \`notUsed\`) are not drawn: the profiles' ranges rest on other authors there, and the model takes them as they are.`,
		`Wear (ours; judged, gordon2016 says what breaks first: horns, then fibres, aprons fray): ${wears.map(wearWords).join('; ')}. Parts are lost apart from one another, whatever the taxon.`,
		`Answers: ${hundred(cantTellShare)} in 100 states cannot be told though the part is there; slips come as often as the key's \`error\` of each character says, to each other state alike.`,
		`A case measured dry shows ${span(dryFactor)} of its sizes (ours, no figure was published). Without its aprons it shows ${span(largeApronFactor)} of its length where the profile says that they are large (a quarter to two fifths less without both, half of that without one; capsules.md), otherwise ${span(smallApronFactor)} (ours); without its sides ${span(sidesFactor)} of its width (ours). All these count as lower bounds, and the ranking knows these same figures; so the proof says nothing about whether they are right.`,
		`A ruler errs by ${errorMm} mm and by ${hundred(errorShare)} in 100 of the size, both as spreads of normal curves (ours); whole millimetres are typed and recorded as ${recordedUncertaintyMm} mm sure, as in a conversation.`,
	];
}

function wearWords(wear: Wear): string {
	const {share, lost, dry, unmeasured} = wearLevels[wear];
	const parts = Object.entries(lost).map(([part, chance]) => `${part} ${hundred(chance)}`);
	return `${wear}: ${hundred(share)} in 100 finds, lost in 100: ${parts.join(', ')}; measured dry ${hundred(dry)}, not measured ${hundred(unmeasured)}`;
}

function hundred(share: number): string {
	return String(Number((share * 100).toFixed(1)));
}

function span([from, to]: readonly [number, number]): string {
	return `${from} to ${to}`;
}
