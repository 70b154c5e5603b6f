import {mkdtempSync, readdirSync, rmSync} from 'node:fs';
import {join} from 'node:path';
import {expect, onTestFinished, test} from 'vitest';
import {keptPicture, tidyPictures} from '../../src/clockwork/kept-pictures.ts';
import {quickFolder} from '../support/folder.ts';

const secondMs = 1000;

function newFolder(): string {
	const folder = mkdtempSync(join(quickFolder(), 'kept-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	return folder;
}

test('a picture is made once, and then it is there', async () => {
	const file = join(newFolder(), 'deeper', 'one.png');
	let made = 0;
	const make = async () => Buffer.from(`made ${++made}`);
	const first = await keptPicture(file, {make, now: 1});
	const second = await keptPicture(file, {make, now: 2});
	expect([first, second].map(bytes => Buffer.from(bytes).toString())).toEqual(['made 1', 'made 1']);
});

test('of too many bytes those unused for longest go', async () => {
	const folder = newFolder();
	const make = async () => Buffer.alloc(100);
	for (const [index, name] of ['a', 'b', 'c', 'd'].entries())
		await keptPicture(join(folder, name), {make, now: index * secondMs});
	await keptPicture(join(folder, 'a'), {make, now: 9 * secondMs});
	await tidyPictures(folder, {now: 10 * secondMs, mostBytes: 250});
	expect(readdirSync(folder).toSorted()).toEqual(['a', 'd']);
});

test('a folder that was never made is tidy', async () => {
	await expect(tidyPictures(join(newFolder(), 'nowhere'), {now: 0})).resolves.toBeUndefined();
});
