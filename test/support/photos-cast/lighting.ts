/** The light on a table: a lamp or window from one side, and what falls between it and the table. */
import {between, type Pick} from '../../../src/key/random.ts';
import {ramp} from './noise.ts';
import type {Light} from './scene.ts';

type Level = 'clean' | 'normal' | 'hard';

/** Makes a lamp or a window up: sun with hard shadows, or light from everywhere with soft ones. */
export function makeLight(level: Level, pick: Pick): Light {
	const turn = pick() * 2 * Math.PI;
	const high = (between(pick, level === 'hard' ? [28, 75] : [40, 78]) * Math.PI) / 180;
	const isHard = pick() < {clean: 0.15, normal: 0.35, hard: 0.5}[level];
	return {
		x: Math.cos(turn) * Math.cos(high),
		y: Math.sin(turn) * Math.cos(high),
		z: Math.sin(high),
		direct: isHard ? between(pick, [0.5, level === 'hard' ? 0.82 : 0.7]) : between(pick, [0.15, 0.5]),
		softness: isHard ? between(pick, [0.03, 0.15]) : between(pick, [0.3, 1.2]),
	};
}

/** Light that grows less to one side, and the shadow of a phone or a hand. */
export function makeFallOff(level: Level, reachMm: number, pick: Pick): (x: number, y: number) => number {
	const turn = pick() * 2 * Math.PI;
	const slope = between(pick, [0, {clean: 0.12, normal: 0.25, hard: 0.45}[level]]);
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	const isShaded = pick() < {clean: 0.1, normal: 0.3, hard: 0.55}[level];
	const shadow = castBetween(level, reachMm, pick);
	return (x, y) => {
		const even = 1 + (slope * (x * c + y * s)) / reachMm;
		return Math.max(0.25, even) * (isShaded ? shadow(x, y) : 1);
	};
}

/** A phone is a block, a hand a block with fingers. */
function castBetween(level: Level, reachMm: number, pick: Pick): (x: number, y: number) => number {
	const turn = pick() * 2 * Math.PI;
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	const far = between(pick, [0.1, 0.9]) * reachMm;
	const away = pick() * 2 * Math.PI;
	const [atX, atY] = [Math.cos(away) * far, Math.sin(away) * far];
	const [halfX, halfY] = [between(pick, [45, 110]), between(pick, [70, 190])];
	const soft = between(pick, level === 'hard' ? [6, 60] : [20, 80]);
	const dark = between(pick, [0.15, {clean: 0.25, normal: 0.45, hard: 0.6}[level]]);
	const isHand = pick() < 0.4;
	return (x, y) => {
		const [a, b] = [x - atX, y - atY];
		const [u, v] = [a * c + b * s, b * c - a * s];
		const block = Math.hypot(Math.max(0, Math.abs(u) - halfX), Math.max(0, Math.abs(v) - halfY)) - 12;
		const finger = Math.hypot(Math.max(0, Math.abs(v - halfY) - 60), ((u + 400) % 30) - 15) - 9;
		const off = isHand ? Math.min(block, Math.max(finger, Math.abs(u) - halfX)) : block;
		return 1 - dark * ramp(soft / 2, -soft / 2, off);
	};
}
