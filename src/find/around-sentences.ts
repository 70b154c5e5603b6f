/** Which sentences each step around the key is said with. */
import type {LengthRead} from '../capsule/length.ts';
import type {PlaceRead} from '../place/place.ts';
import {goOn, type Step} from './around.ts';
import type {DateRead} from './date.ts';
import {declinedWhys} from './proposal.ts';

/** A sentence that is needed, and whether it stands on a button. */
export type Needed = {readonly message: string; readonly isLabel: boolean};

type Why<Read extends {readonly kind: string}> = Extract<
	Read,
	{readonly kind: 'refused'; why: string}
>['why'];

// Records rather than lists: a reason added to a reader and forgotten here does not compile.
const lengthWhys: Readonly<Record<Why<LengthRead>, true>> = {
	'not-a-number': true,
	'too-short': true,
	'too-long': true,
	range: true,
	several: true,
};
const placeWhys: Readonly<Record<Why<PlaceRead>, true>> = {
	'odd-digits': true,
	'uneven-digits': true,
	'no-such-square': true,
	'too-many-digits': true,
	'off-the-earth': true,
	'half-a-pair': true,
	'too-long': true,
	empty: true,
};
const dateWhys: Readonly<Record<Why<DateRead>, true>> = {'not-a-date': true, future: true, 'too-old': true};

/** Sentences of the questions around the key that belong to no one step. */
export const sharedSentences: readonly Needed[] = [
	...labels('option-back', 'option-why', 'option-cant-tell'),
	...plain('question-correct', 'question-note', 'name-note', 'help-note', 'help-buttons', 'help-pin-later'),
	...labels('option-lettered'),
	...plain('picture-part', 'picture-choices-2', 'picture-choices-3', 'picture-choices-4'),
	...plain('picture-measuring-length', 'picture-measuring-width'),
	...plain('picture-taxon', 'picture-taxon-worn', 'picture-stand-in', 'picture-lost-horns'),
	...plain('picture-lost-sides', 'picture-lost-surface', 'picture-lost-aprons'),
	...plain('picture-parts', 'picture-photo', 'picture-soak', 'picture-aprons', 'drawn-horn', 'drawn-apron'),
	...plain('drawn-capsule', 'drawn-blade', 'drawn-string', 'drawn-skate', 'drawn-catshark', 'drawn-soak'),
	...plain(
		'drawn-photo-top',
		'drawn-photo-under',
		'drawn-aprons-both',
		'drawn-aprons-one',
		'drawn-aprons-none',
	),
	...plain('card-photo', 'card-photo-scaled', 'card-as-measured', 'card-as-measured-all', 'card-usual'),
	...plain('card-usual-all', 'card-bars', 'card-mm', 'card-range', 'card-range-none', 'card-yours'),
	...plain('card-yours-least', 'card-more', 'card-lost', 'card-found', 'card-found-day', 'card-spot'),
	...plain('card-square-grid', 'card-square-degrees', 'card-alone', 'card-share', 'card-alt'),
	...plain('card-alt-shortlist', 'card-alt-line'),
	...plain('measuring-from', 'measuring-to', 'measuring-across', 'measuring-to-side'),
	...plain('measuring-flat', 'measuring-left-out'),
	...plain('chosen-text', 'said-moved-on', 'said-mended', 'said-nothing-kept', 'said-photo-added'),
];

/** Every sentence that a step is asked, explained, answered and corrected with. */
export function sentencesOf(id: string, step: Step): readonly Needed[] {
	const says = step.says ?? id;
	const offered = (...options: readonly string[]) =>
		labels(...options.map(option => `option-${says}-${option}`));
	const asked = plain(`question-${says}`);
	const explained = [...asked, ...plain(`why-${says}`)];
	const correctable = [...explained, ...plain(`name-${says}`)];
	switch (step.kind) {
		case 'choice':
			return [...correctable, ...offered(...Object.keys(step.options))];
		case 'notice':
			return [...asked, ...offered(goOn)];
		case 'photos':
			return [
				...correctable,
				...plain('question-photos-so-far', 'help-photos'),
				...labels('option-photo-skip', 'option-photo-go-on'),
			];
		case 'place':
			return [
				...correctable,
				...labels('option-here', 'option-photo-place'),
				...plain(`question-${says}-photo`, 'said-photo-told', 'chosen-spot', ...helpFor('place', placeWhys)),
			];
		case 'date':
			return [
				...correctable,
				...offered('today', 'yesterday'),
				...labels('option-photo-date'),
				...plain('chosen-date', ...helpFor('date', dateWhys)),
			];
		case 'count':
			return [...correctable, ...labels('option-count'), ...plain('help-count', 'help-count-many')];
		case 'parts':
			return [
				...correctable,
				...labels(...step.parts.map(part => `option-part-${part}`)),
				...labels('option-parts-whole', 'option-parts-done'),
				...plain('chosen-parts'),
			];
		case 'soak':
			return [...explained, ...offered('two-hours', 'overnight', 'already', 'unsoaked')];
		case 'morning':
			return [...explained, ...labels('option-hour')];
		case 'soaking':
			return [...explained, ...offered(goOn, 'another'), ...plain('help-soaking')];
		case 'softness':
			return [...explained, ...offered('softer', 'stiff', 'tomorrow')];
		case 'length':
			// A length is asked for by the id of its step, and in other words when the case is dry or has grown.
			return [...sizeSentences(id), ...plain(`question-${id}-dry`, `question-${id}-grown`, `name-${says}`)];
		case 'key':
			return [...sizeSentences('width'), ...plain('name-width')];
		case 'result':
			return [...asked, ...offered('keep', 'correct', 'throw')];
		case 'end':
			return [
				...asked,
				...labels(
					'option-end-fresh',
					...(step.outcome === 'kept' ? ['option-end-walk', 'option-end-another-bowl'] : []),
				),
			];
		default:
			return never(step);
	}
}

function sizeSentences(question: string): readonly Needed[] {
	return [
		...plain(`question-${question}`, `why-${question}`, 'question-unit', 'chosen-length'),
		...labels('option-cant-measure', 'option-unit-mm', 'option-unit-cm', 'option-unit-in'),
		...plain(...helpFor('length', lengthWhys), 'said-measuring', 'chosen-photo', 'question-measured'),
		...plain('question-which-line', 'picture-measured', ...declinedWhys.map(why => `help-photo-${why}`)),
		...labels('option-measured-right', 'option-measured-not-quite'),
		...labels('option-measured-line-a', 'option-measured-line-b'),
		...plain('question-print', 'why-print', 'said-print-unsure', 'said-print-wrong'),
		...labels('option-print-exact', 'option-print-wrong', 'option-print-unsure'),
	];
}

/** Sentences about several cases on one photo. */
export const traySentences: readonly Needed[] = [
	...plain('question-tray-photo', 'said-measuring-tray', 'question-tray', 'question-tray-one'),
	...plain('question-tray-empty', 'question-tray-spread', 'question-tray-wrong-line', 'question-tray-left'),
	...plain('why-tray', 'picture-tray', 'chosen-tray-set', 'chosen-tray-out', 'chosen-tray-left'),
	...plain('said-tray-set', 'help-tray-none', 'help-tray-numbers', 'help-tray-photo'),
	...labels('option-tray-number', 'option-tray-group-long', 'option-tray-group-broad'),
	...labels('option-tray-group-all', 'option-tray-one-kind', 'option-tray-not-quite', 'option-tray-leave'),
	...labels('option-tray-leave-rest', 'option-tray-take-one', 'option-tray-leave-one'),
	...labels('option-tray-never-mind', 'option-tray-spread-yes', 'option-tray-again'),
	...labels('option-tray-all-right'),
];

function helpFor(what: string, whys: Readonly<Record<string, true>>): readonly string[] {
	return Object.keys(whys).map(why => `help-${what}-${why}`);
}

function plain(...messages: readonly string[]): readonly Needed[] {
	return messages.map(message => ({message, isLabel: false}));
}

function labels(...messages: readonly string[]): readonly Needed[] {
	return messages.map(message => ({message, isLabel: true}));
}

function never(step: never): never {
	throw new Error(`Expected a known kind of step; got ${JSON.stringify(step)}`);
}
