/** The bodies of cases among what lies on the ground: without horns, tendrils and weed, holes of shine filled. */
import {depthOf, maskAbove} from './depth.ts';
import type {FlatView} from './flat-view.ts';
import type {Field} from './raster.ts';
import {type Mask, type Region, regionsOf} from './regions.ts';

/** One thing that may be a case. */
export type Body = {
	/** The body alone. */
	readonly body: Mask;
	/** All that hangs together with it. */
	readonly whole: Mask;
	/** Radius of the largest circle inside it. */
	readonly radiusMm: number;
	/** It reaches to where nothing is known: the end of the sheet, the photo or the card. */
	readonly isCut: boolean;
};

/** What is thinner is no body. */
const leastRadiusMm = 3.4;
/** A hole smaller than this is shine or a barnacle, not ground between two horns (our choice). */
const mostShineMm2 = 80;

/** Finds the bodies on a flat view, the broadest first. */
export function findBodies(view: FlatView, odd: Field): readonly Body[] {
	const {stepMm} = view;
	const filled = fillHoles(maskAbove(odd, 0), odd, stepMm);
	const depth = depthOf(filled);
	const wholes = regionsOf(filled, 20);
	const cores = regionsOf(maskAbove(depth, (0.55 * leastRadiusMm) / stepMm), 4);
	const found: Body[] = [];
	for (const core of cores.list) {
		const radius = deepest(depth, cores.labels, core);
		if (radius * stepMm < leastRadiusMm) continue;
		const body = open({depth, labels: cores.labels, core, radius});
		const at = body.on.indexOf(1);
		if (at < 0) continue;
		const label = wholes.labels[at] ?? 0;
		const whole = {...filled, on: wholes.labels.map(value => (value === label ? 1 : 0))};
		found.push({
			body,
			whole: {...whole, on: Uint8Array.from(whole.on)},
			radiusMm: radius * stepMm,
			isCut: isCut(body, view),
		});
	}
	return found.toSorted((a, b) => b.radiusMm - a.radiusMm);
}

function fillHoles(mask: Mask, odd: Field, stepMm: number): Mask {
	const holes = regionsOf(mask, 1, 0);
	const on = Uint8Array.from(mask.on);
	const isShine = new Set<number>();
	for (const hole of holes.list) {
		const isOpen =
			hole.left === 0 || hole.top === 0 || hole.right === mask.width - 1 || hole.bottom === mask.height - 1;
		const areaMm2 = hole.area * stepMm * stepMm;
		if (!isOpen && (areaMm2 < mostShineMm2 || (areaMm2 < 600 && meanOf(odd, holes.labels, hole) > -0.9))) {
			isShine.add(hole.label);
		}
	}
	for (let at = 0; at < on.length; at += 1) if (isShine.has(holes.labels[at] ?? 0)) on[at] = 1;
	return {...mask, on};
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

function deepest(
	{width, values}: Field,
	labels: Int32Array,
	{label, left, right, top, bottom}: Region,
): number {
	let most = 0;
	for (let y = top; y <= bottom; y += 1) {
		for (let at = y * width + left; at <= y * width + right; at += 1) {
			if (labels[at] === label && (values[at] ?? 0) > most) most = values[at] ?? 0;
		}
	}
	return most;
}

/** Takes off what a circle of 0.42 of the body's radius does not reach into. */
function open({
	depth,
	labels,
	core,
	radius,
}: {
	depth: Field;
	labels: Int32Array;
	core: Region;
	radius: number;
}): Mask {
	const reach = 0.42 * radius;
	const {width, height, values} = depth;
	const inner = new Uint8Array(values.length);
	for (let at = 0; at < inner.length; at += 1) {
		inner[at] = labels[at] === core.label && (values[at] ?? 0) > reach ? 1 : 0;
	}
	const parts = regionsOf({width, height, on: inner}, 1);
	const [largest] = parts.list.toSorted((a, b) => b.area - a.area);
	const isLargest = (label: number | undefined) => label === largest?.label;
	const rest = inner.map((_, at) => (isLargest(parts.labels[at]) ? 0 : 1));
	const away = depthOf({width, height, on: rest}, true);
	const on = new Uint8Array(values.length);
	for (let at = 0; at < on.length; at += 1) {
		on[at] = (away.values[at] ?? 0) < reach && (values[at] ?? 0) > 0 ? 1 : 0;
	}
	return {width, height, on};
}

function isCut({width, height, on}: Mask, {known}: FlatView): boolean {
	let cut = 0;
	for (let at = 0; at < on.length; at += 1) {
		if (on[at] !== 1) continue;
		const x = at % width;
		const isOut = x === 0 || x === width - 1 || at < width || at >= width * (height - 1);
		if (
			isOut ||
			known[at - 1] !== 1 ||
			known[at + 1] !== 1 ||
			known[at - width] !== 1 ||
			known[at + width] !== 1
		)
			cut += 1;
	}
	return cut > 3;
}
