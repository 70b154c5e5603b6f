/** How the camera stood over a flat thing of known size, found from where its corners lie in the photo. */
import {type Homography, homographyOf} from './homography.ts';
import type {Point} from './raster.ts';
import {solveSquare} from './solve.ts';

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

/** The size of the photo in pixels; `focalShare` is the focal length to expect, as a share of the long side. */
export type Frame = {readonly width: number; readonly height: number; readonly focalShare?: number};

// A phone's main camera: 24 to 28 mm on a film of 36 mm (common practice) is 0.67 to 0.78 of the long side, cropped or
// second cameras are longer.
/** The focal length to expect of a phone, as a share of the long side, and how far off that is, as a logarithm. */
export const usualFocal = 0.77;
export const focalSpread = 0.17;

/** How the camera stood: nine numbers of its turn row by row, where the plane's middle lies before it, and its focal length. */
type State = {
	readonly turn: readonly number[];
	readonly shift: readonly number[];
	readonly logFocal: number;
};

/** What is still so far off after so many rounds is given up: on 357 made-up photos nothing of that kind came to fit. */
const hopeless = {rounds: 8, misfit: 1000} as const;

/** The pose that fits best what was seen, by Gauss and Newton; undefined when nothing in front of a camera does. */
export function findPose(seen: readonly Seen[], frame: Frame, rounds = 40): Pose | undefined {
	const usual = Math.log((frame.focalShare ?? usualFocal) * Math.max(frame.width, frame.height));
	let state = firstGuess(seen, frame, usual);
	if (!state) return undefined;
	const task = {seen, frame, usual};
	let best = missesOf(state, task);
	let damping = 1e-4;
	for (let round = 0; round < rounds; round += 1) {
		if (round === hopeless.rounds && best.misfit > hopeless.misfit) break;
		const next = moveBy(state, best.normal, damping);
		if (!next) return undefined;
		const now = missesOf(next, task);
		const gained = best.misfit - now.misfit;
		if (gained > 0) {
			[state, best, damping] = [next, now, damping / 5];
			if (gained < 1e-7 * (1 + now.misfit)) break;
		} else {
			damping *= 10;
			if (damping > 1e6) break;
		}
	}
	return poseOf(state, frame, best.misfit);
}

function poseOf(state: State, frame: Frame, misfit: number): Pose | undefined {
	const down = state.turn[8] ?? 0;
	if (down <= 0.3 || (state.shift[2] ?? 0) <= 0 || !Number.isFinite(misfit)) return undefined;
	return {
		viewAt: heightMm => viewOf(state, frame, heightMm),
		misfit,
		tilt: (Math.acos(Math.min(1, down)) * 180) / Math.PI,
		distanceMm: Math.hypot(...state.shift),
		focalPx: Math.exp(state.logFocal),
	};
}

function viewOf({turn, shift, logFocal}: State, frame: Frame, heightMm: number): Homography {
	const focal = Math.exp(logFocal);
	const [cx, cy] = [(frame.width - 1) / 2, (frame.height - 1) / 2];
	const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = turn;
	const [x = 0, y = 0, z = 0] = shift;
	const far = z - i * heightMm;
	return Float64Array.of(
		...[focal * a + cx * g, focal * b + cx * h, focal * (x - c * heightMm) + cx * far],
		...[focal * d + cy * g, focal * e + cy * h, focal * (y - f * heightMm) + cy * far],
		...[g, h, far],
	);
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

/** Turn about three axes, shift along three, and the logarithm of the focal length. */
const unknowns = 7;

/** The sum of squared misses, and the normal equations of a step: a row for each unknown, its right side last. */
type Misses = {readonly misfit: number; readonly normal: readonly Float64Array[]};

function missesOf({turn, shift, logFocal}: State, {seen, frame, usual}: Task): Misses {
	const [a = 0, b = 0, , d = 0, e = 0, , g = 0, h = 0] = turn;
	const [tx = 0, ty = 0, tz = 0] = shift;
	const focal = Math.exp(logFocal);
	const normal = Array.from({length: unknowns}, () => new Float64Array(unknowns + 1));
	const row = new Float64Array(unknowns);
	let misfit = 0;
	for (const {mm, px, sigmaPx} of seen) {
		// The point turned but not shifted yet: a small turn moves it at right angles to itself.
		const qx = a * mm[0] + b * mm[1];
		const qy = d * mm[0] + e * mm[1];
		const qz = g * mm[0] + h * mm[1];
		const z = qz + tz;
		const u = (qx + tx) / z;
		const v = (qy + ty) / z;
		const scale = focal / sigmaPx;
		const per = scale / z;
		row[0] = -per * u * qy;
		row[1] = per * (qz + u * qx);
		row[2] = -per * qy;
		row[3] = per;
		row[4] = 0;
		row[5] = -per * u;
		row[6] = scale * u;
		misfit += addMiss(normal, row, (focal * u + (frame.width - 1) / 2 - px[0]) / sigmaPx);
		row[0] = -per * (qz + v * qy);
		row[1] = per * v * qx;
		row[2] = per * qx;
		row[3] = 0;
		row[4] = per;
		row[5] = -per * v;
		row[6] = scale * v;
		misfit += addMiss(normal, row, (focal * v + (frame.height - 1) / 2 - px[1]) / sigmaPx);
	}
	row.fill(0);
	row[unknowns - 1] = 1 / focalSpread;
	misfit += addMiss(normal, row, (logFocal - usual) / focalSpread);
	return {misfit, normal};
}

/** Adds one miss, and how each unknown changes it, to the normal equations; gives its square. */
function addMiss(normal: Misses['normal'], row: Float64Array, miss: number): number {
	for (let i = 0; i < unknowns; i += 1) {
		const line = normal[i] ?? row;
		const own = row[i] ?? 0;
		for (let j = 0; j < unknowns; j += 1) line[j] = (line[j] ?? 0) + own * (row[j] ?? 0);
		line[unknowns] = (line[unknowns] ?? 0) - own * miss;
	}
	return miss * miss;
}

/** One step of Gauss and Newton, held back by a share of each unknown's own weight (Levenberg and Marquardt). */
function moveBy(
	{turn, shift, logFocal}: State,
	normal: Misses['normal'],
	damping: number,
): State | undefined {
	const table = normal.map((line, index) => {
		const held = line.slice();
		held[index] = (line[index] ?? 0) * (1 + damping);
		return held;
	});
	const move = solveSquare(table);
	if (!move) return undefined;
	return {
		turn: multiply(rotation(move.slice(0, 3)), turn),
		shift: shift.map((value, index) => value + (move[index + 3] ?? 0)),
		logFocal: logFocal + (move[6] ?? 0),
	};
}

/** Rodrigues: a turn about an axis by the axis's length. */
function rotation([x = 0, y = 0, z = 0]: readonly number[]): readonly number[] {
	const angle = Math.hypot(x, y, z);
	if (angle < 1e-12) return [1, -z, y, z, 1, -x, -y, x, 1];
	const [a, b, c] = [x / angle, y / angle, z / angle];
	const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
	const rest = 1 - cos;
	return [
		...[cos + a * a * rest, a * b * rest - c * sin, a * c * rest + b * sin],
		...[a * b * rest + c * sin, cos + b * b * rest, b * c * rest - a * sin],
		...[a * c * rest - b * sin, b * c * rest + a * sin, cos + c * c * rest],
	];
}

function multiply(first: readonly number[], second: readonly number[]): readonly number[] {
	const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = second;
	const whole: number[] = [];
	for (let row = 0; row < 9; row += 3) {
		const x = first[row] ?? 0;
		const y = first[row + 1] ?? 0;
		const z = first[row + 2] ?? 0;
		whole.push(x * a + y * d + z * g, x * b + y * e + z * h, x * c + y * f + z * i);
	}
	return whole;
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
