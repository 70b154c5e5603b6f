/** Pictures to send: drawings of ours, made once, and stored photos. */
import {createHash} from 'node:crypto';
import {readFile} from 'node:fs/promises';
import {type PhotoRow, photoById, photosOf} from '../store/photos.ts';
import type {CallPicture} from '../store/picture.ts';
import type {Db} from '../store/schema.ts';
import type {Drawer} from './drawer.ts';
import {photoPath} from './photo-files.ts';
import type {Picture} from './platform-call.ts';

/** A picture, and who is told the platform's id of it. */
export type Found = {readonly picture: Picture; readonly remember: (fileId: string) => void};

/** Where the pictures of messages come from. */
export type Pictures = {
	/** A drawing; nothing when it cannot be drawn, `late` when not soon enough, so that the words still go. */
	readonly drawing: (picture: CallPicture, patienceMs?: number) => Promise<Found | 'late' | undefined>;
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

/** Cards and measured photos are each somebody's own: so many are remembered, for those shown again. */
const mostCards = 100;

/** Opens the pictures; a drawing is remembered by the platform's id once it was sent. */
export function openPictures({patienceMs = 200, ...tools}: PictureTools): Pictures {
	const memory = {shared: openMemory(Number.POSITIVE_INFINITY), cards: openMemory(mostCards)};
	const memoryOf = ({kind}: CallPicture) =>
		kind === 'card' || kind === 'measured' || kind === 'tray' ? memory.cards : memory.shared;
	const draw = (picture: CallPicture, level: 'error' | 'info') => {
		const {drawn} = memoryOf(picture);
		const key = keyOf(picture);
		const known = drawn.get(key);
		if (known) return known;
		// Caught here and not where it is awaited: words that have gone wait for nobody.
		const drawing = tools.drawer.draw(picture).catch((error: unknown) => {
			drawn.delete(key);
			tools.log({level, what: 'drawing failed', picture: nameOf(picture), error: String(error)});
			return undefined;
		});
		drawn.set(key, drawing);
		return drawing;
	};
	const drawing: Pictures['drawing'] = async (picture, longestMs = patienceMs) => {
		const {fileIds, drawn} = memoryOf(picture);
		const key = keyOf(picture);
		const fileId = fileIds.get(key);
		const remember = (id: string) => {
			fileIds.set(key, id);
			// The platform keeps the bytes from now on.
			drawn.delete(key);
		};
		if (fileId !== undefined) return {picture: {fileId}, remember};
		const bytes = await soon(draw(picture, 'error'), longestMs);
		if (bytes === 'late') {
			tools.log({level: 'warn', what: 'drawing late', picture: nameOf(picture)});
			return 'late';
		}
		if (bytes) return {picture: {bytes, name: fileNameOf(bytes)}, remember};
		const plainer = plainerOf(picture);
		return plainer && drawing(plainer);
	};
	return {
		drawing,
		prepare: async picture => {
			// Not an error yet: it is tried again when it is wanted.
			await draw(picture, 'info');
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

/** Bytes until they are sent, and then the platform's ids; the oldest go when there are too many. */
function openMemory(most: number) {
	return {
		fileIds: newestOf<string>(most),
		drawn: newestOf<Promise<Uint8Array | undefined>>(most),
	};
}

function newestOf<Value>(most: number) {
	const kept = new Map<string, Value>();
	return {
		get: (key: string) => kept.get(key),
		delete: (key: string) => kept.delete(key),
		set: (key: string, value: Value) => {
			kept.set(key, value);
			for (const oldest of kept.keys()) if (kept.size > most) kept.delete(oldest);
		},
	};
}

/** A card says where somebody was: that is not held in memory in words. */
function keyOf(picture: CallPicture): string {
	const name = JSON.stringify(picture);
	return picture.kind === 'card' ? createHash('sha256').update(name).digest('hex') : name;
}

/** What the log may say of a picture: nothing of places and photos. */
function nameOf(picture: CallPicture): string {
	if (picture.kind === 'measured' || picture.kind === 'tray') return 'a measured photo';
	return picture.kind === 'card' ? `card of ${picture.region}` : JSON.stringify(picture);
}

/** Where a card cannot be drawn, its one name is shown; of several none would stand out rightly. */
function plainerOf(picture: CallPicture): CallPicture | undefined {
	if (picture.kind !== 'card' || picture.sure === 'shortlist') return undefined;
	const {region, language, lost, names} = picture;
	const [first] = names;
	return first && {kind: 'taxon', region, language, lost, taxon: first.taxon};
}

/** A JPEG begins with these two bytes; all else that is drawn is a PNG. */
function fileNameOf([first, second]: Uint8Array): string {
	return first === 0xff && second === 0xd8 ? 'card.jpg' : 'drawing.png';
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
