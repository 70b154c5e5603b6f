/** One parcel made: what is asked for read from the store and written to files. */
import type {Made} from '../record/made.ts';
import {writeMyData} from '../record/my-data.ts';
import {heldOn} from '../store/held.ts';
import type {Parcel} from '../store/parcels.ts';
import type {Db} from '../store/schema.ts';
import type {Say} from '../text/text.ts';
import {photoPath} from './photo-files.ts';

/** What parcels are made with. */
export type Workshop = {
	readonly db: Db;
	readonly photoFolder: string;
	readonly now: () => number;
	/** The sentences in a language, or in the usual one. */
	readonly sayIn: (language: string | undefined) => Say;
};

/** Makes a parcel; its files go into `folder`. */
export async function makeParcel(workshop: Workshop, parcel: Parcel, folder: string): Promise<Made> {
	switch (parcel.wanted.kind) {
		case 'my-data':
			return makeMyData(workshop, parcel, folder);
	}
}

async function makeMyData(workshop: Workshop, {person}: Parcel, folder: string): Promise<Made> {
	const {db, photoFolder, now, sayIn} = workshop;
	const held = await db.transaction().execute(tx => heldOn(tx, person));
	const names = await writeMyData({
		held,
		folder,
		explained: sayIn(held.person.language ?? undefined).say('my-data-inside'),
		photoFile: hash => photoPath(photoFolder, hash),
		now: now(),
	});
	return {kind: 'files', names};
}
