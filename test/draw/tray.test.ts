import {expect, test} from 'vitest';
import {widthOfWords} from '../../src/draw/lettering.ts';
import {drawTray, type NumberedCase} from '../../src/draw/tray.ts';

const size = {widthPx: 1280, heightPx: 960};

type Plate = {readonly left: number; readonly top: number; readonly right: number; readonly bottom: number};

function platesIn(svg: string): readonly Plate[] {
	return [...svg.matchAll(/<rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"/g)].map(
		([, ...numbers]) => {
			const [left = 0, top = 0, wide = 0, tall = 0] = numbers.map(Number);
			return {left, top, right: left + wide, bottom: top + tall};
		},
	);
}

/** Cases in rows and columns over the whole photo, each most of its place long. */
function grid(columns: number, rows: number): readonly NumberedCase[] {
	const [wide, tall] = [size.widthPx / columns, size.heightPx / rows];
	return Array.from({length: columns * rows}, (_, index) => {
		const [x, y] = [wide * ((index % columns) + 0.5), tall * (Math.floor(index / columns) + 0.5)];
		const half = Math.min(wide, tall) * 0.3;
		return {
			number: index + 1,
			length: {
				mm: 60.4,
				uncertaintyMm: 0.7,
				line: [
					[x, y - half],
					[x, y + half],
				],
			},
			outline: [
				[x - half / 2, y - half],
				[x + half / 2, y - half],
				[x + half / 2, y + half],
				[x - half / 2, y + half],
			],
		};
	});
}

function overlaps(one: Plate, other: Plate): boolean {
	return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}

test.each([
	[1, 1],
	[3, 2],
	[4, 3],
	[5, 4],
])('%i by %i cases have a plate each, inside the photo and on no other plate', (columns, rows) => {
	const plates = platesIn(drawTray({cases: grid(columns, rows), title: 'x'}, size));
	expect(plates).toHaveLength(columns * rows);
	for (const [index, plate] of plates.entries()) {
		expect(plate.left).toBeGreaterThanOrEqual(0);
		expect(plate.right).toBeLessThanOrEqual(size.widthPx);
		expect(plate.bottom).toBeLessThanOrEqual(size.heightPx);
		expect(plates.filter((other, at) => at !== index && overlaps(plate, other))).toEqual([]);
	}
});

test('a plate covers its own case only where there is no room beside it', () => {
	const cases = grid(3, 2);
	const plates = platesIn(drawTray({cases, title: 'x'}, size));
	for (const {length} of cases) {
		const [[x, top], [, bottom]] = length.line;
		const line = {left: x - 1, right: x + 1, top, bottom};
		expect(plates.filter(plate => overlaps(plate, line))).toEqual([]);
	}
});

test('what was seen and not measured has a question mark, and the letters are as large as in other pictures', () => {
	const [plate, mark] = [
		platesIn(drawTray({cases: grid(1, 1), title: 'x'}, size)),
		platesIn(drawTray({cases: grid(1, 1), unsure: [[1200, 900]], title: 'x'}, size)),
	];
	expect(mark).toHaveLength(plate.length + 1);
	const unit = size.widthPx / 720;
	const [first] = plate;
	const written = widthOfWords('1  60 mm', {size: 34 * unit, weight: 'bold'});
	expect((first?.right ?? 0) - (first?.left ?? 0)).toBeGreaterThan(written);
});
