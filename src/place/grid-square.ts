import {type Grid, type GridPoint, toDegrees} from './grid.ts';

/** A square of a national grid, given by its south-west corner and the length of its side in metres. */
export type GridSquare = {readonly grid: Grid; readonly corner: GridPoint; readonly sideM: number};

/** What a text says as a grid reference: a square, a faulty reference, or something else altogether. */
export type SquareRead =
	| {readonly kind: 'square'; readonly square: GridSquare; readonly verbatim: string}
	| {
			readonly kind: 'refused';
			readonly why: 'odd-digits' | 'uneven-digits' | 'no-such-square' | 'too-many-digits';
	  }
	| {readonly kind: 'other'};

// Both grids letter their squares A to Z without I, in rows of five from the north-west.
const gridLetters = 'ABCDEFGHJKLMNOPQRSTUVWXYZ';
// Tetrads run in columns from the south-west, A to Z without O (from memory).
const tetradLetters = 'ABCDEFGHIJKLMNPQRSTUVWXYZ';

const announced = /^(?:GRID REF(?:ERENCE)?|GRID|NGR|OSGR)[.:]? ?(?=[A-Z]{1,2} ?\d)/;
// An O among digits can only be a nought.
const reference = /^([A-Z]{1,2}) ?(\d[\dO ,/]*)$/;
const tenthsWithPart = /^([A-Z]{2}) ?(\d) ?(\d) ?(NW|NE|SW|SE|[A-NP-Z])$/;

/**
 * Reads a British (two letters) or Irish (one letter) grid reference; the square is what the digits name, cut and
 * not rounded. One letter with fewer than four digits is left alone, since roads and bays are called that.
 */
export function readSquare(text: string): SquareRead {
	const verbatim = text
		.toUpperCase()
		.replace(announced, '')
		.replace(/[ .,;]+$/, '');
	const part = tenthsWithPart.exec(verbatim);
	if (part) return readPart(part, verbatim);
	const [, letters, written] = reference.exec(verbatim) ?? [];
	if (letters === undefined || written === undefined) return {kind: 'other'};
	const groups = written.replaceAll('O', '0').split(/[ ,/]+/);
	const digits = groups.join('');
	if (digits.length < (letters.length === 1 ? 4 : 2)) return {kind: 'other'};
	const origin = squareOrigin(letters);
	if (!origin) {
		// "Km 12" is a post on a beach; "KM 12" and "KM 1234" are somebody's grid reference.
		return digits.length < 4 && !text.startsWith(letters)
			? {kind: 'other'}
			: {kind: 'refused', why: 'no-such-square'};
	}
	const why = faultIn(groups, digits.length);
	if (why) return {kind: 'refused', why};
	return {kind: 'square', square: {...origin, ...within(origin.corner, digits)}, verbatim};
}

/**
 * The reference of the square of that side, in metres and a power of ten, which holds a point of a grid: `SW 465 304`.
 * It is `undefined` where the grid has no letters.
 */
export function writeSquare(grid: Grid, point: GridPoint, sideM: number): string | undefined {
	const letters = squareLetters(grid, point);
	if (letters === undefined) return undefined;
	const width = Math.round(Math.log10(100_000 / sideM));
	const cut = (metres: number) =>
		String(Math.floor((metres % 100_000) / sideM))
			.padStart(width, '0')
			.slice(0, width);
	return width === 0 ? letters : `${letters} ${cut(point.east)} ${cut(point.north)}`;
}

/** A square as a closed ring of longitude and latitude on WGS 84, counter-clockwise from the south-west corner. */
export function squareRing({
	grid,
	corner: {east, north},
	sideM,
}: GridSquare): readonly (readonly [longitude: number, latitude: number])[] {
	const corners: readonly GridPoint[] = [
		{east, north},
		{east: east + sideM, north},
		{east: east + sideM, north: north + sideM},
		{east, north: north + sideM},
		{east, north},
	];
	return corners.map(point => {
		const {longitude, latitude} = toDegrees(grid, point);
		return [Number(longitude.toFixed(7)) + 0, Number(latitude.toFixed(7)) + 0] as const;
	});
}

function faultIn(groups: readonly string[], count: number) {
	if (count > 10) return 'too-many-digits' as const;
	if (groups.length === 1) return count % 2 === 1 ? ('odd-digits' as const) : undefined;
	const easting = groups.slice(0, groups.length / 2).join('');
	return groups.length % 2 === 1 || easting.length * 2 !== count ? ('uneven-digits' as const) : undefined;
}

function within(origin: GridPoint, digits: string) {
	const half = digits.length / 2;
	const sideM = 10 ** (5 - half);
	return {
		corner: {
			east: origin.east + Number(digits.slice(0, half)) * sideM,
			north: origin.north + Number(digits.slice(half)) * sideM,
		},
		sideM,
	};
}

function readPart(found: RegExpExecArray, verbatim: string): SquareRead {
	const [, letters = '', east = '', north = '', part = ''] = found;
	const origin = squareOrigin(letters);
	if (!origin) return {kind: 'other'};
	const ten = within(origin.corner, east + north).corner;
	const index = tetradLetters.indexOf(part);
	const sideM = part.length === 2 ? 5000 : 2000;
	const columns = part.length === 2 ? (part.endsWith('E') ? 1 : 0) : Math.floor(index / 5);
	const rows = part.length === 2 ? (part.startsWith('N') ? 1 : 0) : index % 5;
	const corner = {east: ten.east + columns * sideM, north: ten.north + rows * sideM};
	return {kind: 'square', square: {grid: origin.grid, corner, sideM}, verbatim};
}

function squareOrigin(letters: string): {readonly grid: Grid; readonly corner: GridPoint} | undefined {
	const [first = -1, second] = [...letters].map(letter => gridLetters.indexOf(letter));
	if (first < 0 || second === -1) return undefined;
	if (second === undefined) {
		return {grid: 'EPSG:29903', corner: {east: column(first) * 100_000, north: row(first) * 100_000}};
	}
	// The origin is the south-west corner of SV, and S is the third square of the fourth row.
	const east = (column(first) - 2) * 500_000 + column(second) * 100_000;
	const north = (row(first) - 1) * 500_000 + row(second) * 100_000;
	const onGrid = east >= 0 && east < 700_000 && north >= 0 && north < 1_300_000;
	return onGrid ? {grid: 'EPSG:27700', corner: {east, north}} : undefined;
}

function squareLetters(grid: Grid, point: GridPoint): string | undefined {
	const [columns, rows] = grid === 'EPSG:29903' ? [5, 5] : [7, 13];
	const east = Math.floor(point.east / 100_000);
	const north = Math.floor(point.north / 100_000);
	if (!(east >= 0 && east < columns && north >= 0 && north < rows)) return undefined;
	const small = letterAt(east % 5, north % 5);
	if (grid === 'EPSG:29903') return small;
	return letterAt(Math.floor(east / 5) + 2, Math.floor(north / 5) + 1) + small;
}

function column(index: number): number {
	return index % 5;
}

function row(index: number): number {
	return 4 - Math.floor(index / 5);
}

function letterAt(east: number, north: number): string {
	return gridLetters.charAt((4 - north) * 5 + east);
}
