/** A second look at a photo by half the shade: a dark case on bright ground may pass for shade, and what shines on it, too. */
import {type Axis, fromAxis} from './axis.ts';
import {type FlatView, gridPoint} from './flat-view.ts';
import type {Judged, Read} from './judged.ts';
import type {Field, Point} from './raster.ts';

/** A body whose halves are less alike may lack a part that passed for shade. */
const evenFrom = 0.95;
/** Beyond an end, where its own edge no longer counts, and as a share of the length, how far a part may lie (our choice). */
const [beyondMm, mostBeyond] = [2, 0.3];
/** A part of a body is at least so long (tuned on made-up photos). */
const leastPartMm = 1.2;
/** Oddness below which a point is plain ground. */
const surelyGround = -1.8;
/** Readings of one body that differ by a larger share are of different parts of it (our choice). */
const sameWithin = 0.05;
/** How much less alike the halves of a whole may be than those of its part (our choice). */
const lessAlike = 0.01;

/** Whether a body may be another by half the shade. */
export function isWorthAnother(one: Judged): boolean {
	return one.kind === 'read'
		? one.symmetry < evenFrom || one.goesOn
		: one.why === 'odd-shape' || one.why === 'unclear-ends';
}

/** Whether what lies beyond an end, on all of the middle line's lines for some way, is not surely ground: glare may part a body. */
export function goesOn(
	odd: Field,
	view: FlatView,
	{axis, ends}: {readonly axis: Axis; readonly ends: readonly [front: number, back: number]},
): boolean {
	const farMm = mostBeyond * (ends[0] + ends[1]);
	const lies = (u: number, v: number) => {
		const [column, row] = gridPoint(view, fromAxis(axis, [u, v])).map(Math.round);
		const isInside = column !== undefined && row !== undefined && column >= 0 && column < view.width;
		return isInside && (odd.values[row * view.width + column] ?? surelyGround) > surelyGround;
	};
	return ([-1, 1] as const).some(way => {
		const end = ends[way < 0 ? 0 : 1];
		let count = 0;
		for (let d = beyondMm; d < farMm; d += view.stepMm) {
			const isAcross = [-0.15, 0, 0.15].every(share => lies(way * (end + d), share * axis.widthMm));
			if (isAcross) count += 1;
		}
		return count * view.stepMm > leastPartMm;
	});
}

/**
 * What the first look read, and what only the second did. Where the second sees more of a body it is taken if that is as
 * even, and nothing is if not; what neither could read is told by the first.
 */
export function joinLooks(first: readonly Judged[], second: readonly Judged[]): readonly Judged[] {
	const [read, again] = [first.filter(isRead), second.filter(isRead)];
	const weighed = read.map(one => weigh(one, again));
	const more = again.filter(({at}) => !read.some(one => isWithin(at, one)));
	const told = [...weighed.filter(isRead), ...more];
	const left = first.filter(one => one.kind === 'doubted' && !told.some(other => isWithin(one.at, other)));
	return [...weighed, ...more, ...left];
}

function weigh(one: Read, again: readonly Read[]): Judged {
	const whole = again.find(
		other => isWithin(one.at, other) && lengthOf(other) > (1 + sameWithin) * lengthOf(one),
	);
	if (!whole || !isWorthAnother(one)) return one;
	if (whole.symmetry > one.symmetry - lessAlike) return whole;
	// What makes an even body longer and uneven is a shadow beyond its end.
	return one.symmetry < evenFrom ? {kind: 'doubted', why: 'unclear-ends', at: one.at} : one;
}

function isRead(one: Judged): one is Read {
	return one.kind === 'read';
}

function lengthOf({either}: Read): number {
	return either[0]?.lengthMm ?? 0;
}

/** Whether a point lies nearer to the middle of a body than half of its length. */
function isWithin([x, y]: Point, {at, either}: Read): boolean {
	const [[fromX, fromY], [toX, toY]] = either[0]?.lines.length ?? [at, at];
	return Math.hypot(x - at[0], y - at[1]) < Math.hypot(toX - fromX, toY - fromY) / 2;
}
