import {expect, test} from 'vitest';
import {type Counted, totalsOf} from '../../src/record/totals.ts';
import {inTurn} from './for-export.ts';

const find: Counted = {
	name: 'Testa minor',
	where: 'SW 4 3',
	day: '2026-05-02',
	status: 'unverified',
	cases: 3,
};

test('a season is added up by kind, place, month and status', async () => {
	const totals = await totalsOf([
		find,
		{...find, name: 'Theca alba', cases: 1},
		{...find, day: '2026-04-30', status: 'agreed', where: 'Sandy Cove'},
	]);
	expect(totals).toEqual({
		all: {finds: 3, cases: 7},
		species: {'Testa minor': {finds: 2, cases: 6}, 'Theca alba': {finds: 1, cases: 1}},
		places: {'SW 4 3': {finds: 2, cases: 4}, 'Sandy Cove': {finds: 1, cases: 3}},
		months: {'2026-04': {finds: 1, cases: 3}, '2026-05': {finds: 2, cases: 4}},
		statuses: {agreed: {finds: 1, cases: 3}, unverified: {finds: 2, cases: 4}},
	});
	expect(Object.keys(totals.months)).toEqual(['2026-04', '2026-05']);
});

test('a find without a count is a find and no case', async () => {
	expect((await totalsOf([{...find, cases: undefined}])).all).toEqual({finds: 1, cases: 0});
});

test('what has no name or no place is counted as such', async () => {
	const totals = await totalsOf(inTurn([{...find, name: undefined, where: undefined}]));
	expect(totals.species).toEqual({none: {finds: 1, cases: 3}});
	expect(totals.places).toEqual({'not told': {finds: 1, cases: 3}});
});

test('every way of counting comes to the same sum', async () => {
	const months = ['2026-03', '2026-04', '2026-05'];
	const many = Array.from({length: 200}, (_, index) => ({
		...find,
		name: `Testa ${index % 7}`,
		where: `SW ${index % 5}`,
		day: `${months[index % 3]}-01`,
		cases: index % 4,
	}));
	const {all, ...ways} = await totalsOf(many);
	for (const way of Object.values(ways)) {
		const finds = Object.values(way).reduce((sum, total) => sum + total.finds, 0);
		const cases = Object.values(way).reduce((sum, total) => sum + total.cases, 0);
		expect({finds, cases}).toEqual(all);
	}
});

test('nothing found is nothing', async () => {
	expect(await totalsOf([])).toEqual({
		all: {finds: 0, cases: 0},
		species: {},
		places: {},
		months: {},
		statuses: {},
	});
});
