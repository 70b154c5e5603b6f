/** Photos on disk: cleaned of all metadata, named by what they show. */
import {createHash} from 'node:crypto';
import {mkdir, rename, rm, writeFile} from 'node:fs/promises';
import {dirname, join} from 'node:path';
import {type PhotoMetadata, readPhotoMetadata} from '../place/photo-metadata.ts';

/** A phone's picture has up to 50 megapixels; more is a trap. */
const mostPixels = 64_000_000;
const longestSidePx = 2560;

/** Turned upright, at most 2560 pixels long, as JPEG without any metadata; throws when it is no picture. */
export async function cleanPhoto(bytes: Uint8Array): Promise<Uint8Array> {
	const sharp = await openSharp();
	return sharp(bytes, {limitInputPixels: mostPixels, failOn: 'error'})
		.rotate()
		.resize({width: longestSidePx, height: longestSidePx, fit: 'inside', withoutEnlargement: true})
		.jpeg({quality: 85})
		.toBuffer();
}

/** What the file of a photo tells of place and day, before that is cleaned off. */
export async function metadataOf(bytes: Uint8Array): Promise<PhotoMetadata> {
	const sharp = await openSharp();
	const {exif} = await sharp(bytes, {limitInputPixels: mostPixels}).metadata();
	return exif ? readPhotoMetadata(exif) : {};
}

/** The photo with everything inside the corners (pixels) blurred beyond reading. */
export async function blurPart(
	photo: Uint8Array,
	corners: readonly (readonly [number, number])[],
): Promise<Uint8Array> {
	const sharp = await openSharp();
	const {width, height} = await sharp(photo).metadata();
	const ring = corners.map(([x, y]) => `${x},${y}`).join(' ');
	const mask = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><polygon points="${ring}"/></svg>`;
	// Wide enough that no letter of a card survives, common practice.
	const soft = await sharp(photo)
		.blur(Math.max(4, Math.max(width, height) / 40))
		.ensureAlpha()
		.composite([{input: Buffer.from(mask), blend: 'dest-in'}])
		.png()
		.toBuffer();
	return sharp(photo)
		.composite([{input: soft}])
		.jpeg({quality: 85})
		.toBuffer();
}

/** Loading it takes a tenth of a second of processor, and a start brings no photo. */
async function openSharp() {
	return (await import('sharp')).default;
}

/** Stores a cleaned photo under the SHA-256 of its bytes; storing it twice is harmless. */
export async function storePhoto(folder: string, bytes: Uint8Array): Promise<string> {
	const hash = createHash('sha256').update(bytes).digest('hex');
	const file = photoPath(folder, hash);
	await mkdir(dirname(file), {recursive: true});
	const half = `${file}.${process.pid}.half`;
	await writeFile(half, bytes);
	await rename(half, file);
	return hash;
}

/** Erases a photo from disk; one that is gone already is fine. */
export async function erasePhoto(folder: string, hash: string): Promise<void> {
	await rm(photoPath(folder, hash), {force: true});
}

/** Where a photo stands. */
export function photoPath(folder: string, hash: string): string {
	return join(folder, hash.slice(0, 2), `${hash}.jpg`);
}
