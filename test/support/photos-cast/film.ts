/** From light to a file: lens blur, the sensor's noise, colours as a phone makes them, JPEG. */
import sharp from 'sharp';
import {between, normal, type Pick} from '../../../src/key/random.ts';
import type {Cast} from './cast-rays.ts';

/** How a photo is taken and kept. */
export type Film = {
	/** What white paper in full light becomes, 1 being the brightest that can be kept. */
	readonly exposure: number;
	/** How much redder and bluer than it is. */
	readonly warmth: readonly [number, number];
	readonly vignette: number;
	readonly defocusPx: number;
	/** How far the hand moves, in pixels along x and y. */
	readonly motionPx: readonly [number, number];
	readonly noise: number;
	readonly sharpening: number;
	readonly quality: number;
	readonly orientation: 1 | 3 | 6 | 8;
};

/** What film is made up for. */
export type FilmWish = {
	readonly level: 'clean' | 'normal' | 'hard';
	readonly isDark: boolean;
	readonly blurPx: number;
};

/** Makes up how a photo is taken. */
export function loadFilm({level, isDark, blurPx}: FilmWish, pick: Pick): Film {
	const rough = {clean: 0, normal: 0.5, hard: 1}[level];
	const [low, high] = level === 'hard' ? [0.12, 1.12] : level === 'normal' ? [0.3, 1.02] : [0.45, 0.95];
	const warm = between(pick, [-1, 1]) * (0.08 + 0.14 * rough);
	const angle = pick() * 2 * Math.PI;
	const motion = between(pick, [0, 0.6 + 1.8 * rough * rough]);
	const quarter = pick();
	return {
		exposure: isDark ? between(pick, [0.006, 0.018]) : between(pick, [low, high]),
		warmth: [1 + warm, 1 - warm],
		vignette: between(pick, [0, 0.12 + 0.25 * rough]),
		defocusPx: blurPx || between(pick, [0.4, 0.8 + 0.9 * rough]),
		motionPx: [Math.cos(angle) * motion, Math.sin(angle) * motion],
		noise: between(pick, [0.003, 0.007 + 0.016 * rough]) * (isDark ? 1.5 : 1),
		sharpening: pick() < 0.6 ? between(pick, [0.2, 0.9]) : 0,
		quality: Math.round(between(pick, level === 'clean' ? [78, 95] : [60, 95])),
		orientation: quarter < 0.75 ? 1 : quarter < 0.83 ? 3 : quarter < 0.92 ? 6 : 8,
	};
}

/** Develops light to a JPEG that stands upright once its orientation is heeded. */
export async function develop(
	cast: Cast,
	film: Film,
	{enlarged, pick}: {enlarged: number; pick: Pick},
): Promise<Uint8Array> {
	const {widthPx: width, heightPx: height} = cast;
	const moved = smear(cast, film.motionPx);
	const soft = blur(blur(moved, film.defocusPx, 'across'), film.defocusPx, 'down');
	const halo = film.sharpening > 0 ? blur(blur(soft, 1.3, 'across'), 1.3, 'down') : soft;
	const bytes = new Uint8Array(width * height * 3);
	const [levels, grains] = [levelTable(), grainTable(pick)];
	const corner = (width * width + height * height) / 4;
	for (let at = 0; at < width * height; at += 1) {
		const dx = (at % width) - width / 2;
		const dy = Math.floor(at / width) - height / 2;
		const edge = (film.exposure * (1 - film.vignette * ((dx * dx + dy * dy) / corner) ** 1.2)) / 0.9;
		const draw = Math.floor(pick() * grains.length);
		const grey = 0.6 * (grains[draw] ?? 0);
		for (let channel = 0; channel < 3; channel += 1) {
			const gain = edge * (channel === 0 ? film.warmth[0] : channel === 2 ? film.warmth[1] : 1);
			const value = soft.light[at * 3 + channel] ?? 0;
			const crisp = value + film.sharpening * (value - (halo.light[at * 3 + channel] ?? 0));
			const level = Math.max(0, crisp * gain);
			// The sensor's noise grows with the root of the light; its dark noise stays.
			const own = 0.8 * (grains[(draw + (channel + 1) * 7919) % grains.length] ?? 0);
			const grainy = level + film.noise * (grey + own) * (0.25 + Math.sqrt(level));
			bytes[at * 3 + channel] =
				levels[Math.max(0, Math.min(levels.length - 1, Math.round(grainy * 8192)))] ?? 0;
		}
	}
	return save({bytes, width, height}, film, enlarged);
}

/** Drawn once, since a bell curve for each channel of each pixel would take longer than all the rest. */
function grainTable(pick: Pick): Float32Array {
	return Float32Array.from({length: 1 << 16}, () => normal(pick));
}

/** Levels for light from 0 to 2 in steps of 1/8192. */
function levelTable(): Uint8Array {
	return Uint8Array.from({length: 2 * 8192}, (_, at) => levelOf(at / 8192));
}

/** A screen's level from light (IEC 61966-2-1), with the brightest parts pressed together as phones do. */
function levelOf(light: number): number {
	const kept = light < 0.75 ? Math.max(0, light) : 0.75 + 0.25 * (1 - Math.exp(-(light - 0.75) / 0.25));
	const share = kept <= 0.0031308 ? kept * 12.92 : 1.055 * kept ** (1 / 2.4) - 0.055;
	return Math.round(255 * Math.min(1, share));
}

async function save(
	{bytes, width, height}: {bytes: Uint8Array; width: number; height: number},
	{orientation, quality}: Film,
	enlarged: number,
): Promise<Uint8Array> {
	const upright = sharp(bytes, {raw: {width, height, channels: 3}});
	const sized = enlarged === 1 ? upright : upright.resize(width * enlarged, height * enlarged);
	const stored = await sized.png({compressionLevel: 0}).toBuffer();
	// Turned the other way round, so that heeding the orientation brings it back (EXIF 2.3, tag 274).
	const turn = {1: 0, 3: 180, 6: 270, 8: 90}[orientation];
	const made = await sharp(stored).rotate(turn).jpeg({quality}).withMetadata({orientation}).toBuffer();
	return new Uint8Array(made);
}

/** A bell-shaped blur along rows or columns. */
function blur({widthPx, heightPx, light}: Cast, sigmaPx: number, way: 'across' | 'down'): Cast {
	const reach = Math.ceil(2.5 * sigmaPx);
	const raw = Array.from({length: 2 * reach + 1}, (_, at) =>
		Math.exp(-((at - reach) ** 2) / (2 * sigmaPx ** 2)),
	);
	const all = raw.reduce((sum, value) => sum + value, 0);
	const weights = Float32Array.from(raw, value => value / all);
	const result = new Float32Array(light.length);
	const [step, most] = way === 'across' ? [3, widthPx] : [widthPx * 3, heightPx];
	for (let row = 0; row < heightPx; row += 1) {
		for (let column = 0; column < widthPx; column += 1) {
			const at = (row * widthPx + column) * 3;
			const along = way === 'across' ? column : row;
			let [red, green, blue] = [0, 0, 0];
			for (let off = -reach; off <= reach; off += 1) {
				const from = at + (Math.min(most - 1, Math.max(0, along + off)) - along) * step;
				const weight = weights[off + reach] ?? 0;
				red += weight * (light[from] ?? 0);
				green += weight * (light[from + 1] ?? 0);
				blue += weight * (light[from + 2] ?? 0);
			}
			result[at] = red;
			result[at + 1] = green;
			result[at + 2] = blue;
		}
	}
	return {widthPx, heightPx, light: result};
}

/** The hand's movement: the mean of nine places along it, each blended from the four pixels round it. */
function smear(cast: Cast, [x, y]: readonly [number, number]): Cast {
	if (Math.hypot(x, y) < 0.4) return cast;
	const taps = new Map<string, {readonly ox: number; readonly oy: number; readonly weight: number}>();
	for (let part = -4; part <= 4; part += 1) {
		const [dx, dy] = [(x * part) / 8, (y * part) / 8];
		const [left, top] = [Math.floor(dx), Math.floor(dy)];
		for (const [ox, oy] of [
			[left, top] as const,
			[left + 1, top] as const,
			[left, top + 1] as const,
			[left + 1, top + 1] as const,
		]) {
			const weight = ((1 - Math.abs(dx - ox)) * (1 - Math.abs(dy - oy))) / 9;
			const before = taps.get(`${ox} ${oy}`)?.weight ?? 0;
			if (weight > 0) taps.set(`${ox} ${oy}`, {ox, oy, weight: weight + before});
		}
	}
	const result = new Float32Array(cast.light.length);
	for (const tap of taps.values()) addMoved(cast, tap, result);
	return {...cast, light: result};
}

function addMoved(
	{light, widthPx, heightPx}: Cast,
	{ox, oy, weight}: {readonly ox: number; readonly oy: number; readonly weight: number},
	result: Float32Array,
): void {
	for (let row = 0; row < heightPx; row += 1) {
		const from = Math.min(heightPx - 1, Math.max(0, row + oy)) * widthPx;
		for (let column = 0; column < widthPx; column += 1) {
			const at = (row * widthPx + column) * 3;
			const other = (from + Math.min(widthPx - 1, Math.max(0, column + ox))) * 3;
			result[at] = (result[at] ?? 0) + weight * (light[other] ?? 0);
			result[at + 1] = (result[at + 1] ?? 0) + weight * (light[other + 1] ?? 0);
			result[at + 2] = (result[at + 2] ?? 0) + weight * (light[other + 2] ?? 0);
		}
	}
}
