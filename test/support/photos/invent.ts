/** Makes photos up, by seed: what lies on the table, how it is lit and seen, and the truth about it. */
import {between, normal, type Pick, seeded} from '../../../src/key/random.ts';
import {type CameraStand, nearest} from './camera.ts';
import {type GroundKind, groundKinds, inventGround, makeNoise} from './ground.ts';
import {type Layer, layerOf, shadowOf} from './layer.ts';
import {paintCase} from './paint.ts';
import {drawSheet} from './printed.ts';
import {inventCase} from './shape.ts';
import type {Light, Scene} from './shoot.ts';
import {drawCard, drawPaper, drawStone, drawWeed} from './things.ts';

/** What is to be on a photo. */
export type Wish = {
	readonly seed: number;
	readonly reference: 'a4' | 'card' | 'sheet' | 'letter' | 'coin' | 'none';
	readonly level: 'clean' | 'normal' | 'hard';
	readonly subject?: 'case' | 'stone' | 'nothing' | 'overlap' | 'tray' | 'cut';
	readonly cardScale?: number;
	readonly printScale?: number;
	readonly isCut?: boolean;
	readonly blurPx?: number;
	readonly isDark?: boolean;
	readonly isHornless?: boolean;
};

/** The truth about one case of a photo. */
export type Truth = {
	readonly lengthMm: number;
	readonly widthMm: number;
	readonly heightMm: number;
	readonly atMm: readonly [number, number];
};

/** A scene with its truth, and the chance that its noise is drawn from. */
export type Invented = {readonly scene: Scene; readonly cases: readonly Truth[]; readonly pick: Pick};

const a4 = [210, 297] as const;
const noise = makeNoise(seeded(1));

/** Makes one photo up. */
export async function inventPhoto(wish: Wish): Promise<Invented> {
	const pick = seeded(wish.seed * 7919 + 13);
	const sheetMm = wish.reference === 'letter' ? ([215.9, 279.4] as const) : a4;
	const isOnSheet = ['a4', 'sheet', 'letter'].includes(wish.reference);
	const layers: Layer[] = [];
	const groundKind = isOnSheet ? tableKind(wish, pick) : cardGround(wish, pick);
	const ground = inventGround(groundKind, pick, noise);
	if (isOnSheet) layers.push(await sheetLayer(wish, sheetMm, pick));
	const spots = placesFor(wish, pick, sheetMm);
	const cases: Truth[] = [];
	let reachMm = 40;
	for (const spot of spots) {
		const made = await subjectLayers(wish, spot, pick);
		layers.push(...made.layers);
		if (made.truth) cases.push(made.truth);
		reachMm = Math.max(reachMm, made.reachMm);
	}
	const corners = isOnSheet ? cornersOf(sheetMm) : await addCard(wish, {pick, layers, reachMm});
	if (wish.level !== 'clean' && pick() < 0.4) layers.push(await weedLayer(pick));
	const must = [...corners, ...spots.flatMap(({atMm, roomMm}) => around(atMm, Math.min(roomMm, reachMm)))];
	const stand = standFor(wish, {pick, must});
	const light = lightFor(wish, pick);
	const orientation = pick() < 0.2 ? ([3, 6, 8] as const)[Math.floor(pick() * 3)] : undefined;
	const scene = {stand, ground, layers, light, ...(orientation ? {orientation} : {})};
	return {scene, cases, pick};
}

type Spot = {
	readonly atMm: readonly [number, number];
	readonly turn: number;
	readonly longMm: number;
	readonly roomMm: number;
};

function tableKind({level}: Wish, pick: Pick): GroundKind {
	if (level === 'clean') return pick() < 0.6 ? 'plain' : pick() < 0.6 ? 'wood' : 'light';
	return groundKinds[Math.floor(pick() * groundKinds.length)] ?? 'plain';
}

function cardGround({level}: Wish, pick: Pick): GroundKind {
	if (level === 'clean') return 'light';
	return pick() < 0.6 ? 'light' : pick() < 0.5 ? 'wood' : pick() < 0.6 ? 'stone' : 'cloth';
}

function placesFor(wish: Wish, pick: Pick, [wide, high]: readonly [number, number]): readonly Spot[] {
	if (wish.subject === 'nothing') return [];
	if (wish.subject === 'tray') return traySpots(pick);
	const turn = between(pick, [0, 2 * Math.PI]);
	if (wish.reference === 'a4' || wish.reference === 'sheet' || wish.reference === 'letter') {
		const longMm = between(pick, [30, 150]);
		const margin = Math.min(wide / 2 - 8, longMm * 0.5 + 12);
		const atMm = [
			between(pick, [-1, 1]) * Math.max(3, wide / 2 - margin - (wish.reference === 'sheet' ? 22 : 0)),
			between(pick, [-1, 1]) * Math.max(3, high / 2 - margin - (wish.reference === 'sheet' ? 22 : 0)),
		] as const;
		return [{atMm, turn, longMm, roomMm: 0}];
	}
	return [{atMm: [0, 0], turn, longMm: between(pick, [30, 130]), roomMm: 1000}];
}

function traySpots(pick: Pick): readonly Spot[] {
	const [columns, rows] = [2 + Math.floor(pick() * 2), 2 + Math.floor(pick() * 3)];
	const step = [180 / columns, 225 / rows] as const;
	const longMm = Math.min(step[0], step[1]) * 0.62;
	return Array.from({length: columns * rows}, (_, index) => {
		const [column, row] = [index % columns, Math.floor(index / columns)];
		const atMm = [(column + 0.5 - columns / 2) * step[0], (row + 0.5 - rows / 2) * step[1]] as const;
		return {atMm, turn: between(pick, [0, 6.28]), longMm: longMm * between(pick, [0.75, 1]), roomMm: 0};
	});
}

function cornersOf([wide, high]: readonly [number, number]): readonly (readonly [number, number])[] {
	return [
		[-wide / 2, -high / 2],
		[wide / 2, -high / 2],
		[wide / 2, high / 2],
		[-wide / 2, high / 2],
	];
}

function around([x, y]: readonly [number, number], r: number): readonly (readonly [number, number])[] {
	return [
		[x - r, y - r],
		[x + r, y - r],
		[x + r, y + r],
		[x - r, y + r],
	];
}

async function sheetLayer(wish: Wish, [wide, high]: readonly [number, number], pick: Pick): Promise<Layer> {
	const svg =
		wish.reference === 'sheet' ? drawSheet(wish.printScale ?? 1, pick) : drawPaper(wide, high, pick);
	return layerOf(svg, {pxPerMm: 5, widthMm: wide}, {atMm: [0, 0], turn: 0, heightMm: 0});
}

type Made = {readonly layers: readonly Layer[]; readonly truth?: Truth; readonly reachMm: number};

async function subjectLayers(wish: Wish, spot: Spot, pick: Pick): Promise<Made> {
	const heightMm = between(pick, [0, wish.level === 'clean' ? 3 : 4]);
	const place = {atMm: spot.atMm, turn: spot.turn, heightMm};
	if (wish.subject === 'stone') {
		const stone = await layerOf(drawStone(spot.longMm, pick), {pxPerMm: 8, widthMm: spot.longMm}, place);
		return {layers: [await shadowFor(stone, pick, wish), stone], reachMm: spot.longMm};
	}
	const shape = inventCase(pick, {
		lengthMm: [spot.longMm, spot.longMm],
		worn: wish.level !== 'clean',
		...(wish.isHornless ? {isHornless: true} : {}),
	});
	const wet = {clean: 0.3, normal: 0.6, hard: 1}[wish.level];
	const {svg, halfMm} = paintCase(shape, pick, wet);
	const layer = await layerOf(svg, {pxPerMm: Math.min(8, 1500 / halfMm / 2), widthMm: 2 * halfMm}, place);
	const layers = [await shadowFor(layer, pick, wish), layer];
	if (wish.subject === 'overlap') {
		const beside = {
			...layer,
			turn: spot.turn + 1.2,
			atMm: [spot.atMm[0] + 0.5 * shape.widthMm, spot.atMm[1]] as const,
		};
		layers.push(await shadowFor(beside, pick, wish), beside);
	}
	const truth = {lengthMm: shape.lengthMm, widthMm: shape.widthMm, heightMm, atMm: spot.atMm};
	return {layers, truth, reachMm: shape.lengthMm * 0.62 + 6};
}

async function shadowFor(layer: Layer, pick: Pick, {level}: Wish): Promise<Layer> {
	const angle = between(pick, [0, 2 * Math.PI]);
	const far = between(pick, level === 'clean' ? [0, 2] : level === 'normal' ? [0, 4] : [1, 8]);
	const isHard = level !== 'clean' && pick() < 0.4;
	return shadowOf(layer, {
		by: [Math.cos(angle) * far, Math.sin(angle) * far],
		blurMm: isHard ? 0.2 : between(pick, [1, 5]),
		strength: between(pick, level === 'clean' ? [0.1, 0.4] : [0.15, 0.6]),
	});
}

type Table = {readonly pick: Pick; readonly layers: Layer[]; readonly reachMm: number};

async function addCard(
	wish: Wish,
	{pick, layers, reachMm}: Table,
): Promise<readonly (readonly [number, number])[]> {
	if (wish.reference === 'none') return [];
	const angle = between(pick, [0, 2 * Math.PI]);
	const isCoin = wish.reference === 'coin';
	const [wide, high] = isCoin ? [24.25, 24.25] : [85.6 * (wish.cardScale ?? 1), 53.98];
	const far = reachMm + Math.hypot(wide, high) / 2 - 6;
	const atMm = [Math.cos(angle) * far, Math.sin(angle) * far] as const;
	const place = {atMm, turn: between(pick, [0, 6.28]), heightMm: isCoin ? 2 : 0.76};
	const svg = isCoin ? drawStone(24.25, pick, true) : drawCard(wide, high, pick);
	const layer = await layerOf(svg, {pxPerMm: 8, widthMm: wide}, place);
	layers.push(await shadowFor(layer, pick, {...wish, level: 'clean'}), layer);
	return around(atMm, Math.hypot(wide, high) / 2);
}

async function weedLayer(pick: Pick): Promise<Layer> {
	const place = {
		atMm: [between(pick, [-90, 90]), between(pick, [-130, 130])] as const,
		turn: 0,
		heightMm: 0.5,
	};
	return layerOf(drawWeed(60, pick), {pxPerMm: 6, widthMm: 60}, place);
}

function standFor(
	wish: Wish,
	{pick, must}: {pick: Pick; must: readonly (readonly [number, number])[]},
): CameraStand {
	const isUpright = pick() < 0.5;
	const long = pick() < 0.2 ? 1600 : 1280;
	const [widthPx, heightPx] = isUpright ? [long * 0.75, long] : [long, long * 0.75];
	const most = {clean: 12, normal: 25, hard: 35}[wish.level];
	const xs = must.map(([x]) => x);
	const ys = must.map(([, y]) => y);
	const middle = (values: readonly number[]) => (Math.min(...values) + Math.max(...values)) / 2;
	const aimMm =
		must.length > 0
			? ([middle(xs) + 8 * normal(pick), middle(ys) + 8 * normal(pick)] as const)
			: ([0, 0] as const);
	const focalShare = pick() < 0.6 ? between(pick, [0.68, 0.82]) : between(pick, [0.6, 1.1]);
	const square = Math.floor(pick() * 4) * 90;
	const stand = {
		...{widthPx, heightPx, focalShare, aimMm},
		tilt: between(pick, [0, most]),
		azimuth: between(pick, [0, 360]),
		roll: 0,
		distanceMm: 400,
	};
	// Whoever takes a photo of a sheet turns the phone along with it, more or less.
	const turned = {
		...stand,
		roll: square - stand.azimuth + (pick() < 0.7 ? 6 * normal(pick) : between(pick, [-90, 90])),
	};
	const near = nearest(turned, must, wish.isCut ? -110 : 12);
	return {
		...near,
		distanceMm: Math.max(180, near.distanceMm * between(pick, wish.isCut ? [1, 1] : [1.01, 1.4])),
	};
}

function lightFor({level, blurPx, isDark}: Wish, pick: Pick): Light {
	const hardness = {clean: 0.4, normal: 0.8, hard: 1.3}[level];
	const gain = (isDark ? 0.13 : 1) * between(pick, [0.8, 1.05]);
	const warm = between(pick, [-0.12, 0.12]) * hardness;
	const shade =
		level !== 'clean' && pick() < 0.35
			? {
					angle: between(pick, [0, 6.28]),
					offset: between(pick, [-0.3, 0.3]),
					dark: between(pick, [0.15, 0.45]),
					softPx: between(pick, [6, 200]),
				}
			: undefined;
	return {
		slope: [0.2 * hardness * between(pick, [-1, 1]), 0.2 * hardness * between(pick, [-1, 1])],
		vignette: between(pick, [0, 0.25]) * hardness,
		cast: [gain * (1 + warm), gain, gain * (1 - warm)],
		...(shade ? {shade} : {}),
		blurPx:
			blurPx ?? between(pick, level === 'hard' ? [0.5, 2.5] : level === 'normal' ? [0.3, 1.3] : [0, 0.9]),
		noise: between(pick, level === 'hard' ? [2, 9] : [1, 4]),
		quality: Math.round(between(pick, level === 'hard' ? [60, 85] : [75, 95])),
		bend: normal(pick) * 0.004 * hardness,
	};
}
