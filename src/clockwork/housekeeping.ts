/** What is kept no longer than needed: old update ids, messages and invitations, thrown finds, photos, pictures. */
import {emptyThrownFinds} from '../store/finds.ts';
import {eraseForgottenChats} from '../store/forget.ts';
import {forgetOldUpdates} from '../store/inbox.ts';
import {forgetOldInvitations} from '../store/invitations.ts';
import {forgetOldDays} from '../store/old-days.ts';
import {flushErased} from '../store/open.ts';
import {forgetMessages, forgetOldMessages} from '../store/outbox.ts';
import {dropPhotos, filesToErase, markErased} from '../store/photos.ts';
import type {Db} from '../store/schema.ts';
import {tidyPictures} from './kept-pictures.ts';
import {sweepParcels} from './parcels.ts';
import {erasePhoto} from './photo-files.ts';

/** What housekeeping works with. */
export type Housekeeping = {
	readonly db: Db;
	readonly photoFolder: string;
	readonly parcelFolder: string;
	/** Where finished pictures are kept. */
	readonly pictureFolder: string;
	readonly now: () => number;
};

/** A find thrown away can be taken back for a day. */
const thrownLivesMs = 24 * 3_600_000;
/** Whoever taps a link again that long after using it hears that it does not work. */
const usedCodeLivesMs = 30 * 24 * 3_600_000;

/** One round of housekeeping. */
export async function keepHouse(tools: Housekeeping): Promise<boolean> {
	const {db, photoFolder, parcelFolder, pictureFolder, now} = tools;
	await forgetOldUpdates(db, now());
	await forgetOldMessages(db, now());
	await forgetOldDays(db, now());
	await forgetOldInvitations(db, now() - usedCodeLivesMs);
	await db.transaction().execute(async tx => {
		for (const find of await emptyThrownFinds(tx, now() - thrownLivesMs)) {
			await dropPhotos(tx, find);
			// What was said of it names its place.
			await forgetMessages(tx, find);
		}
	});
	for (const hash of await filesToErase(db)) {
		await erasePhoto(photoFolder, hash);
		await markErased(db, hash);
	}
	await sweepParcels({db, parcelFolder});
	if ((await eraseForgottenChats(db)) > 0) await flushErased(db);
	await tidyPictures(pictureFolder, {now: now()});
	return false;
}
