/** Low waters that are worked out, held against published ones, and what may not be worked out at all. */
import {beforeAll, expect, test} from 'vitest';
import {loadTides, type Tides} from '../../src/survey/tides.ts';

const minuteMs = 60_000;
let tides: Tides;

beforeAll(async () => {
	const loaded = await loadTides();
	if (!loaded) throw new Error('Expected the package neaps; it is not installed');
	tides = loaded;
}, 60_000);

test.each([
	// Regression values of neaps 0.8.0 run by itself, heights above the lowest astronomical tide: no official tide.
	{
		name: 'Newlyn',
		spot: {latitude: 50.103, longitude: -5.543},
		from: '2026-05-02T00:00Z',
		lows: [
			{at: '2026-05-02T11:28:33Z', levelM: 0.87},
			{at: '2026-05-02T23:48:14Z', levelM: 0.91},
		],
	},
	// Published by the makers of the sums: openwatersio/neaps at 2b904209, packages/neaps/test/__snapshots__,
	// stations noaa/8410140 and noaa/9414290, heights above mean lower low water.
	{
		name: 'Eastport',
		spot: {latitude: 44.9046, longitude: -66.9829},
		from: '2025-01-15T00:00Z',
		lows: [
			{at: '2025-01-15T10:34:16Z', levelM: 0.173},
			{at: '2025-01-15T23:03:38Z', levelM: -0.206},
		],
	},
	{
		name: 'San Francisco (Golden Gate)',
		spot: {latitude: 37.8063, longitude: -122.4659},
		from: '2025-01-15T00:00Z',
		lows: [
			{at: '2025-01-15T01:56:15Z', levelM: -0.342},
			{at: '2025-01-15T13:49:34Z', levelM: 0.872},
		],
	},
])(
	'low waters at $name come within a minute and a centimetre of the published ones',
	({name, spot, from, lows}) => {
		const gauge = tides.gaugeNear(spot, 5000);
		expect(gauge?.name).toBe(name);
		const begin = Date.parse(from);
		const found = gauge?.extremesBetween(begin, begin + 24 * 60 * minuteMs).filter(({isLow}) => isLow) ?? [];
		expect(found).toHaveLength(lows.length);
		for (const [index, {at, levelM}] of lows.entries()) {
			expect(Math.abs((found[index]?.at ?? 0) - Date.parse(at))).toBeLessThan(minuteMs);
			expect(Math.abs((found[index]?.levelM ?? 99) - levelM)).toBeLessThan(0.01);
		}
	},
);

test('a gauge comes with its distance and the words that its licence asks for', () => {
	const gauge = tides.gaugeNear({latitude: 50.203, longitude: -5.543}, 25_000);
	// A tenth of a degree of latitude: 11.1 km.
	expect(gauge?.distanceM).toBeGreaterThan(11_000);
	expect(gauge?.distanceM).toBeLessThan(11_300);
	expect(gauge?.attribution).toContain('https://doi.org/10.17882/109129');
	expect(gauge?.attribution).toContain('CC BY 4.0');
});

test('a gauge that is too far away is none', () => {
	const spot = {latitude: 50.203, longitude: -5.543};
	expect(tides.gaugeNear(spot, 11_000)).toBeUndefined();
	expect(tides.gaugeNear(spot, 11_300)?.name).toBe('Newlyn');
});

test('a gauge whose licence forbids selling is passed over for a free one further away, or for none', () => {
	// The gauges at Bénodet and Dundalk are CC BY-NC in that list; Concarneau's, 15.6 km on, is CC BY.
	expect(tides.gaugeNear({latitude: 47.88092, longitude: -4.11598}, 25_000)?.name).toBe('Concarneau');
	expect(tides.gaugeNear({latitude: 54.008, longitude: -6.385}, 25_000)).toBeUndefined();
});

test('a place where only the current is known has no tide from it', () => {
	// Point Bonita has a current alone; the nearest tide is 4.2 km away.
	expect(tides.gaugeNear({latitude: 37.8045, longitude: -122.63883}, 1000)).toBeUndefined();
	expect(tides.gaugeNear({latitude: 37.8045, longitude: -122.63883}, 5000)?.name).toBe('San Francisco Bar');
});
