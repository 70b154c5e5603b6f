/** What tables are made of, as colours worked out at each point. */
import {between, oneOf, type Pick} from '../../../src/key/random.ts';
import {layered, noiseFrom, ramp} from './noise.ts';
import {dimInk, type Ground, type Ink, inkOf, mixInk, setInk} from './scene.ts';

/** The grounds there are. */
export const groundNames = [
	'board',
	'plain',
	'wood',
	'speckled stone',
	'veined stone',
	'linen',
	'towel',
	'tiles',
] as const;

/** What a table is made of. */
export type GroundName = (typeof groundNames)[number];

type Colour = readonly [number, number, number];

/** Makes a table up. */
export function makeGround(name: GroundName, pick: Pick): Ground {
	const turn = pick() * Math.PI;
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	const made = makers[name](pick);
	return (x, y, ink) => made(x * c + y * s, y * c - x * s, ink);
}

const makers: Readonly<Record<GroundName, (pick: Pick) => Ground>> = {
	board: pick => speckle(pick, {colour: shadeOf(pick, [232, 231, 227], 8), strength: 0.012, sizeMm: 0.4}),
	plain: pick => {
		const colours: readonly Colour[] = [
			[58, 60, 64],
			[120, 98, 80],
			[150, 152, 150],
			[60, 84, 92],
			[196, 186, 168],
			[122, 54, 46],
		];
		return speckle(pick, {colour: shadeOf(pick, oneOf(pick, colours), 14), strength: 0.05, sizeMm: 0.5});
	},
	wood: makeWood,
	'speckled stone': makeGranite,
	'veined stone': makeMarble,
	linen: pick => makeWeave(pick, {threadMm: between(pick, [0.5, 0.9]), depth: 0.16}),
	towel: pick => makeWeave(pick, {threadMm: between(pick, [1.8, 3]), depth: 0.4}),
	tiles: makeTiles,
};

function shadeOf(pick: Pick, [red, green, blue]: Colour, by: number): Ink {
	const all = between(pick, [-by, by]);
	const each = () => all + between(pick, [-by / 2, by / 2]);
	return inkOf([red + each(), green + each(), blue + each()]);
}

function speckle(
	pick: Pick,
	{colour, strength, sizeMm}: {colour: Ink; strength: number; sizeMm: number},
): Ground {
	const noise = noiseFrom(pick);
	return (x, y, ink) => {
		const fine = noise(x / sizeMm, y / sizeMm) - 0.5;
		const broad = noise(x / 60, y / 60 + 50) - 0.5;
		setInk(ink, colour, 1 + 2 * strength * fine + 2.4 * strength * broad);
	};
}

function makeWood(pick: Pick): Ground {
	const noise = noiseFrom(pick);
	const bent = layered(noise, 3);
	const light = shadeOf(
		pick,
		oneOf<Colour>(pick, [
			[196, 156, 108],
			[150, 104, 66],
			[214, 188, 148],
			[104, 72, 48],
		]),
		10,
	);
	const dark = Float64Array.from(light, value => value * between(pick, [0.45, 0.75]));
	const [ringMm, plankMm] = [between(pick, [4, 12]), between(pick, [60, 160])];
	return (x, y, ink) => {
		const plank = Math.floor(y / plankMm);
		const inPlank = y - plank * plankMm;
		const far = bent(x / 180 + plank * 7.7, y / 30 + plank * 3.1);
		const ring = (y + 60 * far) / ringMm;
		const grain = ring - Math.floor(ring);
		const fibre = noise(x / 14, y / 0.45 + plank * 31);
		const pore = noise(x / 5 + 90, y / 0.3) > 0.86 ? 0.75 : 1;
		setInk(ink, light, (0.94 + 0.12 * noise(plank * 5.3, 2)) * pore);
		mixInk(ink, dark, 0.6 * grain * grain + 0.25 * fibre);
		if (inPlank < 0.9) dimInk(ink, 0.35 + 0.5 * Math.abs(inPlank - 0.45));
	};
}

function makeGranite(pick: Pick): Ground {
	const [noise, other] = [noiseFrom(pick), noiseFrom(pick)];
	const body = shadeOf(
		pick,
		oneOf<Colour>(pick, [
			[130, 128, 126],
			[72, 72, 76],
			[170, 156, 146],
		]),
		10,
	);
	const [pale, dark] = [inkOf([206, 202, 196]), inkOf([38, 38, 42])];
	const grainMm = between(pick, [0.8, 2.2]);
	return (x, y, ink) => {
		setInk(ink, body, 0.85 + 0.3 * noise(x / 25, y / 25));
		mixInk(ink, pale, 0.75 * ramp(0.62, 0.72, noise(x / grainMm, y / grainMm)));
		mixInk(ink, dark, 0.85 * ramp(0.66, 0.74, other(x / grainMm + 40, y / grainMm)));
	};
}

function makeMarble(pick: Pick): Ground {
	const noise = layered(noiseFrom(pick), 4);
	const fine = noiseFrom(pick);
	const isSlate = pick() < 0.5;
	const body = shadeOf(pick, isSlate ? [74, 80, 86] : [214, 210, 202], 8);
	const vein = shadeOf(pick, isSlate ? [116, 118, 116] : [150, 146, 142], 8);
	return (x, y, ink) => {
		const line = Math.abs(noise(x / 160 + 40, y / 90) - 0.5 + 0.12 * (fine(x / 18, y / 18) - 0.5));
		setInk(ink, body, 0.93 + 0.14 * fine(x / 0.6, y / 0.6) * (isSlate ? 1 : 0.3));
		mixInk(ink, vein, ramp(0.05, 0, line) * (0.2 + 0.6 * fine(x / 30 + 70, y / 30)));
	};
}

function makeWeave(pick: Pick, {threadMm, depth}: {threadMm: number; depth: number}): Ground {
	const noise = noiseFrom(pick);
	const colour = shadeOf(
		pick,
		oneOf<Colour>(pick, [
			[206, 196, 176],
			[120, 132, 146],
			[168, 72, 66],
			[226, 224, 218],
			[84, 100, 84],
		]),
		12,
	);
	const stripe = shadeOf(pick, [90, 110, 150], 20);
	const stripeMm = pick() < 0.35 ? between(pick, [18, 50]) : 0;
	return (x, y, ink) => {
		const [a, b] = [x + 1.2 * noise(x / 9, y / 9), y + 1.2 * noise(x / 9 + 30, y / 9)];
		const over = Math.sin((a * 2 * Math.PI) / (2 * threadMm)) * Math.sin((b * 2 * Math.PI) / (2 * threadMm));
		const loose = noise(a / threadMm, b / threadMm) - 0.5;
		setInk(ink, colour, 1 + depth * (0.5 * over + loose) + 0.2 * (noise(x / 50, y / 50) - 0.5));
		if (stripeMm > 0 && y / stripeMm - Math.floor(y / stripeMm) < 0.2) mixInk(ink, stripe, 0.7);
	};
}

function makeTiles(pick: Pick): Ground {
	const noise = noiseFrom(pick);
	const body = shadeOf(
		pick,
		oneOf<Colour>(pick, [
			[186, 178, 166],
			[92, 100, 104],
			[150, 96, 76],
		]),
		10,
	);
	const joint = shadeOf(pick, [128, 124, 118], 16);
	const sideMm = between(pick, [98, 200]);
	return (x, y, ink) => {
		const [across, down] = [x / sideMm, y / sideMm];
		const [a, b] = [across - Math.floor(across), down - Math.floor(down)];
		const edge = Math.min(a, b, 1 - a, 1 - b) * sideMm;
		const one = noise(Math.floor(across) * 3.7, Math.floor(down) * 5.1);
		setInk(ink, body, 0.9 + 0.1 * one + 0.12 * noise(x / 6, y / 6));
		mixInk(ink, joint, ramp(1.6, 1.1, edge));
	};
}
