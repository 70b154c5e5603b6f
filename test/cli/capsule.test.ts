import {mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {expect, onTestFinished, test, vi} from 'vitest';
import {runCapsule} from '../../src/cli/capsule-command.ts';
import {pointsPerMm} from '../../src/draw/pdf.ts';
import {readPdf} from '../draw/read-pdf.ts';
import {inventPhoto} from '../support/photos/invent.ts';
import {shoot} from '../support/photos/shoot.ts';

vi.setConfig({testTimeout: 120_000});

const root = join(import.meta.dirname, '../..');

function desk() {
	const folder = mkdtempSync(join(tmpdir(), 'capsule-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	const said: string[] = [];
	const complained: string[] = [];
	const tools = {
		root,
		calledIn: folder,
		now: () => Date.UTC(2026, 4, 1),
		say: (line: string) => void said.push(line),
		complain: (line: string) => void complained.push(line),
	};
	return {folder, said, complained, capsule: (...args: readonly string[]) => runCapsule(args, tools)};
}

test('measure prints one array with a report for each photo, in the order of the call', async () => {
	const {folder, said, capsule} = desk();
	const {scene, pick} = await inventPhoto({seed: 5, reference: 'a4', level: 'clean'});
	writeFileSync(join(folder, 'case.jpg'), await shoot(scene, pick));
	writeFileSync(join(folder, 'words.jpg'), 'not a photo');
	expect(await capsule('measure', 'case.jpg', 'words.jpg', '--json')).toBe(0);
	expect(said).toHaveLength(1);
	const pair = [expect.any(Number), expect.any(Number)];
	expect(JSON.parse(said[0] ?? '')).toEqual([
		{
			file: 'case.jpg',
			status: 'measured',
			reference: 'a4',
			ms: expect.any(Number),
			cases: [
				{
					lengthMm: expect.any(Number),
					widthMm: expect.any(Number),
					lengthIntervalMm: pair,
					widthIntervalMm: pair,
					lengthLinePx: [pair, pair],
				},
			],
		},
		{file: 'words.jpg', status: 'declined', reason: 'no-photo', ms: expect.any(Number), cases: []},
	]);
});

test('a file that cannot be read is declined and said aloud, and costs none of the others their report', async () => {
	const {folder, said, complained, capsule} = desk();
	writeFileSync(join(folder, 'words.jpg'), 'not a photo');
	mkdirSync(join(folder, 'folder.jpg'));
	expect(await capsule('measure', 'gone.jpg', 'folder.jpg', 'words.jpg', '--json')).toBe(1);
	const rest = {status: 'declined', reason: 'no-photo', ms: expect.any(Number), cases: []};
	const declined = (file: string) => ({file, ...rest});
	expect(JSON.parse(said.join(''))).toEqual(['gone.jpg', 'folder.jpg', 'words.jpg'].map(declined));
	expect(complained).toHaveLength(2);
	expect(complained[0]).toMatch(/^gone\.jpg: ENOENT/);
});

test.each([
	[['measure'], 'Expected at least one photo'],
	[['weigh', 'a.jpg'], 'Expected one of measure, sheet'],
	[['measure', 'a.jpg', '--reference', 'coin'], 'Expected --reference a4, card or sheet'],
	[['sheet', 'sheet.png'], 'ends in .pdf'],
])('a call that is not understood leaves with 2 and says what was expected: %j', async (args, words) => {
	const {complained, capsule} = desk();
	expect(await capsule(...args)).toBe(2);
	expect(complained.join()).toContain(words);
});

test('the sheet has its marks 12 mm from the edges, 25 mm wide, on A4', async () => {
	const {folder, capsule} = desk();
	expect(await capsule('sheet', 'sheet.pdf')).toBe(0);
	const {pages} = await readPdf(readFileSync(join(folder, 'sheet.pdf')));
	const [page] = pages;
	expect(pages).toHaveLength(1);
	expect([page?.width, page?.height].map(points => Math.round((points ?? 0) / pointsPerMm))).toEqual([
		210, 297,
	]);
	const boxes = (page?.paths ?? []).map(path => {
		const [xs, ys] = [path.map(([x]) => x / pointsPerMm), path.map(([, y]) => y / pointsPerMm)];
		return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)]
			.map(mm => mm.toFixed(1))
			.join(' ');
	});
	for (const corner of [
		'12.0 12.0 37.0 37.0',
		'173.0 12.0 198.0 37.0',
		'12.0 260.0 37.0 285.0',
		'173.0 260.0 198.0 285.0',
	]) {
		expect(boxes).toContain(corner);
	}
});
