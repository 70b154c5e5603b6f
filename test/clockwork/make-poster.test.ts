import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test, vi} from 'vitest';
import {writePoster} from '../../src/clockwork/make-poster.ts';
import {projectRoot} from '../../src/settings.ts';
import {readTexts} from '../../src/text/text.ts';
import {readPdf} from '../draw/read-pdf.ts';
import {ownFolder} from '../support/folder.ts';
import {exampleDay} from '../survey/days.ts';

vi.setConfig({testTimeout: 60_000});

const say = readTexts([join(projectRoot(), 'src', 'text')]).in('en');
const link = 'https://chat.example/join?start=survey-abc';

async function wordsOf(day: typeof exampleDay): Promise<string> {
	const folder = ownFolder('poster');
	const name = await writePoster({day, link, folder, say, now: 0});
	expect(name).toBe('poster-2026-05-02.pdf');
	const {pages} = await readPdf(readFileSync(join(folder, name)));
	expect(pages).toHaveLength(1);
	return (pages[0]?.words ?? [])
		.map(({words}) => words)
		.join(' ')
		.replace(/\s+/g, ' ');
}

test('a planned day becomes a poster with all that people need, by the clocks of the place', async () => {
	const words = await wordsOf(exampleDay);
	expect(words).toContain('11:00 to 14:00');
	expect(words).toContain('Example Cove: At the slip below the car park');
	expect(words).toContain(
		'Low water at 12:28, as read from the official table “Official tables, Example Harbour”',
	);
	expect(words).toContain('The far end is cut off by the tide.');
	expect(words).toContain('Boots and a bag');
});

test('a day with hardly any tide and nothing to bring has a poster without those', async () => {
	const {lowWater: _, bring: __, risks: ___, ...bare} = exampleDay;
	const words = await wordsOf(bare);
	expect(words).not.toContain('Low water at');
	expect(words).not.toContain('Please bring');
	expect(words).toContain('Children go with an adult.');
});

test('the longest words that a plan takes still fit the page', async () => {
	const words = (most: number) => 'word '.repeat(most / 5).trim();
	const longest = {
		...exampleDay,
		title: words(60),
		place: words(80),
		meeting: words(120),
		bring: words(120),
		contact: words(80),
		risks: words(160),
		lowWater: {at: exampleDay.startsAt, table: words(60)},
	};
	expect(await wordsOf(longest)).toContain('word word');
});
