/** One parcel made: what is asked for read from the store and written to files. */
import type {Made} from '../record/made.ts';
import {writeMyData} from '../record/my-data.ts';
import {heldOn} from '../store/held.ts';
import type {Parcel} from '../store/parcels.ts';
import {makeExport, makeSeason} from './make-export.ts';
import {photoPath} from './photo-files.ts';
import type {Workshop} from './workshop.ts';

/** Makes a parcel; its files go into `folder`. */
export async function makeParcel(workshop: Workshop, parcel: Parcel, folder: string): Promise<Made> {
	const {wanted} = parcel;
	switch (wanted.kind) {
		case 'my-data':
			return makeMyData(workshop, parcel, folder);
		case 'export':
			return makeExport(workshop, wanted, folder);
		case 'season':
			return makeSeason(workshop, wanted.year);
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
