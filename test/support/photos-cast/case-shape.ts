/** The outline and the swelling of a made-up egg case, in its own frame: u along it, v across, millimetres. */
import {between, byShare, type Pick} from '../../../src/key/random.ts';
import {layered, noiseFrom} from './noise.ts';

/** What shape a case has; ends at u = ±half its length on the middle line. */
export type CaseShape = {
	readonly lengthMm: number;
	/** The greatest width in the middle four fifths of the length, keels included. */
	readonly widthMm: number;
	readonly kind: 'broad' | 'square' | 'slim';
	readonly keelMm: number;
	readonly apronMm: readonly [number, number];
	/** How high the outline lies above the ground, and the middle above the outline. */
	readonly riseMm: number;
	readonly bulgeMm: number;
	/** Below 0: outside the body and its keels and aprons; the amount is the distance from the outline. */
	readonly inside: (u: number, v: number) => number;
	/** Half the width at a place along it, on the side that v points to. */
	readonly halfWidth: (u: number, v: number) => number;
	/** How far from the swollen body's own edge, as 0 at that edge to 1 in the middle; 0 on keels and aprons. */
	readonly lens: (u: number, v: number) => number;
	/** The height of the upper face above the ground. */
	readonly height: (u: number, v: number) => number;
	/** The height of the outline above the ground. */
	readonly rim: (u: number) => number;
};

/** What a shape must obey; the rest is made up. */
export type ShapeWish = {
	readonly lengthMm: number;
	readonly kind?: CaseShape['kind'];
	readonly level: 'clean' | 'normal' | 'hard';
};

/** Makes a shape up. */
export function makeShape({lengthMm, kind: wanted, level}: ShapeWish, pick: Pick): CaseShape {
	const kind = wanted ?? kindOf(pick);
	const half = lengthMm / 2;
	const slender = {
		broad: between(pick, [0.56, 0.85]),
		square: between(pick, [0.86, 0.97]),
		slim: between(pick, [0.3, 0.48]),
	}[kind];
	const widthMm = lengthMm * slender;
	const sides = tabulated(sidesOf({half, halfWide: widthMm / 2, kind}, pick), half);
	const keelMm =
		kind === 'slim' ? between(pick, [0.3, 1.2]) : Math.max(0, between(pick, [-0.02, 0.09])) * widthMm;
	const apronMm = [between(pick, [0.03, 0.14]) * lengthMm, between(pick, [0.02, 0.1]) * lengthMm] as const;
	const ends = endsOf({half, halfWide: widthMm / 2, kind}, pick);
	const inside = insideOf(sides, ends);
	const riseMm = between(pick, [0, 4]);
	const curl =
		level === 'clean' ? 0 : Math.max(0, between(pick, [-0.02, level === 'hard' ? 0.022 : 0.014])) * lengthMm;
	const bulgeMm = widthMm * between(pick, kind === 'slim' ? [0.12, 0.26] : [0.06, 0.2]);
	const lens = lensOf({keelMm, apronMm, sides, ends});
	const rim = (u: number) => {
		const share = Math.abs(u / half);
		return riseMm + curl * share * share * share;
	};
	const height = (u: number, v: number) => rim(u) + bulgeMm * lens(u, v);
	return {
		lengthMm,
		widthMm,
		kind,
		keelMm,
		apronMm,
		riseMm,
		bulgeMm,
		inside,
		halfWidth: sides.at,
		lens,
		height,
		rim,
	};
}

function kindOf(pick: Pick): CaseShape['kind'] {
	const name = byShare(pick, [
		['broad', 0.58],
		['slim', 0.27],
		['square', 0.15],
	]);
	return name === 'slim' || name === 'square' ? name : 'broad';
}

type Frame = {readonly half: number; readonly halfWide: number; readonly kind: CaseShape['kind']};

/** The two long sides: bellied or waisted, tapered to one end, never quite alike, a little wavy. */
function sidesOf({half, halfWide, kind}: Frame, pick: Pick): (u: number, v: number) => number {
	const belly = kind === 'slim' ? between(pick, [-0.05, 0.25]) : between(pick, [-0.12, 0.28]);
	const taper = between(pick, [-0.14, 0.14]);
	const waist = pick() < 0.3 ? between(pick, [0, 0.1]) : 0;
	const uneven = between(pick, [-0.025, 0.025]);
	const noise = layered(noiseFrom(pick), 2);
	const wave = between(pick, [0, 0.022]);
	const raw = (u: number, v: number) => {
		const t = Math.max(-1.3, Math.min(1.3, u / half));
		const side = v < 0 ? 1 - uneven * (1 - t * t) : 1 + uneven * (1 - t * t);
		const form = 1 - belly * t * t + taper * t - waist * (1 - t * t) ** 2;
		return (form * side + wave * 2 * (noise(t * 3 + (v < 0 ? 40 : 0), 5) - 0.5)) * 1;
	};
	let most = 0;
	for (let t = -0.8; t <= 0.801; t += 0.01) most = Math.max(most, (raw(t * half, -1) + raw(t * half, 1)) / 2);
	return (u, v) => (halfWide * raw(u, v)) / most;
}

type Curve = {readonly at: (place: number) => number; readonly slope: (place: number) => number};
type Sides = {
	readonly at: (u: number, v: number) => number;
	readonly slope: (u: number, v: number) => number;
};
type Ends = {readonly fore: Curve; readonly aft: Curve};

/** The two sides with their slopes, looked up instead of worked out each time. */
function tabulated(width: (u: number, v: number) => number, half: number): Sides {
	const [left, right] = [-1, 1].map(side => curveOf(u => width(u, side), 1.3 * half));
	if (!left || !right) throw new Error('Expected two sides');
	return {
		at: (u, v) => (v < 0 ? left : right).at(u),
		slope: (u, v) => (v < 0 ? left : right).slope(u),
	};
}

/** A function between -most and most as a table of straight pieces; beyond, it stays as it is at the end. */
function curveOf(along: (place: number) => number, most: number): Curve {
	const count = 800;
	const step = (2 * most) / count;
	const values = Float64Array.from({length: count + 2}, (_, at) => along(at * step - most));
	const cell = (place: number) => Math.max(0, Math.min(count, (place + most) / step));
	const at = (place: number) => {
		const where = cell(place);
		const first = Math.floor(where);
		const value = values[first] ?? 0;
		return value + ((values[first + 1] ?? 0) - value) * (where - first);
	};
	const slope = (place: number) => {
		const middle = Math.max(3, Math.min(count - 3, Math.floor(cell(place))));
		return ((values[middle + 3] ?? 0) - (values[middle - 2] ?? 0)) / (5 * step);
	};
	return {at, slope};
}

/** The two end edges: hollow, straight or round, a little ragged, at ±half exactly on the middle line. */
function endsOf({half, halfWide, kind}: Frame, pick: Pick): Ends {
	const bow = () => halfWide * (kind === 'slim' ? between(pick, [-0.3, 0.2]) : between(pick, [-0.22, 0.3]));
	const [foreBow, aftBow] = [bow(), bow()];
	const [noise, other] = [noiseFrom(pick), noiseFrom(pick)];
	const ragged = pick() < 0.35 ? between(pick, [0, 0.7]) : 0;
	const edge = (bowMm: number, rough: (x: number, y: number) => number) =>
		curveOf(v => {
			const share = v / halfWide;
			return half + bowMm * share * share + ragged * (rough(v / 2.5, 1) - rough(0, 1));
		}, 1.4 * halfWide);
	return {fore: edge(foreBow, noise), aft: edge(aftBow, other)};
}

/** The distance inside the outline, true near it; corners a little rounded. */
function insideOf(sides: Sides, {fore, aft}: Ends): CaseShape['inside'] {
	const corner = 1.2;
	return (u, v) => {
		const sideSlope = sides.slope(u, v);
		const across = (sides.at(u, v) - Math.abs(v)) / Math.sqrt(1 + sideSlope * sideSlope);
		const end = u > 0 ? fore : aft;
		const endSlope = end.slope(v);
		const along = (end.at(v) - Math.abs(u)) / Math.sqrt(1 + endSlope * endSlope);
		if (across > corner || along > corner) return Math.min(across, along);
		return corner - Math.hypot(corner - across, corner - along);
	};
}

type LensParts = {
	readonly keelMm: number;
	readonly apronMm: readonly [number, number];
	readonly sides: Sides;
	readonly ends: Ends;
};

function lensOf({keelMm, apronMm, sides, ends}: LensParts): CaseShape['lens'] {
	return (u, v) => {
		const a = v / (sides.at(u, v) - keelMm);
		const b = u / (u > 0 ? ends.fore.at(v) - apronMm[0] : ends.aft.at(v) - apronMm[1]);
		const across = 1 - a * a;
		const along = 1 - b * b * b * b;
		return across <= 0 || along <= 0 ? 0 : Math.sqrt(across * along);
	};
}
