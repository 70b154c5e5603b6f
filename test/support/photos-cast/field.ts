/** How far each point near a case is from its silhouette, on a grid that is quick to look up. */
import type {CaseShape} from './case-shape.ts';
import {distanceTo, type Piece} from './case-strands.ts';

/** Distances from a silhouette, below 0 inside it, right to a fraction of a millimetre; 99 far away. */
export type Field = {readonly at: (u: number, v: number) => number; readonly reachMm: number};

const stepMm = 0.8;
/** Shadows and dimness end nearer than this. */
const marginMm = 34;

/** Works the distances out once. */
export function fieldOf(shape: CaseShape, pieces: readonly Piece[]): Field {
	const us = [...pieces.flatMap(({ax, bx}) => [ax, bx]), shape.lengthMm * 0.56, shape.lengthMm * -0.56];
	const vs = [...pieces.flatMap(({ay, by}) => [ay, by]), shape.widthMm * 0.6, shape.widthMm * -0.6];
	const [left, top] = [Math.min(...us) - marginMm, Math.min(...vs) - marginMm];
	const across = Math.ceil((Math.max(...us) + marginMm - left) / stepMm) + 1;
	const down = Math.ceil((Math.max(...vs) + marginMm - top) / stepMm) + 1;
	const values = new Float32Array(across * down);
	for (let row = 0; row < down; row += 1) {
		for (let column = 0; column < across; column += 1) {
			values[row * across + column] = -shape.inside(left + column * stepMm, top + row * stepMm);
		}
	}
	for (const piece of pieces) lower({values, across, down, left, top}, piece);
	const reachMm = Math.hypot(Math.max(-left, left + across * stepMm), Math.max(-top, top + down * stepMm));
	const at = (u: number, v: number) => {
		const x = (u - left) / stepMm;
		const y = (v - top) / stepMm;
		const column = Math.floor(x);
		const row = Math.floor(y);
		if (column < 0 || row < 0 || column >= across - 1 || row >= down - 1) return 99;
		const a = x - column;
		const b = y - row;
		const first = row * across + column;
		const upper = (values[first] ?? 0) * (1 - a) + (values[first + 1] ?? 0) * a;
		const under = (values[first + across] ?? 0) * (1 - a) + (values[first + across + 1] ?? 0) * a;
		return upper * (1 - b) + under * b;
	};
	return {at, reachMm};
}

type Grid = {
	readonly values: Float32Array;
	readonly across: number;
	readonly down: number;
	readonly left: number;
	readonly top: number;
};

/** Takes the distance from a piece where it is the nearer one. */
function lower({values, across, down, left, top}: Grid, piece: Piece): void {
	const reach = 15 + Math.max(piece.ra, piece.rb);
	const within = (value: number, most: number) => Math.min(most - 1, Math.max(0, Math.round(value)));
	const [from, to] = [
		within((Math.min(piece.ax, piece.bx) - reach - left) / stepMm, across),
		within((Math.max(piece.ax, piece.bx) + reach - left) / stepMm, across),
	];
	const first = within((Math.min(piece.ay, piece.by) - reach - top) / stepMm, down);
	const last = within((Math.max(piece.ay, piece.by) + reach - top) / stepMm, down);
	for (let row = first; row <= last; row += 1) {
		for (let column = from; column <= to; column += 1) {
			const off = distanceTo(piece, left + column * stepMm, top + row * stepMm);
			const at = row * across + column;
			if (off < (values[at] ?? 0)) values[at] = off;
		}
	}
}
