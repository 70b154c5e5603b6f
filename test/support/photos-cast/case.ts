/** A made-up egg case on the table: where it lies, how it is seen, and the truth about it. */
import type {Pick} from '../../../src/key/random.ts';
import {type CaseShape, makeShape, type ShapeWish} from './case-shape.ts';
import {makeSkin, type Skin} from './case-skin.ts';
import {makeStrands, type Nearest, nearestOf, type Piece, type Strands} from './case-strands.ts';
import {type Field, fieldOf} from './field.ts';
import {ramp} from './noise.ts';
import type {Ink, Light, Ray, Thing} from './scene.ts';

/** Where a case lies, turned by `turn` (radians), and what it must be like. */
export type CaseWish = ShapeWish & {
	readonly atMm: readonly [number, number];
	readonly turn: number;
	readonly isHornless: boolean;
};

/** A case to be laid down: its shape and what grows out of it. */
export type Laid = {readonly wish: CaseWish; readonly shape: CaseShape; readonly strands: Strands};

/** Makes a case up, with or without its horns; without them all else stays as it is. */
export function inventCase(wish: CaseWish, pick: Pick): Laid {
	const shape = makeShape(wish, pick);
	const strands = makeStrands(shape, wish.level, pick);
	return {wish, shape, strands: wish.isHornless ? {horns: [], threads: []} : strands};
}

/** Points of the table from points of the case's own frame. */
export function toTable({atMm, turn}: CaseWish, u: number, v: number): readonly [number, number] {
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	return [atMm[0] + u * c - v * s, atMm[1] + u * s + v * c];
}

/** Makes a case something that rays may meet. */
export function layCase({wish, shape, strands}: Laid, light: Light, pick: Pick): Thing {
	const {atMm, turn} = wish;
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	const turned = {...light, x: light.x * c + light.y * s, y: light.y * c - light.x * s};
	const skin = makeSkin(shape, {light: turned, level: wish.level}, pick);
	const silhouette = fieldOf(shape, [...strands.horns, ...strands.threads]);
	const own: Ray = {x: 0, y: 0, dx: 0, dy: 0};
	const parts = {
		shape,
		skin,
		light: turned,
		horns: nearestOf(strands.horns),
		threads: nearestOf(strands.threads),
	};
	const look = lookAt(parts);
	const shadow = shadowOf(shape, silhouette, turned);
	return {
		atMm,
		reachMm: silhouette.reachMm,
		shade: (x, y) => {
			const a = x - atMm[0];
			const b = y - atMm[1];
			return shadow(a * c + b * s, b * c - a * s);
		},
		paint: (ray, ink) => {
			const a = ray.x - atMm[0];
			const b = ray.y - atMm[1];
			own.x = a * c + b * s;
			own.y = b * c - a * s;
			own.dx = ray.dx * c + ray.dy * s;
			own.dy = ray.dy * c - ray.dx * s;
			return silhouette.at(own.x, own.y) < 14 && look(own, ink);
		},
	};
}

/** Light left near a case: two shadows, of its outline and of its swelling, and the dimness close to it. */
function shadowOf({riseMm, bulgeMm, widthMm}: CaseShape, field: Field, light: Light) {
	const [perX, perY] = [light.x / light.z, light.y / light.z];
	const cover = (u: number, v: number, {highMm, inset}: Layer) => {
		const wide = 0.2 + light.softness * highMm;
		return ramp(wide, -wide, field.at(u + perX * highMm, v + perY * highMm) + inset);
	};
	const upper = {highMm: riseMm + 0.6 * bulgeMm, inset: 0.12 * widthMm};
	const lower = {highMm: Math.max(0.3, riseMm), inset: 0};
	const far = 4 + 2 * upper.highMm * (1 + light.softness);
	return (u: number, v: number) => {
		const near = field.at(u, v);
		if (near > far) return 1;
		const dim = 0.45 * Math.exp(-Math.max(0, near) / (0.8 + 0.8 * riseMm + 0.15 * bulgeMm));
		const dark = Math.max(cover(u, v, lower), cover(u, v, upper));
		return 1 - light.direct * dark - (1 - light.direct) * dim;
	};
}

type Layer = {readonly highMm: number; readonly inset: number};

type Parts = {
	readonly shape: CaseShape;
	readonly skin: Skin;
	readonly light: Light;
	readonly horns: Nearest;
	readonly threads: Nearest;
};

/** Follows a line of sight down to the case; says whether an edge is near. */
function lookAt({shape, skin, horns, threads}: Parts): (ray: Ray, ink: Ink) => boolean {
	const {inside, height, rim, lens, riseMm, bulgeMm} = shape;
	const hit = {u: 0, v: 0, inside: 0, lens: 0, nx: 0, ny: 0, dx: 0, dy: 0};
	const strand = (nearest: Nearest, ray: Ray, {highMm, ink}: {highMm: number; ink: Ink}) => {
		const u = ray.x + ray.dx * highMm;
		const v = ray.y + ray.dy * highMm;
		const found = nearest(u, v);
		if (!found) return false;
		if (found.off <= 0) skin.strand({...roundness(found.piece, u, v), isThin: nearest === threads}, ink);
		return found.off > -0.5 && found.off < 0.8;
	};
	return (ray, ink) => {
		let isEdge = strand(threads, ray, {highMm: 0.35 * riseMm + 0.2, ink});
		isEdge = strand(horns, ray, {highMm: riseMm, ink}) || isEdge;
		const rimMm = rim(ray.x + ray.dx * riseMm);
		const steps = Math.abs(ray.dx) + Math.abs(ray.dy) < 0.04 ? 3 : 7;
		let within = -99;
		for (let step = steps; step >= 0; step -= 1) {
			const high = rimMm + (bulgeMm * step) / steps;
			const u = ray.x + ray.dx * high;
			const v = ray.y + ray.dy * high;
			within = inside(u, v);
			if (within < 0 || (step > 0 && height(u, v) < high)) continue;
			const met = step === steps ? high : finer(shape, ray, [high, bulgeMm / steps]);
			hit.u = ray.x + ray.dx * met;
			hit.v = ray.y + ray.dy * met;
			hit.inside = inside(hit.u, hit.v);
			hit.lens = lens(hit.u, hit.v);
			hit.dx = ray.dx;
			hit.dy = ray.dy;
			hit.nx = steepness(height(hit.u - slopeStep, hit.v), height(hit.u + slopeStep, hit.v));
			hit.ny = steepness(height(hit.u, hit.v - slopeStep), height(hit.u, hit.v + slopeStep));
			skin.body(hit, ink);
			break;
		}
		return isEdge || Math.abs(within) < 0.6;
	};
}

/** Between a height where the line of sight is in the case and one a step above where it is not: where it goes in. */
function finer({height}: CaseShape, ray: Ray, [low, step]: readonly [number, number]): number {
	let under = low;
	let over = low + step;
	for (let round = 0; round < 4; round += 1) {
		const middle = (under + over) / 2;
		if (height(ray.x + ray.dx * middle, ray.y + ray.dy * middle) >= middle) under = middle;
		else over = middle;
	}
	return (under + over) / 2;
}

const slopeStep = 0.3;

/** How far a normal leans for heights on both sides of a point; walls are no steeper than this. */
function steepness(before: number, after: number): number {
	return Math.max(-2.5, Math.min(2.5, (before - after) / (2 * slopeStep)));
}

/** The way the skin of a round strand looks at a point seen from above. */
function roundness({ax, ay, bx, by, ra, rb}: Piece, u: number, v: number) {
	const [dx, dy] = [bx - ax, by - ay];
	const long = Math.hypot(dx, dy) || 1;
	const off = ((u - ax) * -dy + (v - ay) * dx) / long;
	const share = Math.max(-0.9, Math.min(0.9, off / Math.max(0.1, (ra + rb) / 2)));
	const steep = share / Math.sqrt(1 - share * share);
	return {nx: (-dy / long) * steep, ny: (dx / long) * steep};
}
