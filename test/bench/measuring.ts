/** How long one photo takes to be measured, how much memory, and whether anybody waits meanwhile. */
import {spawnSync} from 'node:child_process';
import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {monitorEventLoopDelay} from 'node:perf_hooks';
import {setTimeout as sleep} from 'node:timers/promises';
import {z} from 'zod';
import {openMeasurer} from '../../src/clockwork/measurer.ts';
import {projectRoot} from '../../src/settings.ts';
import {makerNamed} from './photo-makers.ts';
import {shotsOf} from './photo-set.ts';
import {inMs, median, percentile} from './table.ts';

const took = z.object({ms: z.number(), processorMs: z.number()});
const runSchema = z.object({decode: z.array(took), whole: z.array(took), peakMb: z.number()});
type Took = z.infer<typeof took>;

/**
 * The most of processor time that one photo may take, as a multiple of bare decoding in the same run, and of memory. On a
 * quiet machine that decodes 1280 pixels in 6 ms, these are 200 and 350 ms.
 */
export const measuringLimits = {median: 33, ninetyFive: 58, peakMb: 350} as const;

/** What measuring took: rows of a table, and what went over the limits. */
export type Measuring = {
	readonly photos: number;
	readonly rows: readonly (readonly string[])[];
	readonly tooMuch: readonly string[];
};

/** Measures photos of 1280 pixels, a third each with a sheet of A4, the measuring sheet and a card. */
export async function measureMeasuring(folder: string, perSet: number): Promise<Measuring> {
	const files: string[] = [];
	for (const only of ['a4 normal', 'sheet normal', 'card normal'])
		for await (const {file} of shotsOf(folder, {perSet, from: 0, only, by: makerNamed('layers')}))
			files.push(file);
	const script = join(projectRoot(), 'dist', 'test', 'bench', 'photo-run.js');
	const {stdout, stderr, status} = spawnSync(process.execPath, [script, ...files], {encoding: 'utf8'});
	if (status !== 0) throw new Error(`Expected photos to be measured; got ${stderr}`);
	const {decode, whole, peakMb} = runSchema.parse(JSON.parse(stdout));
	const perDecode = median(decode.map(({processorMs}) => processorMs));
	const times = (share: number) => percentile(ofProcessor(whole), share) / perDecode;
	const ratios = {median: times(0.5), ninetyFive: times(0.95), peakMb};
	return {
		photos: files.length,
		rows: [
			['', 'median', '95 in 100', 'of it processor', '95 in 100'],
			rowOf('bare decoding', decode),
			rowOf('whole', whole),
			['whole, times decoding', '', '', ratios.median.toFixed(1), ratios.ninetyFive.toFixed(1)],
			['memory of the process at most', `${peakMb.toFixed(0)} MiB`],
			['longest wait of others, measuring', inMs(await longestWait(files.slice(0, 12)))],
			['… idling', inMs(await longestWait([]))],
		],
		tooMuch: (['median', 'ninetyFive', 'peakMb'] as const).filter(key => ratios[key] > measuringLimits[key]),
	};
}

/** The longest time for which this process did not get to its events while its thread measured photos. */
async function longestWait(files: readonly string[]): Promise<number> {
	const measurer = openMeasurer();
	const [first] = files;
	if (first !== undefined) await measurer.measure(readFileSync(first));
	const delay = monitorEventLoopDelay({resolution: 5});
	delay.enable();
	for (const file of files) await measurer.measure(readFileSync(file));
	if (files.length === 0) await sleep(1000);
	delay.disable();
	await measurer.stop();
	return delay.max / 1e6;
}

function ofProcessor(list: readonly Took[]): readonly number[] {
	return list.map(({processorMs}) => processorMs);
}

function rowOf(name: string, list: readonly Took[]): readonly string[] {
	const all = list.map(({ms}) => ms);
	const own = ofProcessor(list);
	return [name, ...[all, own].flatMap(times => [inMs(median(times)), inMs(percentile(times, 0.95))])];
}
