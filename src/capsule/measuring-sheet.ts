/** The measuring sheet in a photo: by the edge of its paper where that is seen, else by its marks alone. */

import {type Found, poseOf} from './flat-fit.ts';
import {type Corners, fourOf} from './four-sided.ts';
import {type Mark, markSideMm, marks, marksSeen, readMark, turnedBy} from './marks.ts';
import {findPose, type Seen} from './pose.ts';
import {type Field, type Point, type Raster, smooth} from './raster.ts';
import {areaOf, fenceRound, partsOf, roomForRuns} from './regions.ts';
import {placeSides} from './sides.ts';
import {sheet} from './sizes.ts';

/** The sheet upright: half its width and height. */
const halfMm = [105, 148.5] as const;
const leastMarks = 3;
/** Beyond this the paper's edge and the marks do not tell of the same sheet. */
const mostMisfitPerMark = 6;

/** A sheet of A4 that carries the marks, with its frame turned upright and the scale it was printed at. */
export function asMeasuringSheet(raster: Raster, found: Found): Found | undefined {
	let best: {found: Found; sum: number} | undefined;
	for (let turn = 0; turn < 4; turn += 1) {
		const corners = turnedBy(found.placed.corners, turn);
		const {sides} = found.placed;
		const turned = {
			corners,
			sides: sides.map((_, index) => sides[(index + turn) % 4] ?? sides[0]).flatMap(side => side ?? []),
		};
		const pose = poseOf(turned, halfMm, raster);
		if (!pose || pose.misfit > found.pose.misfit + 3) continue;
		const view = pose.viewAt(0);
		for (let scale = 0.9; scale < 1.071; scale += 0.01) {
			const seen = marksSeen(raster, view, scale).filter(share => share > 0.93);
			const sum = seen.length - Math.abs(scale - 1);
			if (seen.length < leastMarks || (best && best.sum >= sum)) continue;
			best = {sum, found: {...found, flat: sheet, pose, halfMm, placed: turned, printScale: scale}};
		}
	}
	return best?.found;
}

/** The sheet by its marks alone; at least three must be seen whole. */
export function findByMarks(raster: Raster, half: Raster): Found | undefined {
	const read = darkOutlines(half).flatMap(rough => {
		const placed = placeSides(raster, doubled(rough), {reachPx: 3, skip: 0.1});
		const one = placed && readMark(raster, placed.corners);
		return placed && one ? [{...one, sides: placed.sides}] : [];
	});
	const first = marks.flatMap(mark => read.find(one => one.mark.id === mark.id) ?? []);
	if (first.length < leastMarks) return undefined;
	const seen = first.flatMap(({mark, corners}) =>
		cornersOf(mark).map((mm, at): Seen => ({mm, px: corners[at] ?? mm, sigmaPx: 0.6})),
	);
	const pose = findPose(seen, raster);
	if (!pose || pose.misfit > mostMisfitPerMark * first.length) return undefined;
	const view = pose.viewAt(0);
	const outer = outline(view);
	const sides = first.flatMap(one => one.sides);
	return {flat: sheet, pose, halfMm, placed: {corners: outer, sides}, score: 0.5, printScale: 1};
}

/** Tells whether a point of the upright sheet, printed at a scale, lies on one of the marks, with some room. */
export function marksAt(printScale: number): (xMm: number, yMm: number) => boolean {
	const roomMm = 2;
	const reach = (markSideMm * printScale) / 2 + roomMm;
	// As far on the one side of the middle as on the other, so that one of the four stands for all.
	const [x, y] = marks[2]?.fromMm ?? [0, 0];
	const [across, down] = [(x + markSideMm / 2) * printScale, (y + markSideMm / 2) * printScale];
	return (xMm, yMm) => Math.abs(Math.abs(xMm) - across) < reach && Math.abs(Math.abs(yMm) - down) < reach;
}

function cornersOf({fromMm: [x, y]}: Mark): readonly Point[] {
	const side = markSideMm;
	return [
		[x, y],
		[x + side, y],
		[x + side, y + side],
		[x, y + side],
	];
}

function outline(view: Float64Array): Corners {
	const [x, y] = halfMm;
	const at = ([px, py]: Point): Point => {
		const w = (view[6] ?? 0) * px + (view[7] ?? 0) * py + (view[8] ?? 0);
		return [
			((view[0] ?? 0) * px + (view[1] ?? 0) * py + (view[2] ?? 0)) / w,
			((view[3] ?? 0) * px + (view[4] ?? 0) * py + (view[5] ?? 0)) / w,
		];
	};
	return [at([-x, -y]), at([x, -y]), at([x, y]), at([-x, y])];
}

/** Four-sided things that are darker than what lies round them. */
function darkOutlines({width, height, rgb}: Raster): readonly Corners[] {
	const values = new Float32Array(width * height);
	for (let at = 0; at < values.length; at += 1) {
		values[at] = ((rgb[at * 3] ?? 0) + (rgb[at * 3 + 1] ?? 0) + (rgb[at * 3 + 2] ?? 0)) / 3;
	}
	const light: Field = {width, height, values};
	const around = smooth(light, Math.round(width / 24)).values;
	const on = new Uint8Array(values.length);
	for (let at = 0; at < on.length; at += 1) on[at] = (values[at] ?? 0) < 0.8 * (around[at] ?? 0) - 3 ? 1 : 0;
	const runs = roomForRuns(width, height);
	return partsOf({width, height, on}, {leastArea: 90, of: 1, runs}).flatMap(part => {
		const [wide, high] = [part.right - part.left, part.bottom - part.top];
		if (Math.max(wide, high) > width / 4 || Math.max(wide, high) > 2.5 * Math.min(wide, high)) return [];
		const hull = fenceRound(runs, part);
		const corners = fourOf(hull);
		return corners && areaOf(hull) > 0.85 * areaOf(corners) ? [corners] : [];
	});
}

function doubled([a, b, c, d]: Corners): Corners {
	const grown = ([x, y]: Point): Point => [2 * x + 0.5, 2 * y + 0.5];
	return [grown(a), grown(b), grown(c), grown(d)];
}
