import fc from 'fast-check';
import {expect, test} from 'vitest';
import {acrossAt, drawEnds, drawMeasured, drawRange, scaleOfLengths} from '../../src/draw/length-scale.ts';

const at = {left: 100, width: 500};
const range = (lowMm: number, highMm: number, isFromMemory = false) => ({lowMm, highMm, isFromMemory});

test('a scale of 55 to 90 mm begins and ends at tens, and a millimetre is as wide everywhere', () => {
	const scale = scaleOfLengths([range(55, 90)], {mm: 72, plusMinusMm: 1, isLeast: false}, at);
	expect(scale).toMatchObject({fromMm: 50, stepMm: 10, toMm: 100});
	if (!scale) return;
	expect([50, 60, 75, 100].map(mm => acrossAt(scale, mm))).toEqual([100, 200, 350, 600]);
});

test('without a range and without a measured length there is no scale', () => {
	expect(scaleOfLengths([], undefined, at)).toBeUndefined();
});

test('whatever was published and measured lies within the scale, and its numbers have room', () => {
	const sizes = fc.tuple(
		fc.double({min: 15, max: 400, noNaN: true}),
		fc.double({min: 0, max: 100, noNaN: true}),
	);
	fc.assert(
		fc.property(
			fc.array(sizes, {minLength: 1, maxLength: 4}),
			fc.double({min: 15, max: 400, noNaN: true}),
			(all, mm) => {
				const ranges = all.map(([low, more]) => range(low, low + more));
				const scale = scaleOfLengths(ranges, {mm, plusMinusMm: 2, isLeast: false}, at);
				if (!scale) throw new Error('Expected a scale; got none');
				const {fromMm, toMm, stepMm, width} = scale;
				for (const end of [mm - 2, mm + 2, ...ranges.flatMap(({lowMm, highMm}) => [lowMm, highMm])]) {
					expect(end).toBeGreaterThanOrEqual(fromMm);
					expect(end).toBeLessThanOrEqual(toMm);
				}
				expect((width * stepMm) / (toMm - fromMm)).toBeGreaterThanOrEqual(65);
			},
		),
	);
});

test('a range runs from its low to its high end, is broken when from memory, and one size is a diamond', () => {
	const scale = scaleOfLengths([range(55, 90)], undefined, at);
	if (!scale) throw new Error('Expected a scale; got none');
	const [from, to] = [acrossAt(scale, 55), acrossAt(scale, 90)];
	expect(drawRange(scale, range(55, 90), 0)).toContain(`M${from} 0H${to}V24H${from}Z`);
	expect(drawRange(scale, range(55, 90), 0)).not.toContain('dasharray');
	expect(drawRange(scale, range(55, 90, true), 0)).toContain('dasharray');
	expect(drawRange(scale, range(75, 75), 0)).toContain(`M${acrossAt(scale, 75)} 0l12 12`);
});

test('a measured length is a band as wide as its uncertainty, and a least one an arrow', () => {
	const scale = scaleOfLengths([range(55, 90)], undefined, at);
	if (!scale) throw new Error('Expected a scale; got none');
	const band = drawMeasured(scale, {mm: 75, plusMinusMm: 5, isLeast: false}, 0);
	expect(band).toContain(`M${acrossAt(scale, 70)} -9H${acrossAt(scale, 80)}`);
	const least = drawMeasured(scale, {mm: 75, plusMinusMm: 5, isLeast: true}, 0);
	expect(least).toContain('l16 13l-16 13');
	expect(least).not.toContain(`H${acrossAt(scale, 80)}`);
});

test('the numbers beside a bar keep clear of what was measured', () => {
	const scale = scaleOfLengths([range(82, 132)], {mm: 76, plusMinusMm: 1, isLeast: false}, at);
	if (!scale) throw new Error('Expected a scale; got none');
	const rightmost = (svg: string) => Math.max(...leftOf(svg));
	const alone = drawEnds(scale, range(82, 132), {top: 0, measured: undefined});
	const beside = drawEnds(scale, range(82, 132), {
		top: 0,
		measured: {mm: 76, plusMinusMm: 1, isLeast: false},
	});
	expect(rightmost(alone)).toBeGreaterThan(acrossAt(scale, 75));
	expect(rightmost(beside)).toBeLessThan(acrossAt(scale, 75));
});

/** Where the strokes of the first number lie across. */
function leftOf(svg: string): readonly number[] {
	const [, first = ''] = /<path d="([^"]*)"/.exec(svg) ?? [];
	return [...first.matchAll(/[ML](-?[\d.]+) /g)].map(([, x]) => Number(x));
}
