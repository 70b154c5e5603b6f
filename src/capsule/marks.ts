/** The four marks of the measuring sheet: which they are, where they are printed, and how they are read. */
import type {Corners} from './four-sided.ts';
import {carry, type Homography, homographyOf} from './homography.ts';
import {type Point, type Raster, readColour} from './raster.ts';

/** One mark as printed: its id, the place of its upper left corner on the upright sheet, and its inner cells. */
export type Mark = {readonly id: number; readonly fromMm: Point; readonly cells: string};

/** The side of a mark with its black border, in millimetres. */
export const markSideMm = 25;

/** From the outer corner of a mark to both edges of the sheet. */
export const markInsetMm = 12;

const across = [-105 + markInsetMm, 105 - markInsetMm - markSideMm] as const;
const down = [-148.5 + markInsetMm, 148.5 - markInsetMm - markSideMm] as const;

/**
 * Ids 0 to 3 of ArUco's dictionary of 4 by 4 cells, clockwise from the upper left, measured from the middle of the
 * sheet; cells row by row, 1 for white. `test/outside/marks.test.ts` holds them to another library's.
 */
export const marks: readonly Mark[] = [
	{id: 0, fromMm: [across[0], down[0]], cells: '1011010100110010'},
	{id: 1, fromMm: [across[1], down[0]], cells: '0000111110011010'},
	{id: 2, fromMm: [across[1], down[1]], cells: '0011001100101101'},
	{id: 3, fromMm: [across[0], down[1]], cells: '1001100101000110'},
];

const cellsAcross = 6;

/** How surely the marks are there, from 0 to 1 for each, when the sheet is seen so and was printed at a scale. */
export function marksSeen(raster: Raster, view: Homography, scale: number): readonly number[] {
	return marks.map(mark => {
		const cellMm = markSideMm / cellsAcross;
		return likeness(mark.cells, (column, row) => {
			const x = (mark.fromMm[0] + (column + 0.5) * cellMm) * scale;
			const y = (mark.fromMm[1] + (row + 0.5) * cellMm) * scale;
			return lightAt(raster, carry(view, [x, y]));
		});
	});
}

/** Reads which mark a four-sided outline is, and turns its corners so that they begin at the upper left one. */
export function readMark(
	raster: Raster,
	corners: Corners,
): {readonly mark: Mark; readonly corners: Corners} | undefined {
	for (let turn = 0; turn < 4; turn += 1) {
		const turned = turnedBy(corners, turn);
		const side = cellsAcross;
		const own: readonly Point[] = [
			[0, 0],
			[side, 0],
			[side, side],
			[0, side],
		];
		const view = homographyOf(own.map((point, index) => [point, turned[index] ?? point]));
		for (const mark of marks) {
			const seen = likeness(mark.cells, (column, row) =>
				lightAt(raster, carry(view, [column + 0.5, row + 0.5])),
			);
			if (seen === 1) return {mark, corners: turned};
		}
	}
	return undefined;
}

/** Corners begun at another of them. */
export function turnedBy(corners: Corners, turn: number): Corners {
	const at = (index: number) => corners[(index + turn) % 4] ?? corners[0];
	return [at(0), at(1), at(2), at(3)];
}

/** The share of the inner cells that are as they should be, 0 where the border is not black. */
function likeness(cells: string, light: (column: number, row: number) => number | undefined): number {
	const lights: number[] = [];
	for (let row = 0; row < cellsAcross; row += 1) {
		for (let column = 0; column < cellsAcross; column += 1) {
			const value = light(column, row);
			if (value === undefined) return 0;
			lights.push(value);
		}
	}
	const [least, most] = [Math.min(...lights), Math.max(...lights)];
	if (most - least < 25) return 0;
	const level = (least + most) / 2;
	let right = 0;
	for (const [index, value] of lights.entries()) {
		const [row, column] = [Math.floor(index / cellsAcross), index % cellsAcross];
		const isBorder = row === 0 || column === 0 || row === cellsAcross - 1 || column === cellsAcross - 1;
		if (isBorder && value > level) return 0;
		if (!isBorder && value > level === (cells[(row - 1) * 4 + column - 1] === '1')) right += 1;
	}
	return right / 16;
}

const colour = new Float32Array(3);

function lightAt(raster: Raster, point: Point): number | undefined {
	if (!readColour(raster, ...point, colour)) return undefined;
	return ((colour[0] ?? 0) + (colour[1] ?? 0) + (colour[2] ?? 0)) / 3;
}
