/** The lobes of what hangs together: one case, or several that touch, each with the neck between them left out. */
import type {Field} from './raster.ts';
import {type Mask, partsOf, type Region, type Regions, type Runs, roomForRuns} from './regions.ts';

/** The inside of one lobe, in a box of the view of its own. */
export type Lobe = {
	readonly left: number;
	readonly top: number;
	readonly width: number;
	readonly height: number;
	/** 1 where a circle of a share of the radius about the point lies within the lobe. */
	readonly inner: Uint8Array;
	/** Of the largest circle within it, in grid steps. */
	readonly radius: number;
};

/** How much lower the next look is. */
const down = 0.8;

/** Where in the depths of the view a core lies. */
export type Core = {readonly depth: Field; readonly cores: Regions; readonly core: Region};

type Box = Pick<Lobe, 'left' | 'top' | 'width' | 'height'>;

/** The depths in the box round a core, what lobes have claimed of it, and room for one look after another. */
type Look = {
	readonly box: Box;
	readonly depths: Float32Array;
	readonly claimed: Uint8Array;
	readonly mask: Mask;
	readonly runs: Runs;
};

/**
 * The lobes of a core, the broadest first. What is joined by less than `share` of the radius of the slimmer one is two;
 * `least` is the radius from which on a lobe counts.
 */
export function lobesOf(where: Core, {share, least}: {share: number; least: number}): readonly Lobe[] {
	const look = openLook(where);
	const lobes: Lobe[] = [];
	const deepest = deepestLeft(look);
	let left = deepest;
	for (let level = share * deepest; level >= share * least; level *= down) {
		const leastHere = Math.max(least, level / share);
		if (left < leastHere) continue;
		for (const {at, radius} of deepestOf(look, level)) {
			if (radius < leastHere) continue;
			lobes.push({...look.box, inner: claim(look, at, share * radius), radius});
		}
		left = deepestLeft(look);
	}
	return lobes;
}

function openLook({depth, cores, core}: Core): Look {
	const {left, top} = core;
	const [width, height] = [core.right - left + 1, core.bottom - top + 1];
	const depths = new Float32Array(width * height);
	for (let at = 0, y = top; y < top + height; y += 1) {
		for (let from = y * depth.width + left, x = 0; x < width; x += 1, at += 1, from += 1)
			if (cores.labels[from] === core.label) depths[at] = depth.values[from] ?? 0;
	}
	return {
		box: {left, top, width, height},
		depths,
		claimed: new Uint8Array(depths.length),
		mask: {width, height, on: new Uint8Array(depths.length)},
		runs: roomForRuns(width, height),
	};
}

/** How deep the deepest point lies that no lobe has claimed yet. */
function deepestLeft({depths, claimed}: Look): number {
	let most = 0;
	for (let at = 0; at < depths.length; at += 1) {
		const depth = depths[at] ?? 0;
		if (depth > most && claimed[at] !== 1) most = depth;
	}
	return most;
}

type Deepest = {readonly at: number; readonly radius: number};

/** The deepest point of each part above a level in which no lobe was found yet. */
function deepestOf(look: Look, level: number): readonly Deepest[] {
	return partsAbove(look, level).flatMap(part => deepestIn(look, part) ?? []);
}

/** The deepest point of a part; undefined where a lobe has claimed some of it. */
function deepestIn({depths, claimed, box, runs}: Look, part: Region): Deepest | undefined {
	let [deepest, radius] = [0, 0];
	for (let y = part.top; y <= part.bottom; y += 1) {
		for (let run = runs.starts[y] ?? 0; run < (runs.starts[y + 1] ?? 0); run += 1) {
			if (runs.roots[run] !== part.label - 1) continue;
			const last = y * box.width + (runs.lasts[run] ?? 0);
			for (let at = y * box.width + (runs.firsts[run] ?? 0); at <= last; at += 1) {
				if (claimed[at] === 1) return undefined;
				const depth = depths[at] ?? 0;
				if (depth > radius) [deepest, radius] = [at, depth];
			}
		}
	}
	return {at: deepest, radius};
}

/** Claims the part above a level that a point is of. */
function claim(look: Look, at: number, level: number): Uint8Array {
	const {box, claimed, runs} = look;
	partsAbove(look, level);
	const row = Math.floor(at / box.width);
	let own = runs.starts[row] ?? 0;
	while ((runs.lasts[own] ?? 0) < at - row * box.width) own += 1;
	const inner = new Uint8Array(claimed.length);
	for (let y = 0; y < box.height; y += 1) {
		for (let run = runs.starts[y] ?? 0; run < (runs.starts[y + 1] ?? 0); run += 1) {
			if (runs.roots[run] !== runs.roots[own]) continue;
			const [from, to] = [y * box.width + (runs.firsts[run] ?? 0), y * box.width + (runs.lasts[run] ?? 0)];
			inner.fill(1, from, to + 1);
			claimed.fill(1, from, to + 1);
		}
	}
	return inner;
}

/** The parts above a level, their runs left in the room of the look. */
function partsAbove({depths, mask, runs}: Look, level: number): readonly Region[] {
	for (let at = 0; at < depths.length; at += 1) mask.on[at] = (depths[at] ?? 0) > level ? 1 : 0;
	return partsOf(mask, {leastArea: 1, of: 1, runs});
}
