/** A map as it waits with its words, drawn on the coast it needs. */
import type {Say} from '../text/text.ts';
import type {Chart} from './chart.ts';
import {cutCoast, readEarth} from './coastline.ts';
import {drawMap, mapBox} from './map.ts';
import type {Wanted} from './title.ts';

/** A map by what it shows. */
export type MapWanted = Extract<Wanted, {kind: 'map'}>;

/** Draws the map; the whole coast is read for it and let go, which takes a third of a second. */
export function drawWantedMap({heading, places}: MapWanted, {say}: {readonly say: Say}): Chart {
	const box = mapBox(places);
	const nowhere = {south: 0, west: 0, north: 0, east: 0};
	const coast = box ? cutCoast(readEarth(), box) : {box: nowhere, rings: []};
	return drawMap({heading, places, coast, say});
}
