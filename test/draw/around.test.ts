/** The pictures that all regions share, beside those that were looked at. */
import {existsSync, mkdirSync, readFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import process from 'node:process';
import sharp from 'sharp';
import {expect, test} from 'vitest';
import {drawAround} from '../../src/draw/around.ts';
import {aroundPictures} from '../../src/draw/around-names.ts';
import {colours} from '../../src/draw/palette.ts';
import {drawnFrom} from '../support/cards.ts';
import {differing} from '../support/differing.ts';

const {say} = drawnFrom('british-isles');
const folder = join(import.meta.dirname, 'golden', 'around');
/** Of all pixels, this share may differ visibly: smoothing of edges is not the same on every machine. */
const tolerance = 0.01;

async function small(svg: string): Promise<Buffer> {
	return sharp(Buffer.from(svg)).resize({width: 240}).png().toBuffer();
}

// `WRITE_GOLDEN=1 npx vitest run --dir test test/draw/around` draws them anew: look at each before it is kept.
test.each(aroundPictures)('the shared picture "%s" looks as it did when it was looked at', async which => {
	const {svg} = drawAround(which, {say, title: which});
	expect(svg).not.toMatch(/<text|NaN|undefined|Infinity/);
	const drawn = await small(svg);
	const file = join(folder, `${which}.png`);
	if (process.env['WRITE_GOLDEN'] === '1') {
		mkdirSync(folder, {recursive: true});
		writeFileSync(file, drawn);
	}
	expect(existsSync(file)).toBe(true);
	expect(await differing(drawn, readFileSync(file))).toBeLessThan(tolerance);
});

test('the shared pictures speak the language of whoever reads', async () => {
	const own = drawAround('parts', {say, title: 'x'}).svg;
	const other = drawAround('parts', {say: {...say, say: () => 'Dŵr tap'}, title: 'x'}).svg;
	expect(await differing(await small(own), await small(other))).toBeGreaterThan(tolerance);
});

test('of three cases one has both aprons, one lacks the lower, one lacks both', async () => {
	const {svg} = drawAround('aprons', {say, title: 'x'});
	const {data, info} = await sharp(Buffer.from(svg), {density: 72})
		.removeAlpha()
		.raw()
		.toBuffer({resolveWithObject: true});
	/** The number of pixels in the colour of aprons, in the upper and the lower half of a third of the picture. */
	const aprons = (third: number, isUpper: boolean) => {
		const middle = 34 + 200;
		let count = 0;
		for (let y = isUpper ? 34 : middle; y < (isUpper ? middle : 434); y++) {
			for (let x = 24 + third * 224; x < 24 + (third + 1) * 224; x++) {
				const at = (y * info.width + Math.round(x)) * info.channels;
				if (`#${data.subarray(at, at + 3).toString('hex')}` === colours.apron) count++;
			}
		}
		return count > 200;
	};
	expect([0, 1, 2].map(third => [aprons(third, true), aprons(third, false)])).toEqual([
		[true, true],
		[true, false],
		[false, false],
	]);
});
