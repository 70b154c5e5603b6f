import {expect, test} from 'vitest';
import {trailForAnother} from '../../src/find/another.ts';
import {askAt} from '../../src/find/ask.ts';
import {standAt} from '../../src/find/stand.ts';
import type {Trail} from '../../src/find/trail.ts';
import {type Place, pressed, step, talked} from '../support/walk.ts';
import {flow, upToTheBowl, upToTheResult} from './turns.ts';

function another(from: Place): Place {
	const trail = trailForAnother(flow, {trail: from.turn.trail, standing: from.turn.standing});
	return step(
		flow,
		{turn: {trail, turn: 1}, now: from.now, path: []},
		{name: 'begin', event: {kind: 'begin'}},
	);
}

function questionsOf(trail: Trail): readonly string[] {
	return trail.map(({question}) => question).toSorted();
}

test('another case of the walk keeps place and day, and is looked at from the beginning', () => {
	const next = another(talked(flow, ...upToTheResult, 'keep'));
	expect(questionsOf(next.turn.trail)).toEqual(['when', 'where']);
	expect(next.ask.question).toBe('egg-case');
	const asked: string[] = [];
	let place = next;
	for (const option of ['yes', 'empty', 'go-on', '1', 'go-on', 'soft']) {
		asked.push(place.ask.question);
		place = step(flow, place, pressed(place.turn, option));
	}
	expect(asked).toEqual(['egg-case', 'alive', 'photo', 'count', 'broken', 'condition']);
	expect(place.turn.standing.facts).toMatchObject({
		date: '2026-05-02',
		place: {kind: 'named', name: 'Gwithian'},
	});
});

test('another case out of a bowl is asked only for what is its own', () => {
	const soaking = talked(
		flow,
		'yes',
		'empty',
		{kind: 'photo', photo: 5},
		...upToTheBowl.slice(2),
		'two-hours',
	);
	const next = another(soaking);
	expect(next.ask.question).toBe('alive');
	const into = ['empty', 'go-on', '1', 'horns', 'go-on'].reduce(
		(place, option) => step(flow, place, pressed(place.turn, option)),
		next,
	);
	expect(into.ask.question).toBe('soaking');
	expect(into.turn.standing.facts.bowl).toEqual(soaking.turn.standing.facts.bowl);
	expect(into.turn.standing.facts).toMatchObject({photos: [], lost: ['horns'], count: 1});
});

test('a case added after the bowl was ready goes on to be measured', () => {
	const ready = talked(flow, ...upToTheBowl, 'two-hours', {kind: 'woke'}, 'softer');
	const next = another(ready);
	const into = ['empty', 'go-on', '1', 'go-on'].reduce(
		(place, option) => step(flow, place, pressed(place.turn, option)),
		next,
	);
	expect(into.ask.question).toBe('aprons');
	expect(into.turn.standing.facts.soak).toBe('soaked');
});

test('Back in another case goes to the question before and never loses what was carried', () => {
	for (const from of [
		talked(flow, ...upToTheBowl, 'two-hours'),
		talked(flow, ...upToTheBowl, 'two-hours', {kind: 'woke'}, 'softer'),
	]) {
		const next = another(from);
		const back = step(flow, next, pressed(next.turn, 'back'));
		expect(back.ask).toMatchObject({question: 'egg-case', canBack: false});
		expect(questionsOf(back.turn.trail)).toContain('where');
		expect(questionsOf(back.turn.trail)).toContain('soak');
	}
});

test('there is nothing to go back from where another case of the walk begins', () => {
	const next = another(talked(flow, ...upToTheResult, 'keep'));
	expect(askAt(flow, standAt(flow, next.turn.trail)).canBack).toBe(false);
});

test('nothing but the place and the day of the walk is carried from a case that went in no bowl', () => {
	const dry = talked(flow, ...upToTheBowl, 'unsoaked');
	expect(questionsOf(trailForAnother(flow, dry.turn))).toEqual(['when', 'where']);
});
