/** Where the colour changes on short lines across a side, each place with its strongest edges. */
import {type Point, type Raster, readColour} from './raster.ts';

/** Edges one after another along a side: how far along from its middle, how far outwards, and in grey levels how strong. */
export type Edges = {
	readonly count: number;
	readonly along: Float32Array;
	readonly off: Float32Array;
	readonly strength: Float32Array;
};

/** The side to look along, at how many places, how far to both sides, and the share next to each end to leave out. */
export type Across = {
	readonly from: Point;
	readonly to: Point;
	readonly places: number;
	/** How many lines across beside each other are taken for one, against noise. */
	readonly together: number;
	readonly reachPx: number;
	readonly skip: number;
};

/** From one point of a line across to the next. */
const stepPx = 0.5;
const mostEach = 3;
const weakest = 2.5;
/** A change is told from this many steps to both sides. */
const wide = 3;

const one = new Float32Array(3);

/** Finds the edges along a side from one corner to the next, clockwise as seen, so that outwards is to the left. */
export function findEdges(raster: Raster, {from, to, ...look}: Across): Edges {
	const {places, together, reachPx, skip} = look;
	const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
	const [dx, dy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
	const half = Math.ceil(reachPx / stepPx) + wide + 1;
	const colours = new Float32Array((2 * half + 1) * 3);
	const changes = new Float32Array(2 * half + 1);
	const most = places * mostEach;
	const [alongs, offs, strengths] = [new Float32Array(most), new Float32Array(most), new Float32Array(most)];
	let count = 0;
	for (let place = 0; place < places; place += 1) {
		const along = long * (skip + ((1 - 2 * skip) * (place + 0.5)) / places);
		const apart = (long * (1 - 2 * skip)) / places / together;
		const isSeen = readAcross(
			raster,
			{x: from[0] + dx * along, y: from[1] + dy * along, dx, dy, together, apart},
			colours,
		);
		if (!isSeen) continue;
		tellChanges(colours, changes);
		for (const at of strongest(changes)) {
			const before = changes[at - 1] ?? 0;
			const here = changes[at] ?? 0;
			const after = changes[at + 1] ?? 0;
			alongs[count] = along - long / 2;
			offs[count] = (at - half + (before - after) / (2 * (before - 2 * here + after) || 1)) * stepPx;
			strengths[count] = here;
			count += 1;
		}
	}
	return {count, along: alongs, off: offs, strength: strengths};
}

type Place = {
	readonly x: number;
	readonly y: number;
	/** Along the side. */
	readonly dx: number;
	readonly dy: number;
	readonly together: number;
	readonly apart: number;
};

/** Colours along a line across, summed over the lines beside it; false where it leaves the picture. */
function readAcross(raster: Raster, {x, y, dx, dy, together, apart}: Place, colours: Float32Array): boolean {
	const half = (colours.length / 3 - 1) / 2;
	colours.fill(0);
	for (let beside = 0; beside < together; beside += 1) {
		const shift = (beside - (together - 1) / 2) * apart;
		const startX = x + dx * shift;
		const startY = y + dy * shift;
		for (let at = 0, index = -half; index <= half; index += 1, at += 3) {
			const off = index * stepPx;
			if (!readColour(raster, startX + dy * off, startY - dx * off, one)) return false;
			colours[at] = (colours[at] ?? 0) + (one[0] ?? 0) / together;
			colours[at + 1] = (colours[at + 1] ?? 0) + (one[1] ?? 0) / together;
			colours[at + 2] = (colours[at + 2] ?? 0) + (one[2] ?? 0) / together;
		}
	}
	return true;
}

/** How much the colour changes about each point, in grey levels. */
function tellChanges(colours: Float32Array, changes: Float32Array): void {
	for (let index = wide; index < changes.length - wide; index += 1) {
		let sum = 0;
		for (let at = index * 3; at < index * 3 + 3; at += 1) {
			const change =
				((colours[at + 9] ?? 0) - (colours[at - 9] ?? 0)) * 0.22 +
				((colours[at + 6] ?? 0) - (colours[at - 6] ?? 0)) * 0.4 +
				((colours[at + 3] ?? 0) - (colours[at - 3] ?? 0)) * 0.3;
			sum += change * change;
		}
		changes[index] = Math.sqrt(sum / 3);
	}
}

/** The points where the colour changes more than beside them, the strongest few first. */
function strongest(changes: Float32Array): readonly number[] {
	const peaks: number[] = [];
	for (let at = wide + 1; at < changes.length - wide - 1; at += 1) {
		const here = changes[at] ?? 0;
		if (here >= weakest && here >= (changes[at - 1] ?? 0) && here > (changes[at + 1] ?? 0)) peaks.push(at);
	}
	// Most lines show one.
	if (peaks.length < 2) return peaks;
	return peaks.sort((a, b) => (changes[b] ?? 0) - (changes[a] ?? 0)).slice(0, mostEach);
}
