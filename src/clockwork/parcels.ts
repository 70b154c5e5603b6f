/** Makes what people asked for, one after another, and hands it over through the outbox. */
import type {Made} from '../record/made.ts';
import {
	beginParcel,
	closeParcel,
	filesOnTheWay,
	nextParcel,
	type Parcel,
	parcelsInTheMaking,
	postponeParcel,
} from '../store/parcels.ts';
import type {Db, Tx} from '../store/schema.ts';
import {clearedFolder, eraseParcel, parcelFolders} from './parcel-files.ts';

/** What came of a parcel; `failed` once it is given up. */
export type MadeOrNot = Made | {readonly kind: 'failed'};

/** What making works with. */
export type ParcelTools = {
	readonly db: Db;
	readonly parcelFolder: string;
	readonly now: () => number;
	/** Makes a parcel; its files go into the folder handed over. */
	readonly make: (parcel: Parcel, folder: string) => Promise<Made>;
	/** Puts what was made in the queue of its chat. */
	readonly onMade: (tx: Tx, parcel: Parcel, made: MadeOrNot) => Promise<void>;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
};

const mostAttempts = 3;
const pauseMs = 30_000;

/** Makes the next parcel; true when one was tried. A killed program begins it anew, in an emptied folder. */
export async function makeNextParcel(tools: ParcelTools): Promise<boolean> {
	const {db, now, log} = tools;
	const parcel = await nextParcel(db, now());
	if (!parcel) return false;
	await beginParcel(db, parcel.id);
	const made = await tried(tools, parcel);
	if (made === 'later') {
		await postponeParcel(db, {id: parcel.id, notBefore: now() + pauseMs});
		return true;
	}
	const isWanted = await db.transaction().execute(async tx => {
		if (!(await closeParcel(tx, parcel.id))) return false;
		await tools.onMade(tx, parcel, made);
		return true;
	});
	const waitMs = now() - parcel.createdAt;
	log({
		level: 'info',
		what: 'parcel made',
		parcel: parcel.id,
		kind: parcel.wanted.kind,
		outcome: made.kind,
		waitMs,
	});
	// Whoever was forgotten meanwhile gets nothing, and nothing stays.
	if (!isWanted || made.kind !== 'files') await eraseParcel(tools.parcelFolder, parcel.id);
	return true;
}

async function tried({parcelFolder, make, log}: ParcelTools, parcel: Parcel): Promise<MadeOrNot | 'later'> {
	// A parcel that kills the program in the making may not do so for ever.
	if (parcel.attempts >= mostAttempts) return {kind: 'failed'};
	try {
		return await make(parcel, await clearedFolder(parcelFolder, parcel.id));
	} catch (error) {
		log({level: 'error', what: 'parcel failed', parcel: parcel.id, error: String(error)});
		return parcel.attempts + 1 >= mostAttempts ? {kind: 'failed'} : 'later';
	}
}

/** Erases files that nobody waits for any more: sent, refused, or asked for by somebody who is forgotten. */
export async function sweepParcels({
	db,
	parcelFolder,
}: Pick<ParcelTools, 'db' | 'parcelFolder'>): Promise<void> {
	// In this order: a parcel goes from the making to the outbox in one transaction.
	const found = await parcelFolders(parcelFolder);
	const making = new Set(await parcelsInTheMaking(db));
	const onTheWay = await filesOnTheWay(db);
	const isWaitedFor = (parcel: number) =>
		making.has(parcel) || onTheWay.some(file => file.startsWith(`${parcel}/`));
	for (const parcel of found.filter(one => !isWaitedFor(one))) await eraseParcel(parcelFolder, parcel);
}
