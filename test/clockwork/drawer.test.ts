import {mkdtempSync, readdirSync, rmSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import sharp from 'sharp';
import {expect, onTestFinished, test, vi} from 'vitest';
import {openDrawer} from '../../src/clockwork/drawer.ts';
import {openStudio} from '../../src/clockwork/studio.ts';
import {projectRoot} from '../../src/settings.ts';
import type {CallPicture} from '../../src/store/picture.ts';
import {quickFolder} from '../support/folder.ts';
import {deskScene, say} from './desk.ts';

vi.setConfig({testTimeout: 60_000});

const flowsFolder = join(projectRoot(), 'flows');
const choices: CallPicture = {
	kind: 'choices',
	region: 'british-isles',
	language: 'en',
	character: 'keel',
	options: ['blade', 'none'],
};
const photoFolder = join(quickFolder(), 'no-photos');
const never = () => new Promise<Uint8Array>(() => undefined);

test('a picture is drawn once and kept under a name of what is in it', async () => {
	const keptFolder = newFolder();
	const bytes = await openStudio({flowsFolder, keptFolder, photoFolder})(choices);
	expect(await sharp(bytes).metadata()).toMatchObject({format: 'png', width: 1080});
	const [file, ...others] = readdirSync(keptFolder);
	expect(file).toMatch(/^[0-9a-f]{32}\.png$/);
	expect(others).toEqual([]);
	writeFileSync(join(keptFolder, file ?? ''), 'as kept');
	expect(Buffer.from(await openStudio({flowsFolder, keptFolder, photoFolder})(choices)).toString()).toBe(
		'as kept',
	);
});

test('a thread that hangs is given up, and the next picture gets another one', async () => {
	const script = scriptOf(`
		import {parentPort} from 'node:worker_threads';
		parentPort.on('message', ({id, question}) => {
			if (question.path === 'hang') while (true);
			parentPort.postMessage({id, answer: new Uint8Array([1, 2])});
		});`);
	const drawer = drawerOf(script, 1500);
	await expect(drawer.draw({kind: 'drawing', path: 'hang'})).rejects.toThrow('took too long');
	expect([...(await drawer.draw({kind: 'drawing', path: 'go'}))]).toEqual([1, 2]);
});

test('a thread that dies fails its picture, and the next one gets another', async () => {
	const script = scriptOf(`
		import {parentPort} from 'node:worker_threads';
		parentPort.on('message', ({id, question}) => {
			if (question.path === 'die') throw new Error('dead');
			parentPort.postMessage({id, answer: new Uint8Array([3])});
		});`);
	const drawer = drawerOf(script, 20_000);
	await expect(drawer.draw({kind: 'drawing', path: 'die'})).rejects.toThrow('dead');
	expect([...(await drawer.draw({kind: 'drawing', path: 'go'}))]).toEqual([3]);
});

test('a question whose picture never comes goes as words', async () => {
	const {put, pump, said, lines, ada} = await deskScene({drawer: {draw: never}, patienceMs: 200});
	await put(ada.chat, say('Which?', {picture: choices}));
	await pump();
	expect(said(ada.person)).toEqual(['Which?']);
	expect(lines).toMatchObject([{level: 'warn', what: 'drawing late'}]);
});

test('a question whose picture cannot be drawn goes as words, and can be closed later', async () => {
	const draw = () => Promise.reject(new Error('no ink'));
	const {put, pump, said, lines, ada} = await deskScene({drawer: {draw}});
	await put(ada.chat, say('Which?', {picture: choices}));
	await put(ada.chat, {kind: 'edit', row: 1, html: 'Which? → A', keyboard: []});
	await pump();
	expect(said(ada.person)).toEqual(['Which? → A']);
	expect(lines).toMatchObject([{level: 'error', what: 'drawing failed', error: 'Error: no ink'}]);
});

test('a picture that came too late goes with the next question that shows it', async () => {
	let finish: (bytes: Uint8Array) => void = () => undefined;
	const late = new Promise<Uint8Array>(resolve => {
		finish = resolve;
	});
	const {put, pump, room, ada} = await deskScene({drawer: {draw: () => late}, patienceMs: 50});
	await put(ada.chat, say('one', {picture: choices}));
	await pump();
	finish(
		await sharp({create: {width: 9, height: 9, channels: 3, background: 'red'}})
			.png()
			.toBuffer(),
	);
	await put(ada.chat, say('two', {picture: choices}));
	await pump();
	expect(
		room
			.messages(ada.person.id)
			.slice(-2)
			.map(({photo}) => photo !== undefined),
	).toEqual([false, true]);
});

function newFolder(): string {
	const folder = mkdtempSync(join(quickFolder(), 'drawn-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	return folder;
}

function scriptOf(code: string): string {
	const file = join(newFolder(), 'thread.mjs');
	writeFileSync(file, code);
	return file;
}

function drawerOf(script: string, longestMs: number) {
	const drawer = openDrawer({flowsFolder, keptFolder: newFolder(), photoFolder, script, longestMs});
	onTestFinished(() => drawer.stop());
	return drawer;
}
