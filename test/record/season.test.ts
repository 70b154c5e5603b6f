import {expect, test} from 'vitest';
import {seasonOf} from '../../src/record/season.ts';
import {inTurn, numbered, recordWith, told} from './for-export.ts';
import {placed} from './made-up.ts';

const at = Date.UTC(2026, 4, 6);

test('a year is counted by month and place, hidden places as their squares, and no egg cases apart', async () => {
	const records = [
		told(numbered(recordWith({count: 3}), 1)),
		told(numbered(recordWith({count: 2}), 2)),
		told(numbered(recordWith({count: 1, date: '2026-11-30'}, {coarseM: 10_000}), 3)),
		told(numbered(recordWith({count: 1, place: placed('Sandy Cove')}), 4)),
		told(numbered(recordWith({count: 9}, {verification: {outcome: 'not-an-egg-case', at}}), 5)),
	];
	const season = await seasonOf(inTurn(records), 2026);
	expect(season).toMatchObject({year: 2026, notEggCases: 1, region: 'testland'});
	expect(season.totals.all).toEqual({finds: 4, cases: 7});
	expect(season.months).toEqual([0, 0, 0, 0, 6, 0, 0, 0, 0, 0, 1, 0]);
	expect(season.places).toEqual([
		{kind: 'point', latitude: 50.119892, longitude: -5.546958, count: 5},
		// The corners of SW 43 as the ring of the square tells them.
		{
			kind: 'square',
			south: expect.closeTo(50.08, 1),
			north: expect.closeTo(50.17, 1),
			west: expect.closeTo(-5.64, 1),
			east: expect.closeTo(-5.49, 1),
			count: 1,
		},
	]);
});

test('very many places are gathered to about a kilometre, and no case is lost', async () => {
	const records = Array.from({length: 500}, (_, index) => {
		const place = placed(`50.${100_000 + index}, -5.500000`);
		return told(numbered(recordWith({count: 1, place}), index % 100));
	});
	const {places} = await seasonOf(inTurn(records), 2026);
	expect(places.length).toBeLessThan(5);
	expect(places.reduce((sum, {count}) => sum + count, 0)).toBe(500);
});
