/** A key as boxes and arrows with their words, before anything is placed or drawn. */
import type {Say} from '../text/text.ts';
import {arrowsOf} from './arrows.ts';
import type {Question, Region} from './region.ts';

/** One box: a question with what it asks, or a taxon with its two names. */
export type Box = {
	readonly id: string;
	readonly kind: 'question' | 'taxon';
	readonly title: string;
	readonly text: string;
};

/** One arrow, labelled with the option or the sizes that take it. */
export type Way = {readonly from: string; readonly to: string; readonly label: string};

/** A key as boxes and the ways between them, before it is drawn. */
export type Diagram = {
	readonly region: string;
	readonly begins: string;
	readonly boxes: readonly Box[];
	readonly ways: readonly Way[];
};

/** A question is cut to about this many characters. */
const textMost = 84;

/** The boxes and arrows of a region's key in one language; `say` holds the shared sentences too. */
export function diagramOf(region: Region, say: Say): Diagram {
	const {key, profiles} = region;
	const questions = Object.entries(key.questions);
	return {
		region: say.say('region-name'),
		begins: key.begins,
		boxes: [
			...questions.map(([id, question]) => ({
				id,
				kind: 'question' as const,
				title: id,
				text: shortQuestion(say.say(`question-${'look' in question ? question.look : question.measure}`)),
			})),
			...Object.entries(profiles.taxa).map(([id, {scientificName}]) => ({
				id,
				kind: 'taxon' as const,
				title: say.say(`taxon-${id}`),
				text: scientificName,
			})),
		],
		ways: questions.flatMap(([id, question]) => {
			const labels = labelsOf(question, say);
			return arrowsOf(id, question).map(({leads}, index) => ({
				from: id,
				to: leads,
				label: labels[index] ?? '',
			}));
		}),
	};
}

/** The last question in a text, cut at a word when it is long. */
export function shortQuestion(text: string): string {
	const sentences = text.split(/(?<=[.?])\s+/);
	const asked = sentences.findLast(sentence => sentence.endsWith('?')) ?? sentences.at(-1) ?? text;
	if (asked.length <= textMost) return asked;
	return `${asked.slice(0, textMost).replace(/[,;]?\s+\S*$/, '')}…`;
}

function labelsOf(question: Question, say: Say): readonly string[] {
	if ('look' in question) {
		return Object.keys(question.options).map(state => say.say(`option-${question.look}-${state}`));
	}
	return question.bands.map(({fromMm, belowMm}) => {
		if (fromMm === undefined) return `below ${belowMm} mm`;
		return belowMm === undefined ? `${fromMm} mm or more` : `${fromMm} to below ${belowMm} mm`;
	});
}
