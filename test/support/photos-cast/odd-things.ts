/** Things that are no egg case: a stone, a shell, a leaf, weed and a coin. */
import {between, oneOf, type Pick} from '../../../src/key/random.ts';
import {shadeOfFlat} from './card.ts';
import {layered, noiseFrom, ramp} from './noise.ts';
import {dimInk, type Ink, inkOf, type Light, lit, mixInk, type Ray, setInk, type Thing} from './scene.ts';

/** The odd things there are. */
export type OddName = 'stone' | 'shell' | 'leaf' | 'coin';

type Spot = {readonly atMm: readonly [number, number]; readonly turn: number; readonly longMm: number};

/** How something looks at a point of its own plane: distance from its edge, height, and colour. */
type Look = {
	readonly highMm: number;
	readonly reachMm: number;
	readonly edge: (u: number, v: number) => number;
	readonly height: (u: number, v: number) => number;
	readonly colour: (u: number, v: number, ink: Ink) => void;
};

/** Lays something down that is no egg case. */
export function makeOdd(name: OddName, spot: Spot, {light, pick}: {light: Light; pick: Pick}): Thing {
	const look = {stone: makeStone, shell: makeShell, leaf: makeLeaf, coin: makeCoin}[name](spot.longMm, pick);
	const [c, s] = [Math.cos(spot.turn), Math.sin(spot.turn)];
	const turned = {...light, x: light.x * c + light.y * s, y: light.y * c - light.x * s};
	const local = (x: number, y: number): readonly [number, number] => {
		const [a, b] = [x - spot.atMm[0], y - spot.atMm[1]];
		return [a * c + b * s, b * c - a * s];
	};
	const edgeAt = (x: number, y: number) => look.edge(...local(x, y));
	const shade = (x: number, y: number) => shadeOfFlat(light, {x, y, highMm: look.highMm * 0.7, edgeAt});
	const paint = (ray: Ray, ink: Ink) => {
		for (let step = 8; step >= 0; step -= 1) {
			const high = (look.highMm * step) / 8;
			const [u, v] = local(ray.x + ray.dx * high, ray.y + ray.dy * high);
			const outside = look.edge(u, v);
			if (outside > 0 || (step > 0 && look.height(u, v) < high)) continue;
			look.colour(u, v, ink);
			const slopeX = look.height(u - 0.3, v) - look.height(u + 0.3, v);
			const slopeY = look.height(u, v - 0.3) - look.height(u, v + 0.3);
			dimInk(ink, lit(turned, slopeX / 0.6, slopeY / 0.6));
			return outside > -0.8;
		}
		return Math.abs(edgeAt(ray.x, ray.y)) < 1.2;
	};
	return {atMm: spot.atMm, reachMm: look.reachMm + 2.2 * look.highMm + 4, shade, paint};
}

function makeStone(longMm: number, pick: Pick): Look {
	const [a, b] = [longMm / 2, (longMm / 2) * between(pick, [0.55, 0.9])];
	const noise = layered(noiseFrom(pick), 3);
	const body = inkOf(oneOf(pick, [[112, 108, 102] as const, [70, 70, 74] as const, [136, 110, 88] as const]));
	const size = (u: number, v: number) =>
		Math.hypot(u / a, v / b) + 0.22 * (noise(u / a + 5, v / a + 5) - 0.5);
	const highMm = b * 0.6;
	return {
		highMm,
		reachMm: a * 1.2,
		edge: (u, v) => (size(u, v) - 1) * b,
		height: (u, v) => highMm * Math.sqrt(Math.max(0, 1 - size(u, v) ** 2)),
		colour: (u, v, ink) => setInk(ink, body, 0.75 + 0.5 * noise(u / 2 + 30, v / 2)),
	};
}

function makeShell(longMm: number, pick: Pick): Look {
	const radius = longMm / 2;
	const ribs = 14 + Math.floor(pick() * 10);
	const noise = noiseFrom(pick);
	const [pale, band] = [inkOf([226, 208, 184]), inkOf([168, 112, 84])];
	// A fan round a hinge that lies left of the middle.
	const away = (u: number, v: number) => Math.hypot(u + radius * 0.8, v);
	const round = (u: number, v: number) => Math.atan2(v, u + radius * 0.8);
	const edge = (u: number, v: number) =>
		Math.max(
			away(u, v) - radius * 1.7 * Math.cos(round(u, v) * 0.55),
			(Math.abs(round(u, v)) - 1.05) * away(u, v),
		);
	return {
		highMm: radius * 0.4,
		reachMm: radius * 1.5,
		edge,
		height: (u, v) =>
			radius * 0.4 * Math.sqrt(Math.min(1, Math.max(0, -edge(u, v) / (radius * 0.8)))) +
			0.35 * Math.sin(round(u, v) * ribs * 2),
		colour: (u, v, ink) => {
			setInk(ink, pale, 1);
			mixInk(ink, band, 0.7 * ramp(0.4, 0.7, noise(away(u, v) / 4, 3)));
		},
	};
}

function makeLeaf(longMm: number, pick: Pick): Look {
	const [half, wide] = [longMm / 2, longMm * between(pick, [0.18, 0.3])];
	const body = inkOf(oneOf(pick, [[86, 104, 46] as const, [128, 84, 44] as const, [160, 130, 60] as const]));
	const noise = layered(noiseFrom(pick), 2);
	const edge = (u: number, v: number) => {
		const t = Math.min(1, Math.abs(u) / half);
		return Math.max(Math.abs(v) - wide * (1 - t * t) - 0.4 * Math.sin(u * 1.7), Math.abs(u) - half);
	};
	return {
		highMm: 2.5,
		reachMm: half * 1.1,
		edge,
		height: (u, v) =>
			1.2 + Math.min(1.3, Math.abs(v) * 0.12) - 0.25 * Math.abs(Math.sin((u + Math.abs(v)) / 2.6)),
		colour: (u, v, ink) => {
			const vein = Math.min(Math.abs(v), Math.abs(Math.sin((u + Math.abs(v)) / 2.6)) * 2);
			setInk(ink, body, 0.8 + 0.4 * noise(u / 5, v / 5) + 0.35 * ramp(0.4, 0.1, vein));
		},
	};
}

function makeCoin(longMm: number, pick: Pick): Look {
	const radius = longMm / 2;
	const body = inkOf(
		oneOf(pick, [[176, 176, 174] as const, [186, 150, 84] as const, [150, 92, 60] as const]),
	);
	const noise = layered(noiseFrom(pick), 2);
	const away = (u: number, v: number) => Math.hypot(u, v);
	const relief = (u: number, v: number) =>
		away(u, v) > radius * 0.9 ? 0.15 : away(u, v) < radius * 0.7 ? 0.25 * noise(u / 1.5, v / 1.5) : 0;
	return {
		highMm: 2,
		reachMm: radius + 1,
		edge: (u, v) => away(u, v) - radius,
		height: (u, v) => 1.85 + relief(u, v),
		colour: (u, v, ink) => setInk(ink, body, 0.85 + 0.25 * noise(u / 4 + 20, v / 4)),
	};
}
