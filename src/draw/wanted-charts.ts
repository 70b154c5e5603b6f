/** Months and maps as they wait with their words. */
import type {Say} from '../text/text.ts';
import type {Chart} from './chart.ts';
import {cutCoast, readEarth} from './coastline.ts';
import {drawMap, mapBox} from './map.ts';
import {drawMonths} from './months.ts';
import type {Wanted} from './title.ts';

/** Months and maps by what they show. */
export type ChartWanted = Extract<Wanted, {kind: 'months' | 'map'}>;

/** Draws a year month by month, or a map; the coast is read anew each time, since it takes more memory than time. */
export function drawWantedChart(wanted: ChartWanted, say: Say): Chart {
	if (wanted.kind === 'months') {
		const months = wanted.counts.map((_, index) => ({year: wanted.year, month: index + 1}));
		return drawMonths({
			heading: wanted.heading,
			months,
			rows: [{label: wanted.label, counts: wanted.counts}],
			say,
		});
	}
	const box = mapBox(wanted.places);
	const earth = readEarth();
	const coast = box ? cutCoast(earth, box) : earth;
	return drawMap({heading: wanted.heading, places: wanted.places, coast, say});
}
