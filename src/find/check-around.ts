/** The check of the questions around the key: ways, sentences and labels, by file and line. */
import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {parts} from '../key/check-ids.ts';
import {type Fault, type Read, tryYaml} from '../key/yaml.ts';
import type {Texts} from '../text/text.ts';
import {type Around, aroundSchema, waysOf} from './around.ts';
import {type Needed, sentencesOf, sharedSentences, traySentences} from './around-sentences.ts';

/** Characters of a button's label, so that two fit side by side on a phone. */
const labelMost = 24;
/** Characters below a picture; the platform's limit for a caption. */
const captionMost = 1024;
/** Stand-ins for what the program fills in, as long as they get. */
const samples = {
	a: 'x',
	about: 'yes',
	at: 'SW 46512 30487',
	b: 'x',
	c: 'x',
	count: 6,
	d: 'x',
	date: '2 May 2026',
	due: '22:15',
	heard: 'x',
	hour: '10:00',
	label: 'x'.repeat(22),
	latitude: '50.123',
	least: 20,
	letter: 'D',
	longitude: '-5.534',
	lost: 'x',
	marked: 'yes',
	mm: '123.5',
	most: 300,
	name: 'x',
	names: 'x',
	number: 1234,
	percent: '99',
	photo: 'yes',
	place: 'x',
	plusMinus: 1,
	otherMm: 70,
	width: 40,
	widthPlusMinus: 1,
	has: 'both',
	first: '12',
	high: 12,
	instead: 'length',
	list: '12: 123.5, '.repeat(20),
	low: 10,
	numbers: '1, 2, 3',
	picked: 'yes',
	rest: 'yes',
	unsure: 2,
	range: 'x',
	result: '',
	second: 'x',
	seen: 'x',
	since: '20:15',
	shown: 'yes',
	square: 'SW43',
	text: 'x',
	typed: '123.5',
	uncertainty: 50,
	words: 'x',
	worth: 'memory',
};

type Checkable = {
	readonly folder: string;
	readonly around: Around;
	readonly lineOf: (path: readonly (string | number)[]) => number;
	readonly texts: Texts;
};

type Remark = {readonly what: string; readonly todo: string};

/**
 * How many steps stand around the key, and every fault of `around.yaml` and of the sentences all regions share; `known`
 * is that file where it was read before.
 */
export function checkAround(
	folder: string,
	texts: Texts,
	known?: Read<Around>,
): {readonly steps: number; readonly faults: readonly Fault[]} {
	const tried = known
		? {kind: 'read' as const, read: known}
		: tryYaml(join(folder, 'around.yaml'), aroundSchema);
	if (tried.kind === 'faults') return {steps: 0, faults: tried.faults};
	const checkable = {folder, around: tried.read.value, lineOf: tried.read.lineOf, texts};
	return {
		steps: Object.keys(checkable.around.steps).length,
		faults: [
			...checkReached(checkable),
			...checkParts(checkable),
			...texts.languages.flatMap(language => checkLanguage(checkable, language)),
		],
	};
}

function checkReached(checkable: Checkable): readonly Fault[] {
	const {begins, steps} = checkable.around;
	const reached = new Set<string>();
	const open = [begins];
	for (let id = open.pop(); id !== undefined; id = open.pop()) {
		const step = steps[id];
		if (!step || reached.has(id)) continue;
		reached.add(id);
		open.push(...waysOf(step).map(({leads}) => leads));
	}
	return Object.keys(steps)
		.filter(id => !reached.has(id))
		.map(id =>
			atStep(checkable, [id], {
				what: `No way leads to the step "${id}".`,
				todo: 'Lead an option to it, or take it out.',
			}),
		);
}

function checkParts(checkable: Checkable): readonly Fault[] {
	const known: readonly string[] = parts;
	return Object.entries(checkable.around.steps).flatMap(([id, step]) =>
		step.kind === 'parts'
			? step.parts
					.filter(part => !known.includes(part))
					.map(part =>
						atStep(checkable, [id, 'parts'], {
							what: `The step "${id}" offers "${part}", which is no part that can be lost.`,
							todo: `Use ${known.map(name => `"${name}"`).join(', ')}.`,
						}),
					)
			: [],
	);
}

function checkLanguage(checkable: Checkable, language: string): readonly Fault[] {
	const say = checkable.texts.in(language);
	return neededBy(checkable.around).flatMap(({path, needed}) => {
		if (say.has(needed.message)) return checkSaid(checkable, language, needed);
		const what = `The sentence "${needed.message}" is missing in "${language}".`;
		return [atStep(checkable, path, {what, todo: `Add it to ${language}.ftl.`})];
	});
}

/** Each sentence once, with the first step that needs it. */
function neededBy({steps}: Around): readonly {readonly path: readonly string[]; readonly needed: Needed}[] {
	const all = [
		...[...sharedSentences, ...traySentences].map(needed => ({path: [], needed})),
		...Object.entries(steps).flatMap(([id, step]) =>
			sentencesOf(id, step).map(needed => ({path: [id], needed})),
		),
	];
	const met = new Set<string>();
	return all.filter(({needed: {message}}) => {
		const isNew = !met.has(message);
		met.add(message);
		return isNew;
	});
}

function checkSaid(checkable: Checkable, language: string, needed: Needed): readonly Fault[] {
	const {message, isLabel} = needed;
	const at = (remark: Remark): readonly Fault[] => {
		const file = join(checkable.folder, `${language}.ftl`);
		return [{file, line: sentenceLine(file, message), ...remark}];
	};
	const said = tryToSay(checkable.texts, language, message);
	if (said.kind === 'refused') {
		return at({what: said.why, todo: 'Use the names that the same sentence has in another language.'});
	}
	const most = isLabel ? labelMost : captionMost;
	const length = [...said.text].length;
	if (length <= most) return [];
	return at({what: `"${message}" has ${length} characters; ${most} fit.`, todo: 'Say it shorter.'});
}

type Said = {readonly kind: 'said'; readonly text: string} | {readonly kind: 'refused'; readonly why: string};

function tryToSay(texts: Texts, language: string, message: string): Said {
	try {
		return {kind: 'said', text: texts.in(language).say(message, samples)};
	} catch (error) {
		return {kind: 'refused', why: `${error instanceof Error ? error.message : String(error)}.`};
	}
}

function atStep({folder, lineOf}: Checkable, path: readonly string[], remark: Remark): Fault {
	return {file: join(folder, 'around.yaml'), line: lineOf(['steps', ...path]), ...remark};
}

function sentenceLine(file: string, message: string): number {
	const lines = readFileSync(file, 'utf8').split('\n');
	return (
		Math.max(
			0,
			lines.findIndex(line => line.startsWith(`${message} =`)),
		) + 1
	);
}
