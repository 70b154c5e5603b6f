/** Cards as images: small, with the photo where it belongs, and whole without one. */
import {mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {mkdir} from 'node:fs/promises';
import {dirname, join} from 'node:path';
import sharp from 'sharp';
import {expect, onTestFinished, test, vi} from 'vitest';
import {cardImage, mostCardBytes} from '../../src/clockwork/card.ts';
import {photoPath, storePhoto} from '../../src/clockwork/photo-files.ts';
import {scattered} from '../../src/draw/path.ts';
import {cardOf, drawnFrom, shortlist} from '../support/cards.ts';
import {quickFolder} from '../support/folder.ts';

vi.setConfig({testTimeout: 60_000});

const from = drawnFrom('british-isles');

function newFolder(): string {
	const folder = mkdtempSync(join(quickFolder(), 'cards-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	return folder;
}

test.each([
	['one name', cardOf(), 1080],
	['a shortlist', cardOf({sure: 'shortlist', names: [...shortlist]}), 900],
] as const)('a card of %s with a photo that hardly shrinks stays below 300 kB', async (_, card, width) => {
	const photoFolder = newFolder();
	const grains = Buffer.from(Array.from({length: 1200 * 900 * 3}, (__, index) => scattered(index) * 255));
	const photo = await sharp(grains, {raw: {width: 1200, height: 900, channels: 3}})
		.jpeg({quality: 90})
		.toBuffer();
	const hash = await storePhoto(photoFolder, photo);
	const bytes = await cardImage({...card, photo: {hash}}, {from, photoFolder});
	expect(bytes.byteLength).toBeLessThan(mostCardBytes);
	expect(await sharp(bytes).metadata()).toMatchObject({format: 'jpeg', width});
});

test('a card without a photo is a whole picture below 300 kB', async () => {
	const card = cardOf({sure: 'shortlist', names: [...shortlist]});
	const bytes = await cardImage(card, {from, photoFolder: newFolder()});
	expect(bytes.byteLength).toBeLessThan(mostCardBytes);
	expect(await sharp(bytes).metadata()).toMatchObject({format: 'png', width: 900});
});

test.each(['gone', 'broken'])('a card whose photo is %s is drawn without it', async how => {
	const photoFolder = newFolder();
	const hash = 'ab'.repeat(32);
	if (how === 'broken') {
		const file = photoPath(photoFolder, hash);
		await mkdir(dirname(file), {recursive: true});
		writeFileSync(file, 'no picture at all');
	}
	const bytes = await cardImage(cardOf({photo: {hash}}), {from, photoFolder});
	expect(Buffer.from(bytes).equals(Buffer.from(await cardImage(cardOf(), {from, photoFolder})))).toBe(true);
});

test('a photo stands on its card as it is, not stretched', async () => {
	const photoFolder = newFolder();
	// Left red, right green: where the colours meet is the middle.
	const photo = await sharp({create: {width: 800, height: 600, channels: 3, background: '#00ff00'}})
		.composite([
			{input: {create: {width: 400, height: 600, channels: 3, background: '#ff0000'}}, left: 0, top: 0},
		])
		.jpeg({chromaSubsampling: '4:4:4'})
		.toBuffer();
	const hash = await storePhoto(photoFolder, photo);
	const at = await colourBoxes(await cardImage(cardOf({photo: {hash}}), {from, photoFolder}));
	const [wide, high] = [at.green.right - at.red.left, at.red.bottom - at.red.top];
	expect(wide / high).toBeCloseTo(4 / 3, 1);
	expect((at.red.right - at.red.left) / wide).toBeCloseTo(0.5, 1);
});

test.each([
	['upright', 0],
	['lying', 90],
	['aslant', 35],
	['upside down', 170],
])(
	'a photo whose ends are known, %s, stands upright and to the scale of the drawing within 1 %%',
	async (_, degrees) => {
		const photoFolder = newFolder();
		const [width, height, longPx] = [1600, 1200, 500];
		const turn = (degrees * Math.PI) / 180;
		const [across, down] = [(Math.sin(turn) * longPx) / 2, (Math.cos(turn) * longPx) / 2];
		const front = {x: width / 2 + across, y: height / 2 - down};
		const back = {x: width / 2 - across, y: height / 2 + down};
		const dot = ({x, y}: {x: number; y: number}, fill: string) =>
			`<circle cx="${x}" cy="${y}" r="9" fill="${fill}"/>`;
		const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><rect width="100%" height="100%" fill="#999"/>${dot(front, '#f00')}${dot(back, '#0f0')}</svg>`;
		const photo = await sharp(Buffer.from(svg)).jpeg({quality: 95, chromaSubsampling: '4:4:4'}).toBuffer();
		const hash = await storePhoto(photoFolder, photo);
		const ends = {front: [front.x, front.y] as [number, number], back: [back.x, back.y] as [number, number]};
		const card = cardOf({photo: {hash, ends}});
		const bytes = await cardImage(card, {from, photoFolder});
		const at = await colourBoxes(bytes);
		const middle = ({left, right, top, bottom}: Box) => ({x: (left + right) / 2, y: (top + bottom) / 2});
		const [red, green] = [middle(at.red), middle(at.green)];
		const drawnPx = await drawnLongPx(bytes);
		expect(Math.abs((green.y - red.y) / drawnPx - 1)).toBeLessThan(0.01);
		expect(Math.abs(green.x - red.x)).toBeLessThan(4);
	},
);

type Box = {readonly left: number; readonly right: number; readonly top: number; readonly bottom: number};

/** Where pure red and pure green lie on a card. */
async function colourBoxes(bytes: Uint8Array): Promise<{readonly red: Box; readonly green: Box}> {
	const {data, info} = await sharp(bytes).removeAlpha().raw().toBuffer({resolveWithObject: true});
	const boxOf = (main: 0 | 1): Box => {
		let box: Box = {left: info.width, right: -1, top: info.height, bottom: -1};
		for (let y = 0; y < info.height; y++) {
			for (let x = 0; x < info.width; x++) {
				const at = (y * info.width + x) * 3;
				if ((data[at + main] ?? 0) < 200 || (data[at + 1 - main] ?? 255) > 70 || (data[at + 2] ?? 255) > 70)
					continue;
				box = {
					left: Math.min(box.left, x),
					right: Math.max(box.right, x),
					top: Math.min(box.top, y),
					bottom: Math.max(box.bottom, y),
				};
			}
		}
		return box;
	};
	return {red: boxOf(0), green: boxOf(1)};
}

/** How long the case of a card with a photo is drawn: from the middle of its upper border to that of its lower. */
async function drawnLongPx(bytes: Uint8Array): Promise<number> {
	const {data, info} = await sharp(bytes).greyscale().raw().toBuffer({resolveWithObject: true});
	// The drawing fills the right half of the card; its own middle is that of the column.
	const column = Math.round(((696 - 322 / 2) / 720) * info.width);
	const inks: number[] = [];
	for (let y = 190; y < 870; y++)
		if ((data[(y * info.width + column) * info.channels] ?? 255) < 110) inks.push(y);
	const isEdge = (y: number) => !inks.includes(y - 1);
	const starts = inks.filter(isEdge);
	const ends = inks.filter(y => !inks.includes(y + 1));
	const middleOf = (index: number) => ((starts.at(index) ?? 0) + (ends.at(index) ?? 0)) / 2;
	return middleOf(-1) - middleOf(0);
}
