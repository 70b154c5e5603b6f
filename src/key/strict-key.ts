/** The key followed as one reads a printed one: a single way, and a guess where nothing decides. */
import {cantTell, intervalOf, type Observed} from './observed.ts';
import {oneOf, type Pick} from './random.ts';
import type {Question, Region} from './region.ts';

/** The one name a single way leads to, and what was looked at or measured across on it. */
export type StrictWay = {readonly name: string; readonly asked: readonly string[]};

/**
 * Follows one way. Where a state cannot be told, a size could not be measured or lies across a border,
 * one of the ways still open is guessed. A lower bound is read like any other size, as a printed key
 * would have it. What cannot be seen since its part is lost does not count as asked.
 */
export function followStrictly({key}: Region, answers: Observed, pick: Pick): StrictWay {
	const asked = new Set<string>();
	let id = key.begins;
	for (let question = key.questions[id]; question; question = key.questions[id]) {
		const name = 'look' in question ? question.look : question.measure;
		const needs = key.characters[name]?.needs ?? [];
		if (name !== 'length' && !needs.some(part => answers.lost.includes(part))) asked.add(name);
		id = oneOf(pick, waysOf(question, answers));
	}
	return {name: id, asked: [...asked]};
}

function waysOf(question: Question, answers: Observed): readonly string[] {
	if ('look' in question) {
		const state = answers.seen[question.look] ?? cantTell;
		const ways = Object.entries(question.options);
		return ways.filter(([way]) => state === cantTell || way === state).map(([, {leads}]) => leads);
	}
	const sized = (question.measure === 'length' ? answers.length : answers.width) ?? {kind: 'unknown'};
	const [low, high] = intervalOf(sized.kind === 'at-least' ? {...sized, kind: 'exact'} : sized);
	return question.bands
		.filter(({fromMm = 0, belowMm = Number.POSITIVE_INFINITY}) => high >= fromMm && low < belowMm)
		.map(({leads}) => leads);
}
