/** Made-up table tops: wood, cloth, stone, plain boards and paper, as a colour for every millimetre. */
import {between, type Pick} from '../../../src/key/random.ts';

/** A colour at a point of the table, written into `into` as red, green, blue from 0 to 255. */
export type Ground = (xMm: number, yMm: number, into: Float32Array) => void;

/** The kinds of ground there are. */
export const groundKinds = ['plain', 'wood', 'cloth', 'stone', 'light', 'towel'] as const;

/** One kind of ground. */
export type GroundKind = (typeof groundKinds)[number];

const tile = 512;

/** Makes a ground up. */
export function inventGround(kind: GroundKind, pick: Pick, noise: Float32Array): Ground {
	const [red = 0, green = 0, blue = 0] = groundColour(kind, pick);
	const rough = {plain: 0.03, wood: 0.16, cloth: 0.08, stone: 0.16, light: 0.02, towel: 0.22}[kind];
	const strength = rough * between(pick, [0.6, 1.3]);
	const angle = between(pick, [0, Math.PI]);
	const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
	const stretch = kind === 'wood' ? between(pick, [8, 25]) : 1;
	const weave = kind === 'cloth' || kind === 'towel' ? between(pick, [0.8, 2.5]) : 0;
	const plank = kind === 'wood' && pick() < 0.6 ? between(pick, [60, 140]) : 0;
	const check = kind === 'cloth' && pick() < 0.3 ? between(pick, [12, 40]) : 0;
	const scale = between(pick, [1.5, 4]);
	return (xMm, yMm, into) => {
		const u = cos * xMm + sin * yMm;
		const v = -sin * xMm + cos * yMm;
		let value = at(noise, (u / stretch) * scale, v * scale) * 0.6 + at(noise, u * 0.15 + 91, v * 0.15) * 0.4;
		if (weave > 0) value += 0.4 * Math.sin((u * 2 * Math.PI) / weave) * Math.sin((v * 2 * Math.PI) / weave);
		let light = 1 + strength * value;
		if (plank > 0 && Math.abs((((v % plank) + plank) % plank) - 2) < 0.8) light *= 0.5;
		if (check > 0 && (Math.floor(u / check) + Math.floor(v / check)) % 2 === 0) light *= 0.75;
		into[0] = red * light;
		into[1] = green * light;
		into[2] = blue * light;
	};
}

/** Smooth noise between about -2 and 2 that repeats each 512 steps; made once for all grounds. */
export function makeNoise(pick: Pick): Float32Array {
	const sum = new Float32Array(tile * tile);
	for (const [size, weight] of [
		[64, 0.6],
		[128, 0.5],
		[256, 0.45],
		[512, 0.4],
	] as const) {
		const raw = Float32Array.from({length: size * size}, () => between(pick, [-1.7, 1.7]));
		const step = size / tile;
		for (let y = 0; y < tile; y += 1) {
			for (let x = 0; x < tile; x += 1) {
				const [fx, fy] = [x * step, y * step];
				const [x0, y0] = [Math.floor(fx), Math.floor(fy)];
				const [dx, dy] = [fx - x0, fy - y0];
				const of = (px: number, py: number) => raw[(py % size) * size + (px % size)] ?? 0;
				const top = of(x0, y0) * (1 - dx) + of(x0 + 1, y0) * dx;
				const low = of(x0, y0 + 1) * (1 - dx) + of(x0 + 1, y0 + 1) * dx;
				sum[y * tile + x] = (sum[y * tile + x] ?? 0) + weight * (top * (1 - dy) + low * dy);
			}
		}
	}
	return sum;
}

function at(noise: Float32Array, x: number, y: number): number {
	return noise[(Math.floor(y) & (tile - 1)) * tile + (Math.floor(x) & (tile - 1))] ?? 0;
}

function groundColour(kind: GroundKind, pick: Pick): readonly number[] {
	switch (kind) {
		case 'wood': {
			const light = between(pick, [0.5, 1.25]);
			return [168 * light, 120 * light, 78 * light];
		}
		case 'stone': {
			const light = between(pick, [60, 190]);
			return [light, light * between(pick, [0.95, 1.02]), light * between(pick, [0.9, 1.03])];
		}
		case 'light': {
			const light = between(pick, [196, 228]);
			return [light, light * between(pick, [0.96, 1]), light * between(pick, [0.9, 1])];
		}
		default:
			return [between(pick, [30, 200]), between(pick, [30, 200]), between(pick, [30, 200])];
	}
}
