/** Lines on which pieces of edges lie one behind the other, as those of a side do that a pattern or a shadow breaks. */
import type {Piece} from './edge-pieces.ts';
import {gatherPoints} from './principal.ts';
import type {Point} from './raster.ts';

/** A line: a point of it, its way, and from where to where along it there are edges, in order. */
export type EdgeLine = {
	readonly at: Point;
	readonly way: Point;
	readonly stretches: readonly (readonly [from: number, to: number])[];
	/** How long its edges are together. */
	readonly longPx: number;
};

/** How far off a line the ends of a piece may be. */
const nearPx = 1.5;
/** Shorter pieces have a way of their own only by chance. */
const leastPx = 8;
/** Between the stretches of one line there may be so much where nothing is seen. */
const mostGapPx = 60;
const mostLines = 70;

/** The lines of all pieces, those with the longest edges first. */
export function linesOfPieces(pieces: readonly Piece[]): readonly EdgeLine[] {
	const long = pieces.toSorted((a, b) => lengthOf(b) - lengthOf(a));
	const lines: EdgeLine[] = [];
	for (const piece of long) {
		if (lengthOf(piece) < leastPx) break;
		const first = lineThrough([piece]);
		if (lines.some(line => holds(line, piece))) continue;
		// Once more, since the way of one short piece is rough.
		const second = lineThrough(joined(first, pieces));
		lines.push(withStretches(second, joined(second, pieces)));
	}
	return lines.toSorted((a, b) => b.longPx - a.longPx).slice(0, mostLines);
}

function lengthOf({from, to}: Piece): number {
	return Math.hypot(to[0] - from[0], to[1] - from[1]);
}

type Bare = Pick<EdgeLine, 'at' | 'way'>;

/** How far outwards of a line a point is, to the left of its way. */
export function offOf({at, way}: Bare, [x, y]: Point): number {
	return (y - at[1]) * way[0] - (x - at[0]) * way[1];
}

/** How far along a line a point is. */
export function alongOf({at, way}: Bare, [x, y]: Point): number {
	return (x - at[0]) * way[0] + (y - at[1]) * way[1];
}

function isOn(line: Bare, {from, to}: Piece): boolean {
	return Math.abs(offOf(line, from)) < nearPx && Math.abs(offOf(line, to)) < nearPx;
}

function holds(line: EdgeLine, piece: Piece): boolean {
	if (!isOn(line, piece)) return false;
	const middle = (alongOf(line, piece.from) + alongOf(line, piece.to)) / 2;
	return line.stretches.some(([from, to]) => from <= middle && middle <= to);
}

/** The pieces on a line that follow each other without too large a gap, from its own point on. */
function joined(line: Bare, pieces: readonly Piece[]): readonly Piece[] {
	const on = pieces
		.filter(piece => isOn(line, piece))
		.map(piece => ({piece, span: spanOf(line, piece)}))
		.toSorted((a, b) => a.span[0] - b.span[0]);
	let [group, reach]: [typeof on, number] = [[], Number.NEGATIVE_INFINITY];
	for (const one of on) {
		if (one.span[0] - reach > mostGapPx) {
			if (reach >= 0) break;
			group = [];
		}
		group.push(one);
		reach = Math.max(reach, one.span[1]);
	}
	return group.map(({piece}) => piece);
}

function spanOf(line: Bare, {from, to}: Piece): readonly [number, number] {
	const [a, b] = [alongOf(line, from), alongOf(line, to)];
	return a < b ? [a, b] : [b, a];
}

/** The line through the ends of pieces, each by its length. */
function lineThrough(pieces: readonly Piece[]): Bare {
	const points = gatherPoints();
	for (const piece of pieces) {
		const weight = lengthOf(piece);
		for (const [x, y] of [piece.from, piece.to]) points.add(x, y, weight);
	}
	const {middle, along} = points.principal();
	return {at: middle, way: along};
}

function withStretches(line: Bare, pieces: readonly Piece[]): EdgeLine {
	const stretches: [number, number][] = [];
	for (const [from, to] of pieces.map(piece => spanOf(line, piece)).toSorted((a, b) => a[0] - b[0])) {
		const last = stretches.at(-1);
		if (last && from <= last[1] + 1) last[1] = Math.max(last[1], to);
		else stretches.push([from, to]);
	}
	return {...line, stretches, longPx: stretches.reduce((sum, [from, to]) => sum + to - from, 0)};
}

/** The share of a part of a line where there are edges. */
export function seenShare({stretches}: EdgeLine, from: number, to: number): number {
	const [low, high] = from < to ? [from, to] : [to, from];
	let sum = 0;
	for (const [a, b] of stretches) sum += Math.max(0, Math.min(b, high) - Math.max(a, low));
	return sum / Math.max(1e-6, high - low);
}
