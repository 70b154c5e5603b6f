import {join} from 'node:path';
import {expect, test} from 'vitest';
import {areasAt, coastShare, covers, isUnusual} from '../../src/key/coast.ts';
import {rank} from '../../src/key/evidence.ts';
import {nothingObserved} from '../../src/key/observed.ts';
import {readRegion} from '../../src/key/region.ts';

const region = readRegion(join(import.meta.dirname, '../../flows'), 'british-isles');
const {key, profiles} = region;

// Places from an atlas, to two decimals.
test.each([
	['Newlyn', 50.1, -5.54, 'south-west'],
	['Brighton', 50.82, -0.14, 'channel'],
	['Aberystwyth', 52.41, -4.09, 'irish-sea'],
	['Valentia', 51.92, -10.3, 'west-ireland'],
	['Oban', 56.41, -5.47, 'west-scotland'],
	['Stornoway', 58.21, -6.39, 'west-scotland'],
	['Kirkwall', 58.98, -2.96, 'northern-isles'],
	['Lerwick', 60.15, -1.14, 'northern-isles'],
	['Whitby', 54.49, -0.61, 'north-sea'],
	['Aberdeen', 57.15, -2.09, 'north-sea'],
	['Cromer', 52.93, 1.3, 'north-sea'],
	['Dublin', 53.35, -6.2, 'irish-sea'],
	['Saint Helier', 49.19, -2.1, 'channel'],
])('%s lies in its area', (_, latitude, longitude, area) => {
	expect(areasAt(key, {latitude, longitude})).toContain(area);
});

test('a place far from every shore of the region is in none of its areas', () => {
	for (const spot of [
		{latitude: 43.3, longitude: 5.4},
		{latitude: 48.5, longitude: -125},
		{latitude: 0, longitude: 0},
	]) {
		expect(covers(region, spot)).toBe(false);
	}
});

test('a kind keeps some weight outside its usual areas, and all of it where nothing is known', () => {
	const undulate = profiles.taxa['raja-undulata'];
	const thornback = profiles.taxa['raja-clavata'];
	if (!undulate || !thornback) throw new Error('Expected both rays in the region');
	const [brighton, oban] = [
		{latitude: 50.82, longitude: -0.14},
		{latitude: 56.41, longitude: -5.47},
	];
	expect(coastShare(key, undulate, brighton)).toBe(1);
	expect(coastShare(key, undulate, oban)).toBe(key.elsewhere);
	expect(key.elsewhere).toBeGreaterThan(0);
	expect(isUnusual(key, undulate, oban)).toBe(true);
	expect(coastShare(key, thornback, oban)).toBe(1);
	expect(coastShare(key, undulate, undefined)).toBe(1);
	expect(coastShare(key, undulate, {latitude: 43.3, longitude: 5.4})).toBe(1);
});

test('the place moves the ranking and still sums to one', () => {
	const at = (latitude: number, longitude: number) =>
		rank(region, {...nothingObserved, spot: {latitude, longitude}});
	const share = (ranking: ReturnType<typeof rank>, id: string) =>
		ranking.find(({taxon}) => taxon === id)?.probability ?? 0;
	const [channel, scotland] = [at(50.82, -0.14), at(56.41, -5.47)];
	expect(share(channel, 'raja-undulata')).toBeGreaterThan(5 * share(scotland, 'raja-undulata'));
	expect(share(scotland, 'dipturus-intermedius')).toBeGreaterThan(5 * share(channel, 'dipturus-intermedius'));
	for (const ranking of [channel, scotland]) {
		expect(ranking.reduce((sum, {probability}) => sum + probability, 0)).toBeCloseTo(1, 12);
	}
});
