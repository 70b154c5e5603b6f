/** A sheet of paper on the table: its corners may lift, it may be folded, ruled, or printed upon. */
import {between, oneOf, type Pick} from '../../../src/key/random.ts';
import {noiseFrom, ramp} from './noise.ts';
import {dimInk, type Ink, inkOf, type Light, lit, mixInk, type Ray, setInk, type Thing} from './scene.ts';

/** What is on a sheet, in millimetres from its middle: darkens or colours the ink that is there. */
export type Print = (x: number, y: number, ink: Ink) => void;

/** A sheet to be laid down, the middle of it at the table's zero. */
export type PaperWish = {
	readonly wideMm: number;
	readonly highMm: number;
	readonly level: 'clean' | 'normal' | 'hard';
	readonly print?: Print;
};

type Fold = {readonly nx: number; readonly ny: number; readonly at: number; readonly strength: number};

/** Lays a sheet down. */
export function makePaper(wish: PaperWish, light: Light, pick: Pick): Thing {
	const {wideMm, highMm, level} = wish;
	const [halfX, halfY] = [wideMm / 2, highMm / 2];
	const colour = inkOf(
		oneOf(pick, [[244, 244, 243] as const, [240, 241, 246] as const, [243, 239, 227] as const]),
	);
	const [surface, lift] = [surfaceOf(wish, light, pick), liftOf(wish, pick)];
	const print = wish.print ?? (level === 'hard' && pick() < 0.4 ? ruling(pick) : undefined);
	const edge = (x: number, y: number) => Math.max(Math.abs(x) - halfX, Math.abs(y) - halfY);
	const shade = (x: number, y: number) => {
		const outside = edge(x, y);
		if (outside <= 0) return 1;
		const high = 0.1 + lift(Math.min(halfX, Math.max(-halfX, x)), Math.min(halfY, Math.max(-halfY, y)));
		const [sx, sy] = [x + (light.x / light.z) * high, y + (light.y / light.z) * high];
		const wide = 0.15 + light.softness * high;
		const cover = ramp(wide, -wide, edge(sx, sy));
		return 1 - light.direct * cover - 0.25 * (1 - light.direct) * ramp(0.5 + 2 * high, 0, outside);
	};
	const paint = (ray: Ray, ink: Ink) => {
		let x = ray.x;
		let y = ray.y;
		for (let round = 0; round < 3; round += 1) {
			const high = lift(x, y);
			if (high === 0) break;
			x = ray.x + ray.dx * high;
			y = ray.y + ray.dy * high;
		}
		const outside = edge(x, y);
		if (outside > 0) return outside < 0.6;
		setInk(ink, colour, 1);
		if (print) print(x, y, ink);
		const step = 1.5;
		const nx = (lift(x - step, y) - lift(x + step, y)) / (2 * step);
		const ny = (lift(x, y - step) - lift(x, y + step)) / (2 * step);
		dimInk(ink, surface(x, y) * (nx === 0 && ny === 0 ? 1 : lit(light, nx, ny)));
		return outside > -0.6;
	};
	// Farther in than a lifted corner can move the edge for a slanting eye.
	const hides = (x: number, y: number) => edge(x, y) < -12;
	return {atMm: [0, 0], reachMm: Math.hypot(halfX, halfY) + 30, shade, paint, hides};
}

/** Folds and waves as the change of light that they cause. */
function surfaceOf({wideMm, highMm, level}: PaperWish, light: Light, pick: Pick): Print3 {
	const noise = noiseFrom(pick);
	const wave = {clean: 0.012, normal: 0.025, hard: 0.045}[level];
	const folds: Fold[] = [];
	const count = pick() < {clean: 0.15, normal: 0.4, hard: 0.6}[level] ? 1 + Math.floor(pick() * 2) : 0;
	for (let fold = 0; fold < count; fold += 1) {
		const isAcross = fold === 0 ? 1 : 0;
		const tilt = between(pick, [-0.02, 0.02]);
		const [nx, ny] = isAcross ? [tilt, 1] : [1, tilt];
		const at = (isAcross ? highMm : wideMm) * (pick() < 0.6 ? 0 : between(pick, [-0.2, 0.2]));
		folds.push({nx, ny, at, strength: between(pick, [0.02, 0.06])});
	}
	return (x, y) => {
		let factor = 1 + wave * 2 * (noise(x / 90 + 20, y / 90) - 0.5);
		for (const {nx, ny, at, strength} of folds) {
			const off = nx * x + ny * y - at;
			if (Math.abs(off) > 30) continue;
			const side = Math.sign(nx * light.x + ny * light.y) * Math.sign(off);
			factor += strength * side * Math.exp(-Math.abs(off) / 9) - 0.5 * strength * Math.exp(-off * off * 6);
		}
		return factor;
	};
}

type Print3 = (x: number, y: number) => number;

/** How high the paper stands above the table: one corner a little. */
function liftOf({wideMm, highMm, level}: PaperWish, pick: Pick): Print3 {
	const chance = {clean: 0, normal: 0.25, hard: 0.6}[level];
	const isLifted = pick() < chance;
	const [signX, signY] = [pick() < 0.5 ? 1 : -1, pick() < 0.5 ? 1 : -1];
	const highest = between(pick, level === 'hard' ? [1, 5] : [0.5, 2]);
	const reachMm = between(pick, [30, 60]);
	if (!isLifted) return () => 0;
	return (x, y) => {
		// Along the diagonal from the corner inwards.
		const off = (wideMm / 2 - signX * x + highMm / 2 - signY * y) / Math.SQRT2;
		const share = Math.min(1.3, Math.max(0, 1 - off / reachMm));
		return highest * share * share;
	};
}

/** Lines or squares as in exercise books; how far apart and in which colour is made up. */
function ruling(pick: Pick): Print {
	const isSquared = pick() < 0.5;
	const stepMm = isSquared ? 5 : between(pick, [7, 9]);
	const line = inkOf(pick() < 0.6 ? [150, 170, 205] : [175, 175, 178]);
	const strength = between(pick, [0.3, 0.75]);
	return (x, y, ink) => {
		const down = Math.abs(y / stepMm - Math.round(y / stepMm)) * stepMm;
		const across = isSquared ? Math.abs(x / stepMm - Math.round(x / stepMm)) * stepMm : 9;
		mixInk(ink, line, strength * ramp(0.28, 0.12, Math.min(down, across)));
	};
}
