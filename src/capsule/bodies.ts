/** The bodies of cases among what lies on the ground: without horns, tendrils and weed, holes of shine filled. */
import {depthOf, maskAbove} from './depth.ts';
import type {FlatView, Grid} from './flat-view.ts';
import {type Lobe, lobesOf} from './lobes.ts';
import {median} from './median.ts';
import type {Field} from './raster.ts';
import {type Mask, type Region, type Regions, regionsOf} from './regions.ts';

/** One thing that may be a case. */
export type Body = {
	/** The body alone, in a part of the view of its own. */
	readonly grid: Grid;
	readonly body: Mask;
	/** All that hangs together with it, in the whole view, and how deep inside each of its points lies. */
	readonly whole: {readonly regions: Regions; readonly region: Region; readonly depth: Field};
	/** Radius of the largest circle inside it. */
	readonly radiusMm: number;
	/** It reaches to where nothing is known: the end of the sheet, the photo or the card. */
	readonly isCut: boolean;
};

/** What is thinner is no body. */
const leastRadiusMm = 3.4;
/** A hole as small as this makes no difference. */
const leastHoleMm2 = 6;
/** A hole larger than this that is as plain ground as the rest, within so much, is no shine, or not likely. */
const leastShineMm2 = 30;
const plainGround = {surely: 0.45, likely: 0.8} as const;
/** A hole larger than this is no shine; one that looks like bare ground sooner not (our choice). */
const mostShineMm2 = {deepIn: 3000, other: 600} as const;
/** Round a shine the body goes on for so far at least, or for as much as the hole is wide; tendrils and horns do not. */
const leastRimMm = 3.5;
/** On how much of its edge a shine has such a rim, and what may be ground (tuned on made-up photos). */
const rimShare = (above: number) => (above < plainGround.likely ? 0.95 : 0.62);
/** Of the body's radius: what a circle of this radius does not reach into is a horn (the prototype's choice). */
const openShare = 0.42;

const fourWays = [
	[1, 0],
	[-1, 0],
	[0, 1],
	[0, -1],
] as const;

/** Finds the bodies on a flat view, the broadest first. */
export function findBodies(view: FlatView, odd: Field): readonly Body[] {
	const filled = fillHoles(maskAbove(odd, 0), odd, view.stepMm);
	const depth = depthOf(filled);
	const wholes = regionsOf(filled, 20);
	const cores = regionsOf(maskAbove(depth, (0.55 * leastRadiusMm) / view.stepMm), 4);
	const look = {share: openShare, least: leastRadiusMm / view.stepMm};
	const lobes = cores.list.flatMap(core => lobesOf({depth, cores, core}, look));
	const found = lobes.flatMap((lobe): readonly Body[] => {
		const opened = open(lobe, depth, view);
		const at = opened.body.on.indexOf(1);
		if (at < 0) return [];
		const {grid, left, top} = opened;
		const inView = (top + Math.floor(at / grid.width)) * view.width + left + (at % grid.width);
		const region = wholes.list.find(({label}) => label === wholes.labels[inView]);
		if (!region) return [];
		return [
			{
				...{grid, body: opened.body, whole: {regions: wholes, region, depth}},
				radiusMm: lobe.radius * view.stepMm,
				isCut: isCut(opened, view),
			},
		];
	});
	return found.toSorted((a, b) => b.radiusMm - a.radiusMm);
}

function fillHoles(mask: Mask, odd: Field, stepMm: number): Mask {
	const {width, height} = mask;
	const holes = regionsOf(mask, 1, 0);
	const on = Uint8Array.from(mask.on);
	const plain = plainOf(odd);
	for (const hole of holes.list) {
		const {left, right, top, bottom, label} = hole;
		const isOpen = left === 0 || top === 0 || right === width - 1 || bottom === height - 1;
		const areaMm2 = hole.area * stepMm * stepMm;
		if (isOpen || areaMm2 > mostShineMm2.deepIn) continue;
		const isOther = areaMm2 < mostShineMm2.other && meanOf(odd, holes.labels, hole) > -0.9;
		const above =
			areaMm2 > leastShineMm2 ? middleOf(odd, holes.labels, hole) - plain : Number.POSITIVE_INFINITY;
		const isShine =
			isOther || (above > plainGround.surely && shareInside(mask, holes, hole, stepMm) > rimShare(above));
		if (areaMm2 > leastHoleMm2 && !isShine) continue;
		for (let y = top; y <= bottom; y += 1) {
			for (let at = y * width + left; at <= y * width + right; at += 1) {
				if (holes.labels[at] === label) on[at] = 1;
			}
		}
	}
	return {...mask, on};
}

/** On how much of a hole's edge the mask goes on for a while, as round shine, and not as round a tendril's loop. */
function shareInside({width, height, on}: Mask, {labels}: Regions, hole: Region, stepMm: number): number {
	const {left, right, top, bottom, label, area} = hole;
	const edge: [x: number, y: number, dx: number, dy: number][] = [];
	for (let y = top; y <= bottom; y += 1) {
		for (let x = left; x <= right; x += 1) {
			if (labels[y * width + x] !== label) continue;
			for (const [dx, dy] of fourWays) {
				if (labels[(y + dy) * width + x + dx] !== label) edge.push([x, y, dx, dy]);
			}
		}
	}
	// Twice the area by the length of the edge is how wide a long hole is.
	const reach = Math.round(Math.max(leastRimMm / stepMm, (2 * area) / edge.length));
	const inside = edge.filter(([x, y, dx, dy]) => {
		const [farX, farY] = [x + dx * reach, y + dy * reach];
		const isKnown = farX >= 0 && farY >= 0 && farX < width && farY < height;
		return isKnown && on[farY * width + farX] === 1;
	});
	return inside.length / edge.length;
}

function meanOf(
	{width, values}: Field,
	labels: Int32Array,
	{label, left, right, top, bottom, area}: Region,
): number {
	let sum = 0;
	for (let y = top; y <= bottom; y += 1) {
		for (let at = y * width + left; at <= y * width + right; at += 1) {
			if (labels[at] === label) sum += values[at] ?? 0;
		}
	}
	return sum / area;
}

/** The middle oddness of what is surely ground. */
export function plainOf({values}: Field): number {
	const some = new Float32Array(2000);
	let count = 0;
	for (let index = 0; index < some.length; index += 1) {
		const value = values[Math.floor((index * values.length) / some.length)] ?? 0;
		if (value >= -1) continue;
		some[count] = value;
		count += 1;
	}
	return count === 0 ? -4 : (some.subarray(0, count).sort()[count >> 1] ?? -4);
}

function middleOf(
	{width, values}: Field,
	labels: Int32Array,
	{label, left, right, top, bottom}: Region,
): number {
	const own: number[] = [];
	for (let y = top; y <= bottom; y += 1) {
		for (let at = y * width + left; at <= y * width + right; at += 1) {
			if (labels[at] === label) own.push(values[at] ?? 0);
		}
	}
	return median(own);
}

type Opened = {readonly grid: Grid; readonly body: Mask; readonly left: number; readonly top: number};

/** Takes off what a circle of a share of a lobe's radius does not reach into, within a box round the lobe. */
function open(lobe: Lobe, depth: Field, view: FlatView): Opened {
	const reach = openShare * lobe.radius;
	const room = Math.ceil(reach) + 2;
	const [left, top] = [Math.max(0, lobe.left - room), Math.max(0, lobe.top - room)];
	const width = Math.min(depth.width, lobe.left + lobe.width + room) - left;
	const height = Math.min(depth.height, lobe.top + lobe.height + room) - top;
	const size = {width, height};
	const inner = new Uint8Array(width * height).fill(1);
	for (let at = 0, row = 0; row < lobe.height; row += 1) {
		const start = (lobe.top - top + row) * width + lobe.left - left;
		for (let to = start; to < start + lobe.width; to += 1, at += 1) inner[to] = lobe.inner[at] === 1 ? 0 : 1;
	}
	const away = depthOf({...size, on: inner}, true);
	const on = new Uint8Array(width * height);
	for (let at = 0, y = top; y < top + height; y += 1) {
		for (let from = y * depth.width + left, x = 0; x < width; x += 1, at += 1, from += 1) {
			on[at] = (away.values[at] ?? 0) < reach && (depth.values[from] ?? 0) > 0 ? 1 : 0;
		}
	}
	const from = [view.from[0] + left * view.stepMm, view.from[1] + top * view.stepMm] as const;
	return {grid: {...size, stepMm: view.stepMm, from}, body: {...size, on}, left, top};
}

function isCut({body, left, top}: Opened, {width, height, known}: FlatView): boolean {
	let cut = 0;
	const isKnown = (at: number) =>
		known[at - 1] === 1 && known[at + 1] === 1 && known[at - width] === 1 && known[at + width] === 1;
	for (let at = 0, row = 0; row < body.height; row += 1) {
		const y = top + row;
		const isEnd = y === 0 || y === height - 1;
		for (let x = left; x < left + body.width; x += 1, at += 1) {
			if (body.on[at] !== 1) continue;
			if (isEnd || x === 0 || x === width - 1 || !isKnown(y * width + x)) cut += 1;
		}
	}
	return cut > 3;
}
