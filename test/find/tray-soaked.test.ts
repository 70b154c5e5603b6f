import {expect, test} from 'vitest';
import {standAt} from '../../src/find/stand.ts';
import {trailOfRest} from '../../src/find/tray-turn.ts';
import {goingOn, talked} from '../support/walk.ts';
import {photoOf, trayOf} from './trays.ts';
import {flow} from './turns.ts';

/** Three cases on a photo before anything is known of them, as /tray begins; two of them are one kind. */
function chosenDry() {
	const tray = trayOf([{mm: 60}, {mm: 62}, {mm: 40}]);
	const trail = [{question: 'tray', answer: {kind: 'tray', tray, origin: 'tray'}, at: 1}] as const;
	const standing = standAt(flow, trail);
	const start = talked(flow);
	const shown = goingOn(flow, {...start, turn: {trail, turn: 1, standing, effects: []}}, {kind: 'begin'});
	return goingOn(
		flow,
		shown,
		'tick-1',
		'tick-2',
		'one-kind',
		'yes',
		'empty',
		'go-on',
		'Gwithian',
		'today',
		'go-on',
	);
}

const soaked = ['dry', 'two-hours', {kind: 'woke'}, 'softer', 'both'] as const;

test('cases that were measured dry and have lain in water since are asked for their length again', () => {
	const grown = goingOn(flow, chosenDry(), ...soaked);
	expect(grown.turn.standing.facts).toMatchObject({count: 2, length: undefined});
	expect(grown.ask).toMatchObject({kind: 'length', text: {message: 'question-length-grown'}});
	const written = goingOn(flow, grown, '70 mm');
	expect(written.turn.standing.facts).toMatchObject({count: 2, length: {mm: 70, method: 'typed'}});
});

test('cases that are not soaked are as long as their photo says', () => {
	const unsoaked = goingOn(flow, chosenDry(), 'dry', 'unsoaked', 'both');
	expect(unsoaked.turn.standing.facts).toMatchObject({count: 2, length: {mm: 61}});
	expect(unsoaked.ask.kind).toBe('look');
});

test('a second photo after the water counts, and what was left on the first goes on, to be measured anew', () => {
	const outcome = photoOf([{mm: 70}, {mm: 72}], {photo: 8});
	const again = goingOn(flow, chosenDry(), ...soaked, {kind: 'measured', outcome}, 'group-all', 'one-kind');
	expect(again.turn.standing.facts).toMatchObject({count: 2, length: {mm: 71}});
	const kept = goingOn(flow, again, 'broad', 'lines', 'blade', 'cant-tell', 'keep').turn;
	const begun = kept.effects.find(effect => effect.kind === 'begin');
	expect(begun).toMatchObject({rest: {photo: 7, cases: [{number: 3}], isOutgrown: true}});
	const rest = begun?.kind === 'begin' && begun.how === 'rest' ? begun.rest : undefined;
	if (!rest) throw new Error('Expected what was left to go on; nothing does');
	const trail = trailOfRest(flow, {trail: kept.trail, standing: kept.standing, rest}, {photo: 9, now: 1});
	const next = {...again, turn: {trail, turn: 1, standing: standAt(flow, trail), effects: []}};
	const one = goingOn(
		flow,
		next,
		{kind: 'begin'},
		'one-kind',
		'yes',
		'empty',
		'go-on',
		'go-on',
		'soft',
		'both',
	);
	expect(one.ask).toMatchObject({kind: 'length', text: {message: 'question-length-grown'}});
});
