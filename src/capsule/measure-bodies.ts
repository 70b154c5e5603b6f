/** Every body beside or on a reference, measured and judged. */
import {type Axis, between, findAxis, fromAxis} from './axis.ts';
import {withBaysFilled} from './bays.ts';
import {type Body, findBodies, plainOf} from './bodies.ts';
import {type BodySize, sizeBody} from './body-size.ts';
import type {Found} from './flat-fit.ts';
import {type Area, type FlatView, flatten, type Grid} from './flat-view.ts';
import {findGround} from './ground.ts';
import {carry, type Homography, inverse} from './homography.ts';
import {
	apronsOf,
	type Doubt,
	doubtOf,
	type Evidence,
	hasWidth,
	isPlain,
	type Rival,
	rivalsOf,
	spreadOf,
} from './judge.ts';
import type {Judged, Reading} from './judged.ts';
import {outlineOf, shapeOf} from './looks.ts';
import {marksAt} from './measuring-sheet.ts';
import type {Interval} from './outcome.ts';
import type {Field, Point, Raster} from './raster.ts';
import {lensFactor, scaleSigma} from './scale-doubt.ts';
import {goesOn, isWorthAnother, joinLooks} from './second-look.ts';
import {blurOf, blurSpreadPx, isBlurred} from './sharpness.ts';
import type {Sight} from './strip.ts';
import {tellApart} from './telling.ts';

/** The middle of 0 to 4 mm, where the outline of a case may lie over the ground. */
const liftMm = 1.9;
/** Paper curls at its edge, and casts a shadow there. */
const marginMm = 2.5;
/** A body less like its own mirror image may be seen in part only. */
const notchedBelow = 0.92;
const finestMm = 0.8;
const mostPoints = 120_000;
/** In the second look, how much of what a shadow may take of the light and of the colours counts as shadow (tuned on made-up photos). */
const halfShade = 0.5;
/** How far beside a card a case is looked for. */
const besideMm = 330;

/** Measures all bodies, the broadest first; what is in doubt is told with its doubt. */
export function measureBodies(
	{raster, half}: {readonly raster: Raster; readonly half: Raster},
	found: Found,
): readonly Judged[] {
	const view = found.pose.viewAt(liftMm - found.flat.thickMm);
	const flat = flatViewOf({raster, half}, found, view);
	const ground = findGround(flat);
	if (!ground) return [];
	const mmPerPx = found.pose.distanceMm / found.pose.focalPx;
	// What is only as if found has no sides to be looked at.
	const blurPx = found.placed.sides.length > 0 ? blurOf(raster, found.placed.corners) : 0;
	const told = tellApart(flat, ground);
	const sight = {raster, view, flat, ground, ...told, mmPerPx, blurPx};
	const first = findBodies(flat, told.field).map(body => judge(sight, found, body));
	if (first.length > 0 && !first.some(isWorthAnother)) return first;
	const {field, oddness} = tellApart(flat, ground, halfShade);
	const again = {...sight, field, oddness};
	const second = findBodies(flat, field).map(body => judge(again, found, body));
	return joinLooks(first, second);
}

function flatViewOf(
	{raster, half}: {readonly raster: Raster; readonly half: Raster},
	{flat, halfMm, printScale = 1}: Found,
	view: Homography,
): FlatView {
	const area =
		flat.kind === 'card'
			? areaSeen(raster, view)
			: {
					left: marginMm - halfMm[0],
					right: halfMm[0] - marginMm,
					top: marginMm - halfMm[1],
					bottom: halfMm[1] - marginMm,
				};
	const size = (area.right - area.left) * (area.bottom - area.top);
	const stepMm = Math.max(finestMm, Math.sqrt(size / mostPoints));
	const [wide, high] = [halfMm[0] + marginMm, halfMm[1] + marginMm];
	const isOnCard = (x: number, y: number) => Math.abs(x) < wide && Math.abs(y) < high;
	const covers = flat.kind === 'card' ? isOnCard : flat.kind === 'sheet' ? marksAt(printScale) : undefined;
	return flatten(half, halved(view), {area, stepMm, covers});
}

function areaSeen({width, height}: Raster, view: Homography): Area {
	const back = inverse(view);
	const corners: readonly Point[] = [
		[0, 0],
		[width, 0],
		[width, height],
		[0, height],
	];
	const bound = (value: number) => Math.max(-besideMm, Math.min(besideMm, value));
	const points = corners.map(corner => carry(back, corner));
	const xs = points.map(([x]) => bound(x));
	const ys = points.map(([, y]) => bound(y));
	return {left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys)};
}

/** The same view into the picture at half its size. */
function halved(view: Homography): Homography {
	return view.map((value, index) => (index < 6 ? value / 2 - (view[6 + (index % 3)] ?? 0) / 4 : value));
}

type Blurred = Sight & {readonly blurPx: number; readonly field: Field};

function judge(sight: Blurred, found: Found, seen: Body): Judged {
	const {body, rough} = mended(sight, seen);
	const at = carry(sight.view, rough?.middle ?? middleOf(body.grid));
	const doubted = (why: Doubt) => ({kind: 'doubted', why, at}) as const;
	if (body.isCut) return doubted('cut-off');
	if (isBlurred(sight.blurPx)) return doubted('blurred');
	if (!rough) return doubted('odd-shape');
	const {axis, size} = sizeAlong(sight, rough, body);
	if (!size) return doubted('unclear-ends');
	const ends = [fromAxis(axis, [-size.ends[0], 0]), fromAxis(axis, [size.ends[1], 0])] as const;
	const line = [carry(sight.view, ends[0]), carry(sight.view, ends[1])] as const;
	const stretch = {px: line, heightMm: liftMm};
	const scale = found.isGuess
		? {scaleSigma: 0, lens: 1}
		: {
				scaleSigma: scaleSigma(found, stretch, sight.raster),
				lens: lensFactor(found, stretch, sight.raster),
			};
	const evidence = {body, axis, size, found, mmPerPx: sight.mmPerPx, ...scale};
	const doubt = doubtOf(evidence);
	if (doubt) return doubted(doubt);
	const rivals = rivalsOf(evidence);
	const near = rivals.filter(({isFar}) => !isFar);
	const first = readingOf(sight, evidence, {ends: size.ends, held: everyWay(size.ends, near)});
	const [far] = rivals.filter(({isFar}) => isFar).toSorted((a, b) => Number(b.isLikely) - Number(a.isLikely));
	const about = {
		at,
		symmetry: axis.symmetry,
		goesOn: goesOn(sight.field, sight.flat, {axis, ends: size.ends}),
	};
	const likely = far ?? near.find(({isApron}) => isApron);
	// A case has its apron at both ends, as a rule.
	const otherEnds = apronsOf(evidence, rivals) ?? (far && endsWith(size.ends, far));
	if (!otherEnds || !likely) return {kind: 'read', either: [first], isLikely: true, ...about};
	const other = readingOf(sight, evidence, {ends: otherEnds, held: []});
	return {kind: 'read', either: [first, other], isLikely: !likely.isLikely, ...about};
}

/** A body and its axis, bays of shine or crust filled where that makes it more like its own mirror image. */
function mended({flat, field}: Blurred, body: Body): {readonly body: Body; readonly rough: Axis | undefined} {
	const rough = findAxis(body, flat);
	if (!rough || rough.symmetry > notchedBelow) return {body, rough};
	const whole = withBaysFilled(body, {view: flat, odd: field, plain: plainOf(field)});
	const other = findAxis(whole, flat);
	return other && other.symmetry > rough.symmetry ? {body: whole, rough: other} : {body, rough};
}

/** Shine and barnacles leave notches in a body, which turn its axis; its flanks in the full photo tell better. */
function sizeAlong(sight: Sight, axis: Axis, body: Body): {axis: Axis; size: BodySize | undefined} {
	const size = sizeBody(sight, axis);
	const [left, right] = size?.flanks ?? [];
	if (axis.symmetry > notchedBelow || !left || !right || !isPlain(left) || !isPlain(right))
		return {axis, size};
	const turned = between(axis, [left.at, right.at], body);
	return turned.symmetry < axis.symmetry ? {axis, size} : {axis: turned, size: sizeBody(sight, turned)};
}

type Ends = readonly [number, number];

function endsWith([front, back]: Ends, {end, atMm}: Rival): Ends {
	return end === 0 ? [atMm, back] : [front, atMm];
}

/** Each of the fronts that there may be with each of the backs. */
function everyWay(ends: Ends, rivals: readonly Rival[]): readonly Ends[] {
	const [fronts, backs] = ([0, 1] as const).map(end => [
		ends[end],
		...rivals.filter(rival => rival.end === end).map(({atMm}) => atMm),
	]);
	return (fronts ?? []).flatMap(front => (backs ?? []).map(back => [front, back] as const));
}

function middleOf({from, stepMm, width, height}: Grid): Point {
	return [from[0] + (width / 2) * stepMm, from[1] + (height / 2) * stepMm];
}

/** A reading between two ends, its interval wide enough for others that it holds as well. */
function readingOf(
	{view, flat, blurPx}: Blurred,
	evidence: Evidence,
	{ends, held}: {ends: Ends; held: readonly Ends[]},
): Reading {
	const {axis, size, body, lens} = evidence;
	const spread = spreadOf(evidence);
	const seen = (u: number, v: number) => carry(view, fromAxis(axis, [u, v]));
	const lengthMm = lens * (ends[0] + ends[1]);
	const all = [lengthMm, ...held.map(([front, back]) => lens * (front + back))];
	const spreadMm = Math.hypot(spread.lengthMm, blurSpreadPx(blurPx) * evidence.mmPerPx);
	const lengthIntervalMm = [Math.min(...all) - spreadMm, Math.max(...all) + spreadMm] as const;
	const shape = shapeOf(body, {axis, view: flat, widthMm: axis.widthMm, lengthMm});
	const outline = outlineOf(body, axis, {...size, ends}).map(point => carry(view, point));
	const length = [seen(-ends[0], 0), seen(ends[1], 0)] as const;
	const sizes = {lengthMm, lengthIntervalMm, outline, ...(shape ? {shape} : {})};
	const {widestAt, flanks} = size;
	const widthMm = size.widthMm === undefined ? undefined : lens * size.widthMm;
	const [left, right] = flanks;
	if (widthMm === undefined || !left || !right || !hasWidth(evidence)) return {...sizes, lines: {length}};
	const width = [seen(widestAt, -left.at(widestAt)), seen(widestAt, right.at(widestAt))] as const;
	return {...sizes, widthMm, widthIntervalMm: around(widthMm, spread.widthMm), lines: {length, width}};
}

function around(middle: number, spread: number): Interval {
	return [middle - spread, middle + spread];
}
