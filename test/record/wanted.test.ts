import {expect, test} from 'vitest';
import {statuses, type Verification} from '../../src/record/for-export.ts';
import {type Around, isAround, isWanted} from '../../src/record/wanted.ts';
import {openly, recordWith, told} from './for-export.ts';
import {placed, testland} from './made-up.ts';

const at = 1;

test('both days belong to the days that are wanted', () => {
	const record = recordWith({date: '2026-05-02'});
	const days = (from?: string, to?: string) => isWanted(record, {from, to, statuses});
	expect([days('2026-05-02'), days(undefined, '2026-05-02'), days('2026-05-02', '2026-05-02')]).toEqual([
		true,
		true,
		true,
	]);
	expect([days('2026-05-03'), days(undefined, '2026-05-01')]).toEqual([false, false]);
});

test('a record that nobody looked at is wanted as unverified, others as what a verifier said', () => {
	const seen: Verification = {outcome: 'agreed', at};
	expect(isWanted(recordWith(), {statuses: ['unverified']})).toBe(true);
	expect(isWanted(recordWith({}, {verification: seen}), {statuses: ['unverified']})).toBe(false);
	expect(isWanted(recordWith({}, {verification: seen}), {statuses: ['agreed', 'other-name']})).toBe(true);
});

const circle = (radiusM: number): Around => ({
	kind: 'circle',
	centre: {latitude: 50.119892, longitude: -5.546958},
	radiusM,
});

test('a circle holds what lies within its radius', () => {
	// One hundredth of a degree of latitude is 1.11 km.
	const north = told(recordWith({place: placed('50.129892, -5.546958')}));
	expect(isAround(north, circle(1200))).toBe(true);
	expect(isAround(north, circle(1000))).toBe(false);
});

test('a grid square holds its lower edges and not its upper ones', () => {
	const square = (east: number): Around => ({
		kind: 'square',
		square: {grid: 'EPSG:27700', corner: {east, north: 30_000}, sideM: 1000},
	});
	const record = told(recordWith());
	expect(isAround(record, square(146_000))).toBe(true);
	expect(isAround(record, square(145_000))).toBe(false);
	expect(isAround(record, square(147_000))).toBe(false);
});

test('an area is one of the record’s own region', () => {
	const ring: [number, number][] = [
		[-6, 50],
		[-5, 50],
		[-5, 51],
		[-6, 51],
	];
	const region = {...testland, key: {...testland.key, areas: {bay: {ring, source: 'made-up'}}}};
	expect(isAround(told(recordWith(), region), {kind: 'area', area: 'bay'})).toBe(true);
	expect(isAround(told(recordWith()), {kind: 'area', area: 'bay'})).toBe(false);
});

test('a hidden place is found by its square alone, so that no filter tells where it is', () => {
	const hidden = told(recordWith({}, {coarseM: 10_000}));
	expect(isAround(hidden, circle(1000))).toBe(false);
	const exact = told(recordWith({}, {coarseM: 10_000}), testland, {...openly, isExact: true});
	expect(isAround(exact, circle(1000))).toBe(true);
});

test('a place with only a name lies nowhere', () => {
	expect(isAround(told(recordWith({place: placed('Sandy Cove')})), circle(20_000_000))).toBe(false);
});
