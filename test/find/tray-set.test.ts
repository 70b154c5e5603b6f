import {join} from 'node:path';
import {expect, test} from 'vitest';
import {isWide, setSizes, widestSpread} from '../../src/find/tray-set.ts';
import {normal, seeded} from '../../src/key/random.ts';
import {readRegion} from '../../src/key/region.ts';
import {trayOf} from './trays.ts';

const flows = join(import.meta.dirname, '../../flows');
const cases = (...mm: readonly number[]) => trayOf(mm.map(one => ({mm: one}))).cases;

test('one case alone is as long and as sure as it was measured', () => {
	expect(setSizes('a4', cases(66)).length).toMatchObject({mm: 66, uncertaintyMm: 0.7});
});

test('a set is as long as its middle one, never surer than one of it, and less sure the more they differ', () => {
	expect(setSizes('a4', cases(60, 62, 90)).length.mm).toBe(62);
	expect(setSizes('a4', cases(60, 62)).length.mm).toBe(61);
	const alike = setSizes('a4', cases(66, 66, 66, 66)).length.uncertaintyMm;
	const spread = setSizes('a4', cases(60, 64, 68, 72)).length.uncertaintyMm;
	expect(alike).toBe(0.7);
	expect(spread).toBeGreaterThan(4);
});

test('a width is told only where every case shows one', () => {
	const {cases: all} = trayOf([
		{mm: 60, widthMm: 40},
		{mm: 62, widthMm: 42},
	]);
	expect(setSizes('a4', all).width).toMatchObject({mm: 41});
	expect(setSizes('a4', [...all, ...cases(61)]).width).toBeUndefined();
});

test('the middle of a set with its half-width holds the middle of the kind about nine times in ten', () => {
	const pick = seeded(11);
	for (const many of [5, 12]) {
		const tries = 2000;
		const held = Array.from({length: tries}, () => {
			const drawn = Array.from({length: many}, () => 66 + 4 * normal(pick));
			const {mm, uncertaintyMm} = setSizes('a4', cases(...drawn)).length;
			return Math.abs(mm - 66) <= uncertaintyMm;
		}).filter(Boolean).length;
		expect(held / tries).toBeGreaterThan(0.86);
		expect(held / tries).toBeLessThan(0.96);
	}
});

test('lengths of one kind as published are seldom asked about, and lengths twice as long always', () => {
	const spreads = ['british-isles', 'north-east-pacific', 'western-mediterranean'].flatMap(region =>
		Object.values(readRegion(flows, region).profiles.taxa).flatMap(({lengthMm}) => {
			const [low = 0, high = low] = lengthMm?.range ?? [];
			return low === 0 ? [] : [(high - low) / ((high + low) / 2)];
		}),
	);
	const within = spreads.filter(spread => spread <= widestSpread).length;
	expect(spreads.length).toBeGreaterThan(30);
	// 28 of 40, the widest 0.58: these are ranges over whole seas, a tray is of one shore.
	expect(within / spreads.length).toBeGreaterThan(0.6);
	expect(isWide(cases(50, 100))).toBe(true);
	expect(isWide(cases(60, 70))).toBe(false);
});
