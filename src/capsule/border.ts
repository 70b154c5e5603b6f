/** The border of a body on one side: the smooth curve that most edges lie on. */
import type {Edge} from './edges.ts';
import {median} from './median.ts';
import {makeScales} from './weighing.ts';

/** A border: outwards distance at a place along the side, and how well it was seen. */
export type Border = {
	readonly at: (place: number) => number;
	/** Support by edges, from 0 to 1. */
	readonly score: number;
	/** Median strength of its edges, in grey levels. */
	readonly strength: number;
	/** How sure it is that ground lies outside and something else inside, from 0 to 1: the median of its edges. */
	readonly trust: number;
	/** How far edges scatter about it, one sigma in millimetres. */
	readonly scatterMm: number;
	/** Share of the lines that have an edge on it. */
	readonly seen: number;
	/** How far it was moved in from the edge of a narrow shadow. */
	readonly insideMm?: number;
	/** How far to both sides it may lie as well, since there may be a shadow or none. */
	readonly unsureMm?: number;
};

/** What a border may look like. */
export type Bend = {
	/** Half of the span that is looked at, in millimetres. */
	readonly halfMm: number;
	/** The most that the middle may stand off the ends of the span. */
	readonly mostBowMm: number;
	readonly mostSlope: number;
	readonly order: 2 | 3;
	/** How far an edge may lie off it and still count. */
	readonly reachMm: number;
};

/** Curves tightened before giving up; those that follow have ever fewer edges. */
const mostLooked = 12;
const mostBorders = 4;
/** Of each third of a side, the best edges that curves are laid through. */
const mostPerPart = 9;

/** The borders that the edges of a strip may show, best first; each at least `apartMm` from the others in its middle. */
export function findBorders(edges: readonly Edge[], bend: Bend, apartMm: number): readonly Border[] {
	const lines = new Set(edges.map(({line}) => line)).size;
	if (lines < 7) return [];
	const worth = edges.map(edge => ({...edge, worth: worthOf(edge)})).filter(({worth: value}) => value > 0.02);
	const look = {bend, apartMm, lines};
	const first = bordersThrough(worth, worth, {...look, known: []});
	// A faint border has hardly an edge among the best of all, so those of the borders found are left out once.
	const rest = worth.filter(edge => first.every(({at}) => Math.abs(edge.at - at(edge.place)) > apartMm));
	const all = [...first, ...bordersThrough(rest, worth, {...look, known: first})];
	return all.toSorted((a, b) => b.score - a.score).slice(0, mostBorders);
}

type Look = {
	readonly bend: Bend;
	readonly apartMm: number;
	readonly lines: number;
	/** Borders found before. */
	readonly known: readonly Border[];
};

/** The borders that go through some of the edges, each apart from the others and from those known. */
function bordersThrough(
	some: readonly Worthy[],
	all: readonly Worthy[],
	{bend, apartMm, lines, known}: Look,
): readonly Border[] {
	const third = bend.halfMm / 3;
	const parts = [
		some.filter(({place}) => place < -third),
		some.filter(({place}) => Math.abs(place) <= third),
		some.filter(({place}) => place > third),
	].map(list => list.toSorted((a, b) => b.worth - a.worth).slice(0, mostPerPart));
	const support = supportBy(all, bend);
	const tried = curvesThrough(parts, bend).map(curve => ({curve, score: support(curve)}));
	const borders: Border[] = [];
	const isNew = (at: number) => [...known, ...borders].every(other => Math.abs(other.at(0) - at) >= apartMm);
	let looked = 0;
	for (const {curve} of tried.toSorted((a, b) => b.score - a.score)) {
		if (borders.length === mostBorders || looked === mostLooked) break;
		if (!isNew(curve[0])) continue;
		looked += 1;
		const border = tighten(curve, all, {bend, lines});
		if (border && isNew(border.at(0))) borders.push(border);
	}
	return borders;
}

type Worthy = Edge & {readonly worth: number};
type Curve = readonly [middle: number, slope: number, bow: number];

function worthOf({strength, trust}: Edge): number {
	return trust * (strength / (strength + 12));
}

function curvesThrough(
	[left = [], middle = [], right = []]: readonly (readonly Worthy[])[],
	{halfMm, mostBowMm, mostSlope}: Bend,
): readonly Curve[] {
	const curves: Curve[] = [];
	for (const a of left) {
		for (const b of middle) {
			for (const c of right) {
				const x = a.place / halfMm;
				const y = b.place / halfMm;
				const z = c.place / halfMm;
				const first = (b.at - a.at) / (y - x);
				const bow = ((c.at - b.at) / (z - y) - first) / (z - x);
				const slope = first - bow * (x + y);
				if (Math.abs(bow) > mostBowMm || Math.abs(slope) > mostSlope * halfMm) continue;
				curves.push([a.at - slope * x - bow * x * x, slope, bow]);
			}
		}
	}
	return curves;
}

/** How much edges speak for a curve; their numbers are laid side by side, since thousands of curves ask. */
function supportBy(edges: readonly Worthy[], {halfMm, reachMm}: Bend): (curve: Curve) => number {
	const places = Float64Array.from(edges, ({place}) => place / halfMm);
	const [ats, worths] = [
		Float64Array.from(edges, ({at}) => at),
		Float64Array.from(edges, ({worth}) => worth),
	];
	return curve => {
		const middle = curve[0];
		const slope = curve[1];
		const bow = curve[2];
		let sum = 0;
		for (let index = 0; index < places.length; index += 1) {
			const x = places[index] ?? 0;
			const miss = Math.abs((ats[index] ?? 0) - middle - x * (slope + bow * x)) / reachMm;
			if (miss < 1) sum += (worths[index] ?? 0) * (1 - miss * miss);
		}
		return sum;
	};
}

function tighten(
	start: Curve,
	edges: readonly Worthy[],
	{bend, lines}: {bend: Bend; lines: number},
): Border | undefined {
	let at = curveOf(start, bend.halfMm);
	let kept: readonly Worthy[] = [];
	const scales = makeScales(bend.order + 1, 1);
	for (const wide of [1.4, 1.1, 1, 1]) {
		const reach = bend.reachMm * wide;
		kept = nearest(edges, at).filter(edge => Math.abs(edge.at - at(edge.place)) < reach);
		if (kept.length < Math.max(5, 0.25 * lines)) return undefined;
		scales.clear();
		for (const edge of kept) {
			const x = edge.place / bend.halfMm;
			scales.row.set(bend.order === 2 ? [1, x, x * x] : [1, x, x * x, x * x * x]);
			scales.add(edge.worth * (1 - ((edge.at - at(edge.place)) / reach) ** 2) ** 2, edge.at);
		}
		const fit = scales.unknowns(0);
		if (!fit) return undefined;
		at = curveOf(fit, bend.halfMm);
	}
	const off = kept.map(edge => edge.at - at(edge.place));
	return {
		at,
		score: kept.reduce((sum, {worth}) => sum + worth, 0) / lines,
		strength: median(kept.map(({strength}) => strength)),
		trust: median(kept.map(({trust}) => trust)),
		scatterMm: Math.sqrt(off.reduce((sum, value) => sum + value * value, 0) / off.length),
		seen: kept.length / lines,
	};
}

function curveOf(factors: ArrayLike<number>, halfMm: number): (place: number) => number {
	const [a, b, c, d] = [factors[0] ?? 0, factors[1] ?? 0, factors[2] ?? 0, factors[3] ?? 0];
	return place => {
		const x = place / halfMm;
		return a + x * (b + x * (c + x * d));
	};
}

/** Of each line the edge nearest to the curve. */
function nearest(edges: readonly Worthy[], valueAt: (place: number) => number): readonly Worthy[] {
	const best = new Map<number, Worthy>();
	for (const edge of edges) {
		const other = best.get(edge.line);
		const miss = Math.abs(edge.at - valueAt(edge.place));
		if (!other || miss < Math.abs(other.at - valueAt(other.place))) best.set(edge.line, edge);
	}
	return [...best.values()];
}
