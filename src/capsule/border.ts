/** The border of a body on one side: the smooth curve that most edges lie on. */
import {solve} from './solve.ts';
import type {Edge} from './strip.ts';

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

/** The borders that the edges of a strip may show, best first; each at least `apartMm` from the others in its middle. */
export function findBorders(edges: readonly Edge[], bend: Bend, apartMm: number): readonly Border[] {
	const lines = new Set(edges.map(({line}) => line)).size;
	if (lines < 7) return [];
	const worth = edges.map(edge => ({...edge, worth: worthOf(edge)})).filter(({worth: value}) => value > 0.02);
	const third = bend.halfMm / 3;
	const parts = [
		worth.filter(({place}) => place < -third),
		worth.filter(({place}) => Math.abs(place) <= third),
		worth.filter(({place}) => place > third),
	].map(list => list.toSorted((a, b) => b.worth - a.worth).slice(0, 10));
	const tried = curvesThrough(parts, bend).map(curve => ({curve, score: supportOf(curve, worth, bend)}));
	const borders: Border[] = [];
	let looked = 0;
	for (const {curve} of tried.toSorted((a, b) => b.score - a.score)) {
		if (borders.length === 3 || looked === mostLooked) break;
		if (borders.some(other => Math.abs(other.at(0) - curve[0]) < apartMm)) continue;
		looked += 1;
		const border = tighten(curve, worth, {bend, lines});
		if (border && !borders.some(other => Math.abs(other.at(0) - border.at(0)) < apartMm))
			borders.push(border);
	}
	return borders.toSorted((a, b) => b.score - a.score);
}

type Worthy = Edge & {readonly worth: number};
type Curve = readonly [middle: number, slope: number, bow: number];

function worthOf({strength, trust}: Edge): number {
	return trust * (strength / (strength + 12));
}

function* triples(parts: readonly (readonly Worthy[])[]): Generator<readonly [Worthy, Worthy, Worthy]> {
	const [left = [], middle = [], right = []] = parts;
	for (const a of left) for (const b of middle) for (const c of right) yield [a, b, c];
}

function curvesThrough(
	parts: readonly (readonly Worthy[])[],
	{halfMm, mostBowMm, mostSlope}: Bend,
): readonly Curve[] {
	const curves: Curve[] = [];
	for (const [a, b, c] of triples(parts)) {
		const [x, y, z] = [a.place / halfMm, b.place / halfMm, c.place / halfMm];
		const first = (b.at - a.at) / (y - x);
		const second = (c.at - b.at) / (z - y);
		const bow = (second - first) / (z - x);
		const slope = first - bow * (x + y);
		if (Math.abs(bow) > mostBowMm || Math.abs(slope) > mostSlope * halfMm) continue;
		curves.push([a.at - slope * x - bow * x * x, slope, bow]);
	}
	return curves;
}

function supportOf([middle, slope, bow]: Curve, edges: readonly Worthy[], {halfMm, reachMm}: Bend): number {
	let sum = 0;
	for (const {place, at, worth} of edges) {
		const x = place / halfMm;
		const miss = Math.abs(at - middle - slope * x - bow * x * x) / reachMm;
		if (miss < 1) sum += worth * (1 - miss * miss);
	}
	return sum;
}

function tighten(
	start: Curve,
	edges: readonly Worthy[],
	{bend, lines}: {bend: Bend; lines: number},
): Border | undefined {
	const rowOf = (place: number) => {
		const x = place / bend.halfMm;
		return bend.order === 2 ? [1, x, x * x] : [1, x, x * x, x * x * x];
	};
	let factors: readonly number[] = start;
	const valueAt = (place: number) =>
		rowOf(place).reduce((sum, term, index) => sum + term * (factors[index] ?? 0), 0);
	let kept: readonly Worthy[] = [];
	for (const wide of [1.4, 1.1, 1, 1]) {
		const reach = bend.reachMm * wide;
		kept = nearest(edges, valueAt).filter(({place, at}) => Math.abs(at - valueAt(place)) < reach);
		if (kept.length < Math.max(5, 0.25 * lines)) return undefined;
		const weights = kept.map(({place, at, worth}) => worth * (1 - ((at - valueAt(place)) / reach) ** 2) ** 2);
		const fit = solve(
			kept.map(({place}) => rowOf(place)),
			kept.map(({at}) => at),
			weights,
		);
		if (!fit) return undefined;
		factors = fit;
	}
	const final = factors;
	const at = (place: number) =>
		rowOf(place).reduce((sum, term, index) => sum + term * (final[index] ?? 0), 0);
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

function median(values: readonly number[]): number {
	return values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
}
