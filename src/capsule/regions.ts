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

/** Finds the connected parts of at least `leastArea` points; smaller ones keep their label and are not listed. */
export function regionsOf({width, height, on}: Mask, leastArea: number): Regions {
	const labels = new Int32Array(width * height);
	const stack = new Int32Array(width * height);
	const list: Region[] = [];
	let label = 0;
	for (let start = 0; start < on.length; start += 1) {
		if (on[start] !== 1 || labels[start] !== 0) continue;
		label += 1;
		labels[start] = label;
		stack[0] = start;
		let [held, area] = [1, 0];
		let [left, right, top, bottom] = [width, 0, height, 0];
		while (held > 0) {
			held -= 1;
			const at = stack[held] ?? 0;
			const y = Math.floor(at / width);
			const x = at - y * width;
			area += 1;
			if (x < left) left = x;
			if (x > right) right = x;
			if (y < top) top = y;
			if (y > bottom) bottom = y;
			for (let side = 0; side < 4; side += 1) {
				const isOut =
					side === 0 ? x === 0 : side === 1 ? x === width - 1 : side === 2 ? y === 0 : y === height - 1;
				if (isOut) continue;
				const next = at + (side === 0 ? -1 : side === 1 ? 1 : side === 2 ? -width : width);
				if (on[next] !== 1 || labels[next] !== 0) continue;
				labels[next] = label;
				stack[held] = next;
				held += 1;
			}
		}
		if (area >= leastArea) list.push({label, area, left, top, right, bottom});
	}
	return {width, height, labels, list};
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
