/** Files of records and totals of a year, made for a coordinator. */
import {stat} from 'node:fs/promises';
import {join} from 'node:path';
import {readSquare} from '../place/grid-square.ts';
import {type Dataset, readDataset} from '../record/dataset.ts';
import {fileForms, writeExportFile} from '../record/export-file.ts';
import {recordsToTell} from '../record/exporting.ts';
import type {Status} from '../record/for-export.ts';
import type {Made} from '../record/made.ts';
import {seasonOf, seasonWanted} from '../record/season.ts';
import type {Wanted} from '../record/wanted.ts';
import type {ParcelWanted} from '../store/parcels.ts';
import type {Workshop} from './workshop.ts';

type ExportWanted = Extract<ParcelWanted, {kind: 'export'}>;

/** Files are sent up to 50 MB (platform-limits.json, send_document); a little is left for what goes with them. */
const mostBytes = 49_000_000;
const statusesOf: Readonly<Record<ExportWanted['statuses'], readonly Status[]>> = {
	all: ['unverified', 'agreed', 'other-name', 'higher-rank'],
	checked: ['agreed', 'other-name', 'higher-rank'],
	unchecked: ['unverified'],
};

/** Writes one file of records; places that a finder or a law wants hidden are told as squares. */
export async function makeExport(workshop: Workshop, wanted: ExportWanted, folder: string): Promise<Made> {
	const dataset = described(workshop);
	if (!dataset) return {kind: 'not-described'};
	const manner = {
		isExact: false,
		occurrenceStatus: dataset.occurrenceStatus,
		licence: dataset.licence.link,
	};
	const {regionOf, db} = workshop;
	const records = recordsToTell(db, {wanted: narrowed(wanted), manner, regionOf});
	const name = `finds-${wanted.called}.${fileForms[wanted.form]}`;
	const file = join(folder, name);
	const count = await writeExportFile(records, {form: wanted.form, file, dataset, isExact: false});
	if (count === 0) return {kind: 'nothing'};
	if ((await stat(file)).size > mostBytes) return {kind: 'too-large'};
	return {kind: 'files', names: [name], records: count};
}

/** Counts a year, as its records are told in public. */
export async function makeSeason({db, regionOf}: Workshop, year: number): Promise<Made> {
	// A licence is only written into files.
	const manner = {isExact: false, occurrenceStatus: 'detected', licence: ''} as const;
	const records = recordsToTell(db, {wanted: seasonWanted(year), manner, regionOf});
	return {kind: 'season', season: await seasonOf(records, year)};
}

function narrowed({from, to, statuses, square: written}: ExportWanted): Wanted {
	const read = written === undefined ? undefined : readSquare(written);
	return {
		from,
		to,
		statuses: statusesOf[statuses],
		around: read?.kind === 'square' ? {kind: 'square', square: read.square} : undefined,
	};
}

/** The keeper's words on the data; nothing, and a line in the log, where they are missing or do not fit. */
function described({datasetFile, log}: Workshop): Dataset | undefined {
	try {
		return readDataset(datasetFile);
	} catch (error) {
		log({level: 'warn', what: 'data not described', error: String(error)});
		return undefined;
	}
}
