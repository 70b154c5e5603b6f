/** Things of different sizes put on pages without lying over each other. */
import type {Column} from './flow.ts';
import type {Page} from './page.ts';

/** A thing with its own items, placed from its own upper left corner. */
export type Cell = {
	readonly widthMm: number;
	readonly heightMm: number;
	readonly items: Page['items'];
	/** Kept free to the right and below. */
	readonly gapMm: number;
};

/** A cell with its place on a page. */
export type Placed = {readonly cell: Cell; readonly xMm: number; readonly yMm: number};

// Sums of millimetres miss each other by less.
const hairMm = 1e-6;

/**
 * Places each cell as high as it goes on the first page that has room, and `last` on the last page or one of its own;
 * none is turned. Throws when a cell is larger than a page.
 */
export function placeOnPages(
	cells: readonly Cell[],
	last: Cell,
	area: Column,
): readonly (readonly Placed[])[] {
	let pages: readonly (readonly Placed[])[] = [[]];
	for (const cell of cells) pages = withCell(pages, cell, area);
	const before = pages.slice(0, -1);
	return [...before, ...withCell(pages.slice(-1), last, area)];
}

function withCell(
	pages: readonly (readonly Placed[])[],
	cell: Cell,
	area: Column,
): readonly (readonly Placed[])[] {
	for (const [index, page] of pages.entries()) {
		const placed = roomFor(cell, page, area);
		if (placed) return pages.with(index, [...page, placed]);
	}
	const placed = roomFor(cell, [], area);
	if (placed) return [...pages, [placed]];
	throw new Error(
		`Expected cells of at most ${area.widthMm} by ${area.heightMm} mm; got ${cell.widthMm} by ${cell.heightMm}`,
	);
}

/** The highest place below what already lies there, the leftmost of several. */
function roomFor(cell: Cell, page: readonly Placed[], area: Column): Placed | undefined {
	const lefts = [area.xMm, ...page.map(({cell, xMm}) => xMm + cell.widthMm + cell.gapMm)];
	return lefts
		.filter(xMm => xMm + cell.widthMm <= area.xMm + area.widthMm + hairMm)
		.map(xMm => {
			const above = page.filter(
				other =>
					other.xMm < xMm + cell.widthMm + cell.gapMm - hairMm &&
					other.xMm + other.cell.widthMm + other.cell.gapMm > xMm + hairMm,
			);
			const yMm = Math.max(
				area.topMm,
				...above.map(other => other.yMm + other.cell.heightMm + other.cell.gapMm),
			);
			return {cell, xMm, yMm};
		})
		.filter(({yMm}) => yMm + cell.heightMm <= area.topMm + area.heightMm + hairMm)
		.toSorted((a, b) => a.yMm - b.yMm || a.xMm - b.xMm)[0];
}
