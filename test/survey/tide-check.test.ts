import {expect, test} from 'vitest';
import {checkLowWater, furthestGaugeM} from '../../src/survey/tide-check.ts';
import type {Extreme, Tides} from '../../src/survey/tides.ts';
import {exampleDay} from './days.ts';

const minuteMs = 60_000;
const typedAt = exampleDay.lowWater?.at ?? 0;
const halfTideMs = 372 * minuteMs;

/** A made-up gauge, five kilometres away, with one low water so many minutes after the typed one and its like before and after. */
function gaugeWithLow(minutesAfter: number, rangeM = 4): Tides {
	const lowAt = typedAt + minutesAfter * minuteMs;
	const extremes: readonly Extreme[] = [-6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6].map(turn => ({
		at: lowAt + turn * halfTideMs,
		levelM: turn % 2 === 0 ? 0.5 : 0.5 + rangeM,
		isLow: turn % 2 === 0,
	}));
	return {
		gaugeNear: (_, withinM) =>
			withinM < 5000
				? undefined
				: {
						name: 'Example Pier',
						distanceM: 5000,
						attribution: 'Made up',
						extremesBetween: (from, to) => extremes.filter(({at}) => at >= from && at <= to),
					},
	};
}

test('a typed low water within 45 minutes of the estimate fits it, and the estimate is told to the quarter', () => {
	for (const minutes of [-45, -10, 0, 30, 45]) {
		const check = checkLowWater(exampleDay, gaugeWithLow(minutes));
		expect(check?.apartMs).toBeUndefined();
		expect((check?.lowAt ?? 1) % (15 * minuteMs)).toBe(0);
		expect(Math.abs((check?.lowAt ?? 0) - typedAt - minutes * minuteMs)).toBeLessThanOrEqual(7.5 * minuteMs);
		expect(check?.gauge).toEqual({name: 'Example Pier', distanceM: 5000, attribution: 'Made up'});
	}
});

test.each([
	[-46, 45],
	[50, 45],
	[60, 60],
	[180, 180],
	[-180, 180],
])('a typed low water %i minutes before the estimate is told to differ by %i minutes', (minutes, told) => {
	expect(checkLowWater(exampleDay, gaugeWithLow(minutes))?.apartMs).toBe(told * minuteMs);
});

test('the low water that counts is the nearest to the typed one, be it before or after', () => {
	const nextTideMinutes = (2 * halfTideMs) / minuteMs;
	expect(checkLowWater(exampleDay, gaugeWithLow(nextTideMinutes))?.apartMs).toBeUndefined();
	expect(checkLowWater(exampleDay, gaugeWithLow(400))?.apartMs).toBe(345 * minuteMs);
});

test('a tide of under a metre, a day without low water and a place without a gauge are not checked', () => {
	expect(checkLowWater(exampleDay, gaugeWithLow(180, 0.9))).toBeUndefined();
	expect(checkLowWater(exampleDay, gaugeWithLow(180, 1.1))).toBeDefined();
	const {lowWater: _, ...tideless} = exampleDay;
	expect(checkLowWater(tideless, gaugeWithLow(180))).toBeUndefined();
	expect(checkLowWater(exampleDay, {gaugeNear: () => undefined})).toBeUndefined();
});

test('a gauge is looked for within 25 km', () => {
	expect(furthestGaugeM).toBe(25_000);
	const asked: number[] = [];
	checkLowWater(exampleDay, {gaugeNear: (_, withinM) => void asked.push(withinM)});
	expect(asked).toEqual([25_000]);
});
