/** How the camera stood over a flat thing of known size, found from where its corners lie in the photo. */
import {type Homography, homographyOf} from './homography.ts';
import type {Point} from './raster.ts';
import {solve} from './solve.ts';

/** A camera over a plane; the plane's points are in millimetres, heights are towards the camera. */
export type Pose = {
	/** Carries points of the plane that lies `heightMm` above the reference to pixels. */
	readonly viewAt: (heightMm: number) => Homography;
	/** Sum of squares of what the corners and the focal length are off, each by its own expected error. */
	readonly misfit: number;
	/** Between the camera's axis and straight down, in degrees. */
	readonly tilt: number;
	/** From the camera to the middle of the reference. */
	readonly distanceMm: number;
	readonly focalPx: number;
};

/** A point of the plane, where it was seen, and how far off that may be, one sigma in pixels. */
export type Seen = {readonly mm: Point; readonly px: Point; readonly sigmaPx: number};

/** The size of the photo. */
export type Frame = {readonly width: number; readonly height: number};

// A phone's main camera: 24 to 28 mm on a film of 36 mm (common practice) is 0.67 to 0.78 of the long side, cropped or
// second cameras are longer.
const usualFocal = 0.77;
const focalSpread = 0.17;

type Turn = readonly number[];
type State = {readonly turn: Turn; readonly shift: readonly number[]; readonly logFocal: number};

/** The pose that fits best what was seen, by Gauss and Newton; undefined when nothing in front of a camera does. */
export function findPose(seen: readonly Seen[], frame: Frame, rounds = 40): Pose | undefined {
	const usual = Math.log(usualFocal * Math.max(frame.width, frame.height));
	let state = firstGuess(seen, frame, usual);
	if (!state) return undefined;
	const misses = (of: State) => missesOf(of, {seen, frame, usual});
	let best = sumOfSquares(misses(state));
	let damping = 1e-4;
	for (let round = 0; round < rounds; round += 1) {
		const next = step(state, misses, damping);
		if (!next) return undefined;
		const now = sumOfSquares(misses(next));
		if (now < best) {
			const gained = best - now;
			[state, best, damping] = [next, now, damping / 5];
			if (gained < 1e-7 * (1 + best)) break;
		} else {
			damping *= 10;
			if (damping > 1e6) break;
		}
	}
	return poseOf(state, frame, best);
}

function poseOf({turn, shift, logFocal}: State, frame: Frame, misfit: number): Pose | undefined {
	const focalPx = Math.exp(logFocal);
	const down = turn[8] ?? 0;
	if (down <= 0.3 || (shift[2] ?? 0) <= 0) return undefined;
	return {
		viewAt: heightMm => viewOf({turn, shift, logFocal}, frame, heightMm),
		misfit,
		tilt: (Math.acos(Math.min(1, down)) * 180) / Math.PI,
		distanceMm: Math.hypot(...shift),
		focalPx,
	};
}

function viewOf({turn, shift, logFocal}: State, frame: Frame, heightMm: number): Homography {
	const focal = Math.exp(logFocal);
	const [cx, cy] = [(frame.width - 1) / 2, (frame.height - 1) / 2];
	const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = turn;
	const [x = 0, y = 0, z = 0] = shift;
	const view = new Float64Array(9);
	[view[6], view[7], view[8]] = [g, h, z - i * heightMm];
	[view[0], view[1], view[2]] = [
		focal * a + cx * g,
		focal * b + cx * h,
		focal * (x - c * heightMm) + cx * view[8],
	];
	[view[3], view[4], view[5]] = [
		focal * d + cy * g,
		focal * e + cy * h,
		focal * (y - f * heightMm) + cy * view[8],
	];
	return view;
}

function firstGuess(seen: readonly Seen[], frame: Frame, logFocal: number): State | undefined {
	const focal = Math.exp(logFocal);
	const [cx, cy] = [(frame.width - 1) / 2, (frame.height - 1) / 2];
	const h = homographyOf(seen.map(({mm, px: [x, y]}) => [mm, [(x - cx) / focal, (y - cy) / focal]]));
	const column = (index: number) => [h[index] ?? 0, h[index + 3] ?? 0, h[index + 6] ?? 0];
	const [a, b, t] = [column(0), column(1), column(2)];
	const size = Math.sqrt(Math.hypot(...a) * Math.hypot(...b)) * Math.sign(t[2] ?? 1);
	if (!Number.isFinite(size) || size === 0) return undefined;
	const first = scaled(a, 1 / Math.hypot(...a) / Math.sign(size));
	const rough = scaled(b, 1 / size);
	const along = dot(first, rough);
	const second = unit(rough.map((value, index) => value - along * (first[index] ?? 0)));
	const third = cross(first, second);
	const turn = [0, 1, 2].flatMap(row => [first[row] ?? 0, second[row] ?? 0, third[row] ?? 0]);
	return {turn, shift: scaled(t, 1 / size), logFocal};
}

type Task = {readonly seen: readonly Seen[]; readonly frame: Frame; readonly usual: number};

function missesOf(state: State, {seen, frame, usual}: Task): readonly number[] {
	const view = viewOf(state, frame, 0);
	const off: number[] = [];
	for (const {mm, px, sigmaPx} of seen) {
		const [x, y] = mm;
		const w = (view[6] ?? 0) * x + (view[7] ?? 0) * y + (view[8] ?? 0);
		off.push(
			(((view[0] ?? 0) * x + (view[1] ?? 0) * y + (view[2] ?? 0)) / w - px[0]) / sigmaPx,
			(((view[3] ?? 0) * x + (view[4] ?? 0) * y + (view[5] ?? 0)) / w - px[1]) / sigmaPx,
		);
	}
	off.push((state.logFocal - usual) / focalSpread);
	return off;
}

function step(state: State, misses: (of: State) => readonly number[], damping: number): State | undefined {
	const now = misses(state);
	const nudge = [1e-5, 1e-5, 1e-5, 1e-3, 1e-3, 1e-3, 1e-5];
	const slopes = nudge.map((size, index) => {
		const moved = misses(
			moveBy(
				state,
				nudge.map((_, other) => (other === index ? size : 0)),
			),
		);
		return moved.map((value, row) => (value - (now[row] ?? 0)) / size);
	});
	const rows = now.map((_, row) => slopes.map(slope => slope[row] ?? 0));
	const sizes = slopes.map(slope => Math.sqrt(sumOfSquares(slope) * damping));
	const damped = sizes.map((size, index) => sizes.map((_, other) => (other === index ? size : 0)));
	const move = solve([...rows, ...damped], [...now.map(value => -value), ...sizes.map(() => 0)]);
	return move && moveBy(state, move);
}

function moveBy({turn, shift, logFocal}: State, move: readonly number[]): State {
	return {
		turn: multiply(rotation(move.slice(0, 3)), turn),
		shift: shift.map((value, index) => value + (move[index + 3] ?? 0)),
		logFocal: logFocal + (move[6] ?? 0),
	};
}

/** Rodrigues: a turn about an axis by the axis's length. */
function rotation([x = 0, y = 0, z = 0]: readonly number[]): Turn {
	const angle = Math.hypot(x, y, z);
	if (angle < 1e-12) return [1, -z, y, z, 1, -x, -y, x, 1];
	const [a, b, c] = [x / angle, y / angle, z / angle];
	const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
	const rest = 1 - cos;
	return [
		cos + a * a * rest,
		a * b * rest - c * sin,
		a * c * rest + b * sin,
		a * b * rest + c * sin,
		cos + b * b * rest,
		b * c * rest - a * sin,
		a * c * rest - b * sin,
		b * c * rest + a * sin,
		cos + c * c * rest,
	];
}

function multiply(first: Turn, second: Turn): Turn {
	return Array.from({length: 9}, (_, index) => {
		const [row, column] = [Math.floor(index / 3) * 3, index % 3];
		return [0, 1, 2].reduce((sum, k) => sum + (first[row + k] ?? 0) * (second[k * 3 + column] ?? 0), 0);
	});
}

function sumOfSquares(values: readonly number[]): number {
	return values.reduce((sum, value) => sum + value * value, 0);
}

function dot(a: readonly number[], b: readonly number[]): number {
	return a.reduce((sum, value, index) => sum + value * (b[index] ?? 0), 0);
}

function scaled(values: readonly number[], by: number): readonly number[] {
	return values.map(value => value * by);
}

function unit(values: readonly number[]): readonly number[] {
	return scaled(values, 1 / Math.hypot(...values));
}

function cross(
	[a = 0, b = 0, c = 0]: readonly number[],
	[d = 0, e = 0, f = 0]: readonly number[],
): readonly number[] {
	return [b * f - c * e, c * d - a * f, a * e - b * d];
}
