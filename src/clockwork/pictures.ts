/** Pictures to send: drawings of ours turned to PNG once, and stored photos. */
import {readFile} from 'node:fs/promises';
import {join} from 'node:path';
import sharp from 'sharp';
import {photosOf} from '../store/photos.ts';
import type {Db} from '../store/schema.ts';
import {photoPath} from './photo-files.ts';
import type {Picture} from './send.ts';

type Found = {readonly picture: Picture; readonly remember: (fileId: string) => void};

/** Where the pictures of messages come from. */
export type Pictures = {
	/** A drawing under `flows/`; nothing when it cannot be drawn, so that the words still go. */
	readonly drawing: (path: string) => Promise<Found | undefined>;
	/** The first stored photo of a find, `not-yet` while it is being fetched, nothing when it cannot be read. */
	readonly photoOf: (find: number) => Promise<Found | 'not-yet' | undefined>;
};

/** Wide enough for a phone held across. */
const drawingWidthPx = 1080;

/** Opens the pictures; a drawing is remembered by the platform's id once it was sent. */
export function openPictures(tools: {
	db: Db;
	flowsFolder: string;
	photoFolder: string;
	log: (line: Readonly<Record<string, unknown>>) => void;
}): Pictures {
	const fileIds = new Map<string, string>();
	const drawn = new Map<string, Promise<Uint8Array>>();
	const forget = () => undefined;
	return {
		drawing: async path => {
			const fileId = fileIds.get(path);
			const remember = (id: string) => void fileIds.set(path, id);
			if (fileId !== undefined) return {picture: {fileId}, remember};
			try {
				const bytes = drawn.get(path) ?? draw(join(tools.flowsFolder, path));
				drawn.set(path, bytes);
				return {picture: {bytes: await bytes, name: 'drawing.png'}, remember};
			} catch (error) {
				drawn.delete(path);
				tools.log({level: 'error', what: 'drawing failed', path, error: String(error)});
				return undefined;
			}
		},
		photoOf: async find => {
			const photos = await photosOf(tools.db, find);
			const kept = photos.find(photo => photo.state === 'kept' && photo.hash !== null);
			if (!kept?.hash) return photos.some(photo => photo.state === 'wanted') ? 'not-yet' : undefined;
			try {
				const bytes = await readFile(photoPath(tools.photoFolder, kept.hash));
				return {picture: {bytes, name: 'find.jpg'}, remember: forget};
			} catch (error) {
				tools.log({level: 'error', what: 'photo not read', photo: kept.id, error: String(error)});
				return undefined;
			}
		},
	};
}

async function draw(file: string): Promise<Uint8Array> {
	return sharp(await readFile(file), {density: 144})
		.resize({width: drawingWidthPx})
		.png()
		.toBuffer();
}
