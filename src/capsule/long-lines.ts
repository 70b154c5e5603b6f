/** Outlines from long straight edges, for sheets that a case or its horns cut in two. */
import type {Corners, Outline} from './four-sided.ts';
import type {Field, Point} from './raster.ts';
import {areaOf} from './regions.ts';

/** How steep a picture is at each point, and which way it rises. */
export type Slopes = {readonly across: Field; readonly down: Field};

type Line = {readonly angle: number; readonly offset: number; readonly votes: number};

const angles = 180;
const mostLines = 24;
const weakest = 3;
const strongest = 24;
const leastShare = 0.015;
const leastSeen = 0.35;

/** Four-sided outlines whose sides all lie on long edges, best seen first. */
export function outlinesOfLines(slopes: Slopes): readonly Outline[] {
	const lines = linesOf(slopes);
	const pairs = lines.flatMap((first, index) =>
		lines.slice(index + 1).flatMap(second => (isOpposite(first, second) ? [[first, second] as const] : [])),
	);
	const found: Outline[] = [];
	for (const [index, [a, b]] of pairs.entries()) {
		for (const [c, d] of pairs.slice(index + 1)) {
			const corners = cornersOf([a, b, c, d], slopes.across);
			if (!corners) continue;
			const votes = votesFor(slopes, corners);
			if (votes > 0) found.push({corners, votes});
		}
	}
	return found.toSorted((a, b) => b.votes - a.votes).slice(0, 40);
}

/** Votes for lines by their angle and distance from the middle (Hough's transform, with the slope's own angle). */
function linesOf({across, down}: Slopes): readonly Line[] {
	const {width, height} = across;
	const reach = Math.ceil(Math.hypot(width, height) / 2) + 2;
	const span = 2 * reach;
	const votes = new Float32Array(angles * span);
	for (let y = 1; y < height - 1; y += 1) {
		for (let x = 1; x < width - 1; x += 1) {
			const [gx, gy] = [across.values[y * width + x] ?? 0, down.values[y * width + x] ?? 0];
			const steep = Math.hypot(gx, gy);
			if (steep < weakest) continue;
			const own = Math.round((Math.atan2(gy, gx) / Math.PI) * angles) + 2 * angles;
			const weight = Math.min(steep, strongest);
			for (let turn = -1; turn <= 1; turn += 1) {
				const angle = (own + turn) % angles;
				const radians = (angle * Math.PI) / angles;
				const offset = Math.cos(radians) * (x - width / 2) + Math.sin(radians) * (y - height / 2);
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

function cornersOf(
	[a, b, c, d]: readonly [Line, Line, Line, Line],
	{width, height}: Field,
): Corners | undefined {
	const points = [
		[a, c],
		[a, d],
		[b, d],
		[b, c],
	].map(([first, second]) => (first && second ? meeting(first, second) : undefined));
	const [p, q, r, s] = points.map(point => point && ([point[0] + width / 2, point[1] + height / 2] as const));
	if (!p || !q || !r || !s) return undefined;
	const room = 1;
	const isIn = [p, q, r, s].every(([x, y]) => x > room && y > room && x < width - room && y < height - room);
	if (!isIn || areaOf([p, q, r, s]) < leastShare * width * height) return undefined;
	const turns = [turnAt(s, p, q), turnAt(p, q, r), turnAt(q, r, s), turnAt(r, s, p)];
	if (turns.every(turn => turn > 0)) return [p, q, r, s];
	return turns.every(turn => turn < 0) ? [p, s, r, q] : undefined;
}

function meeting(first: Line, second: Line): Point | undefined {
	const whole = Math.sin(second.angle - first.angle);
	if (Math.abs(whole) < 0.3) return undefined;
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
