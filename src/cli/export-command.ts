/** One export: saved records written to a file, as an open standard has them. */
import {randomBytes} from 'node:crypto';
import {existsSync} from 'node:fs';
import {mkdir, rename, rm, writeFile} from 'node:fs/promises';
import {dirname, join, resolve} from 'node:path';
import {type Region, readRegion} from '../key/region.ts';
import {type Dataset, readDataset} from '../record/dataset.ts';
import {writeExportFile} from '../record/export-file.ts';
import {recordsToTell} from '../record/exporting.ts';
import type {ToldRecord} from '../record/told.ts';
import {totalsOf} from '../record/totals.ts';
import {readSettings, type Settings} from '../settings.ts';
import {openStore} from '../store/open.ts';
import type {Db} from '../store/schema.ts';
import {type ExportCall, exportHelp, readExportCall} from './export-call.ts';
import {flowsOf, regionsIn} from './regions.ts';
import {type ExitCode, messageOf, pathFrom, type Terminal} from './terminal.ts';

/** What the command may touch, handed in so that tests can hand in their own. */
export type ExportTools = Pick<Terminal, 'root' | 'calledIn' | 'say' | 'complain'> & {
	readonly environment: Readonly<Record<string, string | undefined>>;
};

/** Exports records; says what went wrong in one line, and then nothing is written. */
export async function runExport(args: readonly string[], tools: ExportTools): Promise<ExitCode> {
	let call: ExportCall | 'help';
	try {
		call = readExportCall(args);
	} catch (error) {
		tools.complain(`${messageOf(error)}. npm run export -- --help tells more.`);
		return 2;
	}
	if (call === 'help') {
		tools.say(exportHelp);
		return 0;
	}
	try {
		const records = await exported(call, tools);
		if (records > 0) {
			tools.say(`${pathFrom(tools.calledIn, outOf(call, tools))}: ${records} records`);
			return 0;
		}
		tools.complain('Expected at least one saved record that fits; there is none, and nothing was written');
		return 1;
	} catch (error) {
		tools.complain(messageOf(error));
		return 1;
	}
}

/** How many records were written. */
async function exported(call: ExportCall, tools: ExportTools): Promise<number> {
	const settings = readSettings(tools.environment);
	const dataset = readDataset(resolve(tools.calledIn, settings.datasetFile));
	const regionOf = readOnce(tools.root);
	checkArea(call, {root: tools.root, regionOf});
	const database = resolve(tools.calledIn, settings.databaseFile);
	if (!existsSync(database)) throw new Error(`Expected a database at ${database}; there is none`);
	const out = outOf(call, tools);
	if (out === database) throw new Error(`Expected --out beside the database; ${out} is the database itself`);
	await mkdir(dirname(out), {recursive: true});
	const db = await openStore(database);
	try {
		return await write(db, call, {settings, dataset, regionOf, out, calledIn: tools.calledIn});
	} finally {
		await db.destroy();
	}
}

type Means = {
	readonly settings: Settings;
	readonly dataset: Dataset;
	readonly regionOf: (id: string) => Region;
	readonly out: string;
	readonly calledIn: string;
};

async function write(db: Db, call: ExportCall, means: Means): Promise<number> {
	const {dataset, regionOf, out, settings, calledIn} = means;
	const {isExact, wanted} = call;
	const licence = dataset.licence.link;
	const manner = {isExact, occurrenceStatus: dataset.occurrenceStatus, licence};
	const records = recordsToTell(db, {wanted, manner, regionOf});
	const photos = resolve(calledIn, settings.dataDir, 'photos');
	const photoFile = (hash: string) => join(photos, hash.slice(0, 2), `${hash}.jpg`);
	if (call.format === 'totals') return writeTotals(records, out);
	const wantedPhotos = call.withPhotos ? photoFile : undefined;
	return writeExportFile(records, {form: call.format, file: out, dataset, isExact, photoFile: wantedPhotos});
}

async function writeTotals(records: AsyncIterable<ToldRecord>, out: string): Promise<number> {
	const totals = await totalsOf(records);
	if (totals.all.finds === 0) return 0;
	const half = `${out}.${randomBytes(4).toString('hex')}.half`;
	try {
		await writeFile(half, `${JSON.stringify(totals, undefined, '\t')}\n`, {mode: 0o600});
		await rename(half, out);
	} finally {
		await rm(half, {force: true});
	}
	return totals.all.finds;
}

/** Regions by id, each read when it is first asked for. */
function readOnce(root: string): (id: string) => Region {
	const known = new Map<string, Region>();
	return id => {
		const read = known.get(id);
		if (read) return read;
		const names = regionsIn(root);
		if (!names.includes(id))
			throw new Error(
				`Expected the region of every record under flows/, which has ${names.join(', ')}; got "${id}"`,
			);
		const region = readRegion(flowsOf(root), id);
		known.set(id, region);
		return region;
	};
}

function checkArea(
	{wanted}: ExportCall,
	{root, regionOf}: {readonly root: string; readonly regionOf: (id: string) => Region},
): void {
	if (wanted.around?.kind !== 'area') return;
	const areas = regionsIn(root).flatMap(id => Object.keys(regionOf(id).key.areas));
	if (areas.includes(wanted.around.area)) return;
	throw new Error(`Expected --area with one of ${areas.join(', ')}; got "${wanted.around.area}"`);
}

function outOf({out}: ExportCall, {calledIn}: ExportTools): string {
	return resolve(calledIn, out);
}
