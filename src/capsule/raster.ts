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
	const below = wide * 3;
	let to = 0;
	for (let y = 0; y < height; y += 1) {
		let at = 2 * y * below;
		for (let x = 0; x < width; x += 1, at += 6, to += 3) {
			for (let channel = at; channel < at + 3; channel += 1) {
				const sum =
					(rgb[channel] ?? 0) +
					(rgb[channel + 3] ?? 0) +
					(rgb[channel + below] ?? 0) +
					(rgb[channel + below + 3] ?? 0);
				small[to + channel - at] = (sum + 2) >> 2;
			}
		}
	}
	return {width, height, rgb: small};
}

/** The mean over a square of `2 * reach + 1` points, less at the border. */
export function smooth({width, height, values}: Field, reach: number): Field {
	const across = new Float32Array(values.length);
	const both = new Float32Array(values.length);
	smoothLines(values, across, {count: height, length: width, step: 1, stride: width, reach});
	smoothLines(across, both, {count: width, length: height, step: width, stride: 1, reach});
	return {width, height, values: both};
}

type Lines = {
	readonly count: number;
	readonly length: number;
	readonly step: number;
	readonly stride: number;
	readonly reach: number;
};

function smoothLines(
	from: Float32Array,
	to: Float32Array,
	{count, length, step, stride, reach}: Lines,
): void {
	for (let line = 0; line < count; line += 1) {
		const start = line * stride;
		const last = start + (length - 1) * step;
		let sum = 0;
		let held = 0;
		let entering = start;
		for (; held < Math.min(reach, length); held += 1, entering += step) sum += from[entering] ?? 0;
		let leaving = start - (reach + 1) * step;
		for (let at = start; at <= last; at += step, entering += step, leaving += step) {
			if (entering <= last) {
				sum += from[entering] ?? 0;
				held += 1;
			}
			if (leaving >= start) {
				sum -= from[leaving] ?? 0;
				held -= 1;
			}
			to[at] = sum / held;
		}
	}
}
