import {expect, test} from 'vitest';
import type {Axis} from '../../src/capsule/axis.ts';
import type {Judged, Read} from '../../src/capsule/judged.ts';
import {goesOn, isWorthAnother, joinLooks} from '../../src/capsule/second-look.ts';
import {plainView} from './plain-view.ts';

/** A case that lies across, so many pixels long and as many tenths of a millimetre. */
function read(x: number, longPx: number, symmetry: number): Read {
	const lengthMm = longPx / 10;
	const length = [
		[x - longPx / 2, 50],
		[x + longPx / 2, 50],
	] as const;
	const one = {lengthMm, lengthIntervalMm: [lengthMm, lengthMm], lines: {length}, outline: []} as const;
	return {kind: 'read', either: [one], isLikely: true, symmetry, goesOn: false, at: [x, 50]};
}

const odd = (x: number): Judged => ({kind: 'doubted', why: 'odd-shape', at: [x, 50]});
const cut: Judged = {kind: 'doubted', why: 'cut-off', at: [900, 50]};

test('an even body is looked at once, an odd or uneven one twice, and one that is cut off not again', () => {
	const looks = [read(100, 400, 0.97), read(100, 400, 0.94), odd(100), cut].map(isWorthAnother);
	expect(looks).toEqual([false, true, true, false]);
});

test('what only the second look reads is added, and the doubt about its pieces goes', () => {
	const whole = read(300, 400, 0.97);
	expect(joinLooks([odd(180), odd(420), cut], [whole, cut])).toEqual([whole, cut]);
});

test('a body read by both is told by the first, and so is a doubt that stays', () => {
	const first = read(300, 400, 0.97);
	expect(joinLooks([first, odd(800)], [read(301, 405, 0.99), odd(801)])).toEqual([first, odd(800)]);
});

test('the whole of an uneven body takes the place of its part where it is as even', () => {
	const whole = read(350, 500, 0.94);
	expect(joinLooks([read(280, 350, 0.94)], [whole])).toEqual([whole]);
});

test('a shadow that makes an uneven body longer and more uneven leaves it unread', () => {
	const judged = joinLooks([read(280, 350, 0.94)], [read(300, 420, 0.88)]);
	expect(judged).toEqual([{kind: 'doubted', why: 'unclear-ends', at: [280, 50]}]);
});

test('an even body beyond whose end something lies is looked at again, and a whole as even as it takes its place', () => {
	const part = {...read(280, 350, 0.97), goesOn: true};
	const whole = read(350, 500, 0.975);
	expect(isWorthAnother(part)).toBe(true);
	expect(joinLooks([part], [whole])).toEqual([whole]);
	expect(joinLooks([part], [read(350, 500, 0.9)])).toEqual([part]);
});

const axis: Axis = {
	middle: [50, 20],
	along: [1, 0],
	...{lengthMm: 40, widthMm: 20, symmetry: 1, fullness: 1},
};
const view = plainView(100, 40);

/** Ground all over but for what lies between two columns and two rows. */
function ground(columns: readonly [number, number], rows: readonly [number, number]) {
	const values = new Float32Array(4000).fill(-3);
	for (let row = rows[0]; row < rows[1]; row += 1)
		values.fill(0, row * 100 + columns[0], row * 100 + columns[1]);
	return {width: 100, height: 40, values};
}

test('what lies across the middle line beyond an end is noticed, and neither horns at its corners nor things far off are', () => {
	const ends = [20, 20] as const;
	const lies = (...where: Parameters<typeof ground>) => goesOn(ground(...where), view, {axis, ends});
	expect(lies([74, 78], [10, 30])).toBe(true);
	expect(lies([22, 26], [10, 30])).toBe(true);
	expect(lies([74, 78], [10, 17])).toBe(false);
	expect(lies([84, 90], [10, 30])).toBe(false);
	expect(lies([70, 73], [10, 30])).toBe(false);
});

test('an even body stays as it was read, whatever shade the second look adds', () => {
	const first = read(280, 350, 0.97);
	expect(joinLooks([first, odd(900)], [read(300, 420, 0.97)])).toEqual([first, odd(900)]);
});
