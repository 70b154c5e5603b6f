/** Connected parts of a mask, and the smallest fence round each. */
import type {Point} from './raster.ts';

/** Which points belong to something: 1 for yes. */
export type Mask = {readonly width: number; readonly height: number; readonly on: Uint8Array};

/** One connected part of a mask. */
export type Region = {
	readonly label: number;
	readonly area: number;
	readonly left: number;
	readonly top: number;
	readonly right: number;
	readonly bottom: number;
};

/** The parts of a mask, joined by their sides, and the label of the part each point belongs to, 0 for none. */
export type Regions = {
	readonly width: number;
	readonly height: number;
	readonly labels: Int32Array;
	readonly list: readonly Region[];
};

/**
 * Stretches of points beside each other, row by row: `starts` is where each row's begin, `roots` the first run of the part
 * that each is of, and `areas` how many points the part has that a run is the first of.
 */
export type Runs = {
	readonly firsts: Int32Array;
	readonly lasts: Int32Array;
	readonly starts: Int32Array;
	readonly roots: Int32Array;
	readonly areas: Int32Array;
};

/** Room for the runs of any mask of a size, to be used again by one mask after another. */
export function roomForRuns(width: number, height: number): Runs {
	const most = Math.ceil(width / 2) * height;
	const [firsts, lasts] = [new Int32Array(most), new Int32Array(most)];
	const [roots, areas] = [new Int32Array(most), new Int32Array(most)];
	return {firsts, lasts, starts: new Int32Array(height + 1), roots, areas};
}

/**
 * Finds the connected parts of at least `leastArea` points, or with `of` 0 those of what is not of the mask; smaller ones
 * keep their label and are not listed.
 */
export function regionsOf(mask: Mask, leastArea: number, of: 0 | 1 = 1): Regions {
	const {width, height} = mask;
	const runs = roomForRuns(width, height);
	const list = partsOf(mask, {leastArea, of, runs});
	const labels = new Int32Array(width * height);
	for (let y = 0; y < height; y += 1) {
		const row = y * width;
		for (let run = runs.starts[y] ?? 0; run < (runs.starts[y + 1] ?? 0); run += 1)
			labels.fill(
				(runs.roots[run] ?? 0) + 1,
				row + (runs.firsts[run] ?? 0),
				row + (runs.lasts[run] ?? 0) + 1,
			);
	}
	return {width, height, labels, list};
}

/** The parts alone, their runs left in the room that is handed in: for many masks, of which labels are not wanted. */
export function partsOf(
	mask: Mask,
	{leastArea, of, runs}: {readonly leastArea: number; readonly of: 0 | 1; readonly runs: Runs},
): readonly Region[] {
	findRuns(mask, of, runs);
	joinRuns(runs, mask.height);
	const {firsts, lasts, starts, roots, areas} = runs;
	// A run points to one before it, which is led to its root by now.
	for (let run = 0; run < (starts[mask.height] ?? 0); run += 1) {
		const root = roots[roots[run] ?? 0] ?? 0;
		roots[run] = root;
		if (root === run) areas[root] = 0;
		areas[root] = (areas[root] ?? 0) + (lasts[run] ?? 0) - (firsts[run] ?? 0) + 1;
	}
	const parts = new Map<number, {-readonly [Key in keyof Region]: Region[Key]}>();
	for (let y = 0; y < mask.height; y += 1) {
		for (let run = starts[y] ?? 0; run < (starts[y + 1] ?? 0); run += 1) {
			const root = roots[run] ?? 0;
			const area = areas[root] ?? 0;
			if (area < leastArea) continue;
			const [left, right] = [firsts[run] ?? 0, lasts[run] ?? 0];
			const part = parts.get(root);
			if (!part) {
				parts.set(root, {label: root + 1, area, left, right, top: y, bottom: y});
				continue;
			}
			if (left < part.left) part.left = left;
			if (right > part.right) part.right = right;
			part.bottom = y;
		}
	}
	return [...parts.values()];
}

function findRuns({width, height, on}: Mask, of: 0 | 1, {firsts, lasts, starts, roots}: Runs): void {
	let count = 0;
	for (let y = 0; y < height; y += 1) {
		starts[y] = count;
		const end = (y + 1) * width;
		let at = y * width;
		while (at < end) {
			while (at < end && on[at] !== of) at += 1;
			if (at === end) break;
			firsts[count] = at - y * width;
			while (at < end && on[at] === of) at += 1;
			lasts[count] = at - 1 - y * width;
			roots[count] = count;
			count += 1;
		}
	}
	starts[height] = count;
}

/** Joins the runs that touch one of the row above; each run points to one further up its part. */
function joinRuns({firsts, lasts, starts, roots}: Runs, height: number): void {
	for (let y = 1; y < height; y += 1) {
		let above = starts[y - 1] ?? 0;
		const endAbove = starts[y] ?? 0;
		for (let run = endAbove; run < (starts[y + 1] ?? 0); run += 1) {
			while (above < endAbove && (lasts[above] ?? 0) < (firsts[run] ?? 0)) above += 1;
			for (let other = above; other < endAbove && (firsts[other] ?? 0) <= (lasts[run] ?? 0); other += 1) {
				const [a, b] = [rootOf(roots, run), rootOf(roots, other)];
				if (a !== b) roots[Math.max(a, b)] = Math.min(a, b);
			}
		}
	}
}

function rootOf(roots: Int32Array, run: number): number {
	let at = run;
	while (roots[at] !== at) {
		const up = roots[at] ?? 0;
		roots[at] = roots[up] ?? 0;
		at = up;
	}
	return at;
}

/** The convex fence round a part, clockwise as seen, through the outer sides of its points. */
export function fenceRound({firsts, lasts, starts, roots}: Runs, part: Region): readonly Point[] {
	const points: Point[] = [];
	let [left, right] = [Infinity, -Infinity];
	for (let y = part.top; y <= part.bottom; y += 1) {
		const [leftAbove, rightAbove] = [left, right];
		[left, right] = [Infinity, -Infinity];
		for (let run = starts[y] ?? 0; run < (starts[y + 1] ?? 0); run += 1) {
			if (roots[run] !== part.label - 1) continue;
			left = Math.min(left, firsts[run] ?? 0);
			right = Math.max(right, lasts[run] ?? 0);
		}
		const [leftmost, rightmost] = [Math.min(left, leftAbove), Math.max(right, rightAbove)];
		points.push([leftmost - 0.5, y - 0.5], [rightmost + 0.5, y - 0.5]);
	}
	points.push([left - 0.5, part.bottom + 0.5], [right + 0.5, part.bottom + 0.5]);
	return fenceOfSorted(points);
}

/** The convex fence round points, clockwise where down is positive. */
export function convexHull(points: readonly Point[]): readonly Point[] {
	return fenceOfSorted(points.toSorted(([ax, ay], [bx, by]) => ay - by || ax - bx));
}

/** Andrew's chain, over points from the top down and, at one height, from left to right. */
function fenceOfSorted(sorted: readonly Point[]): readonly Point[] {
	const half = (list: readonly Point[]) => {
		const fence: Point[] = [];
		for (const point of list) {
			while (fence.length > 1 && turnOf(fence.at(-2), fence.at(-1), point) <= 0) fence.pop();
			fence.push(point);
		}
		return fence.slice(0, -1);
	};
	return [...half(sorted), ...half(sorted.toReversed())];
}

/** The area inside a closed fence. */
export function areaOf(fence: readonly Point[]): number {
	let twice = 0;
	for (const [index, [x, y]] of fence.entries()) {
		const [nextX, nextY] = fence[(index + 1) % fence.length] ?? [0, 0];
		twice += x * nextY - nextX * y;
	}
	return Math.abs(twice) / 2;
}

/** Twice the area of the triangle of three points, positive when they turn clockwise where down is positive. */
export function turnOf(a: Point = [0, 0], b: Point = [0, 0], c: Point = [0, 0]): number {
	return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}
