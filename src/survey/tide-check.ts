/** A typed low water held against one that is worked out: a reason to look again, and nothing else. */
import type {Day} from './day.ts';
import type {Gauge, Tides} from './tides.ts';

/**
 * Further away another tide runs: of 72 pairs of free gauges of Britain, Ireland and France that lie within 25 km of
 * each other, half had low waters within 23 minutes, and 16 % of the low waters lay over 45 minutes apart; from 25 to
 * 40 km it was 55 % (measured with neaps 0.8.0, March and April 2026).
 */
export const furthestGaugeM = 25_000;

/** More is worth a second look: a summer time forgotten makes 60 minutes, a wrong day about 50 (from memory). */
export const mostApartMs = 45 * 60_000;

/** Where the sea rises less, the hours of its turn mean little; errors were only measured above it. */
const leastRiseM = 1;

/** Longer than from one low water to the next, also where there is but one a day. */
const aroundMs = 30 * 3_600_000;

const quarterMs = 15 * 60_000;

/** What the nearest gauge says to a typed low water; times and differences to the quarter of an hour. */
export type TideCheck = {
	readonly gauge: Pick<Gauge, 'name' | 'distanceM' | 'attribution'>;
	/** UTC milliseconds. */
	readonly lowAt: number;
	/** How far the typed one is from it, where that is more than gauges so near to each other should differ. */
	readonly apartMs?: number;
};

/** Holds a day's typed low water against the nearest gauge; nothing where no gauge is near or the tide is small. */
export function checkLowWater({spot, lowWater}: Day, tides: Tides): TideCheck | undefined {
	const gauge = lowWater && tides.gaugeNear(spot, furthestGaugeM);
	return gauge && checkAgainst(gauge, lowWater.at);
}

function checkAgainst(gauge: Gauge, typedAt: number): TideCheck | undefined {
	const extremes = gauge.extremesBetween(typedAt - aroundMs, typedAt + aroundMs);
	const lows = extremes.flatMap(({at, levelM, isLow}, index) => {
		const [before, after] = [extremes[index - 1], extremes[index + 1]];
		if (!isLow || !before || !after) return [];
		return [{at, riseM: Math.min(before.levelM, after.levelM) - levelM}];
	});
	const [first, ...others] = lows;
	if (!first) return undefined;
	const apart = ({at}: {readonly at: number}) => Math.abs(at - typedAt);
	const nearest = others.reduce((best, one) => (apart(one) < apart(best) ? one : best), first);
	if (nearest.riseM < leastRiseM) return undefined;
	const {name, distanceM, attribution} = gauge;
	return {
		gauge: {name, distanceM, attribution},
		lowAt: toQuarter(nearest.at),
		...(apart(nearest) > mostApartMs ? {apartMs: toQuarter(apart(nearest))} : {}),
	};
}

function toQuarter(ms: number): number {
	return Math.round(ms / quarterMs) * quarterMs;
}
