/** A card of the size that banks use (ISO/IEC 7810, ID-1), of any colour and pattern, and coins. */
import {between, oneOf, type Pick} from '../../../src/key/random.ts';
import {noiseFrom, ramp} from './noise.ts';
import {dimInk, type Ink, inkOf, type Light, mixInk, type Ray, setInk, type Thing} from './scene.ts';

/** Where a card lies, turned by `turn` (radians), and how much too large or small it is. */
export type CardWish = {
	readonly atMm: readonly [number, number];
	readonly turn: number;
	readonly scale: number;
};

const size = {longMm: 85.6, shortMm: 53.98, cornerMm: 3.18, thickMm: 0.76} as const;

/** Lays a card down. */
export function makeCard({atMm, turn, scale}: CardWish, light: Light, pick: Pick): Thing {
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	const [halfX, halfY] = [(size.longMm / 2) * scale, (size.shortMm / 2) * scale];
	const corner = size.cornerMm * scale;
	const face = makeFace(pick);
	const rim = inkOf(pick() < 0.6 ? [214, 214, 212] : [90, 90, 94]);
	const gloss = {
		strength: between(pick, [0, 0.12]),
		at: between(pick, [-40, 40]),
		wide: between(pick, [12, 40]),
	};
	const local = (x: number, y: number): readonly [number, number] => {
		const [a, b] = [x - atMm[0], y - atMm[1]];
		return [a * c + b * s, b * c - a * s];
	};
	const edge = (u: number, v: number) => {
		const [a, b] = [Math.abs(u) - halfX + corner, Math.abs(v) - halfY + corner];
		return Math.hypot(Math.max(a, 0), Math.max(b, 0)) + Math.min(Math.max(a, b), 0) - corner;
	};
	const edgeAt = (x: number, y: number) => edge(...local(x, y));
	const shade = (x: number, y: number) => shadeOfFlat(light, {x, y, highMm: size.thickMm, edgeAt});
	const paint = (ray: Ray, ink: Ink) => {
		const high = size.thickMm;
		const [u, v] = local(ray.x + ray.dx * high, ray.y + ray.dy * high);
		const outside = edge(u, v);
		if (outside <= 0) {
			face(u / scale, v / scale, ink);
			const off = (u + 0.4 * v - gloss.at) / gloss.wide;
			const shine = gloss.strength * Math.exp(-off * off);
			for (let channel = 0; channel < 3; channel += 1) ink[channel] = (ink[channel] ?? 0) + shine;
			if (outside > -0.25) dimInk(ink, 0.92);
		} else if (edgeAt(ray.x, ray.y) <= 0) {
			setInk(ink, rim, 0.55);
		}
		return Math.abs(outside) < 0.9;
	};
	return {atMm, reachMm: 56 * scale, shade, paint};
}

/** Light left beside something flat that lies this high, by how far a point is from its edge. */
export function shadeOfFlat(
	light: Light,
	{x, y, highMm, edgeAt}: {x: number; y: number; highMm: number; edgeAt: (x: number, y: number) => number},
): number {
	const wide = 0.12 + light.softness * highMm;
	const shifted = edgeAt(x + (light.x / light.z) * highMm, y + (light.y / light.z) * highMm);
	const near = Math.max(0, edgeAt(x, y));
	return (
		1 -
		light.direct * ramp(wide, -wide, shifted) -
		0.5 * (1 - light.direct) * Math.exp(-near / (0.6 * highMm + 0.1))
	);
}

type Face = (u: number, v: number, ink: Ink) => void;

function makeFace(pick: Pick): Face {
	const colours = [
		[24, 42, 92],
		[30, 30, 34],
		[236, 236, 238],
		[176, 30, 44],
		[38, 110, 88],
		[214, 170, 60],
		[120, 140, 190],
		[150, 152, 156],
	] as const;
	const [body, other] = [inkOf(oneOf(pick, colours)), inkOf(oneOf(pick, colours))];
	const noise = noiseFrom(pick);
	const pattern = Math.floor(pick() * 4);
	const [stepMm, slant] = [between(pick, [4, 30]), between(pick, [-2, 2])];
	const parts = pick() < 0.45 ? backParts(pick) : frontParts(pick);
	return (u, v, ink) => {
		setInk(ink, body, 1);
		if (pattern === 1) mixInk(ink, other, ramp(-45, 45, u + slant * v));
		if (pattern === 2) mixInk(ink, other, 0.8 * ramp(-0.2, 0.2, Math.sin((u + slant * v) / stepMm)));
		if (pattern === 3) mixInk(ink, other, ramp(0.5, 0.56, noise(u / stepMm, v / stepMm)));
		parts(u, v, ink);
	};
}

/** The back: a magnetic stripe along a long side and a field to sign; places from memory. */
function backParts(pick: Pick): Face {
	const stripe = inkOf(pick() < 0.8 ? [26, 24, 24] : [70, 44, 30]);
	const field = inkOf([228, 226, 218]);
	const hasField = pick() < 0.7;
	return (u, v, ink) => {
		if (v > -22.5 && v < -9.8) setInk(ink, stripe, 1);
		if (hasField && v > -6 && v < 4 && u > -38 && u < 22) setInk(ink, field, 1);
	};
}

/** The front: a chip with its contacts, and rows of small dark or light signs; places from memory. */
function frontParts(pick: Pick): Face {
	const chip = inkOf(pick() < 0.6 ? [204, 172, 92] : [190, 190, 192]);
	const signs = inkOf(pick() < 0.5 ? [235, 235, 235] : [30, 30, 32]);
	const hasChip = pick() < 0.75;
	const noise = noiseFrom(pick);
	return (u, v, ink) => {
		if (hasChip && u > -33 && u < -20.5 && v > -8.5 && v < 2.5) {
			const isLine = Math.abs(v + 3) < 0.25 || Math.abs(u + 26.7) < 0.25 || Math.abs(v + 5.8) < 0.2;
			setInk(ink, chip, isLine ? 0.5 : 1);
		}
		const isRow = (v > 6 && v < 9.5) || (v > 15 && v < 17);
		if (isRow && u > -34 && u < 24 && noise(u / 0.9, v / 1.1) > 0.55) mixInk(ink, signs, 0.85);
	};
}
