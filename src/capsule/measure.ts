/** From the bytes of one photo to lengths, or to the reason why not. */
import {type Axis, findAxis, fromAxis} from './axis.ts';
import {findBodies} from './bodies.ts';
import {type BodySize, sizeBody} from './body-size.ts';
import {flatten} from './flat-view.ts';
import {findGround} from './ground.ts';
import {carry, inverse} from './homography.ts';
import {readPhoto} from './photo.ts';
import {shrink} from './raster.ts';
import {type Found, findFlats} from './reference.ts';
import {tellApart} from './telling.ts';

export async function tryMeasure(bytes: Uint8Array, wanted?: string) {
	const photo = await readPhoto(bytes);
	if (photo.kind === 'unreadable') return {kind: 'declined', why: photo.why} as const;
	const found = findFlats(photo.raster).filter(({flat}) => wanted === undefined || flat.kind === wanted);
	const best = found[0];
	if (!best) return {kind: 'declined', why: 'no-reference'} as const;
	return {kind: 'seen', best, bodies: measureOn(photo.raster, best), scale: photo.scale} as const;
}

const liftMm = 1.5;

function measureOn(raster: Parameters<typeof findFlats>[0], {flat, pose, halfMm}: Found) {
	const view = pose.viewAt(liftMm - flat.thickMm);
	const half = shrink(raster, 2);
	const toHalf = Float64Array.from(view, (value, index) =>
		index < 6 ? value / 2 - (view[6 + (index % 3)] ?? 0) * 0.25 : value,
	);
	let area = {left: -halfMm[0] + 2.5, right: halfMm[0] - 2.5, top: -halfMm[1] + 2.5, bottom: halfMm[1] - 2.5};
	if (flat.kind === 'card') {
		const back = inverse(view);
		const corners = [
			[0, 0],
			[raster.width, 0],
			[raster.width, raster.height],
			[0, raster.height],
		] as const;
		const points = corners.map(corner => carry(back, corner));
		const bound = (value: number) => Math.max(-280, Math.min(280, value));
		const xs = points.map(([x]) => bound(x));
		const ys = points.map(([, y]) => bound(y));
		area = {left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys)};
	}
	const stepMm = Math.max(0.7, Math.sqrt(((area.right - area.left) * (area.bottom - area.top)) / 160_000));
	const covers = ([x, y]: readonly [number, number]) =>
		flat.kind === 'card' && Math.abs(x) < halfMm[0] + 2.5 && Math.abs(y) < halfMm[1] + 2.5;
	const flatView = flatten(half, toHalf, {area, stepMm, covers});
	const ground = findGround(flatView);
	if (!ground) return [];
	const {field, oddness} = tellApart(flatView, ground);
	return findBodies(flatView, field).map(body => {
		const axis = findAxis(flatView, body);
		const mmPerPx = pose.distanceMm / pose.focalPx;
		const size = axis && sizeBody({raster, view, flat: flatView, ground, oddness, mmPerPx}, axis);
		return {
			body,
			axis,
			size,
			line: axis && size && lineOf(axis, size).map(point => carry(view, point)),
			flatView,
			field,
			ground,
		};
	});
}

function lineOf(axis: Axis, {ends}: BodySize) {
	return [fromAxis(axis, [-ends[0], 0]), fromAxis(axis, [ends[1], 0])];
}
