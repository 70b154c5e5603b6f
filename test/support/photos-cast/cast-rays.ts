/** Casts a line of sight through every pixel's corners, and more where what they meet differs. */
import {backwards, viewOfPlane} from '../photos/camera.ts';
import type {Camera} from './framing.ts';
import type {Ground, Ink, Ray, Thing} from './scene.ts';

/** All that is seen; things lie on each other in their order. */
export type Scene = {
	readonly camera: Camera;
	readonly ground: Ground;
	readonly things: readonly Thing[];
	/** What falls between lamp and table: the share of light left at a point of it. */
	readonly fallOff: (x: number, y: number) => number;
};

/** Light for each pixel, three numbers each, row by row. */
export type Cast = {readonly widthPx: number; readonly heightPx: number; readonly light: Float32Array};

/** Looks again, in so many rows and columns of a pixel, where its corners differ by more than this. */
const finer = 3;
const mostDiffering = 0.035;

/** Casts the scene. */
export function castRays(scene: Scene): Cast {
	const {widthPx, heightPx} = scene.camera.stand;
	const look = lookInto(scene);
	const light = new Float32Array(widthPx * heightPx * 3);
	let upper = cornersOf(look, 0, widthPx);
	for (let row = 0; row < heightPx; row += 1) {
		const lower = cornersOf(look, row + 1, widthPx);
		for (let column = 0; column < widthPx; column += 1) {
			const at = (row * widthPx + column) * 3;
			if (differ(upper, lower, column)) {
				lookFiner(look, {column, row, at}, light);
				continue;
			}
			for (let channel = 0; channel < 3; channel += 1) {
				const left = column * 4 + channel;
				const right = left + 4;
				light[at + channel] =
					((upper[left] ?? 0) + (upper[right] ?? 0) + (lower[left] ?? 0) + (lower[right] ?? 0)) / 4;
			}
		}
		upper = lower;
	}
	return {widthPx, heightPx, light};
}

/** What is seen at a place of the picture, laid into the ink; whether an edge is near. */
type Look = (px: number, py: number, ink: Ink) => boolean;

function lookInto({camera, ground, things, fallOff}: Scene): Look {
	const {stand, bend} = camera;
	const back = Float64Array.from(backwards(viewOfPlane(stand, 0)));
	const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = back;
	const [cx, cy] = [stand.widthPx / 2, stand.heightPx / 2];
	const corner = cx * cx + cy * cy;
	const eye = eyeOf(stand);
	const sheetAt = things.findLastIndex(({hides}) => hides);
	const ray: Ray = {x: 0, y: 0, dx: 0, dy: 0};
	return (px, py, ink) => {
		const dx = px - cx;
		const dy = py - cy;
		const stretch = 1 + (bend * (dx * dx + dy * dy)) / corner;
		const x = cx + dx * stretch;
		const y = cy + dy * stretch;
		const w = g * x + h * y + i;
		ray.x = (a * x + b * y + c) / w;
		ray.y = (d * x + e * y + f) / w;
		ray.dx = (eye.x - ray.x) / eye.high;
		ray.dy = (eye.y - ray.y) / eye.high;
		const first = sheetAt >= 0 && things[sheetAt]?.hides?.(ray.x, ray.y) ? sheetAt : -1;
		if (first < 0) ground(ray.x, ray.y, ink);
		let isEdge = false;
		for (let at = Math.max(0, first); at < things.length; at += 1) {
			const thing = things[at];
			if (!thing) continue;
			const ox = ray.x - thing.atMm[0];
			const oy = ray.y - thing.atMm[1];
			if (ox * ox + oy * oy > thing.reachMm * thing.reachMm) continue;
			const left = thing.shade(ray.x, ray.y);
			for (let channel = 0; channel < 3; channel += 1) ink[channel] = (ink[channel] ?? 0) * left;
			isEdge = thing.paint(ray, ink) || isEdge;
		}
		const left = fallOff(ray.x, ray.y);
		for (let channel = 0; channel < 3; channel += 1) ink[channel] = (ink[channel] ?? 0) * left;
		return isEdge;
	};
}

/** Where the camera is: above the point of the table that it aims at, moved by its tilt. */
function eyeOf({tilt, azimuth, aimMm, distanceMm}: Camera['stand']) {
	const [lean, turn] = [(tilt * Math.PI) / 180, (azimuth * Math.PI) / 180];
	return {
		x: aimMm[0] - distanceMm * Math.sin(lean) * Math.sin(turn),
		y: aimMm[1] - distanceMm * Math.sin(lean) * Math.cos(turn),
		high: distanceMm * Math.cos(lean),
	};
}

/** One row of pixel corners: three colours and, fourth, whether an edge is near. */
function cornersOf(look: Look, py: number, widthPx: number): Float32Array {
	const row = new Float32Array((widthPx + 1) * 4);
	const ink: Ink = new Float64Array(3);
	for (let column = 0; column <= widthPx; column += 1) {
		row[column * 4 + 3] = look(column, py, ink) ? 1 : 0;
		row.set(ink, column * 4);
	}
	return row;
}

function differ(upper: Float32Array, lower: Float32Array, column: number): boolean {
	let [least, most] = [9, 0];
	for (let corner = 0; corner < 4; corner += 1) {
		const row = corner < 2 ? upper : lower;
		const at = (column + (corner % 2)) * 4;
		if ((row[at + 3] ?? 0) > 0) return true;
		const value = Math.sqrt(0.4 * (row[at] ?? 0) + 0.6 * (row[at + 1] ?? 0));
		least = Math.min(least, value);
		most = Math.max(most, value);
	}
	return most - least > mostDiffering;
}

function lookFiner(
	look: Look,
	{column, row, at}: {column: number; row: number; at: number},
	light: Float32Array,
): void {
	const ink: Ink = new Float64Array(3);
	for (let part = 0; part < finer * finer; part += 1) {
		const across = ((part % finer) + 0.5) / finer;
		const down = (Math.floor(part / finer) + 0.5) / finer;
		look(column + across, row + down, ink);
		for (let channel = 0; channel < 3; channel += 1) {
			light[at + channel] = (light[at + channel] ?? 0) + (ink[channel] ?? 0) / (finer * finer);
		}
	}
}
