import {expect, test} from 'vitest';
import {seeded} from '../../../src/key/random.ts';
import {inventCase, layCase} from './case.ts';
import {type Cast, castRays} from './cast-rays.ts';
import {type Camera, seenAt} from './framing.ts';
import {makePaper} from './paper.ts';
import {type Light, setInk} from './scene.ts';

const black = new Float64Array(3);
const light: Light = {x: 0.3, y: 0.2, z: Math.sqrt(1 - 0.13), direct: 0.5, softness: 0.3};

function cameraAt(more: Partial<Camera['stand']>): Camera {
	const stand = {widthPx: 640, heightPx: 480, focalShare: 0.8, tilt: 0, azimuth: 0, roll: 0};
	return {stand: {...stand, aimMm: [0, 0], distanceMm: 256, ...more}, bend: 0.02, enlarged: 1};
}

/** The places along a line of the picture where the light goes past a half, to a part of a pixel. */
function crossings(
	{widthPx, light: seen}: Cast,
	along: (at: number) => readonly [number, number],
	steps: number,
) {
	const value = (at: number) => {
		const [x, y] = along(at);
		return seen[(Math.floor(y) * widthPx + Math.floor(x)) * 3 + 1] ?? 0;
	};
	return Array.from({length: steps}, (_, at) => at).filter(at => value(at) > 0.45 !== value(at + 1) > 0.45);
}

test('the edges of a sheet are cast to where the camera says that they are', () => {
	const camera = cameraAt({tilt: 24, azimuth: 70, roll: 12});
	const paper = makePaper({wideMm: 150, highMm: 100, level: 'clean'}, light, seeded(1));
	const cast = castRays({
		camera,
		ground: (_x, _y, ink) => setInk(ink, black, 1),
		things: [paper],
		fallOff: () => 1,
	});
	for (const [x, y] of [
		[75, 10],
		[-75, -20],
		[30, 50],
		[-40, -50],
	] as const) {
		// From a little inside the edge to a little outside it, in 200 steps.
		const [from, to] = [seenAt(camera, [x * 0.9, y * 0.9], 0), seenAt(camera, [x * 1.1, y * 1.1], 0)];
		const edge = seenAt(camera, [x, y], 0);
		const place = (at: number) =>
			[from[0] + ((to[0] - from[0]) * at) / 200, from[1] + ((to[1] - from[1]) * at) / 200] as const;
		const [found, ...others] = crossings(cast, place, 200).map(place);
		expect(others).toEqual([]);
		expect(Math.hypot((found?.[0] ?? 0) - edge[0], (found?.[1] ?? 0) - edge[1])).toBeLessThan(1.5);
	}
});

test('a case is cast from end to end to the very pixels that its truth names', () => {
	const camera = cameraAt({distanceMm: 150});
	const wish = {lengthMm: 60, level: 'clean', atMm: [3, -4], turn: 0.4, isHornless: true} as const;
	for (const seed of [2, 3]) {
		const laid = inventCase(wish, seeded(seed));
		const thing = {...layCase(laid, light, seeded(seed)), shade: () => 1};
		const ground = {camera, ground: setWhite, fallOff: () => 1};
		const [without, withIt] = [castRays({...ground, things: []}), castRays({...ground, things: [thing]})];
		const end = (u: number) =>
			seenAt(camera, [3 + u * Math.cos(0.4), -4 + u * Math.sin(0.4)], laid.shape.rim(u));
		const [from, to] = [end(-36), end(36)];
		const steps = 1000;
		const isCase = (at: number) => {
			const x = Math.floor(from[0] + ((to[0] - from[0]) * at) / steps);
			const y = Math.floor(from[1] + ((to[1] - from[1]) * at) / steps);
			const pixel = (y * 640 + x) * 3 + 2;
			return Math.abs((withIt.light[pixel] ?? 0) - (without.light[pixel] ?? 0)) > 0.02;
		};
		const covered = Array.from({length: steps}, (_, at) => at).filter(isCase);
		const perStep = Math.hypot(to[0] - from[0], to[1] - from[1]) / steps;
		const gap = Math.hypot(end(-30)[0] - from[0], end(-30)[1] - from[1]);
		expect(Math.abs((covered[0] ?? 0) * perStep - gap)).toBeLessThan(1.5);
		expect(Math.abs((steps - (covered.at(-1) ?? 0)) * perStep - gap)).toBeLessThan(1.5);
	}
});

function setWhite(_x: number, _y: number, ink: Float64Array): void {
	ink.fill(0.9);
}
