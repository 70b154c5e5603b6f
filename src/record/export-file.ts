/** Records written to one file in the form that was asked for. */
import {writeArchive} from './archive.ts';
import type {Dataset} from './dataset.ts';
import {csvForm, geojsonForm, writeFlat} from './flat.ts';
import type {ToldRecord} from './told.ts';

/** The forms of a file of records, each with the end of its name. */
export const fileForms = {archive: 'zip', csv: 'csv', geojson: 'geojson'} as const;

/** A form of a file of records. */
export type FileForm = keyof typeof fileForms;

/** Which form, to which file, and what stands beside the records. */
export type FileWanted = {
	readonly form: FileForm;
	readonly file: string;
	readonly dataset: Dataset;
	/** Places are told as they are known. */
	readonly isExact: boolean;
	/** Where the photo with this SHA-256 stands; absent when photos stay out. */
	readonly photoFile?: ((hash: string) => string) | undefined;
};

/** Writes the file and says how many records are in it; without any nothing is written. */
export async function writeExportFile(
	records: AsyncIterable<ToldRecord>,
	{form, file, dataset, isExact, photoFile}: FileWanted,
): Promise<number> {
	const licence = dataset.licence.link;
	switch (form) {
		case 'archive':
			return (await writeArchive(records, {file, dataset, isExact, photoFile})).records;
		case 'csv':
			return (await writeFlat(records, csvForm, {file, licence})).records;
		case 'geojson':
			return (await writeFlat(records, geojsonForm, {file, licence})).records;
		default:
			return never(form);
	}
}

function never(value: never): never {
	throw new Error(`Expected a known form; got ${JSON.stringify(value)}`);
}
