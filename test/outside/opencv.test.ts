/** Marks, planes, corners and rectangles held against OpenCV 4.13 in WebAssembly, which nobody here wrote. */
import {loadOpenCV} from '@opencvjs/node';
import {beforeAll, expect, test, vi} from 'vitest';
import {roundFrom} from '../../src/capsule/coin.ts';
import {fourOf} from '../../src/capsule/four-sided.ts';
import {carry, homographyOf} from '../../src/capsule/homography.ts';
import {marks} from '../../src/capsule/marks.ts';
import type {Point} from '../../src/capsule/raster.ts';
import {areaOf, convexHull} from '../../src/capsule/regions.ts';

// Its eleven megabytes of WebAssembly take a while beside other tests.
vi.setConfig({testTimeout: 60_000, hookTimeout: 60_000});

type Matrix = {readonly data: Uint8Array; readonly data64F: Float64Array; readonly delete: () => void};
type Size = {readonly width: number; readonly height: number};

/** The part of the library that is used here. */
type Library = {
	readonly Mat: new () => Matrix;
	readonly CV_32FC2: number;
	readonly DICT_4X4_50: number;
	readonly matFromArray: (rows: number, columns: number, kind: number, values: readonly number[]) => Matrix;
	readonly findHomography: (from: Matrix, to: Matrix) => Matrix;
	readonly minAreaRect: (points: Matrix) => {readonly size: Size};
	readonly fitEllipse: (points: Matrix) => {readonly size: Size};
	readonly getPredefinedDictionary: (kind: number) => {
		readonly generateImageMarker: (id: number, sidePx: number, into: Matrix, borderCells: number) => void;
	};
};

function isLibrary(value: unknown): value is Library {
	return typeof value === 'object' && value !== null && 'findHomography' in value && 'DICT_4X4_50' in value;
}

let cv: Library;
beforeAll(async () => {
	const loaded: unknown = await loadOpenCV();
	if (!isLibrary(loaded)) throw new Error('Expected OpenCV with its marks; got something else');
	cv = loaded;
});

function matrixOf(points: readonly Point[]): Matrix {
	return cv.matFromArray(points.length, 1, cv.CV_32FC2, points.flat());
}

test.each([0, 1, 2, 3])('mark %i is the one that its dictionary draws', id => {
	const drawn = new cv.Mat();
	cv.getPredefinedDictionary(cv.DICT_4X4_50).generateImageMarker(id, 6, drawn, 1);
	const rows = [1, 2, 3, 4].map(row => [...drawn.data.slice(row * 6 + 1, row * 6 + 5)]);
	expect(marks.find(mark => mark.id === id)?.cells).toBe(
		rows
			.flat()
			.map(value => (value > 127 ? '1' : '0'))
			.join(''),
	);
	drawn.delete();
});

const sheet: readonly Point[] = [
	[0, 0],
	[210, 0],
	[210, 297],
	[0, 297],
	[105, 60],
];

test.each<readonly [string, readonly Point[]]>([
	[
		'straight',
		[
			[100, 100],
			[520, 100],
			[520, 694],
			[100, 694],
			[310, 220],
		],
	],
	[
		'aslant',
		[
			[312, 141],
			[868, 203],
			[803, 858],
			[121, 700],
			[560, 300],
		],
	],
])('a sheet seen %s is carried to the same pixels', (_, seen) => {
	const [from, to] = [matrixOf(sheet), matrixOf(seen)];
	const theirs = cv.findHomography(from, to);
	const ours = homographyOf(sheet.slice(0, 4).map((point, index) => [point, seen[index] ?? point]));
	const four = cv.findHomography(matrixOf(sheet.slice(0, 4)), matrixOf(seen.slice(0, 4)));
	for (const point of [
		[10, 20],
		[105, 148],
		[200, 280],
	] as const) {
		const [x, y] = carry(ours, point);
		const [u, v] = carry(four.data64F, point);
		expect(Math.hypot(x - u, y - v)).toBeLessThan(0.01);
	}
	for (const matrix of [from, to, theirs, four]) matrix.delete();
});

test('the four-sided outline of a turned rectangle has the area of the smallest rectangle round it', () => {
	const angle = 0.4;
	const points = [
		[-40, -25],
		[40, -25],
		[40, 25],
		[-40, 25],
		[0, 25],
		[20, -25],
	].map(
		([x = 0, y = 0]): Point => [
			200 + x * Math.cos(angle) - y * Math.sin(angle),
			150 + x * Math.sin(angle) + y * Math.cos(angle),
		],
	);
	const matrix = matrixOf(points);
	const {width, height} = cv.minAreaRect(matrix).size;
	matrix.delete();
	const corners = fourOf(convexHull(points));
	expect(corners && areaOf(corners) / (width * height)).toBeCloseTo(1, 4);
});

test('an ellipse has the axes that are fitted to the same points', () => {
	const points = Array.from({length: 90}, (_, index): Point => {
		const [x, y] = [31 * Math.cos(index / 14.324), 26 * Math.sin(index / 14.324)];
		return [120 + 0.8 * x - 0.6 * y, 90 + 0.6 * x + 0.8 * y];
	});
	const matrix = matrixOf(points);
	const {width, height} = cv.fitEllipse(matrix).size;
	matrix.delete();
	const round = roundFrom(points);
	expect(round && (2 * round.long) / Math.max(width, height)).toBeCloseTo(1, 2);
	expect(round && (2 * round.short) / Math.min(width, height)).toBeCloseTo(1, 2);
});
