/** The lobes of what hangs together: one case, or several that touch, each with the neck between them left out. */
import type {Field} from './raster.ts';
import {type Region, type Regions, regionsOf} from './regions.ts';

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

/**
 * The lobes of a core, the broadest first. What is joined by less than `share` of the radius of the slimmer one is two;
 * `least` is the radius from which on a lobe counts.
 */
export function lobesOf(where: Core, {share, least}: {share: number; least: number}): readonly Lobe[] {
	const {left, top, right, bottom} = where.core;
	const box = {left, top, width: right - left + 1, height: bottom - top + 1};
	const depths = depthsIn(where, box);
	const deepest = depths.reduce((most, value) => Math.max(most, value), 0);
	const claimed = new Uint8Array(depths.length);
	const lobes: Lobe[] = [];
	for (let level = share * deepest; level >= share * least; level *= down) {
		for (const {at, radius} of deepestOf(depths, box, {level, claimed})) {
			if (radius < Math.max(least, level / share)) continue;
			const inner = innerOf(depths, box, {at, level: share * radius});
			for (const [index, isInner] of inner.entries()) if (isInner === 1) claimed[index] = 1;
			lobes.push({...box, inner, radius});
		}
	}
	return lobes;
}

type Box = Pick<Lobe, 'left' | 'top' | 'width' | 'height'>;

function depthsIn({depth, cores, core}: Core, {left, top, width, height}: Box): Float32Array {
	const depths = new Float32Array(width * height);
	for (let at = 0, y = top; y < top + height; y += 1) {
		for (let from = y * depth.width + left, x = 0; x < width; x += 1, at += 1, from += 1)
			if (cores.labels[from] === core.label) depths[at] = depth.values[from] ?? 0;
	}
	return depths;
}

/** The deepest point of each part above a level in which no lobe was found yet. */
function deepestOf(
	depths: Float32Array,
	{width, height}: Box,
	{level, claimed}: {level: number; claimed: Uint8Array},
): readonly {readonly at: number; readonly radius: number}[] {
	const {labels} = partsAbove(depths, {width, height}, level);
	const deepest = new Map<number, {at: number; radius: number}>();
	const taken = new Set<number>();
	for (let at = 0; at < depths.length; at += 1) {
		const label = labels[at] ?? 0;
		if (label === 0) continue;
		if (claimed[at] === 1) taken.add(label);
		const radius = depths[at] ?? 0;
		if (radius > (deepest.get(label)?.radius ?? 0)) deepest.set(label, {at, radius});
	}
	return [...deepest].flatMap(([label, one]) => (taken.has(label) ? [] : [one]));
}

/** The part above a level that a point is of. */
function innerOf(depths: Float32Array, box: Box, {at, level}: {at: number; level: number}): Uint8Array {
	const {labels} = partsAbove(depths, box, level);
	return Uint8Array.from(labels, label => (label === labels[at] ? 1 : 0));
}

function partsAbove(
	depths: Float32Array,
	{width, height}: Pick<Box, 'width' | 'height'>,
	level: number,
): Regions {
	return regionsOf({width, height, on: Uint8Array.from(depths, value => (value > level ? 1 : 0))}, 1);
}
