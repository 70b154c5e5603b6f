/** What a lens bends: how much, told by the sides of a sheet, and how it changes a length. */
import type {Corners} from './four-sided.ts';
import type {Frame} from './pose.ts';
import type {Point} from './raster.ts';
import type {Placed} from './sides.ts';

/** A phone straightens its pictures, all but so much at the corners (one sigma; from memory). */
const usualBend = 0.015;
/** How far off a bow may be, in pixels: paper is not quite straight either (our choice). */
const bowSigmaPx = 0.7;

/**
 * How far outwards a lens moves the corner of the picture, as a share of its distance from the middle; it moves all other
 * points by less, with the third power of their distance. Zero where sides tell nothing.
 */
export function bendOf({corners, sides}: Placed, frame: Frame): number {
	// Of a sheet found by its marks alone, the sides are those of the marks.
	if (sides.length !== 4) return 0;
	const [cx, cy] = middleOf(frame);
	const reach = Math.hypot(cx, cy);
	let [both, all] = [0, (bowSigmaPx / usualBend) ** 2];
	for (const [index, {bowPx}] of sides.entries()) {
		const [[x, y], [u, v]] = [corners[index] ?? [cx, cy], corners[(index + 1) % 4] ?? [cx, cy]];
		const long = Math.hypot(u - x, v - y) || 1;
		// Outwards is to the left of the way from one corner to the next, clockwise as seen.
		const away = ((v - y) * (x - cx) - (u - x) * (y - cy)) / long;
		// A point of the side is moved by away · bend · (away² + along²) / reach²: its middle the least.
		const perBend = -(away * (long / 2) ** 2) / reach ** 2;
		both += perBend * bowPx;
		all += perBend ** 2;
	}
	return both / all;
}

/** Where a point would lie in the picture of a lens that bends nothing. */
export function straightened([x, y]: Point, bend: number, frame: Frame): Point {
	const [cx, cy] = middleOf(frame);
	const share = 1 + (bend * ((x - cx) ** 2 + (y - cy) ** 2)) / (cx * cx + cy * cy);
	return [cx + (x - cx) / share, cy + (y - cy) / share];
}

/** An outline without what the lens has bent. */
export function straightenedCorners([a, b, c, d]: Corners, bend: number, frame: Frame): Corners {
	const straight = (point: Point) => straightened(point, bend, frame);
	return [straight(a), straight(b), straight(c), straight(d)];
}

function middleOf({width, height}: Frame): Point {
	return [(width - 1) / 2, (height - 1) / 2];
}
