/** Straight pieces of edges in a picture, grown from pixel to pixel where it rises across the same way. */
import type {Slopes} from './long-lines.ts';
import {gatherPoints} from './principal.ts';
import type {Point} from './raster.ts';

/** A piece of an edge from end to end, and how steep the picture is there. */
export type Piece = {readonly from: Point; readonly to: Point; readonly steep: number};

/** In grey levels from the pixel before to the one after; of paper on paper there is little more. */
const weakest = 2;
/** Twice an angle of 22.5 degrees, as a cosine: which way an edge rises is told no better where there is noise. */
const alike = Math.SQRT1_2;
const leastLength = 5;
const mostWide = 1;

/** The straight pieces of all edges, the steepest first. */
export function piecesOf(slopes: Slopes): readonly Piece[] {
	const {width, height} = slopes.across;
	const ways = waysOf(slopes);
	const ridges = ridgesOf(slopes, ways.steep);
	const taken = new Uint8Array(width * height);
	const grown = new Int32Array(width * height);
	const pieces: Piece[] = [];
	for (const start of steepestFirst(ridges)) {
		if (taken[start]) continue;
		const count = grow({ways, ridges, width, taken, grown}, start);
		if (count < leastLength) continue;
		const piece = pieceOf(grown.subarray(0, count), ways.steep, width);
		if (piece) pieces.push(piece);
	}
	return pieces;
}

/** Steepness, and twice the angle as a cosine and a sine, so that light to dark and dark to light are one way. */
type Ways = {readonly steep: Float32Array; readonly cos: Float32Array; readonly sin: Float32Array};

function waysOf({across, down}: Slopes): Ways {
	const size = across.values.length;
	const [steep, cos, sin] = [new Float32Array(size), new Float32Array(size), new Float32Array(size)];
	for (let at = 0; at < size; at += 1) {
		const [x, y] = [across.values[at] ?? 0, down.values[at] ?? 0];
		const square = x * x + y * y;
		if (square < weakest * weakest) continue;
		steep[at] = Math.sqrt(square);
		cos[at] = (x * x - y * y) / square;
		sin[at] = (2 * x * y) / square;
	}
	return {steep, cos, sin};
}

/** The steepness where it is more than on both sides of the edge: two edges side by side stay two. */
function ridgesOf({across, down}: Slopes, steep: Float32Array): Float32Array {
	const {width} = across;
	const ridges = new Float32Array(steep.length);
	for (let at = 0; at < steep.length; at += 1) {
		const here = steep[at] ?? 0;
		if (here === 0) continue;
		const [x, y] = [across.values[at] ?? 0, down.values[at] ?? 0];
		// The nearest of the eight ways: beyond 67.5 degrees there is no step across, below 22.5 none down.
		const stepX = Math.abs(x) > 0.414 * Math.abs(y) ? Math.sign(x) : 0;
		const stepY = Math.abs(y) > 0.414 * Math.abs(x) ? Math.sign(y) : 0;
		const step = stepY * width + stepX;
		if (here >= (steep[at - step] ?? 0) && here > (steep[at + step] ?? 0)) ridges[at] = here;
	}
	return ridges;
}

/** Where a picture is steep, in the order of how much; levels beyond the last are steep enough. */
function steepestFirst(steep: Float32Array): Int32Array {
	const levels = 64;
	const starts = new Int32Array(levels + 1);
	const levelAt = (at: number) => Math.max(0, levels - 1 - Math.floor(2 * (steep[at] ?? 0)));
	let count = 0;
	for (let at = 0; at < steep.length; at += 1) {
		if (!steep[at]) continue;
		count += 1;
		const level = levelAt(at) + 1;
		starts[level] = (starts[level] ?? 0) + 1;
	}
	for (let level = 1; level <= levels; level += 1)
		starts[level] = (starts[level] ?? 0) + (starts[level - 1] ?? 0);
	const order = new Int32Array(count);
	for (let at = 0; at < steep.length; at += 1) {
		if (!steep[at]) continue;
		const level = levelAt(at);
		order[starts[level] ?? 0] = at;
		starts[level] = (starts[level] ?? 0) + 1;
	}
	return order;
}

type Growing = {
	readonly ways: Ways;
	readonly ridges: Float32Array;
	readonly width: number;
	readonly taken: Uint8Array;
	readonly grown: Int32Array;
};

/** Takes all that is joined to a pixel and rises its way; says how many pixels that are. */
function grow({ways: {cos, sin}, ridges, width, taken, grown}: Growing, start: number): number {
	let [sumCos, sumSin] = [cos[start] ?? 0, sin[start] ?? 0];
	let count = 1;
	grown[0] = start;
	taken[start] = 1;
	for (let next = 0; next < count; next += 1) {
		const here = grown[next] ?? start;
		// The outermost pixels have no slope, so that no neighbour lies round the corner of the picture.
		for (const step of [-1, 1, -width, width, -width - 1, -width + 1, width - 1, width + 1]) {
			const at = here + step;
			if (taken[at] || !ridges[at]) continue;
			const [c, s] = [cos[at] ?? 0, sin[at] ?? 0];
			if (c * sumCos + s * sumSin < alike * Math.sqrt(sumCos * sumCos + sumSin * sumSin)) continue;
			sumCos += c;
			sumSin += s;
			taken[at] = 1;
			grown[count] = at;
			count += 1;
		}
	}
	return count;
}

/** The line through a number of pixels; undefined where they are no line. */
function pieceOf(pixels: Int32Array, steep: Float32Array, width: number): Piece | undefined {
	const points = gatherPoints();
	let sum = 0;
	for (const at of pixels) {
		points.add(at % width, Math.floor(at / width), steep[at] ?? 0);
		sum += steep[at] ?? 0;
	}
	const {
		middle: [cx, cy],
		along: [dx, dy],
		wideSquare,
	} = points.principal();
	let [first, last] = [0, 0];
	for (const at of pixels) {
		const along = ((at % width) - cx) * dx + (Math.floor(at / width) - cy) * dy;
		first = Math.min(first, along);
		last = Math.max(last, along);
	}
	if (last - first < leastLength || wideSquare > mostWide ** 2) return undefined;
	return {
		from: [cx + first * dx, cy + first * dy],
		to: [cx + last * dx, cy + last * dy],
		steep: sum / pixels.length,
	};
}
