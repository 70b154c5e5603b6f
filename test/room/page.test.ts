import {Buffer} from 'node:buffer';
import type {Page} from 'playwright-core';
import {expect, test} from 'vitest';
import {groups} from '../../src/room/people.ts';
import {startRoom} from '../../src/room/server.ts';
import {openBrowser, openPage} from './browser.ts';
import {startLittleBot} from './little-bot.ts';
import {faultsOfLook} from './look.ts';
import {png} from './picture.ts';
import {newFolder, scene, stillClock} from './scene.ts';

const slowMs = 30_000;
const focused = (page: Page): Promise<unknown> => page.evaluate('document.activeElement.textContent');

async function waitForFocus(page: Page, text: string): Promise<void> {
	await expect.poll(() => focused(page), {timeout: 5000}).toBe(text);
}

test('a person comes in, writes and answers with the keyboard alone, and the focus follows the talk', {
	timeout: slowMs,
}, async () => {
	const {room} = await scene();
	await startLittleBot(room);
	const {page, complaints} = await openPage(await openBrowser(), room.url);
	await page.getByRole('button', {name: 'Ada'}).waitFor();
	await page.keyboard.press('Tab');
	expect(await focused(page)).toBe('Skip to the messages');
	await page.keyboard.press('Tab');
	expect(await focused(page)).toBe('Ada');
	await page.keyboard.press('Enter');
	await expect.poll(() => page.evaluate('document.activeElement.id'), {timeout: 5000}).toBe('text');
	await page.keyboard.type('/start');
	await page.keyboard.press('Enter');
	await page.getByRole('button', {name: 'Yes'}).waitFor();
	for (let step = 0; step < 3; step += 1) await page.keyboard.press('Shift+Tab');
	expect(await focused(page)).toBe('Yes');
	await page.keyboard.press('Enter');
	await waitForFocus(page, 'Under 5 cm');
	expect(await page.getByRole('status').textContent()).toBe('Noted');
	expect(await page.getByRole('log').getByRole('article').count()).toBe(3);
	expect(await page.getByText('Stuck to something: yes').isVisible()).toBe(true);
	expect(await page.getByRole('button', {name: 'Yes', exact: true}).count()).toBe(0);
	await page.keyboard.press('Tab');
	await page.keyboard.press('Enter');
	await waitForFocus(page, 'Under 5 cm');
	expect(complaints).toEqual([]);
});

test('photos, files, places, stand-ins, changes and the time go from the page to the bot', {
	timeout: slowMs,
}, async () => {
	const {room} = await scene();
	await startLittleBot(room);
	const {page, complaints} = await openPage(await openBrowser(), `${room.url}/#Ben`);
	const ben = room.person('Ben');
	const button = (name: string) => page.getByRole('button', {name, exact: true});
	const file = (name: string) => ({name, mimeType: 'image/png', buffer: Buffer.from(png(40, 30))});

	await button('Photo').click();
	await page.getByLabel('Photos or files').setInputFiles([file('a.png'), file('b.png')]);
	await page.getByLabel('Words under it').fill('Two of them');
	await button('Send photos').click();
	await page.getByAltText('Photo: Your photo is kept.').last().waitFor();
	const [first, second] = room.messages(ben.id);
	expect([first?.text, first?.album]).toEqual(['Two of them', second?.album]);
	await page.getByAltText('Photo: Two of them').waitFor();
	await expect.poll(() => page.evaluate('document.images[0].naturalWidth')).toBe(40);

	await button('Photo').click();
	await page.getByLabel('Photos or files').setInputFiles([file('egg case.png')]);
	await page.getByLabel('files, with all their details').check();
	await button('Send photos').click();
	await page.getByText('A file: egg case.png').waitFor();

	await page.getByLabel('Message', {exact: true}).fill('/where');
	await button('Send').click();
	await button('Send my place').click();
	await page.getByLabel('Latitude').fill('56,34');
	await page.getByLabel('Longitude').fill('-2.79');
	await button('Send place').click();
	await page.getByText('You were at 56.34.').waitFor();
	expect(await button('Send my place').count()).toBe(0);

	await page.getByText('Try it out').click();
	await button('Send a sticker').click();
	await page.getByText('That is a sticker.').waitFor();
	await page.getByLabel('Change my last message').fill('/when');
	await button('Change').click();
	await page.getByText('Now it says /when').waitFor();
	await button('+1 day').click();
	await page.getByText('It is now Tue').waitFor();
	await button('Block the bot').click();
	await page.getByText('You have blocked the bot.').waitFor();
	expect(await page.getByLabel('Message', {exact: true}).isDisabled()).toBe(true);
	expect(complaints).toEqual([]);
});

test("two people share a group, and a question to one of them waits in that one's text box", {
	timeout: slowMs,
}, async () => {
	const {room} = await scene();
	await startLittleBot(room);
	const browser = await openBrowser();
	const [ada, ben] = await Promise.all(
		['Ada', 'Ben'].map(async name => (await openPage(browser, `${room.url}/#${name}`)).page),
	);
	if (ada === undefined || ben === undefined) throw new Error('Expected two pages');
	for (const page of [ada, ben]) await page.getByRole('button', {name: 'Beach walk'}).click();
	await ada.getByLabel('Message', {exact: true}).fill('/name');
	await ada.keyboard.press('Enter');
	await ada.getByText('Replying to: What is this beach called?').waitFor();
	await ben.getByText('What is this beach called?').waitFor();
	expect(await ben.getByText('Replying to').isVisible()).toBe(false);
	expect(await ada.getByLabel('Message', {exact: true}).getAttribute('placeholder')).toBe(
		'Name of the beach',
	);
	await ada.getByLabel('Message', {exact: true}).fill('West Sands');
	await ada.keyboard.press('Enter');
	await ben.getByText('You wrote West Sands').waitFor();
	await ben.getByRole('button', {name: 'Reply to You wrote West Sands'}).click();
	await ben.keyboard.type('Is it far?');
	await ben.keyboard.press('Enter');
	await ada.getByText('You wrote Is it far?').waitFor();
	await ada.getByRole('button', {name: 'Private'}).click();
	await ben.getByLabel('Message', {exact: true}).fill('only people hear this');
	await ben.keyboard.press('Enter');
	await ada.getByRole('button', {name: 'Beach walk (1 new)'}).waitFor();
});

test('a page that lost the room takes up where it was', {timeout: slowMs}, async () => {
	const folder = newFolder();
	const first = await startRoom({port: 0, folder, clock: stillClock()});
	first.person('Ada').sends('before');
	const {page} = await openPage(await openBrowser(), `${first.url}/#Ada`);
	await page.getByText('before').waitFor();
	await first.stop();
	await page.getByText('The room does not answer.').waitFor();
	const {room} = await scene({folder, port: Number(new URL(first.url).port)});
	room.person('Ada').sends('while away');
	await page.getByText('while away').waitFor();
	await page.getByText('The room is back.').waitFor();
	expect(await page.getByRole('article').count()).toBe(2);
});

test('buttons side by side are as wide as their words ask for, each on one line', {
	timeout: slowMs,
}, async () => {
	const {room} = await scene();
	await startLittleBot(room);
	room.person('Ada').sends('/row');
	await room.idle();
	const {page} = await openPage(await openBrowser(), `${room.url}/#Ada`);
	const boxes = await Promise.all(
		["Can't tell", 'Back', 'Why?'].map(name => page.getByRole('button', {name, exact: true}).boundingBox()),
	);
	expect(boxes.map(box => box?.height)).toEqual([44, 44, 44]);
	expect(boxes[0]?.width).toBeGreaterThan(boxes[1]?.width ?? 0);
	expect(new Set(boxes.map(box => box?.y)).size).toBe(1);
});

for (const colorScheme of ['light', 'dark'] as const) {
	test(`words stand out, buttons can be hit and nothing is cut off on a phone (${colorScheme})`, {
		timeout: slowMs,
	}, async () => {
		const {room} = await scene();
		await startLittleBot(room);
		const ada = room.person('Ada');
		ada.sends('/start');
		ada.photo(png(3000, 200), {asFile: true, fileName: `${'long'.repeat(30)}.png`});
		ada.photo(png(3000, 200));
		ada.sends('x'.repeat(300));
		ada.sends('a first word of many more '.repeat(4), {chat: groups[0].id});
		await room.idle();
		const {page} = await openPage(await openBrowser(), room.url, {colorScheme});
		expect(await faultsOfLook(page)).toEqual({overflowPx: 0, small: [], faint: []});
		await page.getByRole('button', {name: 'Ada'}).click();
		await page.getByRole('article').last().waitFor();
		for (const name of ['Commands', 'Place', 'Photo']) {
			await page.getByRole('button', {name, exact: true}).click();
			expect(await faultsOfLook(page)).toEqual({overflowPx: 0, small: [], faint: []});
		}
		await page.getByText('Try it out').click();
		await page.getByRole('button', {name: 'Beach walk'}).click();
		await page
			.getByRole('button', {name: /^Reply/})
			.last()
			.click();
		expect(await faultsOfLook(page)).toEqual({overflowPx: 0, small: [], faint: []});
		const cancel = await page.getByRole('button', {name: 'Do not reply'}).boundingBox();
		// One line of its words is no higher than a button must be.
		expect(cancel?.height).toBeLessThan(60);
	});
}
