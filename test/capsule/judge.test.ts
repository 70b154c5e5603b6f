import {expect, test} from 'vitest';
import {findAxis} from '../../src/capsule/axis.ts';
import {findBodies} from '../../src/capsule/bodies.ts';
import {apronsOf, doubtOf, type Evidence, rivalsOf} from '../../src/capsule/judge.ts';
import {a4} from '../../src/capsule/sizes.ts';
import {plainView} from './plain-view.ts';

const size = {width: 160, height: 130};
const view = plainView(size.width, size.height);
const corners = [
	[0, 0],
	[400, 0],
	[400, 600],
	[0, 600],
] as const;
const pose = {viewAt: () => Float64Array.of(2, 0, 0, 0, 2, 0, 0, 0, 1), misfit: 0, tilt: 5};
const found = {
	flat: a4,
	pose: {...pose, distanceMm: 400, focalPx: 800},
	placed: {corners, sides: []},
	halfMm: [105, 148.5],
	score: 1,
} as const;

type Box = {readonly x: number; readonly y: number; readonly wide: number; readonly high: number};

/** What is known of the body that these boxes make, its width so many millimetres off what the mask shows. */
function evidenceOf(boxes: readonly Box[], {broaderMm = 0, isFlankDim = false} = {}): Evidence {
	const values = new Float32Array(size.width * size.height).fill(-4.4);
	for (const {x, y, wide, high} of boxes) {
		for (let row = y; row < y + high; row += 1)
			values.fill(3, row * size.width + x, row * size.width + x + wide);
	}
	const [body] = findBodies(view, {...size, values});
	const axis = body && findAxis(body, view);
	if (!axis) throw new Error('Expected a body with an axis');
	const border = (at: number) => ({
		...{at: () => at, score: 0.8, strength: 60, trust: 1, scatterMm: 0.05, seen: 1},
	});
	const end = border(axis.lengthMm / 2);
	const flank = border((axis.widthMm + broaderMm) / 2);
	return {
		...{body, axis, found, scaleSigma: 0.001, lens: 1, mmPerPx: 0.5},
		size: {
			lengthMm: axis.lengthMm,
			widthMm: axis.widthMm + broaderMm,
			ends: [axis.lengthMm / 2, axis.lengthMm / 2],
			chosen: [end, end],
			rivals: [[], []],
			paler: [undefined, undefined],
			isApron: [false, false],
			flanks: [isFlankDim ? {...flank, trust: 0.5} : flank, flank],
			widestAt: 0,
		},
	};
}

const plain = {x: 40, y: 40, wide: 70, high: 40};
/** A corner of another case looks out beside it. */
const other = {x: 84, y: 80, wide: 26, high: 8};
const small = {x: 40, y: 40, wide: 30, high: 16};
const wartOfSmall = {x: 45, y: 56, wide: 12, high: 3};

test('a plain body with borders all round leaves no doubt', () => {
	expect(doubtOf(evidenceOf([plain]))).toBeUndefined();
});

test('two cases that lie over each other are not one: the body is uneven and a flank is not to be seen', () => {
	const uneven = evidenceOf([plain, other]);
	expect(uneven.axis.symmetry).toBeLessThan(0.9);
	expect(doubtOf(uneven)).toBeUndefined();
	expect(doubtOf(evidenceOf([plain, other], {isFlankDim: true}))).toBe('odd-shape');
	expect(doubtOf(evidenceOf([plain], {isFlankDim: true}))).toBeUndefined();
});

test('two cases that lie askew over each other leave corners of their frame empty, and are not one', () => {
	const lower = {x: 30, y: 30, wide: 66, high: 46};
	const askew = evidenceOf([lower, {...lower, x: 42, y: 40}]);
	expect(askew.axis.fullness).toBeLessThan(0.9);
	expect(askew.axis.fullness).toBeGreaterThan(0.86);
	expect(askew.axis.symmetry).toBeGreaterThan(0.84);
	expect(doubtOf(askew)).toBe('odd-shape');
});

test('on a small uneven body a few steps of the grid make no overlap, on a large one as large a share does', () => {
	const few = evidenceOf([small, wartOfSmall], {broaderMm: 3});
	expect(few.axis.symmetry).toBeLessThan(0.92);
	expect(doubtOf(few)).toBeUndefined();
	expect(doubtOf(evidenceOf([plain, other], {broaderMm: 8}))).toBe('odd-shape');
});

test('an end as pale as paper is trusted when its colour tells an apron and its edge is even', () => {
	const plainly = evidenceOf([plain]);
	const {chosen} = plainly.size;
	const pale = {...chosen[0], trust: 0.3, strength: 20};
	const seenAs = (isApron: boolean, end = pale): Evidence => ({
		...plainly,
		size: {...plainly.size, chosen: [end, chosen[1]], isApron: [isApron, false]},
	});
	expect(doubtOf(seenAs(false))).toBe('unclear-ends');
	expect(doubtOf(seenAs(true))).toBeUndefined();
	expect(doubtOf(seenAs(true, {...pale, seen: 0.6}))).toBe('unclear-ends');
});

test('a body whose halves are a little unlike is one case only when both its flanks are plain to see', () => {
	const bump = {...other, high: 6};
	const uneven = evidenceOf([plain, bump], {isFlankDim: true});
	expect(uneven.axis.symmetry).toBeGreaterThan(0.9);
	expect(uneven.axis.symmetry).toBeLessThan(0.92);
	expect(doubtOf(uneven)).toBe('odd-shape');
	expect(doubtOf(evidenceOf([plain, bump]))).toBeUndefined();
});

test('two bands of an apron, each too narrow to be asked about, are another reading together', () => {
	const bare = evidenceOf([plain]);
	const {size: sized} = bare;
	const farther = (mm: number) => ({border: {...sized.chosen[0], at: () => mm}, isTinged: true});
	const [front, back] = sized.ends;
	const withBands = (atFront: number, atBack: number): Evidence => ({
		...bare,
		size: {...sized, paler: [farther(front + atFront), farther(back + atBack)]},
	});
	const apronsIn = (evidence: Evidence) => apronsOf(evidence, rivalsOf(evidence));
	expect(rivalsOf(withBands(1.8, 1.8)).map(({isFar}) => isFar)).toEqual([false, false]);
	expect(apronsIn(withBands(1.8, 1.8))).toEqual([front + 1.8, back + 1.8]);
	expect(apronsIn(withBands(0.8, 0.8))).toBeUndefined();
	expect(apronsIn(bare)).toBeUndefined();
});
