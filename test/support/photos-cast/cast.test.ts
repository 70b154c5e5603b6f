import sharp from 'sharp';
import {expect, test, vi} from 'vitest';
import {seeded} from '../../../src/key/random.ts';
import {castPhoto} from './cast.ts';
import {develop, loadFilm} from './film.ts';

// A photo is cast pixel by pixel: a second alone and many times that beside other tests.
vi.setConfig({testTimeout: 120_000});

test('the same wish gives the same bytes, another seed gives others', async () => {
	const wish = {seed: 5, reference: 'card', level: 'normal', longSidePx: 400} as const;
	const [one, same, other] = [
		await castPhoto(wish),
		await castPhoto(wish),
		await castPhoto({...wish, seed: 6}),
	];
	expect(Buffer.compare(one.jpeg, same.jpeg)).toBe(0);
	expect(Buffer.compare(one.jpeg, other.jpeg)).not.toBe(0);
});

test('the truth about a case is the same with its horns and without', async () => {
	const wish = {seed: 8, reference: 'a4', level: 'clean', longSidePx: 400} as const;
	const [whole, worn] = [await castPhoto(wish), await castPhoto({...wish, isHornless: true})];
	expect(Buffer.compare(whole.jpeg, worn.jpeg)).not.toBe(0);
	const sizes = ({cases}: typeof whole) =>
		cases.map(({lengthMm, widthMm, heightMm, atMm}) => ({lengthMm, widthMm, heightMm, atMm}));
	expect(sizes(worn)).toEqual(sizes(whole));
});

test('the four corners of a sheet lie in the kept photo where the camera says', async () => {
	const {jpeg, cornersPx} = await castPhoto({
		...{seed: 3, reference: 'a4', level: 'clean', subject: 'nothing', ground: 'wood', longSidePx: 600},
	} as const);
	const {data, info} = await sharp(jpeg).rotate().greyscale().raw().toBuffer({resolveWithObject: true});
	const middle = [0, 1].map(axis => cornersPx.reduce((sum, corner) => sum + (corner[axis] ?? 0) / 4, 0));
	const lightAt = ([x, y]: readonly [number, number], share: number) => {
		const [left = 0, top = 0] = middle;
		const [column, row] = [Math.round(left + (x - left) * share), Math.round(top + (y - top) * share)];
		return data[(row * info.width + column) * info.channels] ?? 0;
	};
	expect(cornersPx).toHaveLength(4);
	for (const corner of cornersPx) {
		expect(lightAt(corner, 0.98) - lightAt(corner, 1.02)).toBeGreaterThan(25);
	}
});

test('whichever way a photo is kept, heeding its orientation turns it upright', async () => {
	const [widthPx, heightPx] = [40, 24];
	// Light grows to the right, and the lower half is red.
	const light = Float32Array.from({length: widthPx * heightPx * 3}, (_, at) => {
		const [column, row] = [Math.floor(at / 3) % widthPx, Math.floor(at / 3 / widthPx)];
		return at % 3 !== 0 && row >= heightPx / 2 ? 0 : 0.1 + (0.7 * column) / widthPx;
	});
	const film = loadFilm({level: 'clean', isDark: false, blurPx: 0}, seeded(1));
	for (const orientation of [1, 3, 6, 8] as const) {
		const kept = {...film, orientation, quality: 95, motionPx: [0, 0] as const};
		const jpeg = await develop({widthPx, heightPx, light}, kept, {enlarged: 1, pick: seeded(2)});
		const {data, info} = await sharp(jpeg).rotate().raw().toBuffer({resolveWithObject: true});
		expect([info.width, info.height]).toEqual([widthPx, heightPx]);
		const at = (column: number, row: number) => [
			...data.subarray((row * widthPx + column) * 3).subarray(0, 3),
		];
		const [upper, lower] = [at(35, 4), at(35, 20)];
		expect(upper[1] ?? 0).toBeGreaterThan((at(4, 4)[1] ?? 0) + 30);
		expect(lower[0] ?? 0).toBeGreaterThan((lower[1] ?? 0) + 60);
	}
});
