/** Horns, tendrils and side fibres of a made-up case as chains of pieces that grow thinner. */
import {between, normal, type Pick} from '../../../src/key/random.ts';
import type {CaseShape} from './case-shape.ts';

/** Pieces from a to b, with their radius at both; `kind` tells them apart. */
export type Piece = {
	readonly ax: number;
	readonly ay: number;
	readonly bx: number;
	readonly by: number;
	readonly ra: number;
	readonly rb: number;
};

/** What grows out of a case: horns at its own height, and thin things that lie lower. */
export type Strands = {readonly horns: readonly Piece[]; readonly threads: readonly Piece[]};

/** Makes up what grows out of a case. */
export function makeStrands(shape: CaseShape, level: 'clean' | 'normal' | 'hard', pick: Pick): Strands {
	const horns: Piece[] = [];
	const threads: Piece[] = [];
	const isBare = pick() < 0.06;
	for (const end of [1, -1] as const) {
		const form = hornForm(shape, pick);
		for (const side of [1, -1] as const) {
			const chain = hornFrom(shape, {end, side}, {form, pick});
			const isGone = pick() < (level === 'clean' ? 0.04 : 0.13);
			const broken = pick() < 0.15 ? 1 + Math.floor(pick() * 5) : chain.length;
			if (!isBare && !isGone) horns.push(...chain.slice(0, broken));
			const tip = shape.kind === 'slim' && broken === chain.length ? chain.at(-1) : undefined;
			const hasTendril = pick() < 0.85;
			const curl = tendrilFrom(tip, shape, pick);
			if (!isBare && !isGone && hasTendril) threads.push(...curl);
		}
	}
	if (pick() < 0.3) threads.push(...fibres(shape, pick));
	return {horns, threads};
}

type Corner = {readonly end: 1 | -1; readonly side: 1 | -1};
type HornForm = {
	readonly longMm: number;
	readonly rootMm: number;
	readonly tipMm: number;
	readonly outwards: number;
	readonly bend: number;
	readonly hook: number;
};

function hornForm({lengthMm, widthMm, kind}: CaseShape, pick: Pick): HornForm {
	const isSlim = kind === 'slim';
	return {
		longMm: lengthMm * (isSlim ? between(pick, [0.08, 0.2]) : between(pick, [0.1, 0.95])),
		rootMm: widthMm * (isSlim ? between(pick, [0.06, 0.1]) : between(pick, [0.06, 0.13])),
		tipMm: between(pick, [0.25, 0.7]),
		outwards: between(pick, [-0.35, 0.45]),
		// Turned inwards below zero, so much sometimes that the two cross.
		bend: between(pick, [-1.5, 0.5]),
		hook: pick() < 0.25 ? between(pick, [-1.6, 1.6]) : 0,
	};
}

function hornFrom(
	{lengthMm, halfWidth}: CaseShape,
	{end, side}: Corner,
	{form, pick}: {form: HornForm; pick: Pick},
): readonly Piece[] {
	const steps = 14;
	const own = {
		longMm: form.longMm * between(pick, [0.85, 1.1]),
		bend: form.bend + between(pick, [-0.25, 0.25]),
		hook: form.hook,
	};
	const u = end * (lengthMm / 2 - form.rootMm * 0.8);
	let [x, y] = [u, side * (halfWidth(u, side) - form.rootMm)];
	let angle = form.outwards;
	const pieces: Piece[] = [];
	for (let step = 0; step < steps; step += 1) {
		const [from, to] = [step / steps, (step + 1) / steps];
		const radius = (share: number) =>
			form.tipMm + (form.rootMm - form.tipMm) * (1 - share) ** 1.6 * (1 - 0.25 * Math.min(1, share * 4));
		const pace = own.longMm / steps;
		const [bx, by] = [x + end * Math.cos(angle) * pace, y + side * Math.sin(angle) * pace];
		pieces.push({ax: x, ay: y, bx, by, ra: radius(from), rb: radius(to)});
		[x, y] = [bx, by];
		angle += own.bend / steps + (from > 0.7 ? (own.hook * 3.3) / steps : 0);
	}
	return pieces;
}

/** A thin thread that winds on from the tip of a horn, turning more and more one way. */
function tendrilFrom(tip: Piece | undefined, {lengthMm}: CaseShape, pick: Pick): readonly Piece[] {
	const [steps, turn, tighter] = [70, between(pick, [-1.5, 1.5]), between(pick, [0, 4])];
	const [longMm, thick] = [lengthMm * between(pick, [0.3, 1.9]), between(pick, [0.3, 0.65])];
	const wobble = Array.from({length: steps}, () => normal(pick));
	if (!tip) return [];
	let [x, y, angle] = [tip.bx, tip.by, Math.atan2(tip.by - tip.ay, tip.bx - tip.ax)];
	return wobble.map((sway, step) => {
		const share = step / steps;
		const pace = longMm / steps;
		const [ax, ay] = [x, y];
		[x, y] = [x + Math.cos(angle) * pace, y + Math.sin(angle) * pace];
		angle += (turn * (1 + tighter * share) * 3) / steps + 0.1 * sway;
		const radius = thick * (1 - 0.5 * share);
		return {ax, ay, bx: x, by: y, ra: radius, rb: radius};
	});
}

/** Tufts of hair along one side or both. */
function fibres({lengthMm, halfWidth}: CaseShape, pick: Pick): readonly Piece[] {
	const pieces: Piece[] = [];
	const count = 10 + Math.floor(pick() * 50);
	const longMm = between(pick, [0.04, 0.14]) * lengthMm;
	for (let hair = 0; hair < count; hair += 1) {
		const side = pick() < 0.5 ? 1 : -1;
		const u = lengthMm * between(pick, [-0.42, 0.42]);
		let [x, y] = [u, side * (halfWidth(u, side) - 0.8)];
		let angle = side * (Math.PI / 2) + 0.7 * normal(pick);
		const own = longMm * between(pick, [0.4, 1.2]);
		for (let step = 0; step < 4; step += 1) {
			const [ax, ay] = [x, y];
			[x, y] = [x + (Math.cos(angle) * own) / 4, y + (Math.sin(angle) * own) / 4];
			angle += 0.35 * normal(pick);
			pieces.push({ax, ay, bx: x, by: y, ra: 0.16, rb: 0.1});
		}
	}
	return pieces;
}

/** The distance from a piece's skin, below 0 inside it. */
export function distanceTo({ax, ay, bx, by, ra, rb}: Piece, x: number, y: number): number {
	const dx = bx - ax;
	const dy = by - ay;
	const long = dx * dx + dy * dy;
	const share = long === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long));
	const px = x - ax - share * dx;
	const py = y - ay - share * dy;
	return Math.sqrt(px * px + py * py) - ra - (rb - ra) * share;
}

/** Looks up the piece nearest to a point among those within 2 mm; the rest is as good as far away. */
export type Nearest = (x: number, y: number) => {readonly piece: Piece; readonly off: number} | undefined;

/** Sorts pieces into squares, so that few are looked at for each point. */
export function nearestOf(pieces: readonly Piece[]): Nearest {
	const sideMm = 4;
	const reach = 2;
	const squares = new Map<number, Piece[]>();
	const keyOf = (column: number, row: number) => (column + 2048) * 4096 + row + 2048;
	for (const piece of pieces) {
		const wide = Math.max(piece.ra, piece.rb) + reach;
		const [left, right] = [Math.min(piece.ax, piece.bx) - wide, Math.max(piece.ax, piece.bx) + wide];
		const [top, foot] = [Math.min(piece.ay, piece.by) - wide, Math.max(piece.ay, piece.by) + wide];
		for (let column = Math.floor(left / sideMm); column <= Math.floor(right / sideMm); column += 1) {
			for (let row = Math.floor(top / sideMm); row <= Math.floor(foot / sideMm); row += 1) {
				const key = keyOf(column, row);
				const list = squares.get(key);
				if (list) list.push(piece);
				else squares.set(key, [piece]);
			}
		}
	}
	return (x, y) => {
		const list = squares.get(keyOf(Math.floor(x / sideMm), Math.floor(y / sideMm)));
		if (!list) return undefined;
		let best: Piece | undefined;
		let least = reach;
		for (const piece of list) {
			const off = distanceTo(piece, x, y);
			if (off >= least) continue;
			least = off;
			best = piece;
		}
		return best && {piece: best, off: least};
	};
}
