/** How long an export of many records takes, and how much memory. */
import {spawnSync} from 'node:child_process';
import {copyFileSync, statSync} from 'node:fs';
import {join} from 'node:path';
import {z} from 'zod';
import type {Flow} from '../../src/find/flow.ts';
import {projectRoot} from '../../src/settings.ts';
import {openStore} from '../../src/store/open.ts';
import {fillStore} from './filled-store.ts';
import {fillRecords} from './made-records.ts';
import {trailOf} from './replay.ts';

const runSchema = z.object({seconds: z.number(), overIdleMb: z.number()});
const formats = ['archive', 'csv', 'geojson', 'totals'] as const;

/** The most that one export may take. */
export const exportLimits = {seconds: 60, overIdleMb: 200} as const;

/** What exports took: rows of a table, and what went over the limits. */
export type ExportsMeasured = {
	readonly rows: readonly (readonly string[])[];
	readonly tooMuch: readonly string[];
};

/** Fills a database in `folder` with records and exports all of them in each form. */
export async function measureExports(
	folder: string,
	{flow, records}: {readonly flow: Flow; readonly records: number},
): Promise<ExportsMeasured> {
	const db = await openStore(join(folder, 'pursekey.db'));
	const trail = trailOf(flow, 18);
	await fillStore(db, {finds: records, trail: []});
	await fillRecords(db, {records, region: flow.region, trail});
	await db.destroy();
	copyFileSync(join(projectRoot(), 'deploy', 'dataset.example.yaml'), join(folder, 'dataset.yaml'));
	const runs = formats.map(format => ({format, ...exportOnce(folder, format)}));
	return {
		rows: [
			['', 'time', 'memory over idle', 'file'],
			...runs.map(({format, seconds, overIdleMb, sizeMb}) => [
				format,
				`${seconds.toFixed(1)} s`,
				`${overIdleMb.toFixed(0)} MiB`,
				`${sizeMb.toFixed(1)} MiB`,
			]),
		],
		tooMuch: runs
			.filter(run => run.seconds > exportLimits.seconds || run.overIdleMb > exportLimits.overIdleMb)
			.map(({format}) => format),
	};
}

function exportOnce(folder: string, format: (typeof formats)[number]) {
	const file = join(folder, `all.${format}`);
	const script = join(projectRoot(), 'dist', 'test', 'bench', 'export-run.js');
	const args = [script, folder, '--format', format, '--out', file];
	const {stdout, stderr, status} = spawnSync(process.execPath, args, {encoding: 'utf8'});
	if (status !== 0) throw new Error(`Expected ${format} to be written; got ${stderr}`);
	return {...runSchema.parse(JSON.parse(stdout)), sizeMb: statSync(file).size / 2 ** 20};
}
