/** Places of simulated finds. */
import {areasAt, type Spot} from './coast.ts';
import {between, oneOf, type Pick} from './random.ts';
import type {Key} from './region.ts';

/** A place drawn alike from each area of a region and from all of that area; nothing where a region has none. */
export function drawSpot(key: Key, pick: Pick): Spot | undefined {
	const areas = Object.entries(key.areas);
	if (areas.length === 0) return undefined;
	const [id, {ring}] = oneOf(pick, areas);
	const longitudes = ring.map(([longitude]) => longitude);
	const latitudes = ring.map(([, latitude]) => latitude);
	for (;;) {
		const spot = {latitude: between(pick, endsOf(latitudes)), longitude: between(pick, endsOf(longitudes))};
		if (areasAt(key, spot).includes(id)) return spot;
	}
}

function endsOf(values: readonly number[]): readonly [number, number] {
	return [Math.min(...values), Math.max(...values)];
}
