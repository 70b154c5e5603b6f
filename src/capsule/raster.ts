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

/** The picture at a whole fraction of its size, each pixel the mean of those that it stands for. */
export function shrink(raster: Raster, by: number): Raster {
	const {width: wide, rgb} = raster;
	const width = Math.floor(wide / by);
	const height = Math.floor(raster.height / by);
	const small = new Uint8Array(width * height * 3);
	const area = by * by;
	for (let y = 0; y < height; y += 1) {
		for (let x = 0; x < width; x += 1) {
			let [red, green, blue] = [0, 0, 0];
			for (let dy = 0; dy < by; dy += 1) {
				let at = ((y * by + dy) * wide + x * by) * 3;
				for (let dx = 0; dx < by; dx += 1, at += 3) {
					red += rgb[at] ?? 0;
					green += rgb[at + 1] ?? 0;
					blue += rgb[at + 2] ?? 0;
				}
			}
			const to = (y * width + x) * 3;
			small[to] = red / area + 0.5;
			small[to + 1] = green / area + 0.5;
			small[to + 2] = blue / area + 0.5;
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
		let sum = 0;
		let held = 0;
		for (let index = -reach; index < length; index += 1) {
			const entering = index + reach;
			if (entering < length) {
				sum += from[start + entering * step] ?? 0;
				held += 1;
			}
			const leaving = index - reach - 1;
			if (leaving >= 0) {
				sum -= from[start + leaving * step] ?? 0;
				held -= 1;
			}
			if (index >= 0) to[start + index * step] = sum / held;
		}
	}
}
