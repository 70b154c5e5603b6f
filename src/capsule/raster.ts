/** A picture as numbers: red, green and blue of each pixel, and how to read between pixels. */

/** Red, green and blue from 0 to 255, row by row; the middle of the first pixel is at 0, 0. */
export type Raster = {readonly width: number; readonly height: number; readonly rgb: Uint8Array};

/** One number for each pixel or grid point, row by row. */
export type Field = {readonly width: number; readonly height: number; readonly values: Float32Array};

/** A point, across and down. */
export type Point = readonly [x: number, y: number];

/** Writes the colour between the four pixels round a point into `into` from `at` on; false outside the picture. */
export function readColour(raster: Raster, x: number, y: number, into: Float32Array, at = 0): boolean {
	const {width, height, rgb} = raster;
	if (!(x >= 0 && y >= 0 && x <= width - 1 && y <= height - 1)) return false;
	const left = Math.min(Math.floor(x), width - 2);
	const top = Math.min(Math.floor(y), height - 2);
	const fx = x - left;
	const fy = y - top;
	const first = (top * width + left) * 3;
	const below = first + width * 3;
	const a = (1 - fx) * (1 - fy);
	const b = fx * (1 - fy);
	const c = (1 - fx) * fy;
	const d = fx * fy;
	for (let channel = 0; channel < 3; channel += 1) {
		into[at + channel] =
			a * (rgb[first + channel] ?? 0) +
			b * (rgb[first + 3 + channel] ?? 0) +
			c * (rgb[below + channel] ?? 0) +
			d * (rgb[below + 3 + channel] ?? 0);
	}
	return true;
}

/** The picture at half its size, each pixel the mean of the four that it stands for. */
export function halve({width: wide, height: high, rgb}: Raster): Raster {
	const width = wide >> 1;
	const height = high >> 1;
	const small = new Uint8Array(width * height * 3);
	for (let y = 0; y < height; y += 1) {
		const above = rgb.subarray(2 * y * wide * 3, (2 * y + 1) * wide * 3);
		const below = rgb.subarray((2 * y + 1) * wide * 3, (2 * y + 2) * wide * 3);
		const row = small.subarray(y * width * 3, (y + 1) * width * 3);
		for (let to = 0, at = 0; to < row.length; to += 3, at += 6) {
			row[to] = meanAt(above, below, at);
			row[to + 1] = meanAt(above, below, at + 1);
			row[to + 2] = meanAt(above, below, at + 2);
		}
	}
	return {width, height, rgb: small};
}

function meanAt(above: Uint8Array, below: Uint8Array, at: number): number {
	return ((above[at] ?? 0) + (above[at + 3] ?? 0) + (below[at] ?? 0) + (below[at + 3] ?? 0) + 2) >> 2;
}

/** The mean over a square of `2 * reach + 1` points, less at the border. */
export function smooth({width, height, values}: Field, reach: number): Field {
	const across = new Float32Array(values.length);
	for (let row = 0; row < values.length; row += width)
		smoothRow(values.subarray(row, row + width), across.subarray(row, row + width), reach);
	return {width, height, values: smoothDown({width, height, values: across}, reach)};
}

function smoothRow(from: Float32Array, to: Float32Array, reach: number): void {
	let [sum, held] = [0, 0];
	for (; held < Math.min(reach, from.length); held += 1) sum += from[held] ?? 0;
	for (let at = 0; at < from.length; at += 1) {
		if (at + reach < from.length) {
			sum += from[at + reach] ?? 0;
			held += 1;
		}
		if (at > reach) {
			sum -= from[at - reach - 1] ?? 0;
			held -= 1;
		}
		to[at] = sum / held;
	}
}

/** Row by row, with a sum for each column: down the columns one after another would take far longer. */
function smoothDown({width, height, values}: Field, reach: number): Float32Array {
	const smoothed = new Float32Array(values.length);
	const sums = new Float64Array(width);
	// Above the first row and below the last there is nothing to add or to take away.
	const nothing = new Float32Array(width);
	const rowAt = (row: number) =>
		row < 0 || row >= height ? nothing : values.subarray(row * width, (row + 1) * width);
	for (let row = 0; row < Math.min(reach, height); row += 1) {
		const first = rowAt(row);
		for (let x = 0; x < width; x += 1) sums[x] = (sums[x] ?? 0) + (first[x] ?? 0);
	}
	for (let row = 0; row < height; row += 1) {
		const held = Math.min(height - 1, row + reach) - Math.max(0, row - reach) + 1;
		const [next, last] = [rowAt(row + reach), rowAt(row - reach - 1)];
		for (let at = row * width, x = 0; x < width; x += 1, at += 1) {
			const sum = (sums[x] ?? 0) + (next[x] ?? 0) - (last[x] ?? 0);
			sums[x] = sum;
			smoothed[at] = sum / held;
		}
	}
	return smoothed;
}
