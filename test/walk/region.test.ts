/** Every region walks its whole conversation by itself, in every language. */
import {join} from 'node:path';
import {describe, expect, test} from 'vitest';
import type {FindEvent} from '../../src/find/events.ts';
import {readShelves} from '../../src/program.ts';
import {answerMost, screenFaults} from '../support/screens.ts';
import {
	everyPlace,
	keyQuestionsBehind,
	nameOf,
	type Place,
	pressed,
	step,
	storedStanding,
} from '../support/walk.ts';

const shelves = readShelves(join(import.meta.dirname, '../../flows'), 'british-isles');

/** What no question waits for, or not every one. */
const interruptions: readonly FindEvent[] = [
	{kind: 'text', text: 'we had ice cream & <b>chips</b>'},
	{kind: 'photo', photo: 99},
	{kind: 'pin', latitude: 50.1, longitude: -5.5, accuracyM: 12},
	...['sticker', 'voice', 'video', 'file', 'heic', 'large', 'other', 'edited'].map(
		what => ({kind: 'odd', what}) as const,
	),
];

test('there is a region to walk', () => {
	expect(shelves.size).toBeGreaterThan(0);
});

// A walk is thousands of turns, and machines differ.
describe.each([...shelves])('%s', {timeout: 60_000}, (_, shelf) => {
	const {flow, texts} = shelf;
	const places = everyPlace(flow);
	const isEnd = ({ask}: Place) => ask.kind === 'end';

	test('every step, every character and every question of the key is reached', () => {
		const asked = new Set(places.map(({ask}) => ask.question));
		const steps = Object.entries(flow.around.steps).filter(([, {kind}]) => kind !== 'key');
		expect(steps.map(([id, {says}]) => says ?? id).filter(id => !asked.has(id))).toEqual([]);
		expect(Object.keys(flow.region.key.characters).filter(id => !asked.has(id))).toEqual([]);
		const behind = new Set(places.flatMap(place => keyQuestionsBehind(flow, place)));
		expect(Object.keys(flow.region.key.questions).filter(id => !behind.has(id))).toEqual([]);
	});

	test('every question leads on, and a find is over only where it ends', () => {
		for (const place of places.filter(one => !isEnd(one))) {
			const leads = place.ways.map(({after}) => nameOf(after));
			expect(leads.filter(name => name !== nameOf(place)).length, said(place)).toBeGreaterThan(0);
		}
		expect(new Set(places.filter(isEnd).map(({ask}) => ask.question)).size).toBeGreaterThan(2);
	});

	test('every screen is within the limits, in every language', () => {
		expect(places.flatMap(({turn, now}) => screenFaults(shelf, turn, now))).toEqual([]);
		for (const language of texts.languages) {
			expect(texts.in(language).say('not-yours').length).toBeLessThanOrEqual(answerMost);
		}
	});

	test('after each answer Back returns to the very same question and trail', () => {
		for (const place of places) {
			for (const {answer, after} of place.ways) {
				// What the clockwork did, and what is kept, is not taken back by a button.
				if (answer.name === 'woke' || answer.name === 'told' || !after.ask.canBack) continue;
				const back = step(flow, after, pressed(after.turn, 'back'));
				const where = said(after);
				expect(back.turn.trail, where).toEqual(place.turn.trail);
				expect(nameOf(back), where).toBe(nameOf(place));
				expect(back.turn.turn, where).toBeGreaterThan(place.turn.turn);
			}
		}
	});

	test('Back to the beginning leaves the trail empty', () => {
		for (const place of oncePerQuestion(places).filter(({ask}) => ask.canBack)) {
			let at = place;
			for (let presses = 0; at.ask.canBack && presses <= place.turn.trail.length; presses++) {
				at = step(flow, at, pressed(at.turn, 'back'));
			}
			expect(at.turn.trail, said(place)).toEqual([]);
			expect(at.ask.question, said(place)).toBe(flow.around.begins);
		}
	});

	test('nothing that a person sends at any question is met with silence', () => {
		for (const place of oncePerQuestion(places)) {
			for (const event of interruptions) {
				const after = step(flow, place, {name: JSON.stringify(event), event});
				const shown = after.turn.effects.filter(({kind}) => ['ask', 'refresh', 'say'].includes(kind));
				expect(shown.length, said(after)).toBeGreaterThan(0);
				expect(screenFaults(shelf, after.turn, after.now), said(after)).toEqual([]);
			}
		}
	});

	test('every answer that can be changed is put again, and Back leaves it as it was', () => {
		const changeable = places.filter(({ask}) => ask.kind === 'result').slice(0, 12);
		const changed = new Set<string>();
		for (const place of changeable) {
			const menu = step(flow, place, pressed(place.turn, 'correct'));
			expect(screenFaults(shelf, menu.turn, menu.now)).toEqual([]);
			for (const id of menuOf(menu.turn.effects)) {
				const open = step(flow, place, pressed(place.turn, id));
				changed.add(open.ask.question);
				expect(open.ask.question, said(open)).toBe(id.replace('fix-', ''));
				expect(screenFaults(shelf, open.turn, open.now)).toEqual([]);
				const back = step(flow, open, pressed(open.turn, 'back'));
				expect(back.turn.trail, said(open)).toEqual(place.turn.trail);
			}
		}
		expect(changed.size).toBeGreaterThan(5);
	});

	test('a trail that was stored and read again stands where it stood', () => {
		for (const {turn, path} of places) {
			expect(storedStanding(flow, turn.trail), path.join(' > ')).toEqual(turn.standing);
		}
	});
});

function said({path}: Place): string {
	return path.join(' > ');
}

function oncePerQuestion(places: readonly Place[]): readonly Place[] {
	return [...new Map(places.map(place => [nameOf(place), place])).values()];
}

function menuOf(effects: Place['turn']['effects']): readonly string[] {
	return effects.flatMap(effect => (effect.kind === 'ask' ? effect.ask.options.map(({id}) => id) : []));
}
