import {existsSync, readFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {prove} from '../../src/cli/proof.ts';
import {
	binsOf,
	brierOf,
	calibrationError,
	confusionOf,
	meanOf,
	ninetyFifth,
} from '../../src/cli/proof-figures.ts';
import {reportOf} from '../../src/cli/proof-report.ts';
import {proofSvg} from '../../src/cli/proof-svg.ts';
import {targetsOf} from '../../src/cli/proof-targets.ts';
import {readChecked, regionsIn} from '../../src/cli/regions.ts';
import {readRegion} from '../../src/key/region.ts';
import {projectWith, run} from './project.ts';

const root = join(import.meta.dirname, '../..');
const region = readRegion(join(root, 'flows'), 'british-isles');
const claim = (probability: number, isRight: boolean) => ({probability, isRight});

test('claims fall into ten bins, 1 into the last, and an empty bin says so', () => {
	const bins = binsOf([
		claim(0, false),
		claim(0.35, true),
		claim(0.39, false),
		claim(0.9, true),
		claim(1, true),
	]);
	expect(bins).toHaveLength(10);
	expect(bins.map(({count}) => count)).toEqual([1, 0, 0, 2, 0, 0, 0, 0, 0, 2]);
	// (0.35 + 0.39) / 2 = 0.37, one of two right; (0.9 + 1) / 2 = 0.95, both right.
	expect(bins[3]).toMatchObject({from: 0.3, to: 0.4, shareRight: 0.5});
	expect(bins[3]?.meanProbability).toBeCloseTo(0.37, 12);
	expect(bins[9]?.meanProbability).toBeCloseTo(0.95, 12);
	expect(bins[1]?.count).toBe(0);
});

test('the calibration error weighs each bin by its claims', () => {
	// 1/5 × |0 − 0| + 2/5 × |0.37 − 0.5| + 2/5 × |0.95 − 1| = 0.052 + 0.02 = 0.072
	const bins = binsOf([
		claim(0, false),
		claim(0.35, true),
		claim(0.39, false),
		claim(0.9, true),
		claim(1, true),
	]);
	expect(calibrationError(bins)).toBeCloseTo(0.072, 12);
	expect(calibrationError(binsOf([]))).toBe(0);
});

test('the Brier score of four names is that by hand, also for a truth that is not ranked', () => {
	const ranking = [0.5, 0.3, 0.15, 0.05].map((probability, index) => ({taxon: `t${index}`, probability}));
	// 0.7² + 0.5² + 0.15² + 0.05² = 0.49 + 0.25 + 0.0225 + 0.0025 = 0.765
	expect(brierOf(ranking, 't1')).toBeCloseTo(0.765, 12);
	// 1 + 0.5² + 0.3² + 0.15² + 0.05² = 1.365
	expect(brierOf(ranking, 'none')).toBeCloseTo(1.365, 12);
	expect(brierOf([{taxon: 'a', probability: 1}], 'a')).toBe(0);
});

test('95 in 100 do not exceed the 95th of a hundred', () => {
	const hundred = Array.from({length: 100}, (_, index) => 100 - index);
	expect(ninetyFifth(hundred)).toBe(95);
	expect(ninetyFifth([3])).toBe(3);
	expect(ninetyFifth([])).toBe(0);
	expect([meanOf([1, 2, 6]), meanOf([])]).toEqual([3, 0]);
});

test('what is taken for what names the three most frequent mistakes', () => {
	const named = (truth: string, firsts: string) => [...firsts].map(first => ({truth, first}));
	expect(confusionOf([...named('a', 'aabbbccd'), ...named('b', 'bbbb'), ...named('c', 'abdebbdd')])).toEqual([
		{
			truth: 'a',
			count: 8,
			shareRight: 0.25,
			wrong: [
				['b', 3],
				['c', 2],
				['d', 1],
			],
		},
		{
			truth: 'c',
			count: 8,
			shareRight: 0,
			wrong: [
				['b', 3],
				['d', 3],
				['a', 1],
			],
		},
		{truth: 'b', count: 4, shareRight: 1, wrong: []},
	]);
});

const proof = prove(region, {finds: 600, seed: 3});

test('a target is met by the figures that reach it and by no others', () => {
	const [all, intact, worn, broken] = proof.levels;
	if (!all || !intact || !worn || !broken) throw new Error('Expected four levels');
	const perfect = {
		said: 0.98,
		calibrationError: {ours: 0.03, best: 0},
		asked: {mean: 5, most: 5},
		strictAsked: {mean: 4, most: 5},
	};
	const figures = (ours: number) => ({...perfect, firsts: {...worn.firsts, ours, best: 1, strict: 0.8}});
	const levels = [
		{...all, ...figures(0.97)},
		{...intact, ...figures(0.97)},
		{...worn, ...figures(0.95)},
		{...broken, ...figures(0.5)},
	];
	expect(targetsOf(levels).map(({isMet}) => isMet)).toEqual(new Array(7).fill(true));
	const short = [
		{...all, ...figures(0.97), said: 0.979},
		{...intact, ...figures(0.969)},
		{...worn, ...figures(0.89), strictAsked: {mean: 3.9, most: 5}},
		{...broken, ...figures(0.5), calibrationError: {ours: 0.031, best: 0}, asked: {mean: 5.1, most: 6}},
	];
	expect(targetsOf(short).map(({isMet}) => isMet)).toEqual(new Array(7).fill(false));
});

test('every find is counted once, as a whole and at its level', () => {
	const [all, ...levels] = proof.levels;
	expect(all?.count).toBe(600);
	expect(levels.reduce((sum, {count}) => sum + count, 0)).toBe(600);
	for (const {count, bins, confusion, missed, said} of proof.levels) {
		expect(bins.reduce((sum, bin) => sum + bin.count, 0)).toBe(count);
		expect(confusion.reduce((sum, one) => sum + one.count, 0)).toBe(count);
		expect(missed.alone + missed.shortlist + missed.unknown + said).toBeCloseTo(1, 12);
	}
});

test('the same number and seed give the same report and picture, another seed others', () => {
	const again = prove(region, {finds: 600, seed: 3});
	expect(reportOf(again, 'Here')).toBe(reportOf(proof, 'Here'));
	expect(proofSvg(again, 'Here')).toBe(proofSvg(proof, 'Here'));
	expect(reportOf(prove(region, {finds: 600, seed: 4}), 'Here')).not.toBe(reportOf(proof, 'Here'));
}, 120_000);

test('the report says every target, every level and what is assumed, and no table has a ragged row', () => {
	const report = reportOf(proof, 'Here');
	for (const {aim} of targetsOf(proof.levels)) expect(report).toContain(aim);
	for (const part of [
		'# How far names can be trusted: Here',
		'**badly broken**',
		'0.6 to 0.9',
		'correlation of 0.5',
	]) {
		expect(report).toContain(part);
	}
	for (const table of report.split('\n\n').filter(block => block.startsWith('|'))) {
		const widths = new Set(
			table
				.trim()
				.split('\n')
				.map(row => row.split(' | ').length),
		);
		expect(widths.size, table.slice(0, 80)).toBe(1);
	}
	expect(report).not.toMatch(/NaN|undefined|Infinity/);
});

test('the drawing is well formed and bears the name of the region', () => {
	const svg = proofSvg(proof, 'Here & <there>');
	expect(svg).toContain('Here &amp; &lt;there&gt;');
	expect(svg.match(/<rect /g)?.length).toBe(1 + 4 * 5 + 5);
	expect(svg).not.toMatch(/NaN|undefined/);
});

test('the command says the report, or writes it with its picture into the region', async () => {
	const folder = projectWith();
	const args = ['prove', 'british-isles', '--finds', '200', '--seed', '5'];
	const said = await run(args, {root: folder});
	expect(said.exitCode).toBe(0);
	const written = await run([...args, '--write'], {root: folder});
	expect(written.said).toBe('flows/british-isles/proof.md\nflows/british-isles/proof.svg');
	const report = readFileSync(join(folder, 'flows/british-isles/proof.md'), 'utf8');
	expect(report.trimEnd()).toBe(said.said);
	expect(remade(folder, 'british-isles')).toBe(report);
	expect(readFileSync(join(folder, 'flows/british-isles/proof.svg'), 'utf8')).toContain('British Isles');
}, 120_000);

test.each([
	['--finds', '99'],
	['--finds', 'many'],
	['--seed', '-1'],
	['--seed', '1.5'],
])('%s %s is refused', async (option, value) => {
	const {complained, exitCode} = await run(['prove', 'british-isles', `${option}=${value}`]);
	expect(complained).toContain(`"${value}"`);
	expect(exitCode).toBe(2);
});

test('a region with a fault is not proved', async () => {
	const folder = projectWith({in: 'british-isles/key.yaml', find: 'leads: net}', put: 'leads: nets}'});
	const {complained, exitCode} = await run(['prove', 'british-isles', '--finds', '100'], {root: folder});
	expect(complained).toContain('leads to "nets"');
	expect(exitCode).toBe(1);
});

const kept = regionsIn(root).filter(id => existsSync(join(root, 'flows', id, 'proof.md')));

test.each(kept)(
	'the report kept for %s is the one that is made anew',
	id => {
		expect(remade(root, id)).toBe(readFileSync(join(root, 'flows', id, 'proof.md'), 'utf8'));
	},
	300_000,
);

/** The report made anew with the number of finds and the seed that the kept one says. */
function remade(folder: string, id: string): string {
	const report = readFileSync(join(folder, 'flows', id, 'proof.md'), 'utf8');
	const [, finds, seed] = /--finds (\d+) --seed (\d+) --write/.exec(report) ?? [];
	const read = readChecked(folder, id);
	if (read.kind === 'faults') throw new Error(`Expected ${id} to be without fault`);
	const {region: readAnew, say} = read;
	return reportOf(prove(readAnew, {finds: Number(finds), seed: Number(seed)}), say.say('region-name'));
}
