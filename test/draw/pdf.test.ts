import {expect, test, vi} from 'vitest';
import {a4, type Page} from '../../src/draw/page.ts';
import {writePdf} from '../../src/draw/pdf.ts';
import {drawRuler} from '../../src/draw/ruler.ts';
import {readPdf, sizeOf} from './read-pdf.ts';

// A PDF written and read back takes half a second alone and many times that beside other tests.
vi.setConfig({testTimeout: 60_000});

const pointsPerMm = 72 / 25.4;
const words = {kind: 'words', xMm: 20, footMm: 30, sizeMm: 5} as const;
const sheetOf = (...items: Page['items']) => ({
	title: 'Fische & Füße',
	language: 'de',
	pages: [{...a4, items}],
	now: Date.UTC(2026, 4, 2),
});

test('the ruler is 100 mm long within 0.5 in 100, with a line for each millimetre', async () => {
	const {pages} = await readPdf(await writePdf(sheetOf(...drawRuler({xMm: 20, yMm: 250, alt: 'A ruler'}))));
	const ruler = pages[0]?.paths.find(path => path.length > 200) ?? [];
	const [lengthPoints] = sizeOf(ruler);
	expect(Math.abs(lengthPoints / (100 * pointsPerMm) - 1)).toBeLessThan(0.005);
	const lefts = [
		...new Set(ruler.map(([x]) => Math.round(((x - 20 * pointsPerMm) / pointsPerMm) * 10) / 10)),
	];
	expect(lefts.toSorted((a, b) => a - b)).toEqual(Array.from({length: 101}, (_, mm) => mm));
});

test('the page is A4 in points', async () => {
	const {pages} = await readPdf(await writePdf(sheetOf({...words, lines: ['a']})));
	expect(pages[0]?.width).toBeCloseTo(595.28, 1);
	expect(pages[0]?.height).toBeCloseTo(841.89, 1);
});

test('words are words, with their letters, their place and their order', async () => {
	const lines = ['Größe: 62 × 22 mm', 'ŵ ŷ é ñ ő “so”'];
	const {pages} = await readPdf(await writePdf(sheetOf({...words, lines, restMm: 5})));
	const [first, second] = pages[0]?.words.filter(({words}) => words.trim() !== '') ?? [];
	expect(first?.words.trim()).toBe(lines[0]);
	expect(second?.words.trim()).toBe(lines[1]);
	expect(first?.x).toBeCloseTo(20 * pointsPerMm, 1);
	expect(second?.x).toBeCloseTo(25 * pointsPerMm, 1);
	expect(first?.y).toBeCloseTo((297 - 30) * pointsPerMm, 1);
});

test('words that end or stand in the middle at a place do so', async () => {
	const right = {...words, lines: ['to the right'], xMm: 150, anchor: 'end'} as const;
	const middle = {...words, lines: ['in the middle'], xMm: 105, anchor: 'middle'} as const;
	const {pages} = await readPdf(await writePdf(sheetOf(right, middle)));
	const [end, half] = pages[0]?.words ?? [];
	expect((end?.x ?? 0) + (end?.width ?? 0)).toBeCloseTo(150 * pointsPerMm, 0);
	expect((half?.x ?? 0) + (half?.width ?? 0) / 2).toBeCloseTo(105 * pointsPerMm, 0);
});

test('a drawing takes the place it is given', async () => {
	const box = {left: -10, top: -10, right: 10, bottom: 10};
	const svg = '<path d="M-10 -10H10V10H-10Z" fill="#000000"/>';
	const drawing = {kind: 'drawing', svg, box, xMm: 30, yMm: 40, widthMm: 62, heightMm: 22} as const;
	const {pages} = await readPdf(await writePdf(sheetOf(drawing)));
	const [width, height] = sizeOf(pages[0]?.paths.at(-1) ?? []);
	expect(width / pointsPerMm).toBeCloseTo(62, 2);
	expect(height / pointsPerMm).toBeCloseTo(22, 2);
});

test('a sheet says its title, its language and what its drawings show', async () => {
	const box = {left: 0, top: 0, right: 1, bottom: 1};
	const place = {box, xMm: 30, yMm: 40, widthMm: 62, heightMm: 22};
	const drawing = {kind: 'drawing', svg: '<path d="M0 0H1V1Z"/>', ...place, alt: 'A corner'} as const;
	const read = await readPdf(await writePdf(sheetOf({...words, lines: ['Title'], role: 'title'}, drawing)));
	expect(read).toMatchObject({title: 'Fische & Füße', language: 'de', isTagged: true, alts: ['A corner']});
});

test('the same sheet at the same time is the same file', async () => {
	const sheet = sheetOf({...words, lines: ['a']});
	expect(Buffer.compare(await writePdf(sheet), await writePdf(sheet))).toBe(0);
	expect(Buffer.compare(await writePdf(sheet), await writePdf({...sheet, now: 5})) === 0).toBe(false);
});

test('what a PDF cannot hold is refused by name', async () => {
	const box = {left: 0, top: 0, right: 1, bottom: 1};
	const place = {box, xMm: 30, yMm: 40, widthMm: 62, heightMm: 22};
	const bad = {kind: 'drawing', svg: '<image href="cat.png" width="1" height="1"/>', ...place} as const;
	await expect(writePdf(sheetOf(bad))).rejects.toThrow('Expected a drawing that a PDF can hold');
});
