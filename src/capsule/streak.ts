/** Tells the rim of a body that lies outside of a streak of shine, whose own edge looks just like an end. */
import type {Border} from './border.ts';
import type {Strip} from './strip.ts';

/** A streak at the rim, of the ground's own colour, is no wider (our choice). */
export const streakMm = 4;
/** Oddness by the rule for shadows, below which a place is as good as bare ground. */
const bareBelow = -1.5;
/** Before a horn or tendril the ground is bare on nearly all lines; a streak is not as bright all along. */
const mostBare = 0.65;
/** The edge of a streak that covers the whole end is told from a tendril's by what lies behind it, so more is asked. */
const leastTrust = {part: 0.5, whole: 0.65} as const;

/** Whether a border is the rim outside of a streak of shine, whose own edge was taken for the end. */
export function isRimOf(strip: Strip, border: Border, streak: Border): boolean {
	const apart = border.at(0) - streak.at(0);
	const isPart = streak.seen < 0.9;
	if (apart <= 0 || apart >= streakMm || border.seen < Math.min(0.9, streak.seen)) return false;
	// A rim that is seen on a part of the side itself must be the likelier.
	if (border.seen < 0.9 && (!isPart || border.score < streak.score)) return false;
	if (border.strength < 0.8 * streak.strength || border.trust < leastTrust[isPart ? 'part' : 'whole'])
		return false;
	return isPart || bareBetween(strip, streak, border) < mostBare;
}

/** On how much of the side bare ground is seen between two borders. */
function bareBetween({places, fromMm, stepMm, count, ruled}: Strip, inner: Border, outer: Border): number {
	const bare = [...places.entries()].filter(([line, place]) => {
		const first = Math.max(0, Math.round((inner.at(place) - fromMm) / stepMm));
		const last = Math.min(count - 1, Math.round((outer.at(place) - fromMm) / stepMm));
		return ruled.subarray(line * count + first, line * count + last + 1).some(odd => odd < bareBelow);
	});
	return bare.length / places.length;
}
