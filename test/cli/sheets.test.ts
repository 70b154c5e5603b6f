import {cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import sharp from 'sharp';
import {expect, onTestFinished, test, vi} from 'vitest';
import {runSheets} from '../../src/cli/sheets-command.ts';
import {readPdf} from '../draw/read-pdf.ts';

// A PDF written and read back takes half a second alone and many times that beside other tests.
vi.setConfig({testTimeout: 60_000});

const root = join(import.meta.dirname, '../..');
const day = {
	title: 'Egg case hunt',
	date: '2026-05-02',
	from: '09:30',
	to: '11:30',
	meetingPlace: 'Quay Lane',
	lowWater: {time: '10:42', table: 'Port Larkin 2026'},
	bring: ['boots'],
	link: 'https://chat.example/join',
	contact: 'Ada Finch',
};

/** The command called in a folder of its own that holds `day.json`. */
function desk(file: unknown = day, from: string = root) {
	const folder = mkdtempSync(join(tmpdir(), 'sheets-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	writeFileSync(join(folder, 'day.json'), typeof file === 'string' ? file : JSON.stringify(file));
	const said: string[] = [];
	const complained: string[] = [];
	const tools = {
		root: from,
		calledIn: folder,
		now: Date.UTC(2026, 4, 1),
		say: (line: string) => void said.push(line),
		complain: (line: string) => void complained.push(line),
	};
	return {folder, said, complained, sheets: (...args: readonly string[]) => runSheets(args, tools)};
}

test('a crib sheet of a region is written as a PDF', async () => {
	const {folder, said, complained, sheets} = desk();
	expect([await sheets('crib', 'british-isles', '--out', 'out/crib.pdf'), complained]).toEqual([0, []]);
	expect(said).toEqual(['out/crib.pdf']);
	const {title, language, pages} = await readPdf(readFileSync(join(folder, 'out/crib.pdf')));
	expect([title, language]).toEqual(['Egg cases at true size: British Isles', 'en']);
	expect(pages.length).toBeGreaterThan(1);
});

test('a poster is written as a PDF or as a picture of 150 dots to the inch', async () => {
	const {folder, said, sheets} = desk();
	expect(await sheets('poster', 'day.json', '--out', 'day.pdf')).toBe(0);
	expect(await sheets('poster', 'day.json', '--out', 'day.png')).toBe(0);
	expect(said).toEqual(['day.pdf', 'day.png']);
	expect((await readPdf(readFileSync(join(folder, 'day.pdf')))).title).toBe('Egg case hunt');
	const {width = 0, height = 0} = await sharp(join(folder, 'day.png')).metadata();
	expect(Math.abs(width - 1240)).toBeLessThan(3);
	expect(Math.abs(height - 1754)).toBeLessThan(3);
});

/** The project once more, with every sentence also in a made-up language, and one of each file in other words. */
function bilingual(): string {
	const folder = mkdtempSync(join(tmpdir(), 'bilingual-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	for (const part of ['flows', 'src/text']) cpSync(join(root, part), join(folder, part), {recursive: true});
	for (const file of ['src/text/en.ftl', 'flows/en.ftl', 'flows/british-isles/en.ftl']) {
		const text = readFileSync(join(folder, file), 'utf8')
			.replace(/^crib-title =.*$/m, 'crib-title = Casys wyau: { $region }')
			.replace(/^region-name =.*$/m, 'region-name = Ynysoedd')
			.replace(/^poster-join =.*$/m, 'poster-join = Ymunwch yma');
		writeFileSync(join(folder, file.replace('en.ftl', 'cy.ftl')), text);
	}
	return folder;
}

test('a sheet is written in the language asked for, or one in each language that there is', async () => {
	const {folder, said, complained, sheets} = desk(day, bilingual());
	const crib = ['crib', 'british-isles', '--out'] as const;
	expect([await sheets(...crib, 'own.pdf', '--language', 'cy'), complained]).toEqual([0, []]);
	const own = await readPdf(readFileSync(join(folder, 'own.pdf')));
	expect([own.title, own.language]).toEqual(['Casys wyau: Ynysoedd', 'cy']);
	expect(await sheets('poster', 'day.json', '--out', 'day.pdf', '--language', 'every')).toBe(0);
	expect(said.toSorted()).toEqual(['day-cy.pdf', 'day.pdf', 'own.pdf']);
	const words = async (file: string) => JSON.stringify(await readPdf(readFileSync(join(folder, file))));
	expect(await words('day-cy.pdf')).toContain('Ymunwch');
	expect(await words('day.pdf')).not.toContain('Ymunwch');
});

test('a language that nobody wrote is refused with those that there are', async () => {
	const {complained, sheets} = desk();
	expect(await sheets('crib', 'british-isles', '--out', 'a.pdf', '--language', 'cy')).toBe(2);
	expect(complained.join('\n')).toContain('Expected a language of en, or "every"; got "cy"');
});

test('what is wrong with a described day is said, and nothing is written', async () => {
	const {folder, complained, sheets} = desk({...day, date: 'tomorrow', link: undefined});
	expect(await sheets('poster', 'day.json', '--out', 'day.pdf')).toBe(1);
	expect(complained.join('\n')).toContain('day.json:');
	expect(complained.join('\n')).toContain('expected a day such as 2026-05-02');
	expect(existsSync(join(folder, 'day.pdf'))).toBe(false);
});

test.each([
	[
		'a file that is not there',
		['poster', 'no.json', '--out', 'a.pdf'],
		'Expected no.json to be a file of JSON',
	],
	['a region that is not there', ['crib', 'atlantis', '--out', 'a.pdf'], 'got "atlantis"'],
])('%s is refused in one line', async (_, args, message) => {
	const {complained, sheets} = desk();
	expect(await sheets(...args)).toBe(1);
	expect(complained.join('\n')).toContain(message);
	expect(complained.join('\n')).not.toMatch(/^\s+at /m);
});

test.each([
	['an unknown verb', ['paint', 'x', '--out', 'a.pdf'], 'Expected one of crib, poster; got "paint"'],
	['no region', ['crib', '--out', 'a.pdf'], 'Expected a region after "crib"; got nothing'],
	[
		'no place to write',
		['crib', 'british-isles'],
		'Expected --out FILE with a name that ends in .pdf or .png',
	],
	['another kind of file', ['crib', 'british-isles', '--out', 'a.doc'], 'got a.doc'],
	['an unknown option', ['crib', 'british-isles', '--paint'], "'--paint'"],
	['one word too many', ['crib', 'a', 'b', '--out', 'a.pdf'], 'Expected only a region after "crib"; got a b'],
])('%s is a wrong call', async (_, args, message) => {
	const {complained, sheets} = desk();
	expect(await sheets(...args)).toBe(2);
	expect(complained.join('\n')).toContain(message);
});

test('the command explains itself', async () => {
	const {said, sheets} = desk();
	expect([await sheets('--help'), await sheets()]).toEqual([0, 2]);
	expect(said[0]).toContain('npm run sheets -- crib <region> --out FILE');
	expect(said[1]).toBe(said[0]);
});
