import {join} from 'node:path';
import {expect, test} from 'vitest';
import {keyboardOf} from '../../src/bot/screen.ts';
import {readShelves} from '../../src/program.ts';
import {projectRoot} from '../../src/settings.ts';
import {photoOf, toTheLength} from '../find/trays.ts';
import {screenFaults} from '../support/screens.ts';
import {goingOn, talked} from '../support/walk.ts';

const shelf = readShelves(join(projectRoot(), 'flows'), 'british-isles').get('british-isles');
if (!shelf) throw new Error('Expected the region of these tests under flows/; it is not there');
const {flow, texts} = shelf;
const shown = (count: number) => {
	const cases = Array.from({length: count}, (_, index) => ({
		mm: 60.4 + (index % 9),
		shape: index % 2 === 0 ? ('long' as const) : ('broad' as const),
	}));
	const outcome = photoOf(cases, {
		unsure: [
			[1, 1],
			[2, 2],
		],
	});
	return talked(flow, ...toTheLength, {kind: 'measured', outcome});
};

test.each([2, 5, 12, 30])('all that is said about a tray of %i fits, in every language', count => {
	const place = shown(count);
	const places = [
		place,
		goingOn(flow, place, 'group-long'),
		goingOn(flow, place, 'group-long', 'one-kind'),
		goingOn(flow, place, 'not-quite'),
		goingOn(flow, place, 'leave'),
	];
	for (const {turn, now} of places) expect(screenFaults(shelf, turn, now)).toEqual([]);
});

test('the print of a sheet is asked about within the limits', () => {
	const outcome = photoOf([{mm: 60}, {mm: 61}], {reference: 'sheet', print: 'unasked'});
	const {turn, now} = talked(flow, ...toTheLength, {kind: 'measured', outcome});
	expect(screenFaults(shelf, turn, now)).toEqual([]);
});

test('numbers stand side by side in even rows between the suggested groups and the ways on', () => {
	const reader = {say: texts.in('en'), zone: 'Europe/London', now: 0};
	const {ask} = shown(7);
	const rows = keyboardOf(ask, {find: 1, turn: 1, reader, head: undefined, region: 'british-isles'});
	expect(rows.map(row => row.map(({text}) => text))).toEqual([
		['Long ones: 1, 3, 5, 7'],
		['Broad ones: 2, 4, 6'],
		['1', '2', '3', '4'],
		['5', '6', '7'],
		['These are one kind'],
		['Not quite: a line is off'],
		['Leave them all'],
		['Back', 'Why?'],
	]);
});
