/** The colours of a made-up case: how much shines through, how it is lit, what grows on it. */
import {between, byShare, oneOf, type Pick} from '../../../src/key/random.ts';
import type {CaseShape} from './case-shape.ts';
import {layered, noiseFrom, ramp} from './noise.ts';
import {dimInk, type Ink, inkOf, type Light, lit, mixInk, setInk} from './scene.ts';

/** Lays a case's colour at a point of it over what is seen there without it; the slope is that of its upper face. */
export type Skin = {
	readonly body: (at: SkinPoint, ink: Ink) => void;
	readonly strand: (
		at: {readonly nx: number; readonly ny: number; readonly isThin: boolean},
		ink: Ink,
	) => void;
};

/** A point of the body: where, how deep inside, how swollen, how steep, and the sight line sideways for each mm up. */
export type SkinPoint = {
	readonly u: number;
	readonly v: number;
	readonly inside: number;
	readonly lens: number;
	readonly nx: number;
	readonly ny: number;
	readonly dx: number;
	readonly dy: number;
};

type Tone = {readonly colour: readonly [number, number, number]; readonly depth: number};

const tones: Readonly<Record<string, Tone>> = {
	straw: {colour: [204, 168, 104], depth: 1.3},
	honey: {colour: [186, 128, 58], depth: 1.7},
	amber: {colour: [164, 98, 40], depth: 2.2},
	olive: {colour: [104, 96, 52], depth: 4},
	brown: {colour: [92, 62, 38], depth: 6},
	dark: {colour: [56, 42, 32], depth: 9},
	black: {colour: [32, 29, 28], depth: 14},
};
const shares = [
	['straw', 0.1],
	['honey', 0.1],
	['amber', 0.16],
	['olive', 0.16],
	['brown', 0.2],
	['dark', 0.14],
	['black', 0.14],
] as const;
const paper = inkOf([238, 238, 236]);

/** Makes a skin up; the light is as seen from the case's own frame. */
export function makeSkin(shape: CaseShape, {light, level}: SkinWish, pick: Pick): Skin {
	const tone = tones[byShare(pick, shares)] ?? {colour: [92, 62, 38], depth: 6};
	const [body, rims] = [inkOf(tone.colour), rimColour(tone, pick)];
	const [noise, fine] = [layered(noiseFrom(pick), 3), noiseFrom(pick)];
	const stripeMm = between(pick, [0.5, 1.6]);
	const stripes = pick() < 0.6 ? between(pick, [0.02, 0.14]) : 0;
	const wet = pick() < 0.55 ? between(pick, [0.15, 1]) : between(pick, [0, 0.12]);
	const [gloss, patchy] = [between(pick, [14, 90]), between(pick, [0.1, 0.45])];
	const rimShine = pick() < {clean: 0.12, normal: 0.25, hard: 0.4}[level] ? between(pick, [0.3, 0.9]) : 0;
	const growth = growthOn(shape, level, pick);
	const zone = Float64Array.from(body);
	const shineAt = ({u, v, inside, dx, dy}: SkinPoint, nx: number, ny: number) => {
		const streak = ramp(0.5, 0.75, noise(u / 9 + 60, v / 9)) * ramp(2.6, 0.6, inside) * ramp(0, 0.3, inside);
		return wet * glint(light, {nx, ny, dx, dy, gloss}) + rimShine * streak;
	};
	const paintBody = (at: SkinPoint, ink: Ink) => {
		const {u, v, inside, lens} = at;
		const isThin = lens <= 0;
		const mottle = 1 + patchy * 2 * (noise(u / 12, v / 12) - 0.5) + 0.12 * (fine(u / 0.6, v / 0.6) - 0.5);
		const line = fine(v / stripeMm, u / 40 + 9) - 0.5;
		setInk(zone, isThin ? rims.ink : body, mottle * (1 + 2.5 * stripes * line));
		const depth = isThin ? rims.depth * ramp(-0.3, 3, inside) : tone.depth * (0.45 + 0.55 * lens);
		const ny = at.ny + stripes * 6 * (fine(v / stripeMm + 0.35, u / 40 + 9) - 0.5 - line);
		const glow = 1 - Math.exp(-depth);
		for (let channel = 0; channel < 3; channel += 1) {
			const own = zone[channel] ?? 0;
			// What shines through takes the colour of the skin.
			const through = Math.min(1, 1.6 * own + 0.25) * (ink[channel] ?? 0);
			ink[channel] = through * (1 - glow) + own * glow * lit(light, at.nx, ny);
		}
		growth({u, v}, ink);
		mixInk(ink, paper, Math.min(0.95, shineAt(at, at.nx, ny)));
	};
	const strand: Skin['strand'] = ({nx, ny, isThin}, ink) => {
		mixInk(ink, isThin ? rims.ink : body, isThin ? 0.85 : 1 - Math.exp(-tone.depth * 0.6));
		dimInk(ink, lit(light, 0.7 * nx, 0.7 * ny));
		mixInk(ink, paper, Math.min(0.8, wet * 0.7 * glint(light, {nx, ny, dx: 0, dy: 0, gloss})));
	};
	return {body: paintBody, strand};
}

type SkinWish = {readonly light: Light; readonly level: 'clean' | 'normal' | 'hard'};

/** Keels and aprons are like the body, darker, or pale and half see-through. */
function rimColour({colour, depth}: Tone, pick: Pick): {readonly ink: Ink; readonly depth: number} {
	const name = byShare(pick, [
		['like', 0.5],
		['dark', 0.2],
		['pale', 0.3],
	]);
	const [red, green, blue] = colour;
	if (name === 'dark') return {ink: inkOf([red * 0.7, green * 0.68, blue * 0.66]), depth: depth * 1.2};
	if (name === 'like') return {ink: inkOf(colour), depth: depth * between(pick, [0.5, 0.9])};
	const pale = oneOf(pick, [[190, 164, 118] as const, [158, 128, 88] as const, [196, 182, 152] as const]);
	return {ink: inkOf(pale), depth: between(pick, [1.1, 3])};
}

type Facing = {
	readonly nx: number;
	readonly ny: number;
	readonly dx: number;
	readonly dy: number;
	readonly gloss: number;
};

/** How much of the lamp is mirrored towards the eye, by half the angle between them. */
function glint(light: Light, {nx, ny, dx, dy, gloss}: Facing): number {
	const eye = Math.sqrt(dx * dx + dy * dy + 1);
	const [hx, hy, hz] = [light.x + dx / eye, light.y + dy / eye, light.z + 1 / eye];
	const cosine =
		(nx * hx + ny * hy + hz) / Math.sqrt((hx * hx + hy * hy + hz * hz) * (nx * nx + ny * ny + 1));
	return cosine <= 0 ? 0 : cosine ** (gloss * 2);
}

type Disc = {
	readonly u: number;
	readonly v: number;
	readonly radius: number;
	readonly kind: 'barnacle' | 'hole';
};

/** Barnacles, a crust of small cells, and small holes that show the dark inside. */
function growthOn(shape: CaseShape, level: SkinWish['level'], pick: Pick) {
	const {lengthMm, widthMm} = shape;
	const chance = {clean: 0.08, normal: 0.22, hard: 0.5}[level];
	const discs: Disc[] = [];
	const add = (kind: Disc['kind'], count: number, radius: readonly [number, number]) => {
		for (let one = 0; one < count; one += 1) {
			const [u, v] = [lengthMm * between(pick, [-0.45, 0.45]), widthMm * between(pick, [-0.42, 0.42])];
			discs.push({u, v, radius: between(pick, radius), kind});
		}
	};
	if (pick() < chance) add('barnacle', 1 + Math.floor(pick() * 9), [0.8, 3]);
	if (pick() < chance * 0.6) add('hole', 1 + Math.floor(pick() * 3), [0.6, 2]);
	const hasCrust = pick() < chance * 0.7;
	const crustAt = [lengthMm * between(pick, [-0.5, 0.5]), widthMm * between(pick, [-0.5, 0.5])] as const;
	const crustMm = widthMm * between(pick, [0.12, 0.35]);
	const noise = layered(noiseFrom(pick), 3);
	const [chalk, mouth, crust] = [inkOf([206, 200, 186]), inkOf([70, 60, 52]), inkOf([196, 186, 166])];
	return ({u, v}: {u: number; v: number}, ink: Ink) => {
		for (const disc of discs) {
			const off = Math.hypot(u - disc.u, v - disc.v) / disc.radius;
			if (off > 1) continue;
			if (disc.kind === 'hole') mixInk(ink, mouth, ramp(1, 0.8, off));
			else {
				const rib = 0.75 + 0.25 * Math.sin(Math.atan2(v - disc.v, u - disc.u) * 12);
				mixInk(ink, off < 0.3 ? mouth : chalk, ramp(1, 0.85, off) * rib);
			}
		}
		if (!hasCrust) return;
		const off = Math.hypot(u - crustAt[0], v - crustAt[1]) / crustMm + 0.8 * (noise(u / 4, v / 4) - 0.5);
		const cell = 0.7 + 0.3 * Math.sin(u * 6 + 2 * Math.sin(v * 5)) * Math.sin(v * 6);
		mixInk(ink, crust, 0.85 * cell * ramp(1, 0.9, off));
	};
}
