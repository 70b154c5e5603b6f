/** `node dist/test/room/conversation-picture.js`: the picture of a conversation that README.md shows, made anew. */
import {mkdtempSync, rmSync, statSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {chromium, type Locator, type Page} from 'playwright-core';
import sharp from 'sharp';
import {drawCapsule} from '../../src/draw/capsule.ts';
import {plainShape, withParts} from '../../src/key/shape.ts';
import {startProgram} from '../../src/program.ts';
import {projectRoot, readSettings} from '../../src/settings.ts';

const phone = {width: 360, height: 740} as const;
const gapPx = 16;
const mostBytes = 200_000;
/** A morning, so that nothing is put off to the next one. */
const begunAt = Date.UTC(2026, 4, 2, 9);

const folder = mkdtempSync(join(tmpdir(), 'conversation-'));
try {
	await makePicture(join(projectRoot(), '.pictures', 'conversation.png'));
} finally {
	rmSync(folder, {recursive: true, force: true});
}

async function makePicture(file: string): Promise<void> {
	let aheadMs = begunAt - Date.now();
	const clock = {
		now: () => Date.now() + aheadMs,
		forward: (ms: number) => {
			aheadMs += ms;
		},
	};
	const settings = readSettings({DATA_DIR: folder, ROOM_PORT: '0'});
	const program = await startProgram(settings, {clock, log: () => undefined, pictureMs: 20_000});
	const browser = await chromium.launch({executablePath: '/usr/bin/chromium', args: ['--no-sandbox']});
	try {
		const page = await (await browser.newContext({viewport: phone, locale: 'en-GB'})).newPage();
		await page.goto(`${program.roomUrl}/#Ada`);
		await sharp(await sheetOf(await walk(page)))
			.png({palette: true, colours: 128, dither: 0, effort: 10})
			.toFile(file);
		const {size} = statSync(file);
		if (size > mostBytes) throw new Error(`Expected a picture of at most ${mostBytes} bytes; it has ${size}`);
	} finally {
		await browser.close();
		await program.stop();
	}
}

/** Walks a find to its result; a question with its picture, the card, and what stands below it. */
async function walk(page: Page): Promise<readonly Buffer[]> {
	for (const label of ['Begin', 'I have read this, begin', 'Yes, like that', 'No, empty and light'])
		await press(page, label);
	await last(page).getByText('Please send a photo').waitFor();
	await press(page, 'Photo');
	const photo = {name: 'case.jpg', mimeType: 'image/jpeg', buffer: await madePhoto()};
	await page.getByLabel('Photos or files').setInputFiles([photo]);
	await press(page, 'Send photos');
	await last(page).getByText('I have one photo').waitFor();
	await press(page, 'Go on');
	await say(page, 'Larkin Sands');
	for (const label of ['Today', '1', 'All there, go on', 'Soaked and soft', 'Both are there'])
		await press(page, label);
	await say(page, '66 mm');
	await press(page, 'B\u2002Two widths or less');
	await press(page, 'B\u2002Long lines or smooth');
	const asked = await seen(page, last(page));
	await press(page, 'A\u2002Yes, a thin blade');
	await say(page, '50 mm');
	await last(page).getByText('What speaks for it').waitFor();
	return [
		asked,
		await seen(page, last(page)),
		await seen(page, page.getByRole('button', {name: 'Throw it away'})),
	];
}

function last(page: Page): Locator {
	return page.getByRole('article').last();
}

/** The screen once the picture of the last message is there, the message at its top or its last button below. */
async function seen(page: Page, what: Locator): Promise<Buffer> {
	await last(page).getByRole('img').waitFor();
	await page.waitForLoadState('networkidle');
	await what.evaluate((element: {scrollIntoView: (how: object) => void}) =>
		element.scrollIntoView({block: 'start'}),
	);
	// No button looks as if it were pointed at.
	await page.mouse.move(0, 0);
	return page.screenshot();
}

async function press(page: Page, label: string): Promise<void> {
	await page.getByRole('button', {name: label, exact: true}).last().click();
}

async function say(page: Page, words: string): Promise<void> {
	const count = await page.getByRole('article').count();
	await page.getByLabel('Message', {exact: true}).fill(words);
	await page.keyboard.press('Enter');
	await page
		.getByRole('article')
		.nth(count + 1)
		.waitFor();
}

/** Screens side by side. */
async function sheetOf(screens: readonly Buffer[]): Promise<Buffer> {
	const width = screens.length * (phone.width + gapPx) - gapPx;
	return sharp({create: {width, height: phone.height, channels: 3, background: '#ffffff'}})
		.composite(screens.map((input, index) => ({input, left: index * (phone.width + gapPx), top: 0})))
		.png()
		.toBuffer();
}

/** Nobody's beach: a drawn case on made sand. */
async function madePhoto(): Promise<Buffer> {
	const shape = withParts(plainShape, {size: {lengthMm: 66, widthMm: 50}, blades: {width: 0.09}});
	const {svg} = drawCapsule(shape, {unitsPerMm: 12});
	const sand =
		'<filter id="sand"><feTurbulence type="fractalNoise" baseFrequency="0.35" numOctaves="3"/><feColorMatrix values="0 0 0 0 0.72 0 0 0 0 0.62 0 0 0 0 0.46 0.5 0 0 0 0.4"/></filter>';
	const page = `<svg xmlns="http://www.w3.org/2000/svg" width="1200" height="900">${sand}<rect width="1200" height="900" fill="#d9c7a1"/><rect width="1200" height="900" filter="url(#sand)"/><ellipse cx="620" cy="470" rx="230" ry="330" fill="#6b5a3c" opacity="0.25" transform="rotate(24 620 470)"/><g transform="translate(600 450) rotate(24) scale(7.5)">${svg}</g></svg>`;
	return sharp(Buffer.from(page), {density: 72}).flatten().jpeg({quality: 85}).toBuffer();
}
