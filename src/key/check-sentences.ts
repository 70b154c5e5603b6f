/** Faults in the sentences of a region: missing ones, and ones too long to be shown. */
import {join} from 'node:path';
import type {Written} from '../text/text.ts';
import {type Checkable, inKey, inProfiles} from './checkable.ts';
import type {Fault} from './yaml.ts';

/** Characters of a button's label with its letter and the space after it. */
const labelMost = 24 - 'A '.length;
/** Characters below a picture; the platform's limit for a caption. */
const captionMost = 1024;

const regionMessages = ['region-name', 'region-safety', 'region-emergency', 'region-tides'];

type Wanted = {readonly message: string; readonly fault: (what: string, todo: string) => Fault};

/** Every sentence that a language lacks or that is too long. */
export function checkSentences(checkable: Checkable): readonly Fault[] {
	const wanted = wantedMessages(checkable);
	return [...checkable.texts].flatMap(([language, messages]) => [
		...wanted
			.filter(({message}) => !messages.has(message))
			.map(({message, fault}) =>
				fault(`The sentence "${message}" is missing in "${language}".`, `Add it to ${language}.ftl.`),
			),
		...checkLengths(checkable, language, messages),
		...checkTwins(checkable, language, messages),
	]);
}

function wantedMessages(checkable: Checkable): readonly Wanted[] {
	const {key, profiles} = checkable.region;
	const ofKey = (path: readonly string[], messages: readonly string[]): readonly Wanted[] =>
		messages.map(message => ({message, fault: (what, todo) => inKey(checkable, path, {what, todo})}));
	return [
		...ofKey([], regionMessages),
		...Object.entries(key.characters).flatMap(([id, {states}]) =>
			ofKey(
				['characters', id],
				[
					`question-${id}`,
					`why-${id}`,
					`name-${id}`,
					...states.flatMap(state => [`option-${id}-${state}`, `seen-${id}-${state}`]),
				],
			),
		),
		...Object.entries(profiles.taxa).flatMap(([id, {leaveIt}]) =>
			[`taxon-${id}`, `fact-${id}`, ...(leaveIt ? [`leave-${id}`] : [])].map(message => ({
				message,
				fault: (what: string, todo: string) => inProfiles(checkable, ['taxa', id], {what, todo}),
			})),
		),
	];
}

function checkLengths(checkable: Checkable, language: string, messages: Written): readonly Fault[] {
	return Object.entries(checkable.region.key.characters).flatMap(([id, {states}]) => {
		const limited = [
			{message: `question-${id}`, most: captionMost},
			...states.map(state => ({message: `option-${id}-${state}`, most: labelMost})),
		];
		return limited
			.map(({message, most}) => ({message, most, length: [...(messages.get(message) ?? '')].length}))
			.filter(({most, length}) => length > most)
			.map(({message, most, length}) =>
				inText(checkable, {language, message}, `"${message}" has ${length} characters; ${most} fit.`),
			);
	});
}

/** Options that read alike cannot be told apart. */
function checkTwins(checkable: Checkable, language: string, messages: Written): readonly Fault[] {
	return Object.entries(checkable.region.key.characters).flatMap(([id, {states}]) => {
		const labels = states.map(state => ({
			message: `option-${id}-${state}`,
			label: messages.get(`option-${id}-${state}`),
		}));
		return labels
			.filter(
				({label}, index) => label !== undefined && labels.findIndex(other => other.label === label) < index,
			)
			.map(({message, label}) =>
				inText(checkable, {language, message}, `"${message}" says "${label}", as another option does.`),
			);
	});
}

function inText(
	{region, sentenceLine}: Checkable,
	{language, message}: {readonly language: string; readonly message: string},
	what: string,
): Fault {
	const line = sentenceLine?.(language, message) ?? 1;
	return {
		file: join(region.folder, `${language}.ftl`),
		line,
		what,
		todo: 'Say it shorter or in other words.',
	};
}
