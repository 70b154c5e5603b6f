/** Bars as they wait with their words, drawn with a small picture of each kind. */
import {taxonShape} from '../key/drawn.ts';
import type {Region} from '../key/region.ts';
import type {Say} from '../text/text.ts';
import {type Bar, barDrawingUnits, drawBars} from './bars.ts';
import {drawCapsule} from './capsule.ts';
import type {Chart} from './chart.ts';
import type {Drawing} from './profile.ts';
import type {Wanted} from './title.ts';

/** Bars by what they show. */
export type BarsWanted = Extract<Wanted, {kind: 'bars'}>;

/** Draws the bars; one of a kind that the region does not have stands there without a drawing. */
export function drawWantedBars(
	{heading, bars}: BarsWanted,
	{region, say}: {readonly region: Region; readonly say: Say},
): Chart {
	const drawn = bars.map(({taxon, ...bar}): Bar => {
		const drawing = taxon === undefined ? undefined : smallDrawing(region, taxon);
		return {...bar, drawing};
	});
	return drawBars({heading, bars: drawn, say});
}

function smallDrawing(region: Region, taxon: string): Drawing | undefined {
	if (!region.profiles.taxa[taxon]) return undefined;
	const {shape} = taxonShape(region, taxon);
	const {box} = drawCapsule(shape, {unitsPerMm: 1});
	const longest = Math.max(box.right - box.left, box.bottom - box.top);
	return drawCapsule(shape, {unitsPerMm: barDrawingUnits / longest});
}
