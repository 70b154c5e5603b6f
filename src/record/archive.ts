/** A Darwin Core Archive written to disk: rows first into files of their own, then all of them into one zip. */
import {createHash} from 'node:crypto';
import {createWriteStream, existsSync} from 'node:fs';
import {mkdtemp, rename, rm} from 'node:fs/promises';
import {dirname, join} from 'node:path';
import {pipeline} from 'node:stream/promises';
import {ZipFile} from 'yazl';
import {headOf, lineOf} from './csv.ts';
import {hashName} from './darwin-core.ts';
import type {Dataset} from './dataset.ts';
import {descriptorOf} from './descriptor.ts';
import {emlOf} from './eml.ts';
import {type Extent, extended, nothingYet} from './extent.ts';
import {openSpool, type Spool} from './spool.ts';
import {identifications, measurements, occurrences, pictures} from './tables.ts';
import {linkOf, type ToldRecord} from './told.ts';

/** Where an archive goes and what goes into it beside the records. */
export type ArchiveWanted = {
	readonly file: string;
	readonly dataset: Dataset;
	readonly isExact: boolean;
	/** Where the photo with this SHA-256 stands; absent when photos stay out. */
	readonly photoFile?: ((hash: string) => string) | undefined;
};

type Spools = {
	readonly occurrences: Spool;
	readonly measurements: Spool;
	readonly identifications: Spool;
	readonly pictures: Spool;
};

/**
 * Writes an archive and says what it spans; without any record nothing is written. The same records give the same
 * bytes. Memory does not grow with the records, but by some hundred bytes for each photo.
 */
export async function writeArchive(
	records: AsyncIterable<ToldRecord>,
	wanted: ArchiveWanted,
): Promise<Extent> {
	// Beside the archive, and as private as mkdtemp makes it: it holds where people were.
	const folder = await mkdtemp(join(dirname(wanted.file), '.export-'));
	try {
		const spools = {
			occurrences: openSpool(join(folder, occurrences.file), headOf(occurrences)),
			measurements: openSpool(join(folder, measurements.file), headOf(measurements)),
			identifications: openSpool(join(folder, identifications.file), headOf(identifications)),
			pictures: openSpool(join(folder, pictures.file), headOf(pictures)),
		};
		const photos = new Set<string>();
		let hashes: readonly string[] = [];
		const closeAll = async () => {
			hashes = await Promise.all(Object.values(spools).map(spool => spool.close()));
		};
		const extent = await spoolAll(records, spools, {wanted, photos}).finally(closeAll);
		if (extent.records === 0) return extent;
		const packageId = hashName(createHash('sha256').update(hashes.join('\n')).digest('hex'));
		const half = join(folder, 'half.zip');
		await zipTogether(half, {folder, photos, wanted, extent, packageId});
		await rename(half, wanted.file);
		return extent;
	} finally {
		await rm(folder, {recursive: true, force: true});
	}
}

async function spoolAll(
	records: AsyncIterable<ToldRecord>,
	spools: Spools,
	{wanted, photos}: {wanted: ArchiveWanted; photos: Set<string>},
): Promise<Extent> {
	let extent = nothingYet;
	for await (const record of records) {
		extent = extended(extent, record);
		await spools.occurrences.add(lineOf(occurrences, record.id, record.core));
		for (const row of record.measurements)
			await spools.measurements.add(lineOf(measurements, record.id, row));
		for (const row of record.identifications)
			await spools.identifications.add(lineOf(identifications, record.id, row));
		for (const {hash, row} of record.pictures) {
			const isInArchive = wanted.photoFile !== undefined && existsSync(wanted.photoFile(hash));
			if (isInArchive) photos.add(hash);
			await spools.pictures.add(lineOf(pictures, record.id, {...row, identifier: linkOf(hash, isInArchive)}));
		}
	}
	return extent;
}

async function zipTogether(
	file: string,
	parts: {
		readonly folder: string;
		readonly photos: ReadonlySet<string>;
		readonly wanted: ArchiveWanted;
		readonly extent: Extent;
		readonly packageId: string;
	},
): Promise<void> {
	const {folder, photos, wanted, extent, packageId} = parts;
	const {dataset, isExact, photoFile} = wanted;
	const zip = new ZipFile();
	const extensions = [measurements, identifications, pictures];
	const constants = {license: dataset.licence.link, datasetName: dataset.title};
	// Always the same day, in local time as zip has it: the same bytes in every zone and on every day.
	const fixed = {mtime: new Date(2000, 0, 1), mode: 0o100644, forceDosTimestamp: true};
	zip.addBuffer(Buffer.from(descriptorOf(occurrences, extensions, constants)), 'meta.xml', fixed);
	zip.addBuffer(Buffer.from(emlOf({dataset, extent, packageId, isExact})), 'eml.xml', fixed);
	for (const table of [occurrences, ...extensions]) zip.addFile(join(folder, table.file), table.file, fixed);
	for (const hash of photoFile ? photos : [])
		zip.addFile(photoFile?.(hash) ?? '', linkOf(hash, true), {...fixed, compress: false});
	zip.end();
	const stop = new AbortController();
	// yazl tells of a file that cannot be read on the zip, and leaves its stream open.
	zip.on('error', (error: Error) => stop.abort(error));
	try {
		await pipeline(zip.outputStream, createWriteStream(file, {mode: 0o600}), {signal: stop.signal});
	} catch (error) {
		throw new Error(`Expected to write the archive; ${String(stop.signal.reason ?? error)}`, {cause: error});
	}
}
