import {expect, test} from 'vitest';
import {measuredBy} from '../../src/find/print.ts';
import type {MeasuredPhoto} from '../../src/find/proposal.ts';
import {goingOn, talked} from '../support/walk.ts';
import {photoOf, toTheLength} from './trays.ts';
import {asked, flow} from './turns.ts';

const two = photoOf([{mm: 60}, {mm: 62}], {reference: 'sheet'});
const one: MeasuredPhoto = {
	kind: 'proposed',
	proposal: {
		...{photo: 7, hash: 'a'.repeat(64), reference: 'sheet'},
		lengths: [
			{
				mm: 60,
				uncertaintyMm: 0.6,
				line: [
					[0, 0],
					[0, 9],
				],
			},
		],
	},
};
const shown = (outcome: MeasuredPhoto, print: Parameters<typeof measuredBy>[1]) =>
	talked(flow, ...toTheLength, {kind: 'measured', outcome: measuredBy(outcome, print)});

test('the first photo on a measuring sheet asks about its print before its lengths are shown', () => {
	const place = shown(one, undefined);
	expect(place.ask).toMatchObject({kind: 'print', question: 'length'});
	expect(place.ask.shows).toBeUndefined();
	const yes = goingOn(flow, place, 'print-exact');
	expect(yes.ask).toMatchObject({kind: 'proposal', text: {values: {mm: 60, plusMinus: 0.6}}});
	expect(yes.turn.effects).toContainEqual({kind: 'print', print: 'exact'});
	expect(goingOn(flow, yes, 'right').turn.standing.facts.length).toMatchObject({
		mm: 60,
		uncertaintyMm: 0.6,
	});
});

test('a print that cannot be checked makes lengths less sure by what a printer takes off to fit a page', () => {
	const place = goingOn(flow, shown(one, undefined), 'print-unsure', 'right');
	// 0.6 + 6 % of 60.
	expect(place.turn.standing.facts.length).toMatchObject({mm: 60, uncertaintyMm: 4.2});
	const tray = goingOn(flow, shown(two, undefined), 'print-unsure', 'tick-1', 'one-kind');
	expect(tray.turn.standing.facts.length).toMatchObject({mm: 60, uncertaintyMm: 4.3});
});

test('a sheet of another size is not measured by, and the length can be written', () => {
	for (const outcome of [one, two]) {
		const wrong = goingOn(flow, shown(outcome, undefined), 'print-wrong');
		expect(asked(wrong.turn.effects)).toMatchObject({kind: 'length', lead: {message: 'said-print-wrong'}});
		expect(goingOn(flow, wrong, '66 mm').turn.standing.facts.length).toMatchObject({method: 'typed'});
	}
});

test('what was said of a sheet is not asked again', () => {
	expect(shown(one, 'exact').ask.kind).toBe('proposal');
	expect(shown(one, 'unsure').ask).toMatchObject({text: {values: {plusMinus: 4.2}}});
	expect(shown(two, 'exact').ask.kind).toBe('tray');
	const wrong = measuredBy(two, 'wrong');
	expect(wrong).toEqual({kind: 'declined', why: 'sheet-wrong'});
});

test('nobody is asked about the print of what nobody prints', () => {
	const outcome = photoOf([{mm: 60}, {mm: 62}]);
	expect(measuredBy(outcome, undefined)).toBe(outcome);
});
