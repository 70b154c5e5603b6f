/** A second look at a photo by half the shade: a dark case on bright ground may pass for shade, and what shines on it, too. */
import type {Judged, Read} from './judged.ts';
import type {Point} from './raster.ts';

/** A body whose halves are less alike may lack a part that passed for shade. */
const evenFrom = 0.95;
/** Readings of one body that differ by a larger share are of different parts of it (our choice). */
const sameWithin = 0.05;
/** How much less alike the halves of a whole may be than those of its part (our choice). */
const lessAlike = 0.01;

/** Whether a body may be another by half the shade. */
export function isWorthAnother(one: Judged): boolean {
	return one.kind === 'read'
		? one.symmetry < evenFrom
		: one.why === 'odd-shape' || one.why === 'unclear-ends';
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
	return whole.symmetry > one.symmetry - lessAlike
		? whole
		: {kind: 'doubted', why: 'unclear-ends', at: one.at};
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
