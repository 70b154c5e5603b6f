/** Where pictures become PNG files: drawn from the regions' data, kept by what is in them. */
import {createHash} from 'node:crypto';
import {readFile} from 'node:fs/promises';
import {join} from 'node:path';
import sharp from 'sharp';
import {drawMarks} from '../draw/measured.ts';
import {sentWidthPx} from '../draw/palette.ts';
import {trayPart} from '../draw/tray.ts';
import {type DrawnFrom, drawWanted} from '../draw/wanted.ts';
import {readRegion} from '../key/region.ts';
import {projectRoot} from '../settings.ts';
import type {CallPicture} from '../store/picture.ts';
import {readTexts} from '../text/text.ts';
import {cardImage} from './card.ts';
import {keptPicture} from './kept-pictures.ts';
import {photoPath} from './photo-files.ts';

/** Turns a picture into the bytes of a PNG, or of a JPEG where it holds a photo; rejects when there is no such thing to draw. */
export type Studio = (picture: CallPicture) => Promise<Uint8Array>;

/** Folders of a studio: where the regions are, where finished pictures are kept, and where photos are. */
export type StudioFolders = {
	readonly flowsFolder: string;
	readonly keptFolder: string;
	readonly photoFolder: string;
};

/** Opens a studio by this clock; a region is read when it is first drawn from, and then kept in memory. */
export function openStudio(
	{flowsFolder, keptFolder, photoFolder}: StudioFolders,
	now: () => number = Date.now,
): Studio {
	const regions = new Map<string, ReturnType<typeof readSource>>();
	const sourceOf = (region: string, language: string): DrawnFrom => {
		const source = regions.get(region) ?? readSource(flowsFolder, region);
		regions.set(region, source);
		return {region: source.region, say: source.texts.in(language)};
	};
	return async picture => {
		// Neither is kept: they show a person's photo and place, which are theirs to erase.
		if (picture.kind === 'measured' || picture.kind === 'tray')
			return measuredPhoto(picture, await readFile(photoPath(photoFolder, picture.hash)));
		if (picture.kind === 'card') {
			return cardImage(picture, {from: sourceOf(picture.region, picture.language), photoFolder});
		}
		if (picture.kind === 'drawing')
			throw new Error(`Expected a picture that can be drawn; "${picture.path}" is gone`);
		const {svg} = drawWanted(picture, sourceOf(picture.region, picture.language));
		return keptPicture(fileOf(keptFolder, svg), {make: () => pngOf(svg), now: now()});
	};
}

/** The bytes of a drawing as PNG, as wide as pictures are sent. */
export function pngOf(svg: string, widthPx: number = sentWidthPx): Promise<Buffer> {
	return sharp(Buffer.from(svg), {density: 144}).resize({width: widthPx}).png().toBuffer();
}

/** A stored photo with its lines, as wide as pictures are sent, without metadata. */
async function measuredPhoto(
	marks: Extract<CallPicture, {kind: 'measured' | 'tray'}>,
	photo: Uint8Array,
): Promise<Uint8Array> {
	const {width = 1, height = 1} = await sharp(photo).metadata();
	const size = {widthPx: width, heightPx: height};
	const {box, svg} =
		marks.kind === 'tray'
			? trayPart(marks, size)
			: {box: {left: 0, top: 0, right: width, bottom: height}, svg: drawMarks(marks, size)};
	const {left, top} = box;
	const part = {left, top, width: box.right - left, height: box.bottom - top};
	const marked = await sharp(photo)
		.extract(part)
		.composite([{input: Buffer.from(svg)}])
		.toBuffer();
	return sharp(marked).resize({width: sentWidthPx, withoutEnlargement: true}).jpeg({quality: 80}).toBuffer();
}

function fileOf(folder: string, svg: string): string {
	return join(folder, `${createHash('sha256').update(svg).digest('hex').slice(0, 32)}.png`);
}

function readSource(flowsFolder: string, region: string) {
	const own = join(projectRoot(), 'src', 'text');
	return {
		region: readRegion(flowsFolder, region),
		texts: readTexts([own, flowsFolder, join(flowsFolder, region)]),
	};
}
