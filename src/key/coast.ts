/** Where a find lies, and how usual each kind is there. */
import type {Key, Region, Taxon} from './region.ts';

/** A place on WGS 84, in degrees. */
export type Spot = {readonly latitude: number; readonly longitude: number};

/** The areas of a region that hold a place; several where they overlap, none far from its coast. */
export function areasAt(key: Key, spot: Spot): readonly string[] {
	return Object.entries(key.areas)
		.filter(([, {ring}]) => isInside(ring, spot))
		.map(([id]) => id);
}

/** Whether a region's areas hold a place. */
export function covers(region: Region, spot: Spot): boolean {
	return areasAt(region.key, spot).length > 0;
}

/**
 * The share of its weight that a taxon keeps at a place: all of it in its usual areas, where nothing
 * is known of its coast and off the region's coast; `elsewhere` in the other areas. Never zero.
 */
export function coastShare(key: Key, taxon: Taxon, spot: Spot | undefined): number {
	return isUnusual(key, taxon, spot) ? key.elsewhere : 1;
}

/** Whether a kind is unusual at a place, as far as its profile knows. */
export function isUnusual(key: Key, taxon: Taxon, spot: Spot | undefined): boolean {
	if (!spot || !taxon.coast) return false;
	const here = areasAt(key, spot);
	return here.length > 0 && !taxon.coast.usual.some(area => here.includes(area));
}

/** Counts the sides of the ring that a line eastwards from the place crosses: odd inside. */
function isInside(ring: readonly (readonly [number, number])[], {latitude, longitude}: Spot): boolean {
	let isOdd = false;
	for (const [index, [east, north]] of ring.entries()) {
		const [lastEast, lastNorth] = ring.at(index - 1) ?? [east, north];
		if (north > latitude === lastNorth > latitude) continue;
		const crossing = east + ((latitude - north) / (lastNorth - north)) * (lastEast - east);
		if (longitude < crossing) isOdd = !isOdd;
	}
	return isOdd;
}
