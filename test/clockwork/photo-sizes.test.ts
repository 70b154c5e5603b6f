import {expect, test} from 'vitest';
import type {MeasuredCase, Outcome} from '../../src/capsule/outcome.ts';
import {readSizes} from '../../src/clockwork/photo-sizes.ts';

const corners = [
	[10, 10],
	[200, 10],
	[200, 130],
	[10, 130],
] as const;
const kept = {photo: 3, hash: 'b'.repeat(64)};
const log = () => undefined;

function caseAt(x: number, y: number, change: Partial<MeasuredCase> = {}): MeasuredCase {
	return {
		lengthMm: 60.04,
		lengthIntervalMm: [59.5, 60.6],
		lengthLinePx: [
			[x, y - 50],
			[x, y + 50],
		],
		...change,
	};
}

async function read(outcome: Outcome) {
	return readSizes({measure: async () => outcome, log}, {photo: 3, bytes: new Uint8Array()});
}

function measured(
	cases: readonly MeasuredCase[],
	change: {readonly reference?: 'a4' | 'card'} = {},
): Outcome {
	return {kind: 'measured', reference: 'a4', referencePx: corners, cases, ...change};
}

test('cases are numbered row by row, as people read, though they lie askew', async () => {
	const cases = [caseAt(500, 420), caseAt(700, 130), caseAt(100, 400), caseAt(300, 110), caseAt(500, 140)];
	const outcome = (await read(measured(cases))).outcome(kept);
	if (outcome.kind !== 'tray') throw new Error(`Expected a tray; got "${outcome.kind}"`);
	const middles = outcome.tray.cases.map(({length: {line}}) => [line[0][0], line[0][1] + 50]);
	expect(middles).toEqual([
		[300, 110],
		[500, 140],
		[700, 130],
		[100, 400],
		[500, 420],
	]);
	expect(outcome.tray.cases.map(({number}) => number)).toEqual([1, 2, 3, 4, 5]);
	expect(outcome.tray.cases[0]?.length).toMatchObject({mm: 60, uncertaintyMm: 0.6});
});

test('outline, shape and what was not measured come along where there are any, in whole pixels', async () => {
	const outlinePx = [
		[0.4, 0.6],
		[10, 0],
		[10, 10],
	] as const;
	const two = [caseAt(100, 100, {outlinePx, shape: 'long'}), caseAt(400, 100)];
	const unsure = [{atPx: [7.7, 9.2], why: 'unclear-ends'}] as const;
	const on = {kind: 'measured', reference: 'a4', referencePx: corners} as const;
	const outcome = (await read({...on, cases: two, unsure})).outcome(kept);
	expect(outcome).toMatchObject({
		tray: {
			...kept,
			unsure: [[8, 9]],
			sheet: corners,
			cases: [
				{
					outline: [
						[0, 1],
						[10, 0],
						[10, 10],
					],
					shape: 'long',
				},
				{number: 2},
			],
		},
	});
	const [, bare] = outcome.kind === 'tray' ? outcome.tray.cases : [];
	expect(Object.keys(bare ?? {})).toEqual(['number', 'length']);
});

test('a card beside many cases is hidden, and is no sheet that they lie on', async () => {
	const sizes = await read(measured([caseAt(400, 100), caseAt(600, 100)], {reference: 'card'}));
	expect(sizes.hidden).toEqual(corners);
	const outcome = sizes.outcome(kept);
	expect(outcome.kind === 'tray' && outcome.tray.sheet).toBeUndefined();
});

test('a coin is told with its class of size, and its photo declined', async () => {
	const coin: Outcome = {kind: 'declined', why: 'coin', aboutMm: [50, 80]};
	expect((await read(coin)).outcome(kept)).toEqual({kind: 'declined', why: 'coin', aboutMm: [50, 80]});
	const letter: Outcome = {kind: 'declined', why: 'letter'};
	expect((await read(letter)).outcome(kept)).toEqual({kind: 'declined', why: 'letter'});
});

test('a measurer that fails is an answer, too', async () => {
	const measure = async () => {
		throw new Error('dead');
	};
	const sizes = await readSizes({measure, log}, {photo: 3, bytes: new Uint8Array()});
	expect(sizes.outcome(kept)).toEqual({kind: 'declined', why: 'failed'});
});
