/** Photos on their way in: bounded, turned upright, shrunk, and never trusted. */
import sharp from 'sharp';
import type {Raster} from './raster.ts';

/** A photo ready to be measured; `scale` is pixels of the upright photo to one of the raster. */
export type Photo = {readonly kind: 'photo'; readonly raster: Raster; readonly scale: number};

/** A photo that cannot be looked at, and why. */
export type Unreadable = {
	readonly kind: 'unreadable';
	readonly why: 'too-heavy' | 'too-many-pixels' | 'heic' | 'no-photo' | 'too-small';
};

/** A phone's picture has up to 50 megapixels; more is a trap. */
const mostPixels = 64_000_000;
const mostBytes = 30_000_000;
/** What is measured on; finer is slower and not better, since paper and camera are not. */
const longestSidePx = 1280;
const leastSidePx = 320;

/** Decodes a photo, turned as it was held and at most 1280 pixels long; it is never enlarged. */
export async function readPhoto(bytes: Uint8Array): Promise<Photo | Unreadable> {
	if (bytes.length > mostBytes) return {kind: 'unreadable', why: 'too-heavy'};
	if (isHeic(bytes)) return {kind: 'unreadable', why: 'heic'};
	try {
		const image = sharp(bytes, {limitInputPixels: false, failOn: 'error', animated: false});
		const {width, height} = await image.metadata();
		if (width * height > mostPixels) return {kind: 'unreadable', why: 'too-many-pixels'};
		if (Math.min(width, height) < leastSidePx) return {kind: 'unreadable', why: 'too-small'};
		const {data, info} = await image
			.rotate()
			.resize({width: longestSidePx, height: longestSidePx, fit: 'inside', withoutEnlargement: true})
			.flatten({background: '#fff'})
			.toColourspace('srgb')
			.raw()
			.toBuffer({resolveWithObject: true});
		const scale = Math.max(width, height) / Math.max(info.width, info.height);
		// The same bytes, not copied: a photo's are some megabytes.
		const rgb = new Uint8Array(data.buffer, data.byteOffset, data.length);
		const raster = {width: info.width, height: info.height, rgb};
		return info.channels === 3 ? {kind: 'photo', raster, scale} : {kind: 'unreadable', why: 'no-photo'};
	} catch {
		return {kind: 'unreadable', why: 'no-photo'};
	}
}

/** The brands of ISO/IEC 23008-12 (HEIF) that phones write; sharp as it is built here reads none of them. */
function isHeic(bytes: Uint8Array): boolean {
	const head = Buffer.from(bytes.subarray(0, 16)).toString('latin1');
	return head.slice(4, 8) === 'ftyp' && ['heic', 'heix', 'hevc', 'mif1', 'msf1'].includes(head.slice(8, 12));
}
