/** Points of a plane and where they come to lie in a photo: the mapping between two views of a plane. */
import type {Point} from './raster.ts';
import {solve, solveSquare} from './solve.ts';

/** Nine numbers row by row that carry points of one plane to another. */
export type Homography = Float64Array;

/** The mapping that carries four or more points onto others, best in the sense of least squares; throws on fewer. */
export function homographyOf(pairs: readonly (readonly [from: Point, to: Point])[]): Homography {
	if (pairs.length < 4) throw new Error(`Expected at least four pairs of points; got ${pairs.length}`);
	// Numbers near one keep the equations well behaved.
	const [from, to] = [unitOf(pairs.map(([a]) => a)), unitOf(pairs.map(([, b]) => b))];
	const rows: number[][] = [];
	const right: number[] = [];
	for (const [a, b] of pairs) {
		const [x, y] = into(from, a);
		const [u, v] = into(to, b);
		rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]);
		right.push(u, v);
	}
	const found = (rows.length === 8 ? solveExactly(rows, right) : solve(rows, right)) ?? [];
	const unit = Float64Array.from([...found, 1]);
	return product(
		Float64Array.from([to.size, 0, to.x, 0, to.size, to.y, 0, 0, 1]),
		product(unit, inward(from)),
	);
}

/** Four pairs tell all eight unknowns by themselves. */
function solveExactly(
	rows: readonly (readonly number[])[],
	right: readonly number[],
): readonly number[] | undefined {
	return solveSquare(rows.map((row, index) => Float64Array.of(...row, right[index] ?? 0)));
}

/** Where a point goes. */
export function carry(m: Homography, [x, y]: Point): Point {
	const w = (m[6] ?? 0) * x + (m[7] ?? 0) * y + (m[8] ?? 0);
	return [
		((m[0] ?? 0) * x + (m[1] ?? 0) * y + (m[2] ?? 0)) / w,
		((m[3] ?? 0) * x + (m[4] ?? 0) * y + (m[5] ?? 0)) / w,
	];
}

/** The way back. */
export function inverse(m: Homography): Homography {
	const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = m;
	const whole = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
	const parts = [
		[e * i - f * h, c * h - b * i, b * f - c * e],
		[f * g - d * i, a * i - c * g, c * d - a * f],
		[d * h - e * g, b * g - a * h, a * e - b * d],
	];
	return Float64Array.from(parts.flat(), value => value / whole);
}

/** First the second, then the first. */
export function product(first: Homography, second: Homography): Homography {
	return Float64Array.from({length: 9}, (_, index) => {
		const [row, column] = [Math.floor(index / 3) * 3, index % 3];
		let sum = 0;
		for (let k = 0; k < 3; k += 1) sum += (first[row + k] ?? 0) * (second[k * 3 + column] ?? 0);
		return sum;
	});
}

type Unit = {readonly x: number; readonly y: number; readonly size: number};

function unitOf(points: readonly Point[]): Unit {
	const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
	const [x, y] = [mean(points.map(([px]) => px)), mean(points.map(([, py]) => py))];
	return {x, y, size: mean(points.map(([px, py]) => Math.hypot(px - x, py - y))) || 1};
}

function into({x, y, size}: Unit, [px, py]: Point): Point {
	return [(px - x) / size, (py - y) / size];
}

function inward({x, y, size}: Unit): Homography {
	return Float64Array.from([1 / size, 0, -x / size, 0, 1 / size, -y / size, 0, 0, 1]);
}
