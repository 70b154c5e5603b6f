/** Records as one flat table: CSV for a spreadsheet, GeoJSON for a map. */
import {randomBytes} from 'node:crypto';
import {createWriteStream} from 'node:fs';
import {rename, rm} from 'node:fs/promises';
import {Readable} from 'node:stream';
import {pipeline} from 'node:stream/promises';
import {csvLine} from './csv.ts';
import {type Extent, extended, nothingYet} from './extent.ts';
import {type Cell, coreNames, type Row} from './tables.ts';
import type {ToldRecord} from './told.ts';

/** A flat form: what stands before, between and after its records, and how one is written. */
export type FlatForm = {
	readonly head: string;
	readonly between: string;
	readonly foot: string;
	readonly one: (record: ToldRecord, licence: string) => string;
};

// A flat table has no extension, so what was measured becomes columns, by names of our own and no terms.
const sizeNames = [
	'soakState',
	'capsuleLengthMm',
	'capsuleLengthPlusMinusMm',
	'capsuleWidthMm',
	'capsuleWidthPlusMinusMm',
] as const;
const names: readonly string[] = [...coreNames, 'license', ...sizeNames];
// What people wrote freely. A spreadsheet would run it when it begins like a formula.
const freeNames = new Set(['recordedBy', 'rightsHolder', 'identifiedBy', 'verbatimLocality']);

/** A table for spreadsheets: the core's columns, then the licence and what was measured. */
export const csvForm: FlatForm = {
	head: csvLine(names),
	between: '',
	foot: '',
	one: (record, licence) => {
		const row = flatRow(record, licence);
		return csvLine(names.map(name => (freeNames.has(name) ? defused(row[name]) : row[name])));
	},
};

/** A feature collection (RFC 7946), a feature on each line; a find without a point has no geometry. */
export const geojsonForm: FlatForm = {
	head: '{"type":"FeatureCollection","features":[\n',
	between: ',\n',
	foot: '\n]}\n',
	one: (record, licence) =>
		JSON.stringify({
			type: 'Feature',
			id: record.id,
			// Longitude first.
			geometry: record.point
				? {type: 'Point', coordinates: [record.point.longitude, record.point.latitude]}
				: null,
			properties: flatRow(record, licence),
		}),
};

/** Writes records in a flat form and says what they span; without any record nothing is written. */
export async function writeFlat(
	records: AsyncIterable<ToldRecord>,
	form: FlatForm,
	{file, licence}: {readonly file: string; readonly licence: string},
): Promise<Extent> {
	let extent = nothingYet;
	async function* pieces(): AsyncGenerator<string> {
		let waiting = form.head;
		for await (const record of records) {
			waiting += `${extent.records === 0 ? '' : form.between}${form.one(record, licence)}`;
			extent = extended(extent, record);
			if (waiting.length < 65_536) continue;
			yield waiting;
			waiting = '';
		}
		yield waiting + form.foot;
	}
	const half = `${file}.${randomBytes(4).toString('hex')}.half`;
	try {
		await pipeline(Readable.from(pieces()), createWriteStream(half, {mode: 0o600}));
		if (extent.records > 0) await rename(half, file);
		return extent;
	} finally {
		await rm(half, {force: true});
	}
}

function flatRow({core, measurements}: ToldRecord, licence: string): Row {
	const measured = (type: RegExp) => measurements.find(({measurementType}) => type.test(measurementType));
	const length = measured(/^capsule length/);
	const width = measured(/^capsule width/);
	return {
		...core,
		license: licence,
		soakState: measured(/^soak state/)?.measurementValue,
		capsuleLengthMm: length?.measurementValue,
		capsuleLengthPlusMinusMm: length?.measurementAccuracy,
		capsuleWidthMm: width?.measurementValue,
		capsuleWidthPlusMinusMm: width?.measurementAccuracy,
	} satisfies Row & Record<(typeof sizeNames)[number], Cell>;
}

function defused(cell: Cell): Cell {
	return typeof cell === 'string' && /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
}
