/** Outlines from long straight edges, for sheets that a case or its horns cut in two. */
import {type Corners, isNear, type Outline} from './four-sided.ts';
import type {Field, Point} from './raster.ts';
import {areaOf} from './regions.ts';

/** How steep a picture is at each point, and which way it rises. */
export type Slopes = {readonly across: Field; readonly down: Field};

type Line = {readonly angle: number; readonly offset: number; readonly votes: number};
type Pair = readonly [Line, Line];

const angles = 180;
const cosines = Float64Array.from({length: angles}, (_, angle) => Math.cos((angle * Math.PI) / angles));
const sines = Float64Array.from({length: angles}, (_, angle) => Math.sin((angle * Math.PI) / angles));
const mostLines = 24;
const weakest = 3;
const strongest = 24;
const leastShare = 0.015;
const leastSeen = 0.35;
const mostOutlines = 120;

/** Four-sided outlines whose sides all lie on long edges, best seen first. */
export function outlinesOfLines(slopes: Slopes): readonly Outline[] {
	const lines = linesOf(slopes);
	const pairs = lines.flatMap((first, index) =>
		lines.slice(index + 1).flatMap(second => (isOpposite(first, second) ? [[first, second] as const] : [])),
	);
	const found: Outline[] = [];
	for (const [index, one] of pairs.entries()) {
		for (const other of pairs.slice(index + 1)) {
			const corners = isCrossed(one, other) ? cornersOf([...one, ...other], slopes.across) : undefined;
			if (!corners) continue;
			const votes = votesFor(slopes, corners);
			if (votes > 0) found.push({corners, votes});
		}
	}
	return distinct(found.toSorted((a, b) => b.votes - a.votes))
		.map(({corners, votes}) => ({corners, votes: votes - goingOn(slopes, corners)}))
		.toSorted((a, b) => b.votes - a.votes);
}

/** Without those that nearly are one before them: many lines lie along the two edges of one shadow. */
function distinct(outlines: readonly Outline[]): readonly Outline[] {
	const kept: Outline[] = [];
	for (const one of outlines) {
		if (kept.length === mostOutlines) break;
		if (!kept.some(other => isNear(one.corners, other.corners, 3))) kept.push(one);
	}
	return kept;
}

/** Votes for lines by their angle and distance from the middle (Hough's transform, with the slope's own angle). */
function linesOf({across, down}: Slopes): readonly Line[] {
	const {width, height} = across;
	const reach = Math.ceil(Math.hypot(width, height) / 2) + 2;
	const span = 2 * reach;
	const votes = new Float32Array(angles * span);
	for (let y = 1; y < height - 1; y += 1) {
		for (let x = 1; x < width - 1; x += 1) {
			const gx = across.values[y * width + x] ?? 0;
			const gy = down.values[y * width + x] ?? 0;
			const steep = Math.sqrt(gx * gx + gy * gy);
			if (steep < weakest) continue;
			const own = Math.round((Math.atan2(gy, gx) / Math.PI) * angles) + 2 * angles;
			const weight = Math.min(steep, strongest);
			for (let turn = -1; turn <= 1; turn += 1) {
				const angle = (own + turn) % angles;
				const offset = (cosines[angle] ?? 0) * (x - width / 2) + (sines[angle] ?? 0) * (y - height / 2);
				const at = angle * span + Math.round(offset) + reach;
				votes[at] = (votes[at] ?? 0) + weight;
			}
		}
	}
	return peaksOf(votes, {span, reach});
}

function peaksOf(votes: Float32Array, {span, reach}: {span: number; reach: number}): readonly Line[] {
	const lines: Line[] = [];
	while (lines.length < mostLines) {
		let best = 0;
		for (let at = 1; at < votes.length; at += 1) if ((votes[at] ?? 0) > (votes[best] ?? 0)) best = at;
		const most = votes[best] ?? 0;
		if (most < 150 || most < 0.05 * (lines[0]?.votes ?? 0)) break;
		const angle = Math.floor(best / span);
		const offset = (best % span) - reach;
		lines.push({angle: (angle * Math.PI) / angles, offset, votes: most});
		for (let turn = -3; turn <= 3; turn += 1) {
			const other = angle + turn;
			const isRound = other < 0 || other >= angles;
			const row = ((other + angles) % angles) * span;
			const middle = (isRound ? -offset : offset) + reach;
			for (let at = Math.max(0, middle - 5); at <= Math.min(span - 1, middle + 5); at += 1)
				votes[row + at] = 0;
		}
	}
	return lines;
}

function isOpposite(a: Line, b: Line): boolean {
	const between = Math.abs(a.angle - b.angle);
	const turned = Math.min(between, Math.PI - between);
	if (turned > 0.6) return false;
	const isRound = between > Math.PI / 2;
	return Math.abs(a.offset - (isRound ? -b.offset : b.offset)) > 25;
}

/** Whether the lines of one pair cross those of another steeply enough to have corners; most do not. */
function isCrossed([a, b]: Pair, [c, d]: Pair): boolean {
	return isSteep(a, c) && isSteep(a, d) && isSteep(b, c) && isSteep(b, d);
}

function isSteep(first: Line, second: Line): boolean {
	return Math.abs(Math.sin(second.angle - first.angle)) >= 0.3;
}

function cornersOf(
	[a, b, c, d]: readonly [Line, Line, Line, Line],
	{width, height}: Field,
): Corners | undefined {
	const fromCorner = ([x, y]: Point): Point => [x + width / 2, y + height / 2];
	const isIn = ([x, y]: Point) => x > 1 && y > 1 && x < width - 1 && y < height - 1;
	const [p, q] = [fromCorner(meeting(a, c)), fromCorner(meeting(a, d))];
	if (!isIn(p) || !isIn(q)) return undefined;
	const [r, s] = [fromCorner(meeting(b, d)), fromCorner(meeting(b, c))];
	if (!isIn(r) || !isIn(s) || areaOf([p, q, r, s]) < leastShare * width * height) return undefined;
	const turns = [turnAt(s, p, q), turnAt(p, q, r), turnAt(q, r, s), turnAt(r, s, p)];
	if (turns.every(turn => turn > 0)) return [p, q, r, s];
	return turns.every(turn => turn < 0) ? [p, s, r, q] : undefined;
}

function meeting(first: Line, second: Line): Point {
	const whole = Math.sin(second.angle - first.angle);
	return [
		(first.offset * Math.sin(second.angle) - second.offset * Math.sin(first.angle)) / whole,
		(second.offset * Math.cos(first.angle) - first.offset * Math.cos(second.angle)) / whole,
	];
}

function turnAt([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number {
	return (bx - ax) * (cy - by) - (by - ay) * (cx - bx);
}

/** How plain all four sides are to see, the weakest above all; 0 when one is hardly there. */
function votesFor(slopes: Slopes, corners: Corners): number {
	let [sum, least] = [0, 1];
	for (const [index, corner] of corners.entries()) {
		const {seen, strength} = seenBetween(slopes, corner, corners[(index + 1) % 4] ?? corner);
		if (seen < leastSeen) return 0;
		// On grainy ground every line is seen everywhere, and only the strength tells a side.
		sum += seen + strength;
		least = Math.min(least, seen);
	}
	return 4 * least + sum;
}

/** How plainly sides go on beyond their corners, where those of a sheet or card end. */
function goingOn(slopes: Slopes, corners: Corners): number {
	let sum = 0;
	for (const [index, [x, y]] of corners.entries()) {
		for (const [fromX, fromY] of [corners[(index + 1) % 4] ?? [x, y], corners[(index + 3) % 4] ?? [x, y]]) {
			const long = Math.hypot(x - fromX, y - fromY);
			const beyond = (far: number): Point => [x + (far * (x - fromX)) / long, y + (far * (y - fromY)) / long];
			const {seen, strength} = seenBetween(slopes, beyond(5), beyond(17));
			sum += (seen * strength) / 2;
		}
	}
	return sum;
}

/** On which share of the way between two points the picture rises or falls across it, and how steeply, up to 1. */
function seenBetween(
	{across, down}: Slopes,
	from: Point,
	to: Point,
): {readonly seen: number; readonly strength: number} {
	const {width, height} = across;
	const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
	const normal: Point = [(to[1] - from[1]) / long, (from[0] - to[0]) / long];
	const steps = Math.max(8, Math.round(long / 3));
	let [seen, sum] = [0, 0];
	for (let step = 0; step < steps; step += 1) {
		const share = (step + 0.5) / steps;
		let most = 0;
		for (let off = -2; off <= 2; off += 1) {
			const x = Math.round(from[0] + share * (to[0] - from[0]) + off * normal[0]);
			const y = Math.round(from[1] + share * (to[1] - from[1]) + off * normal[1]);
			if (x < 0 || y < 0 || x >= width || y >= height) continue;
			const at = y * width + x;
			const rise = Math.abs((across.values[at] ?? 0) * normal[0] + (down.values[at] ?? 0) * normal[1]);
			if (rise > most) most = rise;
		}
		if (most > weakest) seen += 1;
		sum += Math.min(most, strongest);
	}
	return {seen: seen / steps, strength: sum / steps / strongest};
}
