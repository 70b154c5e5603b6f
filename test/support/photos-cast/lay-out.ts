/** What lies where: cases on a sheet or beside a card, so that they are where people would lay them. */
import {between, oneOf, type Pick} from '../../../src/key/random.ts';
import {inventCase, type Laid, toTable} from './case.ts';
import type {CaseShape} from './case-shape.ts';
import {distanceTo} from './case-strands.ts';

type At = readonly [number, number];

/** Half the width and height of the part of the ground that cases may lie on. */
export type Room = readonly [number, number];

/** What is laid out, and how hard it may be. */
export type LayWish = {
	readonly level: 'clean' | 'normal' | 'hard';
	readonly lengthMm?: number;
	readonly isHornless: boolean;
};

/** One case somewhere on a sheet, its body within the room and its horns mostly. */
export function layOne(room: Room, lengths: At, {wish, pick}: {wish: LayWish; pick: Pick}): Laid {
	const lengthMm = wish.lengthMm ?? between(pick, lengths);
	const {level, isHornless} = wish;
	const first = inventCase({lengthMm, level, isHornless: false, atMm: [0, 0], turn: 0}, pick);
	for (let round = 0; round < 400; round += 1) {
		const turn = pick() * 2 * Math.PI;
		const atMm: At = [room[0] * between(pick, [-0.5, 0.5]), room[1] * between(pick, [-0.5, 0.5])];
		const placed = {...first, wish: {...first.wish, turn, atMm}};
		if (!isWithin(placed, room, round < 300 ? 6 : 40)) continue;
		return isHornless ? bare(placed) : placed;
	}
	const upright = {...first, wish: {...first.wish, turn: Math.PI / 2}};
	return isHornless ? bare(upright) : upright;
}

function bare(laid: Laid): Laid {
	return {...laid, wish: {...laid.wish, isHornless: true}, strands: {horns: [], threads: []}};
}

/** Points round a case's body, on the table. */
export function roundBody({wish, shape}: Laid): readonly At[] {
	const half = shape.lengthMm / 2;
	return [-1, -0.5, 0, 0.5, 1].flatMap(t =>
		[-1, 1].map(side => toTable(wish, t * half, side * Math.max(2, shape.halfWidth(t * half, side)))),
	);
}

/** The ends of everything that grows out of a case, on the table. */
export function tipsOf({wish, strands}: Laid): readonly At[] {
	return strands.horns.map(({bx, by}) => toTable(wish, bx, by));
}

function isWithin(laid: Laid, [halfX, halfY]: Room, over: number): boolean {
	const holds = (points: readonly At[], more: number) =>
		points.every(([x, y]) => Math.abs(x) < halfX + more && Math.abs(y) < halfY + more);
	return holds(roundBody(laid), 0) && holds(tipsOf(laid), over);
}

/** Where a card of this turn touches nothing of a case, as near as that. */
export function besideCase(laid: Laid, pick: Pick): {readonly atMm: At; readonly turn: number} {
	const away = pick() * 2 * Math.PI;
	const turn = pick() < 0.6 ? laid.wish.turn + (Math.PI / 2) * Math.floor(pick() * 4) : pick() * 2 * Math.PI;
	const gap = between(pick, [4, 25]);
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	const [left, top] = laid.wish.atMm;
	for (let far = 30; far < 260; far += 3) {
		const atMm: At = [left + Math.cos(away) * far, top + Math.sin(away) * far];
		const isFree = grid(9, 6).every(([a, b]) => {
			const [u, v] = [a * 42.8, b * 27];
			return awayFrom(laid, [atMm[0] + u * c - v * s, atMm[1] + u * s + v * c]) > gap;
		});
		if (isFree) return {atMm, turn};
	}
	return {atMm: [left + Math.cos(away) * 260, top + Math.sin(away) * 260], turn};
}

/** Points over a square from -1 to 1. */
function grid(across: number, down: number): readonly At[] {
	return Array.from(
		{length: across * down},
		(_, at): At => [((at % across) / (across - 1)) * 2 - 1, (Math.floor(at / across) / (down - 1)) * 2 - 1],
	);
}

function awayFrom({wish, shape, strands}: Laid, [x, y]: At): number {
	const [a, b] = [x - wish.atMm[0], y - wish.atMm[1]];
	const [c, s] = [Math.cos(wish.turn), Math.sin(wish.turn)];
	const [u, v] = [a * c + b * s, b * c - a * s];
	const off = [...strands.horns, ...strands.threads].reduce(
		(least, piece) => Math.min(least, distanceTo(piece, u, v)),
		99,
	);
	return Math.min(off, -shape.inside(u, v));
}

/** 4 to 14 cases of two kinds on a sheet, some of them nearly touching. */
export function layMany(room: Room, {wish, pick}: {wish: LayWish; pick: Pick}): readonly Laid[] {
	const kinds: readonly CaseShape['kind'][] = ['broad', 'slim', 'square'];
	const sorts = [0, 1].map(() => ({kind: oneOf(pick, kinds), lengthMm: between(pick, [28, 62])}));
	const count = 4 + Math.floor(pick() * 11);
	const rows = pick() < 0.5 ? between(pick, [0, 2 * Math.PI]) : undefined;
	const laid: Laid[] = [];
	for (let round = 0; round < 900 && laid.length < count; round += 1) {
		const sort = oneOf(pick, sorts);
		const turn = rows === undefined ? pick() * 2 * Math.PI : rows + between(pick, [-0.2, 0.2]);
		const atMm: At = [room[0] * between(pick, [-1, 1]), room[1] * between(pick, [-1, 1])];
		const lengthMm = sort.lengthMm * between(pick, [0.9, 1.1]);
		const {level, isHornless} = wish;
		const one = inventCase({kind: sort.kind, lengthMm, level, isHornless, atMm, turn}, pick);
		const short = {...one, strands: {...one.strands, threads: []}};
		const gap = pick() < 0.25 ? 1.2 : between(pick, [4, 12]);
		if (!isWithin(short, room, 4) || laid.some(other => isNear(short, other, gap))) continue;
		laid.push(short);
	}
	return laid;
}

function isNear(one: Laid, other: Laid, gap: number): boolean {
	const far = Math.hypot(one.wish.atMm[0] - other.wish.atMm[0], one.wish.atMm[1] - other.wish.atMm[1]);
	if (far > 2.2 * (one.shape.lengthMm + other.shape.lengthMm)) return false;
	const points = (laid: Laid) => [...outline(laid), ...tipsOf(laid)];
	return (
		points(one).some(point => awayFrom(other, point) < gap) ||
		points(other).some(point => awayFrom(one, point) < gap)
	);
}

function outline({wish, shape}: Laid): readonly At[] {
	const half = shape.lengthMm / 2;
	return [-1, -0.7, -0.35, 0, 0.35, 0.7, 1].flatMap(t =>
		[-1, -0.5, 0, 0.5, 1].map(share =>
			toTable(wish, t * half, share * shape.halfWidth(t * half, share || 1)),
		),
	);
}
