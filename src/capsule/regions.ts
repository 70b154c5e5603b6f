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
 * Finds the connected parts of at least `leastArea` points, or with `of` 0 those of what is not of the mask; smaller ones
 * keep their label and are not listed.
 */
export function regionsOf({width, height, on}: Mask, leastArea: number, of: 0 | 1 = 1): Regions {
	const labels = new Int32Array(width * height);
	const runs = runsOf({width, height, on}, of);
	const roots = joinRuns(runs, height);
	const boxes = new Map<
		number,
		{label: number; area: number; left: number; top: number; right: number; bottom: number}
	>();
	for (let run = 0; run < runs.count; run += 1) {
		const root = rootOf(roots, run);
		const [y, first, last] = [runs.rows[run] ?? 0, runs.firsts[run] ?? 0, runs.lasts[run] ?? 0];
		labels.fill(root + 1, y * width + first, y * width + last + 1);
		const box = boxes.get(root);
		if (!box) {
			boxes.set(root, {label: root + 1, area: last - first + 1, left: first, right: last, top: y, bottom: y});
			continue;
		}
		box.area += last - first + 1;
		if (first < box.left) box.left = first;
		if (last > box.right) box.right = last;
		box.bottom = y;
	}
	return {width, height, labels, list: [...boxes.values()].filter(({area}) => area >= leastArea)};
}

/** Stretches of points beside each other, row by row; `starts` is where each row's begin. */
type Runs = {
	readonly rows: Int32Array;
	readonly firsts: Int32Array;
	readonly lasts: Int32Array;
	readonly starts: Int32Array;
	readonly count: number;
};

function runsOf({width, height, on}: Mask, of: 0 | 1): Runs {
	const most = Math.ceil(width / 2) * height;
	const [rows, firsts, lasts] = [new Int32Array(most), new Int32Array(most), new Int32Array(most)];
	const starts = new Int32Array(height + 1);
	let count = 0;
	for (let y = 0; y < height; y += 1) {
		starts[y] = count;
		const row = y * width;
		let x = 0;
		while (x < width) {
			while (x < width && on[row + x] !== of) x += 1;
			if (x === width) break;
			firsts[count] = x;
			while (x < width && on[row + x] === of) x += 1;
			lasts[count] = x - 1;
			rows[count] = y;
			count += 1;
		}
	}
	starts[height] = count;
	return {rows, firsts, lasts, starts, count};
}

/** Joins the runs that touch one of the row above; each run points to one further up its part. */
function joinRuns({firsts, lasts, starts, count}: Runs, height: number): Int32Array {
	const roots = Int32Array.from({length: count}, (_, run) => run);
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
	return roots;
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
export function hullOf(
	{labels, width}: Regions,
	{label, left, right, top, bottom}: Region,
): readonly Point[] {
	const points: Point[] = [];
	for (let y = top; y <= bottom; y += 1) {
		const row = y * width;
		let first = left;
		while (first <= right && labels[row + first] !== label) first += 1;
		if (first > right) continue;
		let last = right;
		while (labels[row + last] !== label) last -= 1;
		points.push([first - 0.5, y - 0.5], [first - 0.5, y + 0.5], [last + 0.5, y - 0.5], [last + 0.5, y + 0.5]);
	}
	return convexHull(points);
}

/** The convex fence round points, clockwise where down is positive. */
export function convexHull(points: readonly Point[]): readonly Point[] {
	const sorted = points.toSorted(([ax, ay], [bx, by]) => ax - bx || ay - by);
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

function turnOf(a: Point = [0, 0], b: Point = [0, 0], c: Point = [0, 0]): number {
	return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}
