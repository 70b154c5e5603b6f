/** What else lies on a table: a pen, a saucer, another sheet, weed, sand. */
import {between, normal, oneOf, type Pick} from '../../../src/key/random.ts';
import {shadeOfFlat} from './card.ts';
import {nearestOf, type Piece} from './case-strands.ts';
import {noiseFrom, ramp} from './noise.ts';
import {dimInk, type Ink, inkOf, type Light, lit, mixInk, setInk, type Thing} from './scene.ts';

/** What clutter is made up for: the light, chance, and a place on the table. */
export type ClutterWish = {
	readonly light: Light;
	readonly pick: Pick;
	readonly atMm: readonly [number, number];
};

/** Lays one thing down that has nothing to do with it all. */
export function makeClutter(wish: ClutterWish): Thing {
	return oneOf(wish.pick, [makePen, makeSaucer, makeOtherSheet])(wish);
}

function makePen({light, pick, atMm}: ClutterWish): Thing {
	const turn = pick() * 2 * Math.PI;
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	const [half, radius] = [between(pick, [60, 75]), between(pick, [3.5, 6])];
	const body = inkOf(oneOf(pick, [[28, 50, 130] as const, [30, 30, 32] as const, [180, 40, 40] as const]));
	const cap = inkOf(oneOf(pick, [[200, 200, 204] as const, [40, 40, 44] as const]));
	const off = (u: number, v: number) =>
		Math.hypot(Math.max(0, Math.abs(u) - half + radius), v) -
		radius * (u < -half * 0.8 ? (half + u) / (half * 0.2) : 1);
	const edgeAt = (x: number, y: number) => {
		const [a, b] = [x - atMm[0], y - atMm[1]];
		return off(a * c + b * s, b * c - a * s);
	};
	const paint: Thing['paint'] = (ray, ink) => {
		const [a, b] = [ray.x + ray.dx * radius - atMm[0], ray.y + ray.dy * radius - atMm[1]];
		const [u, v] = [a * c + b * s, b * c - a * s];
		const outside = off(u, v);
		if (outside <= 0) {
			const share = Math.max(-0.95, Math.min(0.95, v / radius));
			const steep = share / Math.sqrt(1 - share * share);
			setInk(ink, u > half * 0.3 ? cap : body, lit(light, -s * steep, c * steep));
			mixInk(ink, inkOf([250, 250, 250]), 0.7 * ramp(0.12, 0, Math.abs(share - 0.3)));
		}
		return Math.abs(outside) < 1;
	};
	const shade = (x: number, y: number) => shadeOfFlat(light, {x, y, highMm: radius, edgeAt});
	return {atMm, reachMm: half + 4 * radius, shade, paint};
}

function makeSaucer({light, pick, atMm}: ClutterWish): Thing {
	const radius = between(pick, [45, 75]);
	const body = inkOf(oneOf(pick, [[230, 228, 222] as const, [92, 120, 140] as const, [60, 56, 54] as const]));
	const edgeAt = (x: number, y: number) => Math.hypot(x - atMm[0], y - atMm[1]) - radius;
	const high = 6;
	const paint: Thing['paint'] = (ray, ink) => {
		const [x, y] = [ray.x + ray.dx * high - atMm[0], ray.y + ray.dy * high - atMm[1]];
		const far = Math.hypot(x, y);
		if (far <= radius) {
			const slope = far > radius * 0.93 ? 0.6 : far > radius * 0.55 ? -0.25 : 0;
			setInk(ink, body, lit(light, (slope * x) / far, (slope * y) / far));
		}
		return Math.abs(far - radius) < 1.2;
	};
	const shade = (x: number, y: number) => shadeOfFlat(light, {x, y, highMm: high, edgeAt});
	return {atMm, reachMm: radius + 20, shade, paint};
}

function makeOtherSheet({light, pick, atMm}: ClutterWish): Thing {
	const turn = pick() * Math.PI;
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	const [halfX, halfY] = [between(pick, [30, 75]), between(pick, [40, 105])];
	const body = inkOf(
		oneOf(pick, [[238, 236, 230] as const, [240, 222, 130] as const, [190, 210, 226] as const]),
	);
	const noise = noiseFrom(pick);
	const local = (x: number, y: number): readonly [number, number] => {
		const [a, b] = [x - atMm[0], y - atMm[1]];
		return [a * c + b * s, b * c - a * s];
	};
	const edge = (u: number, v: number) => Math.max(Math.abs(u) - halfX, Math.abs(v) - halfY);
	const edgeAt = (x: number, y: number) => edge(...local(x, y));
	const paint: Thing['paint'] = (ray, ink) => {
		const [u, v] = local(ray.x, ray.y);
		const outside = edge(u, v);
		if (outside > 0) return outside < 1;
		setInk(ink, body, 1);
		const isLine = v / 6 - Math.floor(v / 6) < 0.36 && Math.abs(u) < halfX - 9 && Math.abs(v) < halfY - 12;
		if (isLine && noise(u / 1.2, Math.floor(v / 6) * 3.3) > 0.45) dimInk(ink, 0.35);
		return outside > -1;
	};
	const shade = (x: number, y: number) => shadeOfFlat(light, {x, y, highMm: 0.15, edgeAt});
	return {atMm, reachMm: Math.hypot(halfX, halfY) + 3, shade, paint};
}

/** Weed: a stem that branches again and again. */
export function makeWeed({light, pick, atMm}: ClutterWish): Thing {
	const pieces: Piece[] = [];
	const grow = (from: readonly [number, number], {angle, radius, left}: Sprout): void => {
		let [x, y] = from;
		let way = angle;
		for (let step = 0; step < 7; step += 1) {
			const [ax, ay] = [x, y];
			[x, y] = [x + 3.5 * Math.cos(way), y + 3.5 * Math.sin(way)];
			way += 0.22 * normal(pick);
			pieces.push({ax, ay, bx: x, by: y, ra: radius, rb: radius * 0.95});
		}
		if (left === 0) return;
		for (const side of [-1, 1]) {
			grow([x, y], {angle: way + side * between(pick, [0.2, 0.8]), radius: radius * 0.72, left: left - 1});
		}
	};
	grow([0, 0], {angle: pick() * 2 * Math.PI, radius: between(pick, [0.7, 2]), left: 3});
	const colour = inkOf(oneOf(pick, [[92, 66, 30] as const, [60, 84, 36] as const, [120, 40, 46] as const]));
	const nearest = nearestOf(pieces);
	const far = (x: number, y: number) => nearest(x - atMm[0], y - atMm[1])?.off ?? 99;
	const paint: Thing['paint'] = (ray, ink) => {
		const off = far(ray.x + ray.dx * 0.8, ray.y + ray.dy * 0.8);
		if (off <= 0) setInk(ink, colour, 0.8 + 0.4 * Math.min(1, -off));
		return off > -0.5 && off < 0.8;
	};
	const shade = (x: number, y: number) => shadeOfFlat(light, {x, y, highMm: 1, edgeAt: far});
	return {atMm, reachMm: 130, shade, paint};
}

type Sprout = {readonly angle: number; readonly radius: number; readonly left: number};

/** Grains of sand, more of them near a place. */
export function makeSand({pick, atMm}: ClutterWish, reachMm: number): Thing {
	const noise = noiseFrom(pick);
	const [pale, dark] = [inkOf([206, 184, 146]), inkOf([96, 78, 62])];
	const share = between(pick, [0.05, 0.3]);
	const sideMm = 3;
	const paint = (ray: {readonly x: number; readonly y: number}, ink: Ink) => {
		const [column, row] = [Math.floor(ray.x / sideMm), Math.floor(ray.y / sideMm)];
		const chance = noise(column * 7.31, row * 5.77);
		const thin = 1 - Math.hypot(ray.x - atMm[0], ray.y - atMm[1]) / reachMm;
		if (chance > 0.25 + share * thin) return false;
		const at = [noise(row * 3.9, column * 9.2), noise(column * 4.1 + 9, row * 8.3)] as const;
		const radius = 0.2 + 0.3 * noise(row * 6.1, column * 2.7 + 50);
		const off = Math.hypot(
			ray.x - (column + 0.2 + 0.6 * at[0]) * sideMm,
			ray.y - (row + 0.2 + 0.6 * at[1]) * sideMm,
		);
		if (off < radius) setInk(ink, chance > 0.2 ? dark : pale, 1);
		return off < radius + 0.5;
	};
	return {atMm, reachMm, shade: () => 1, paint};
}
