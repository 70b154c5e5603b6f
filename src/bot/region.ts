/** Which region's key a find is taken by: the one whose shore its place lies on. */
import {covers} from '../key/coast.ts';
import type {Place} from '../place/place.ts';
import type {House} from './desk.ts';

/** The present region where it holds the place or none does; else the one that holds it. */
export function regionOfPlace(house: House, present: string, place: Place | undefined): string {
	if (place?.kind !== 'spot') return present;
	const holding = [...house.shelves].filter(([, {flow}]) => covers(flow.region, place)).map(([id]) => id);
	return holding.includes(present) ? present : (holding[0] ?? present);
}
