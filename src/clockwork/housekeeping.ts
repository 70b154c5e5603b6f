/** What is kept no longer than needed: old update ids, old messages, thrown finds, erased photos, pictures. */
import {emptyThrownFinds} from '../store/finds.ts';
import {forgetOldUpdates} from '../store/inbox.ts';
import {forgetMessages, forgetOldMessages} from '../store/outbox.ts';
import {dropPhotos, filesToErase, markErased} from '../store/photos.ts';
import type {Db} from '../store/schema.ts';
import {tidyPictures} from './kept-pictures.ts';
import {erasePhoto} from './photo-files.ts';

/** What housekeeping works with. */
export type Housekeeping = {
	readonly db: Db;
	readonly photoFolder: string;
	/** Where finished pictures are kept. */
	readonly pictureFolder: string;
	readonly now: () => number;
};

/** A find thrown away can be taken back for a day. */
const thrownLivesMs = 24 * 3_600_000;

/** One round of housekeeping. */
export async function keepHouse({db, photoFolder, pictureFolder, now}: Housekeeping): Promise<boolean> {
	await forgetOldUpdates(db, now());
	await forgetOldMessages(db, now());
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
	await tidyPictures(pictureFolder, {now: now()});
	return false;
}
