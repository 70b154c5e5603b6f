import {expect, test} from 'vitest';
import {bendOf, straightened} from '../../src/capsule/lens.ts';
import type {Point} from '../../src/capsule/raster.ts';

const frame = {width: 1281, height: 961};
const reach = Math.hypot(640, 480);
const sheet = [
	[140, 130],
	[1140, 130],
	[1140, 830],
	[140, 830],
] as const;

/** Where a lens that moves the corner of the picture outwards by this share shows a point. */
function bent([x, y]: Point, share: number): Point {
	const by = 1 + share * (((x - 640) ** 2 + (y - 480) ** 2) / reach ** 2);
	return [640 + (x - 640) * by, 480 + (y - 480) * by];
}

/** The sides of the sheet as such a lens shows them: how far each middle stands off its ends, outwards. */
function sidesBy(share: number) {
	return sheet.map((from, index) => {
		const to = sheet[(index + 1) % 4] ?? from;
		const [a, b] = [bent(from, share), bent(to, share)];
		const [x, y] = bent([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], share);
		const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
		// Outwards is to the left of the way from corner to corner.
		const bowPx = ((b[1] - a[1]) * (x - a[0]) - (b[0] - a[0]) * (y - a[1])) / long;
		return {line: [1, 0, 0] as const, seen: 1, scatterPx: 0.1, contrast: 50, bowPx};
	});
}

test.each([0.02, -0.02])('a lens that bends by %d is told from the bows of a sheet', share => {
	const corners = sheet.map(corner => bent(corner, share));
	const [a, b, c, d] = corners;
	if (!a || !b || !c || !d) throw new Error('Expected four corners; got fewer');
	expect(bendOf({corners: [a, b, c, d], sides: sidesBy(share)}, frame)).toBeCloseTo(share, 2);
});

test('straight sides tell of no bend, and a point that was bent is put back', () => {
	expect(bendOf({corners: sheet, sides: sidesBy(0)}, frame)).toBeCloseTo(0, 6);
	const [x, y] = straightened(bent([900, 700], 0.02), 0.02, frame);
	expect(Math.hypot(x - 900, y - 700)).toBeLessThan(0.3);
});
