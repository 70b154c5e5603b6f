/** A specimen walked through the key by plain recursion, apart from the compiled machine. */
import type {Key, Measure, Question, Taxon} from './region.ts';

/** What a specimen shows; what is not given cannot be told and leaves every way open. */
export type Specimen = {
	readonly seen: Readonly<Record<string, string>>;
	readonly lengthMm?: number;
	readonly widthMm?: number;
	/** Parts broken off, in the words of the key's `needs`. */
	readonly lost?: readonly string[];
};

/** The taxa a specimen comes to and the characters it is looked at for, each once. */
export type Walk = {readonly leaves: readonly string[]; readonly looked: readonly string[]};

/** Follows every way that a specimen leaves open; a question met twice on one way ends that way. */
export function walkKey(key: Key, specimen: Specimen): Walk {
	const leaves = new Set<string>();
	const looked = new Set<string>();
	const walk = (id: string, trail: readonly string[]): void => {
		const question = key.questions[id];
		if (!question) {
			leaves.add(id);
			return;
		}
		if (trail.includes(id)) return;
		if ('look' in question && !isHidden(key, question.look, specimen)) looked.add(question.look);
		for (const leads of waysOut(key, question, specimen)) walk(leads, [...trail, id]);
	};
	walk(key.begins, []);
	return {leaves: [...leaves], looked: [...looked]};
}

/** Specimens of a taxon at the small end, the middle and the large end of its sizes, each in its commonest states. */
export function typicalSpecimens(taxon: Taxon): {
	readonly small: Specimen;
	readonly middle: Specimen;
	readonly large: Specimen;
} {
	const seen: Record<string, string> = {};
	for (const [character, shares] of Object.entries(taxon.states)) {
		const [commonest] = Object.entries(shares).sort(([, one], [, other]) => other - one);
		if (commonest) seen[character] = commonest[0];
	}
	const sized = (end: (measure: Measure) => number): Specimen => ({
		seen,
		...(taxon.lengthMm ? {lengthMm: end(taxon.lengthMm)} : {}),
		...(taxon.widthMm ? {widthMm: end(taxon.widthMm)} : {}),
	});
	return {small: sized(({range}) => range[0]), middle: sized(middleOf), large: sized(({range}) => range[1])};
}

function middleOf({mean, range}: Measure): number {
	return mean ?? (range[0] + range[1]) / 2;
}

function waysOut(key: Key, question: Question, specimen: Specimen): readonly string[] {
	if ('look' in question) {
		const state = isHidden(key, question.look, specimen) ? undefined : specimen.seen[question.look];
		const ways = Object.entries(question.options);
		return ways.filter(([way]) => state === undefined || way === state).map(([, {leads}]) => leads);
	}
	const sizeMm = question.measure === 'length' ? specimen.lengthMm : specimen.widthMm;
	return question.bands
		.filter(({fromMm = 0, belowMm = Number.POSITIVE_INFINITY}) =>
			sizeMm === undefined ? true : sizeMm >= fromMm && sizeMm < belowMm,
		)
		.map(({leads}) => leads);
}

function isHidden(key: Key, character: string, {lost = []}: Specimen): boolean {
	return key.characters[character]?.needs.some(part => lost.includes(part)) ?? false;
}
