/** A made-up egg case: its outline in millimetres, with the exact length and width that it has. */
import {between, type Pick} from '../../../src/key/random.ts';

/** One end of a body. */
export type End = {
	/** How far the corners stand out beyond the middle, in millimetres; below zero for a bulging border. */
	readonly hollowMm: number;
	/** How deep the apron is. */
	readonly apronMm: number;
	/** Length of the horns of this end, left and right; 0 for broken off at the root. */
	readonly hornMm: readonly [number, number];
	/** How far a horn turns from root to tip, in radians. */
	readonly curl: number;
	/** From the long axis, outwards. */
	readonly flare: number;
};

/** A case lying along x from its front (negative) to its back, the middle of the body at 0, 0. */
export type CaseShape = {
	readonly lengthMm: number;
	readonly widthMm: number;
	/** The outline of the body with its keels, closed. */
	readonly body: readonly (readonly [number, number])[];
	/** Half the width of the body at x, keels included. */
	readonly halfAt: (x: number) => number;
	/** The x of an end's border at y. */
	readonly endAt: (side: -1 | 1, y: number) => number;
	readonly ends: readonly [End, End];
	readonly keelMm: number;
	readonly isTendrilled: boolean;
};

/** What kinds of case there are to choose from. */
export type CaseWish = {
	readonly lengthMm: readonly [number, number];
	readonly worn: boolean;
	readonly isHornless?: boolean;
};

/** Makes a case up; what its length and width are follows from its outline, as the measuring is defined. */
export function inventCase(pick: Pick, wish: CaseWish): CaseShape {
	const isTendrilled = pick() < 0.3;
	const along = between(pick, wish.lengthMm);
	const across = along * (isTendrilled ? between(pick, [0.3, 0.48]) : between(pick, [0.48, 0.86]));
	const ends = [
		inventEnd(pick, across, wish, isTendrilled),
		inventEnd(pick, across, wish, isTendrilled),
	] as const;
	const bulge = between(pick, [-0.05, 0.1]);
	const taper = between(pick, [-0.08, 0.08]);
	const halfAt = (x: number) => {
		const u = (2 * x) / along;
		return (across / 2) * (1 + bulge * (1 - u * u) + taper * u);
	};
	const endAt = (side: -1 | 1, y: number) => {
		const {hollowMm} = ends[side < 0 ? 0 : 1];
		const v = y / halfAt((side * along) / 2);
		return side * (along / 2 + hollowMm * v * v);
	};
	const mean = (side: -1 | 1) => {
		const half = 0.05 * across;
		const steps = Array.from({length: 21}, (_, index) => endAt(side, ((index - 10) / 10) * half));
		return steps.reduce((sum, x) => sum + x, 0) / steps.length;
	};
	const lengthMm = mean(1) - mean(-1);
	const inner = Array.from({length: 201}, (_, index) => halfAt((index / 200 - 0.5) * 0.8 * lengthMm));
	const widthMm = 2 * Math.max(...inner);
	const keelMm = pick() < 0.5 ? between(pick, [0.02, 0.07]) * across : 0;
	return {
		lengthMm,
		widthMm,
		body: outline({halfAt, endAt, along}),
		halfAt,
		endAt,
		ends,
		keelMm,
		isTendrilled,
	};
}

function inventEnd(pick: Pick, across: number, wish: CaseWish, isTendrilled: boolean): End {
	const bend = pick();
	const hollow = bend < 0.3 ? 0 : bend < 0.7 ? between(pick, [0.02, 0.16]) : between(pick, [-0.14, -0.02]);
	const long = isTendrilled ? between(pick, [0.1, 0.3]) : between(pick, [0.2, 1.3]);
	const horn = () => {
		const longMm = pick() < (wish.worn ? 0.3 : 0.1) ? 0 : long * across * between(pick, [0.8, 1.1]);
		return wish.isHornless ? 0 : longMm;
	};
	return {
		hollowMm: hollow * across,
		apronMm: pick() < 0.6 ? between(pick, [0.05, 0.2]) * across : 0,
		hornMm: [horn(), horn()],
		curl: pick() < 0.5 ? 0 : between(pick, [-2.4, 1.2]),
		flare: between(pick, [-0.25, 0.6]),
	};
}

type Parts = Pick2<CaseShape, 'halfAt' | 'endAt'> & {readonly along: number};
type Pick2<T, K extends keyof T> = {readonly [Key in K]: T[Key]};

function outline({halfAt, endAt, along}: Parts): readonly (readonly [number, number])[] {
	const sides = (sign: -1 | 1) =>
		Array.from({length: 61}, (_, index) => {
			const x = (index / 60 - 0.5) * along;
			return [x, sign * halfAt(x)] as const;
		});
	const end = (side: -1 | 1) => {
		const half = halfAt((side * along) / 2);
		return Array.from({length: 41}, (_, index) => {
			const y = (index / 20 - 1) * half;
			return [endAt(side, y), y] as const;
		});
	};
	return [...sides(-1), ...end(1), ...sides(1).toReversed(), ...end(-1).toReversed()];
}
