/** Tells a body's end from the narrow shadow at its foot, where both are too close together for two edges. */
import type {Border} from './border.ts';
import type {Strip} from './strip.ts';

/** How far the profile goes to both sides of the border, and between what the end is looked for. */
const spanMm = 4;
const [deepestMm, outermostMm] = [-2.6, 0.4];
const [roughMm, fineMm] = [0.2, 0.05];
const stripesMm = [0.4, 0.6, 0.8, 1, 1.3, 1.6, 2, 2.5] as const;
/** A shadow that fades away leaves the edge where it is, within so much: after these, a little over a third is left of it. */
const fadesMm = [0.5, 0.9, 1.5] as const;
const besideMm = 0.25;
/** From so far out on, what would be taken for the body is the shadow. */
const farMm = 0.7;
/** The blur from edge to ground in photos of phones, in pixels (our guess; the best of them is taken). */
const blursPx = [0.8, 1.3, 2] as const;
/** A shadow takes at least so much light, and leaves at most so much of the misfit without it (tuned on made-up photos). */
const [leastDepth, mostLeft] = [0.12, 0.34];
/** No shadow takes more of the light (common practice); what is darker beside a dark body is of the body. */
const mostDepth = 0.6;
/** Less is within what edges scatter. */
const leastMm = 0.12;
/** A stripe that fits best at the very edge of what was looked at goes on farther in: a grey apron, or one of a dark body. */
const mostMm = 2.3;

/**
 * The border moved in to where the body itself ends, when a narrow dark stripe of the ground's own colour outside of it
 * fits what is seen much better than an edge alone.
 */
export function withoutShadow(strip: Strip, border: Border, mmPerPx: number): Border {
	const profile = profileAlong(strip, border);
	let [bare, faded] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
	let best: Shaded | undefined;
	for (const blurPx of blursPx) {
		const blurMm = blurPx * mmPerPx;
		for (let end = deepestMm; end <= outermostMm; end += roughMm) {
			bare = Math.min(bare, compare(profile, {end, widthMm: 0, blurMm, fades: false}).misfit);
			for (const widthMm of stripesMm) best = better(best, profile, {end, widthMm, blurMm, fades: false});
			if (Math.abs(end) > besideMm) continue;
			for (const widthMm of fadesMm)
				faded = Math.min(faded, compare(profile, {end, widthMm, blurMm, fades: true}).misfit);
		}
	}
	if (!best || best.depth < leastDepth || best.misfit > mostLeft * bare) return border;
	const rough = best;
	for (let end = rough.end - roughMm; end <= rough.end + roughMm; end += fineMm) {
		best = better(best, profile, {...rough, end});
	}
	const wholeMm = -best.end;
	if (wholeMm < leastMm || wholeMm > mostMm) return border;
	// Both shapes fit: the end is as well where it was, so it is taken to be midway.
	const isUnsure = wholeMm < farMm && best.misfit > mostLeft * faded;
	const insideMm = isUnsure ? wholeMm / 2 : wholeMm;
	const moved = {...border, at: (place: number) => border.at(place) - insideMm, insideMm};
	return isUnsure ? {...moved, unsureMm: insideMm} : moved;
}

type Shaded = Guess & Fit;

function better(best: Shaded | undefined, profile: Profile, guess: Guess): Shaded {
	const found = compare(profile, guess);
	return best && best.misfit <= found.misfit ? best : {...guess, ...found};
}

/** The middle colours at even steps across a border, from inside outwards, and their sums so far. */
type Profile = {
	readonly stepMm: number;
	readonly count: number;
	readonly colours: Float64Array;
	readonly sums: Float64Array;
};

function profileAlong({places, fromMm, stepMm, count, colours}: Strip, border: Border): Profile {
	const steps = Math.round((2 * spanMm) / stepMm) + 1;
	const mean = new Float64Array(steps * 3);
	const held = new Float64Array(steps);
	for (const [line, place] of places.entries()) {
		const first = (border.at(place) - spanMm - fromMm) / stepMm;
		for (let index = 0; index < steps; index += 1) {
			const at = first + index;
			const low = Math.floor(at);
			if (low < 0 || low + 1 >= count) continue;
			const share = at - low;
			const from = (line * count + low) * 3;
			for (let channel = 0; channel < 3; channel += 1) {
				const value =
					(1 - share) * (colours[from + channel] ?? 0) + share * (colours[from + 3 + channel] ?? 0);
				mean[index * 3 + channel] = (mean[index * 3 + channel] ?? 0) + value;
			}
			held[index] = (held[index] ?? 0) + 1;
		}
	}
	const sums = new Float64Array(steps * 3 + 3);
	for (let at = 0; at < mean.length; at += 1) {
		mean[at] = (mean[at] ?? 0) / Math.max(1, held[Math.floor(at / 3)] ?? 0);
		sums[at + 3] = (sums[at] ?? 0) + (mean[at] ?? 0);
	}
	return {stepMm, count: steps, colours: mean, sums};
}

type Fit = {readonly depth: number; readonly misfit: number};
type Guess = {
	readonly end: number;
	readonly widthMm: number;
	readonly blurMm: number;
	readonly fades: boolean;
};

/** How well a body up to `end`, a stripe of shadow and ground beyond explain a profile; the stripe's depth is worked out. */
function compare(profile: Profile, {end, widthMm, blurMm, fades}: Guess): Fit {
	const body = meanOf(profile, end - 2 * blurMm - 1, end - 2 * blurMm);
	const ground = meanOf(profile, Math.max(2.2, end + widthMm + 2 * blurMm), spanMm);
	const {stepMm, colours} = profile;
	const from = Math.max(0, Math.round((end - 2.5 * blurMm + spanMm) / stepMm));
	const to = Math.min(
		profile.count - 1,
		Math.round((Math.max(1.6, end + widthMm + 2.5 * blurMm) + spanMm) / stepMm),
	);
	let [cross, square, rest] = [0, 0, 0];
	for (let index = from; index <= to; index += 1) {
		const d = index * stepMm - spanMm;
		const covered = rise((end - d) / blurMm);
		const dark = fades ? Math.exp(Math.min(0, end - d) / widthMm) : rise((end + widthMm - d) / blurMm);
		const shaded = (1 - covered) * dark;
		for (let channel = 0; channel < 3; channel += 1) {
			const bare = ground[channel] ?? 0;
			const off = (colours[index * 3 + channel] ?? 0) - covered * (body[channel] ?? 0) - (1 - covered) * bare;
			const lost = widthMm === 0 ? 0 : -shaded * bare;
			cross += off * lost;
			square += lost * lost;
			rest += off * off;
		}
	}
	const depth = square > 0 ? Math.max(0, Math.min(mostDepth, cross / square)) : 0;
	return {depth, misfit: (rest - 2 * depth * cross + depth * depth * square) / (to - from + 1) + 1};
}

function meanOf({stepMm, count, sums}: Profile, fromMm: number, toMm: number): readonly number[] {
	const from = Math.max(0, Math.min(count - 1, Math.round((fromMm + spanMm) / stepMm)));
	const to = Math.max(from + 1, Math.min(count, Math.round((toMm + spanMm) / stepMm) + 1));
	return [0, 1, 2].map(
		channel => ((sums[to * 3 + channel] ?? 0) - (sums[from * 3 + channel] ?? 0)) / (to - from),
	);
}

/** From 0 to 1 round 0, nearly as the sum of a bell curve of sigma 1 (logistic approximation, Bowling and others 2009, from memory). */
function rise(x: number): number {
	return 1 / (1 + Math.exp(-1.702 * x));
}
