/** Fetches wanted photos one at a time, cleans and stores them. */
import {type Api, GrammyError} from 'grammy';
import type {MeasuredPhoto} from '../find/proposal.ts';
import type {PhotoMetadata} from '../place/photo-metadata.ts';
import {findById} from '../store/finds.ts';
import {losePhoto, markKept, nextPhoto, type PhotoRow, postponePhoto} from '../store/photos.ts';
import type {Db, Tx} from '../store/schema.ts';
import type {Measurer} from './measurer.ts';
import {blurPart, cleanPhoto, metadataOf, storePhoto} from './photo-files.ts';
import {readSizes} from './photo-sizes.ts';

/** What fetching photos works with. */
export type PhotoTools = {
	readonly db: Db;
	readonly api: Api;
	/** Where files are fetched from; it holds the token, so it is never logged. */
	readonly fileRoot: string;
	readonly photoFolder: string;
	readonly now: () => number;
	/** The record of a kept find is told of its new photo. */
	readonly onKept: (tx: Tx, find: number) => Promise<void>;
	/** The person hears that a photo could not be read. */
	readonly onLost: (tx: Tx, find: number) => Promise<void>;
	/** Reads sizes from a cleaned photo. */
	readonly measure: Measurer['measure'];
	/** The finder is shown what was measured, or told what to do. */
	readonly onMeasured: (tx: Tx, find: number, outcome: MeasuredPhoto) => Promise<void>;
	/** The finder is offered what the file says of place and day. */
	readonly onTold: (tx: Tx, photo: PhotoRow, told: PhotoMetadata) => Promise<void>;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
};

/** The most bytes a bot may fetch (platform-limits.json, get_file). */
const mostBytes = 20_000_000;
const mostAttempts = 10;
const fetchTimeoutMs = 60_000;

/** Fetches the next photo; false when none is due. */
export async function fetchNextPhoto(tools: PhotoTools): Promise<boolean> {
	const {db, now} = tools;
	const photo = await nextPhoto(db, now());
	if (!photo) return false;
	const bytes = await fetched(tools, photo);
	if (bytes === 'later') {
		const isLast = photo.attempts + 1 >= mostAttempts;
		if (isLast) await lose(tools, photo);
		else await postponePhoto(db, {id: photo.id, notBefore: now() + 2000 * 2 ** photo.attempts});
		return true;
	}
	const clean = bytes === 'never' ? undefined : await cleanedOf(bytes).catch(() => undefined);
	if (clean) await keep(tools, photo, clean);
	else await lose(tools, photo);
	return true;
}

type Cleaned = {readonly bytes: Uint8Array; readonly told: PhotoMetadata};

async function cleanedOf(bytes: Uint8Array): Promise<Cleaned> {
	return {bytes: await cleanPhoto(bytes), told: await metadataOf(bytes)};
}

async function keep(tools: PhotoTools, photo: PhotoRow, {bytes: clean, told}: Cleaned): Promise<void> {
	const {db} = tools;
	const sizes = photo.measures === 1 ? await readSizes(tools, {photo: photo.id, bytes: clean}) : undefined;
	const bare = sizes?.hidden ? await blurPart(clean, sizes.hidden) : clean;
	const hash = await storePhoto(tools.photoFolder, bare);
	await db.transaction().execute(async tx => {
		await markKept(tx, {id: photo.id, hash, sizeBytes: bare.byteLength});
		const find = await findById(tx, photo.find);
		if (find?.state === 'kept') await tools.onKept(tx, photo.find);
		if (told.fix ?? told.date) await tools.onTold(tx, photo, told);
		if (sizes) await tools.onMeasured(tx, photo.find, sizes.outcome({photo: photo.id, hash}));
	});
}

async function lose({db, log, onLost}: PhotoTools, photo: PhotoRow): Promise<void> {
	log({level: 'warn', what: 'photo lost', photo: photo.id, find: photo.find});
	await db.transaction().execute(async tx => {
		await losePhoto(tx, photo.id);
		await onLost(tx, photo.find);
	});
}

async function fetched(
	{api, fileRoot, log}: PhotoTools,
	photo: PhotoRow,
): Promise<Uint8Array | 'later' | 'never'> {
	try {
		const file = await api.getFile(photo.fileId);
		if (file.file_path === undefined || (file.file_size ?? 0) > mostBytes) return 'never';
		const response = await fetch(`${fileRoot}/${file.file_path}`, {
			signal: AbortSignal.timeout(fetchTimeoutMs),
		});
		if (!response.ok) return response.status >= 500 || response.status === 429 ? 'later' : 'never';
		const bytes = new Uint8Array(await response.arrayBuffer());
		return bytes.byteLength > mostBytes ? 'never' : bytes;
	} catch (error) {
		const isRefused = error instanceof GrammyError && error.error_code === 400;
		// The message of a fetch error may hold the address, and with it the token.
		log({
			level: 'warn',
			what: 'photo not fetched',
			photo: photo.id,
			kind: error instanceof Error ? error.name : 'unknown',
		});
		return isRefused ? 'never' : 'later';
	}
}
