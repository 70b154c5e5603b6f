/** Pictures to send: drawings of ours, made once, and stored photos. */
import {readFile} from 'node:fs/promises';
import type {CallPicture} from '../store/call.ts';
import {type PhotoRow, photoById, photosOf} from '../store/photos.ts';
import type {Db} from '../store/schema.ts';
import type {Drawer} from './drawer.ts';
import {photoPath} from './photo-files.ts';
import type {Picture} from './send.ts';

type Found = {readonly picture: Picture; readonly remember: (fileId: string) => void};

/** Where the pictures of messages come from. */
export type Pictures = {
	/** A drawing; nothing when it cannot be drawn or not soon enough, so that the words still go. */
	readonly drawing: (picture: CallPicture, patienceMs?: number) => Promise<Found | undefined>;
	/** Has a picture drawn for later; one that fails is told in the log alone. */
	readonly prepare: (picture: CallPicture) => Promise<void>;
	/** The first stored photo of a find, `not-yet` while it is being fetched, nothing when it cannot be read. */
	readonly photoOf: (find: number) => Promise<Found | 'not-yet' | undefined>;
	/** One stored photo, as above. */
	readonly photo: (id: number) => Promise<Found | 'not-yet' | undefined>;
	/** Every stored photo of a find, `not-yet` while one is being fetched. */
	readonly photosOf: (find: number) => Promise<readonly Picture[] | 'not-yet'>;
};

/** What pictures are made with. */
export type PictureTools = {
	readonly db: Db;
	readonly drawer: Pick<Drawer, 'draw'>;
	readonly photoFolder: string;
	/** How long words wait for their drawing. */
	readonly patienceMs?: number;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
};

/** Opens the pictures; a drawing is remembered by the platform's id once it was sent. */
export function openPictures({patienceMs = 200, ...tools}: PictureTools): Pictures {
	const fileIds = new Map<string, string>();
	const drawn = new Map<string, Promise<Uint8Array | undefined>>();
	const draw = (name: string, picture: CallPicture, level: 'error' | 'info') => {
		const known = drawn.get(name);
		if (known) return known;
		// Caught here and not where it is awaited: words that have gone wait for nobody.
		const drawing = tools.drawer.draw(picture).catch((error: unknown) => {
			drawn.delete(name);
			tools.log({level, what: 'drawing failed', picture: name, error: String(error)});
			return undefined;
		});
		drawn.set(name, drawing);
		return drawing;
	};
	return {
		drawing: async (picture, longestMs = patienceMs) => {
			const name = JSON.stringify(picture);
			const fileId = fileIds.get(name);
			const remember = (id: string) => {
				fileIds.set(name, id);
				// The platform keeps the bytes from now on.
				drawn.delete(name);
			};
			if (fileId !== undefined) return {picture: {fileId}, remember};
			const bytes = await soon(draw(name, picture, 'error'), longestMs);
			if (bytes === 'late') tools.log({level: 'warn', what: 'drawing late', picture: name});
			return bytes === undefined || bytes === 'late'
				? undefined
				: {picture: {bytes, name: 'drawing.png'}, remember};
		},
		prepare: async picture => {
			// Not an error yet: it is tried again when it is wanted.
			await draw(JSON.stringify(picture), picture, 'info');
		},
		photoOf: async find => firstStored(await photosOf(tools.db, find), tools),
		photo: async id => {
			const photo = await photoById(tools.db, id);
			return firstStored(photo ? [photo] : [], tools);
		},
		photosOf: async find => {
			const photos = await photosOf(tools.db, find);
			if (photos.some(({state}) => state === 'wanted')) return 'not-yet';
			const stored = await Promise.all(photos.map(photo => storedPicture(photo, tools)));
			return stored.filter(picture => picture !== undefined);
		},
	};
}

async function firstStored(
	photos: readonly PhotoRow[],
	tools: PictureTools,
): Promise<Found | 'not-yet' | undefined> {
	const kept = photos.find(photo => photo.state === 'kept' && photo.hash !== null);
	if (!kept) return photos.some(photo => photo.state === 'wanted') ? 'not-yet' : undefined;
	const picture = await storedPicture(kept, tools);
	return picture && {picture, remember: () => undefined};
}

async function storedPicture(
	{id, hash}: PhotoRow,
	{photoFolder, log}: PictureTools,
): Promise<Picture | undefined> {
	if (hash === null) return undefined;
	try {
		return {bytes: await readFile(photoPath(photoFolder, hash)), name: 'find.jpg'};
	} catch (error) {
		log({level: 'error', what: 'photo not read', photo: id, error: String(error)});
		return undefined;
	}
}

/** What is promised, or `late` when it is not there in time. */
async function soon<T>(promised: Promise<T>, patienceMs: number): Promise<T | 'late'> {
	let timer: NodeJS.Timeout | undefined;
	const late = new Promise<'late'>(resolve => {
		timer = setTimeout(() => resolve('late'), patienceMs);
	});
	try {
		return await Promise.race([promised, late]);
	} finally {
		clearTimeout(timer);
	}
}
