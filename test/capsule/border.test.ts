import {expect, test} from 'vitest';
import {findBorders} from '../../src/capsule/border.ts';
import type {Edge} from '../../src/capsule/edges.ts';

const bend = {halfMm: 11, mostBowMm: 2, mostSlope: 0.3, order: 2, reachMm: 0.45} as const;

/** An edge on each of 23 lines, straight across. */
function edgesAt(at: number, strength: number, trust: number): readonly Edge[] {
	return Array.from({length: 23}, (_, line) => ({line, place: line - 11, at, strength, trust}));
}

test('a faint border is found beside plain ones that have all the best edges', () => {
	const edges = [...edgesAt(18, 80, 1), ...edgesAt(20, 90, 1), ...edgesAt(24, 20, 0.2)];
	const borders = findBorders(edges, bend, 0.8);
	expect(borders.map(({at}) => Math.round(at(0)))).toEqual([20, 18, 24]);
});
