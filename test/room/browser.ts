import type {Browser, Page} from 'playwright-core';
import {chromium} from 'playwright-core';
import {onTestFinished} from 'vitest';

const quietly = [
	'--no-sandbox',
	'--disable-gpu',
	'--disable-quic',
	'--no-first-run',
	'--disable-background-networking',
	'--disable-component-update',
	'--disable-sync',
];

/** A browser that closes with the test. */
export async function openBrowser(): Promise<Browser> {
	const browser = await chromium.launch({executablePath: '/usr/bin/chromium', args: quietly});
	onTestFinished(() => browser.close());
	return browser;
}

/** A page of the room at phone size, and the complaints the browser makes about it. */
export async function openPage(
	browser: Browser,
	address: string,
	options: Parameters<Browser['newContext']>[0] = {},
): Promise<{readonly page: Page; readonly complaints: readonly string[]}> {
	const context = await browser.newContext({viewport: {width: 360, height: 740}, ...options});
	const page = await context.newPage();
	const complaints: string[] = [];
	page.on('console', message => {
		if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
	});
	page.on('pageerror', error => complaints.push(error.message));
	await page.goto(address);
	return {page, complaints};
}
