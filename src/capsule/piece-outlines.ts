/** Four-sided outlines put together from pieces of edges, for cards with a pattern, in part in shade, or on a pattern. */
import {alongOf, type EdgeLine, linesOfPieces, seenShare} from './edge-lines.ts';
import {piecesOf} from './edge-pieces.ts';
import {type Corners, isNear, type Outline} from './four-sided.ts';
import type {Slopes} from './long-lines.ts';
import type {Point} from './raster.ts';

/** Where another line crosses a line, how far along, and how far along the other. */
type Crossing = {
	readonly other: number;
	readonly at: Point;
	readonly along: number;
	readonly otherAlong: number;
};

/** Of each side so much has to be seen; of all four together more (tuned on made-up cards). */
const [leastSeen, leastMean] = [0.25, 0.6];
const leastSidePx = 14;
/** Between the sides of a card or a sheet, held aslant by as much as is measured. */
const slims = [1.1, 2.1] as const;
/** The sine between two sides that meet. */
const leastTurn = 0.8;
const mostOutlines = 40;

/** Four-sided outlines with edges along all sides, those first that are seen best and end where their sides do. */
export function outlinesOfPieces(slopes: Slopes): readonly Outline[] {
	const lines = linesOfPieces(piecesOf(slopes));
	const crossings = lines.map((_, index) => crossingsOf(lines, index));
	const found: Outline[] = [];
	for (const [index, line] of lines.entries()) {
		for (const [first, second] of sidesOn(line, crossings[index] ?? [])) {
			found.push(...closed({lines, crossings, index}, first, second));
		}
	}
	return distinct(found.toSorted((a, b) => b.votes - a.votes));
}

function crossingsOf(lines: readonly EdgeLine[], index: number): readonly Crossing[] {
	const line = lines[index];
	return lines.flatMap((other, at) => {
		const point = line && at !== index ? meetingOf(line, other) : undefined;
		return point && line
			? [{other: at, at: point, along: alongOf(line, point), otherAlong: alongOf(other, point)}]
			: [];
	});
}

function meetingOf(a: EdgeLine, b: EdgeLine): Point | undefined {
	const turn = a.way[0] * b.way[1] - a.way[1] * b.way[0];
	if (Math.abs(turn) < leastTurn) return undefined;
	const along = ((b.at[0] - a.at[0]) * b.way[1] - (b.at[1] - a.at[1]) * b.way[0]) / turn;
	return [a.at[0] + along * a.way[0], a.at[1] + along * a.way[1]];
}

/** The pairs of crossings between which a line has edges enough for a side. */
function* sidesOn(line: EdgeLine, crossings: readonly Crossing[]): Generator<readonly [Crossing, Crossing]> {
	for (const [at, first] of crossings.entries()) {
		for (const second of crossings.slice(at + 1)) {
			const long = Math.abs(first.along - second.along);
			if (long > leastSidePx && seenShare(line, first.along, second.along) > leastSeen) yield [first, second];
		}
	}
}

type Net = {
	readonly lines: readonly EdgeLine[];
	readonly crossings: readonly (readonly Crossing[])[];
	readonly index: number;
};

/** Outlines of a side, its two neighbours, and whatever line crosses both of these. */
function closed({lines, crossings, index}: Net, first: Crossing, second: Crossing): readonly Outline[] {
	const long = Math.hypot(first.at[0] - second.at[0], first.at[1] - second.at[1]);
	const line = lines[index];
	const [before, after] = [lines[first.other], lines[second.other]];
	if (!line || !before || !after) return [];
	return (crossings[first.other] ?? []).flatMap(third => {
		// Each outline is met from all its sides; from the first of them is enough.
		if (third.other <= index || third.other === second.other) return [];
		const far = Math.abs(third.along - first.otherAlong);
		if (
			far < leastSidePx ||
			!isSlim(long / far) ||
			seenShare(before, first.otherAlong, third.along) < leastSeen
		)
			return [];
		const fourth = (crossings[second.other] ?? []).find(({other}) => other === third.other);
		const opposite = lines[third.other];
		if (!fourth || !opposite || Math.abs(fourth.along - second.otherAlong) < leastSidePx) return [];
		const corners = clockwise([first.at, second.at, fourth.at, third.at]);
		const sides = [
			shareAndEnds(line, first.along, second.along),
			shareAndEnds(before, first.otherAlong, third.along),
			shareAndEnds(after, second.otherAlong, fourth.along),
			shareAndEnds(opposite, third.otherAlong, fourth.otherAlong),
		];
		const least = Math.min(...sides.map(({seen}) => seen));
		const mean = sides.reduce((sum, {seen}) => sum + seen, 0) / 4;
		const beyond = sides.reduce((sum, one) => sum + one.beyond, 0) / 4;
		return corners && least > leastSeen && mean > leastMean
			? [{corners, votes: least + 2 * mean - beyond}]
			: [];
	});
}

function isSlim(slim: number): boolean {
	const by = Math.max(slim, 1 / slim);
	return by > slims[0] && by < slims[1];
}

/** How much of a side is seen, and how much of its line beyond the corners, where a side ends. */
function shareAndEnds(line: EdgeLine, from: number, to: number) {
	const [low, high] = from < to ? [from, to] : [to, from];
	const beyond = (seenShare(line, low - 12, low - 3) + seenShare(line, high + 3, high + 12)) / 2;
	return {seen: seenShare(line, low, high), beyond};
}

/** The four corners clockwise as seen; undefined where the outline crosses itself or turns back. */
function clockwise([a, b, c, d]: Corners): Corners | undefined {
	const turns = [turnAt(d, a, b), turnAt(a, b, c), turnAt(b, c, d), turnAt(c, d, a)];
	if (turns.every(turn => turn > 0)) return [a, b, c, d];
	return turns.every(turn => turn < 0) ? [a, d, c, b] : undefined;
}

function turnAt([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number {
	return (bx - ax) * (cy - by) - (by - ay) * (cx - bx);
}

/** Without those that nearly are one before them. */
function distinct(outlines: readonly Outline[]): readonly Outline[] {
	const kept: Outline[] = [];
	for (const one of outlines) {
		if (kept.length === mostOutlines) break;
		if (!kept.some(other => isNear(other.corners, one.corners, 2))) kept.push(one);
	}
	return kept;
}
