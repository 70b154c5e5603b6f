/** One parcel made: what is asked for read from the store and written to files. */
import {writeFile} from 'node:fs/promises';
import {join} from 'node:path';
import type {Made} from '../record/made.ts';
import {writeMyData} from '../record/my-data.ts';
import {dayById} from '../store/days.ts';
import {heldOn} from '../store/held.ts';
import type {Parcel} from '../store/parcels.ts';
import {personById} from '../store/people.ts';
import {daySchema} from '../survey/day.ts';
import {measuringSheetPdf} from '../survey/measuring-sheet.ts';
import {makeExport, makeSeason} from './make-export.ts';
import {writePoster} from './make-poster.ts';
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
		case 'sheet':
			return makeSheet(workshop, parcel, folder);
		case 'poster':
			return makePoster(workshop, {...wanted, person: parcel.person}, folder);
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

async function makeSheet({db, now, sayIn}: Workshop, {person}: Parcel, folder: string): Promise<Made> {
	const {language} = await personById(db, person);
	const name = 'measuring-sheet.pdf';
	await writeFile(join(folder, name), await measuringSheetPdf(sayIn(language), now()), {mode: 0o600});
	return {kind: 'files', names: [name]};
}

async function makePoster(
	{db, now, sayIn}: Workshop,
	wanted: {readonly day: number; readonly link: string; readonly person: number},
	folder: string,
): Promise<Made> {
	const row = await dayById(db, wanted.day);
	if (!row?.body) throw new Error(`Expected day ${wanted.day} to be published for its poster; it is not`);
	const {language} = await personById(db, wanted.person);
	const day = daySchema.parse(JSON.parse(row.body));
	return {
		kind: 'files',
		names: [await writePoster({day, link: wanted.link, folder, say: sayIn(language), now: now()})],
	};
}
