import {Buffer} from 'node:buffer';
import {join} from 'node:path';
import type {Page} from 'playwright-core';
import {expect, onTestFinished, test} from 'vitest';
import {startProgram} from '../../src/program.ts';
import {readSettings} from '../../src/settings.ts';
import {quickDrawer} from '../support/drawer.ts';
import {openBrowser, openPage} from './browser.ts';
import {png} from './picture.ts';
import {newFolder} from './scene.ts';

const slowMs = 60_000;

/** The program as `npm start` runs it without a token, with its room on a free port. */
async function startAlone() {
	const settings = readSettings({DATA_DIR: join(newFolder(), 'data'), ROOM_PORT: '0'});
	// Morning, whatever the hour of the test, since nobody is woken at night.
	let aheadMs = Date.UTC(2026, 4, 2, 9) - Date.now();
	const clock = {
		now: () => Date.now() + aheadMs,
		forward: (ms: number) => {
			aheadMs += ms;
		},
	};
	const program = await startProgram(settings, {clock, log: () => undefined, drawer: quickDrawer()});
	onTestFinished(program.stop);
	return program.roomUrl ?? '';
}

async function press(page: Page, label: string): Promise<void> {
	await page.getByRole('button', {name: label, exact: true}).last().click();
}

async function say(page: Page, words: string): Promise<void> {
	await page.getByLabel('Message', {exact: true}).fill(words);
	await page.keyboard.press('Enter');
}

const hears = (page: Page, words: string) => page.getByText(words).last().waitFor();

test('a whole find is done on the page, with a photo, a place and a soak of two hours in a moment', {
	timeout: slowMs,
}, async () => {
	const url = await startAlone();
	const {page, complaints} = await openPage(await openBrowser(), `${url}/#Ada`);
	await press(page, 'Begin');
	await press(page, 'I have read this, begin');
	await press(page, 'Yes, like that');
	await press(page, 'No, empty and light');
	await hears(page, 'Please send a photo');
	await press(page, 'Photo');
	await page
		.getByLabel('Photos or files')
		.setInputFiles([{name: 'case.png', mimeType: 'image/png', buffer: Buffer.from(png(640, 480))}]);
	await press(page, 'Send photos');
	await hears(page, 'I have one photo');
	await press(page, 'Go on');
	await hears(page, 'Where did you find it');
	await press(page, 'Place');
	await page.getByLabel('Latitude').fill('50.12');
	await page.getByLabel('Longitude').fill('-5.53');
	await press(page, 'Send place');
	await press(page, 'Yesterday');
	await press(page, '1');
	await press(page, 'All there, go on');
	await press(page, 'Dry and stiff');
	await press(page, 'Two hours');
	await hears(page, 'in the bowl since');
	await page.getByText('Try it out').click();
	await press(page, '+2 h');
	await hears(page, 'Your bowl is ready');
	await press(page, 'Softer now');
	await press(page, 'Both are there');
	await say(page, '62 mm');
	await press(page, 'A\u2002Longer than two widths');
	await press(page, 'A\u2002Curly strings');
	await hears(page, 'Very likely: Small-spotted catshark');
	await press(page, 'Save this find');
	await hears(page, 'Saved as a draft');
	await say(page, '/drafts');
	await hears(page, 'You have one saved find');
	expect(complaints).toEqual([]);
});
