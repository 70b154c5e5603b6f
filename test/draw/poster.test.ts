import {join} from 'node:path';
import readCode from 'jsqr';
import sharp from 'sharp';
import {expect, test, vi} from 'vitest';
import {pageSvg} from '../../src/draw/page.ts';
import {writePdf} from '../../src/draw/pdf.ts';
import {posterPage, posterSchema, posterWords} from '../../src/draw/poster.ts';
import {readTexts} from '../../src/text/text.ts';
import {readPdf} from './read-pdf.ts';

// A PDF written and read back takes half a second alone and many times that beside other tests.
vi.setConfig({testTimeout: 60_000});

const say = readTexts([join(import.meta.dirname, '../../src/text')]).in('en');
const day = {
	title: 'Egg case hunt on Larkin Sands',
	date: '2026-05-02',
	from: '09:30',
	to: '11:30',
	meetingPlace: 'the car park at the end of Quay Lane',
	lowWater: {time: '10:42', table: 'Port Larkin 2026'},
	bring: ['boots', 'a bucket'],
	link: 'https://chat.example/join?start=day-larkin-2026-05-02',
	contact: 'Ada Finch, 01234 567890',
};
const posterOf = (changes: Readonly<Record<string, unknown>> = {}) =>
	posterSchema.parse({...day, ...changes});
const pageOf = (changes: Readonly<Record<string, unknown>> = {}) => posterPage(posterOf(changes), say);
const wordsOf = (page: ReturnType<typeof pageOf>) => page.items.filter(item => item.kind === 'words');

test('everything that is told stands on the poster as words that can be searched', async () => {
	const pdf = await writePdf({title: day.title, language: 'en', pages: [pageOf()], now: 0});
	const {pages} = await readPdf(pdf);
	const all = (pages[0]?.words ?? [])
		.map(({words}) => words)
		.join(' ')
		.replace(/\s+/g, ' ');
	expect(pages).toHaveLength(1);
	expect(all).toContain('Egg case hunt on Larkin Sands');
	expect(all).toContain('2 May 2026, 09:30 to 11:30');
	expect(all).toContain('the car park at the end of Quay Lane');
	expect(all).toContain('Low water at 10:42, as read from the official table “Port Larkin 2026”');
	expect(all).toContain('• a bucket');
	expect(all).toContain('• Children go with an adult.');
	expect(all).toContain('Ada Finch, 01234 567890');
});

test('the code on the poster opens the link', async () => {
	const svg = Buffer.from(pageSvg(pageOf(), day.title));
	const {data, info} = await sharp(svg, {density: 96})
		.ensureAlpha()
		.raw()
		.toBuffer({resolveWithObject: true});
	expect(readCode.default(new Uint8ClampedArray(data), info.width, info.height)?.data).toBe(day.link);
});

test('nothing stands nearer to the edge than 12 mm, however long the words are', () => {
	const long = 'Llanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogoch';
	const page = pageOf({
		title: `${long} beach`,
		meetingPlace: long.repeat(2),
		link: `https://chat.example/${'x'.repeat(200)}`,
	});
	const svg = pageSvg(page, 'x');
	const xs = [...svg.matchAll(/[MLQ](-?[\d.]+) -?[\d.]+/g)].map(match => Number(match[1]) / 10);
	expect(Math.min(...xs)).toBeGreaterThan(0.3);
	expect(Math.max(...xs)).toBeLessThan(210 - 12);
});

test('many words make smaller letters, and never smaller ones than 3.5 mm', () => {
	const sizes = (page: ReturnType<typeof pageOf>) => wordsOf(page).map(({sizeMm}) => sizeMm);
	const many = pageOf({
		bring: Array.from({length: 14}, (_, index) => `a thing that is needed, number ${index}`),
	});
	expect(sizes(many)[0]).toBeLessThan(sizes(pageOf())[0] ?? 0);
	expect(Math.min(...sizes(many))).toBeGreaterThanOrEqual(3.5);
});

test('words that do not fit are refused by the name of the longest', () => {
	const bring = Array.from({length: 60}, () => 'a thing that is needed');
	expect(() => pageOf({bring})).toThrow(/they are \d+ mm too long, most of all "bring"/);
	expect(() => pageOf({title: 'A day on the beach '.repeat(60)})).toThrow('most of all "title"');
	expect(() => pageOf({contact: 'Ada Finch '.repeat(100)})).toThrow('most of all "contact"');
});

test.each([
	['a day of no month', {date: '2026-02-30'}, 'expected a day such as 2026-05-02'],
	['an hour after midnight', {from: '24:30'}, 'expected a time such as 09:30'],
	['a link that is no link', {link: 'chat.example'}, 'expected a link that begins with https://'],
	['a link without a lock', {link: 'http://chat.example'}, 'expected a link that begins with https://'],
	['an empty title', {title: ' '}, 'title'],
	['a word that nobody knows', {weather: 'fine'}, 'weather'],
])('%s is refused', (_, changes, message) => {
	const tried = posterSchema.safeParse({...day, ...changes});
	expect(tried.success).toBe(false);
	expect(JSON.stringify(tried.error?.issues)).toContain(message);
});

test('the poster is told in plain text too', () => {
	const lines = posterWords(posterOf({beware: ['The steps are slippery.']}), say).split('\n');
	expect(lines[0]).toBe(day.title);
	expect(lines).toContain('• The steps are slippery.');
	expect(lines.at(-2)).toBe(day.link);
});
