import {cpSync, readFileSync, writeFileSync} from 'node:fs';
import {basename, join} from 'node:path';
import {expect, test} from 'vitest';
import {sentencesOf, sharedSentences} from '../../src/find/around-sentences.ts';
import {askAt} from '../../src/find/ask.ts';
import {checkAround} from '../../src/find/check-around.ts';
import {correctMenu} from '../../src/find/correct.ts';
import {noFacts} from '../../src/find/facts.ts';
import {type Flow, readFlow} from '../../src/find/flow.ts';
import type {Ask} from '../../src/find/question.ts';
import type {Standing} from '../../src/find/stand.ts';
import type {Answer} from '../../src/find/trail.ts';
import {readTexts} from '../../src/text/text.ts';
import {ownFolder} from '../support/folder.ts';

const flows = join(import.meta.dirname, '../../flows');

type Seed = {
	readonly in: 'around.yaml' | 'en.ftl';
	readonly find: string | RegExp;
	readonly put: string;
};

/** The faults that these changes bring into the shared questions, as `file:line: what`. */
function faultsOf(...seeds: readonly Seed[]): readonly string[] {
	const folder = ownFolder('around');
	for (const name of ['around.yaml', 'en.ftl']) {
		cpSync(join(flows, name), join(folder, name), {recursive: true});
	}
	for (const {in: name, find, put} of seeds) {
		const whole = readFileSync(join(folder, name), 'utf8');
		const seeded = whole.replace(find, put);
		if (seeded === whole) throw new Error(`Expected ${String(find)} in ${name}`);
		writeFileSync(join(folder, name), seeded);
	}
	const known = new Set(checkAround(flows, readTexts([flows])).faults.map(({what}) => what));
	return checkAround(folder, readTexts([folder]))
		.faults.filter(({what}) => !known.has(what))
		.map(({file, line, what}) => `${basename(file)}:${line}: ${what}`);
}

/** The line of the first text that matches, as an editor counts. */
function lineIn(file: string, start: string): number {
	const lines = readFileSync(join(flows, file), 'utf8').split('\n');
	return lines.findIndex(line => line.startsWith(start)) + 1;
}

test('the questions around the key have no fault', () => {
	const {steps, faults} = checkAround(flows, readTexts([flows]));
	expect(faults).toEqual([]);
	expect(steps).toBeGreaterThan(20);
});

test('a missing question is reported at the step that asks it', () => {
	const faults = faultsOf({in: 'en.ftl', find: /^question-alive =.*\n/m, put: ''});
	const line = lineIn('around.yaml', '  alive:');
	expect(faults).toEqual([`around.yaml:${line}: The sentence "question-alive" is missing in "en".`]);
});

test.each([
	'option-alive-attached',
	'why-alive',
	'name-alive',
	'option-soak-overnight',
	'option-end-another-bowl',
	'question-length-dry',
	'question-length-grown',
	'question-width',
	'help-date-future',
	'option-back',
])('the missing sentence "%s" is noticed', message => {
	const faults = faultsOf({in: 'en.ftl', find: new RegExp(`^${message} =.*\\n`, 'm'), put: ''});
	expect(faults).toEqual([expect.stringContaining(`The sentence "${message}" is missing in "en"`)]);
});

test('a label of 25 characters is reported at its sentence, one of 24 is not', () => {
	const long = {
		in: 'en.ftl',
		find: /^option-alive-empty =.*$/m,
		put: `option-alive-empty = ${'x'.repeat(25)}`,
	};
	const line = lineIn('en.ftl', 'option-alive-empty =');
	expect(faultsOf({...long, in: 'en.ftl'})).toEqual([
		`en.ftl:${line}: "option-alive-empty" has 25 characters; 24 fit.`,
	]);
	expect(faultsOf({...long, in: 'en.ftl', put: `option-alive-empty = ${'x'.repeat(24)}`})).toEqual([]);
});

test('a label is measured with the mark that a pressed button bears', () => {
	const put = `[yes] ✓ ${'x'.repeat(23)}`;
	const faults = faultsOf({in: 'en.ftl', find: '[yes] ✓ Side edges torn off', put});
	expect(faults).toEqual([expect.stringContaining('"option-part-sides" has 25 characters; 24 fit.')]);
});

test('a value that the program does not know is reported at its sentence', () => {
	const faults = faultsOf({in: 'en.ftl', find: /^option-hour =.*$/m, put: 'option-hour = { $houre }'});
	expect(faults).toEqual([expect.stringMatching(/^en\.ftl:\d+: Sentence "option-hour" in en: .*houre/)]);
});

test('a picture that is not drawn is reported at its step', () => {
	const faults = faultsOf({in: 'around.yaml', find: 'picture: soak', put: 'picture: basin'});
	expect(faults).toEqual([expect.stringMatching(/^around\.yaml:\d+: .*"parts"\|"photo"\|"soak"\|"aprons"/)]);
});

test('a step that no way leads to is reported', () => {
	const faults = faultsOf({
		in: 'around.yaml',
		find: 'cantTell: {leads: other}',
		put: 'cantTell: {leads: weed}',
	});
	expect(faults).toEqual([
		`around.yaml:${lineIn('around.yaml', '  other:')}: No way leads to the step "other".`,
	]);
});

test('a part that the key does not know is reported', () => {
	const faults = faultsOf(
		{in: 'around.yaml', find: '[horns, sides, surface]', put: '[horns, sides, fins]'},
		{in: 'en.ftl', find: 'option-part-surface', put: 'option-part-fins'},
	);
	expect(faults).toEqual([expect.stringContaining('The step "broken" offers "fins", which is no part')]);
});

test('a way to a step that is not there is reported by line, and nothing else is', () => {
	const faults = faultsOf({in: 'around.yaml', find: 'inside: {leads: leave', put: 'inside: {leads: leaf'});
	expect(faults).toEqual([expect.stringMatching(/^around\.yaml:\d+: .*leads to "leaf", which is no step/)]);
});

test('broken YAML is reported by line', () => {
	const faults = faultsOf({in: 'around.yaml', find: 'begins: egg-case', put: 'begins: [egg-case'});
	expect(faults[0]).toMatch(/^around\.yaml:\d+: /);
});

test('every sentence that a step can be asked with is on the list of the check', () => {
	const flow = readFlow(flows, 'british-isles');
	for (const [id, step] of Object.entries(flow.around.steps)) {
		if (step.kind === 'key') continue;
		const known = new Set([...sharedSentences, ...sentencesOf(id, step)].map(({message}) => message));
		const used = asksOf(flow, id).flatMap(({text, why, options}) => [
			text.message,
			...(why === undefined ? [] : [why]),
			...options.map(({label}) => label.message),
		]);
		expect(used.length, id).toBeGreaterThan(0);
		expect(
			used.filter(message => !known.has(message)),
			`sentences of "${id}"`,
		).toEqual([]);
	}
});

test('every button of every step is measured as a label', () => {
	const flow = readFlow(flows, 'british-isles');
	for (const [id, step] of Object.entries(flow.around.steps)) {
		if (step.kind === 'key') continue;
		const needed = [...sharedSentences, ...sentencesOf(id, step)];
		const isLabel = new Map(needed.map(one => [one.message, one.isLabel]));
		const buttons = asksOf(flow, id)
			.filter(({kind}) => kind !== 'correct')
			.flatMap(({options}) => options.map(({label}) => label.message));
		expect(buttons.filter(message => isLabel.get(message) !== true)).toEqual([]);
	}
});

test('the explanations of measuring bring a picture that is drawn', () => {
	const flow = readFlow(flows, 'british-isles');
	const {picture} = askAt(flow, standing({kind: 'width', id: 'width'}, undefined));
	expect(picture).toEqual({kind: 'measuring', which: 'width'});
});

/** A step's questions in the ways it can be asked: nothing heard, something heard, asked to correct it. */
function asksOf(flow: Flow, id: string): readonly Ask[] {
	const step = flow.around.steps[id];
	if (!step) throw new Error(`Expected a step "${id}"`);
	const at = {kind: 'step', id, step} as const;
	const heard: readonly (Answer | undefined)[] = [
		undefined,
		{kind: 'parts', parts: ['horns']},
		{kind: 'number', typed: '6', units: ['mm', 'cm', 'in']},
	];
	const fresh = heard.map(answer => standing(at, answer));
	const wet = standing(at, undefined);
	const all: readonly Standing[] = [
		...fresh,
		{...wet, facts: {...noFacts, photos: [1], soak: 'soaked', aprons: 'both'}},
		{...wet, facts: {...noFacts, place: {kind: 'named', name: 'the north beach'}}},
	];
	return [...all.map(one => askAt(flow, one)), correctMenu(flow, wet)];
}

function standing(at: Standing['at'], answer: Answer | undefined): Standing {
	return {
		at,
		facts: noFacts,
		lastHere: answer ? {question: at.id, answer, at: 0} : undefined,
		answered: [at.id],
		found: undefined,
		trayed: undefined,
		isReopened: false,
		hasPast: true,
	};
}
