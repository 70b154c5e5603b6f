/** `npm run bench`: how long one update takes, and what else people and keepers wait for. */
import {mkdtempSync, rmSync} from 'node:fs';
import {cpus, loadavg, tmpdir} from 'node:os';
import {join} from 'node:path';
import {readFlow} from '../../src/find/flow.ts';
import {projectRoot} from '../../src/settings.ts';
import {openStore} from '../../src/store/open.ts';
import {beginWalkers} from './conversation.ts';
import {measureCards} from './drawing.ts';
import {exportLimits, measureExports} from './exporting.ts';
import {fillStore} from './filled-store.ts';
import {measureMeasuring, measuringLimits} from './measuring.ts';
import {measureNaming} from './naming.ts';
import {measureReplay, trailOf} from './replay.ts';
import {measureStart} from './start-up.ts';
import {inMs, median, percentile, sayTable} from './table.ts';
import {measureTelling, mostRatio} from './telling.ts';

const findsBefore = 10_000;
const recordsExported = 100_000;
const leastUpdates = 2000;
const warmingWalks = 10;
const photosPerSet = 20;
/** A person with one bar of signal waits for the network, not for us. */
const mostMedianMs = 5;

const folder = mkdtempSync(join(tmpdir(), 'pursekey-bench-'));
try {
	process.exitCode = await bench();
} finally {
	rmSync(folder, {recursive: true, force: true});
}

async function bench(): Promise<number> {
	const flow = readFlow(join(projectRoot(), 'flows'), 'british-isles');
	const file = join(folder, 'pursekey.db');
	const db = await openStore(file);
	await fillStore(db, {finds: findsBefore, trail: trailOf(flow, 18)});
	const walkers = await beginWalkers(db);
	for (let walk = 0; walk < warmingWalks; walk += 1) await walkers.walk();
	walkers.forgetTimes();
	while (walkers.times().length < leastUpdates) await walkers.walk();
	const times = walkers.times();
	const kept = await walkers.check();
	await db.destroy();
	sayMachine();
	const all = times.map(({ms}) => ms);
	const kinds = [...new Set(times.map(({kind}) => kind))];
	sayTable(`${all.length} updates beside ${findsBefore} finds, ${kept} drafts kept`, [
		['', 'median', '95 in 100', 'of it processor'],
		...['any', ...kinds].map(kind => {
			const ofKind = times.filter(time => kind === 'any' || time.kind === kind);
			const ms = ofKind.map(time => time.ms);
			// Other work on the machine stretches the clock and not this.
			const processorMs = median(ofKind.map(time => time.processorMs));
			return [kind, inMs(median(ms)), inMs(percentile(ms, 0.95)), inMs(processorMs)];
		}),
	]);
	sayTable('replay of a trail', measureReplay(flow));
	sayTable('start-up to ready, beside the same database', await measureStart(folder));
	sayTable('npm run key -- name', measureNaming(flow.region));
	sayTable('the card of a result (median, 95 in 100)', await measureCards(join(folder, 'photos')));
	const measuring = await measureMeasuring(join(tmpdir(), 'pursekey-trial'), photosPerSet);
	sayTable(`one photo measured, of ${measuring.photos}`, measuring.rows);
	const exports = await measureExports(mkdtempSync(join(folder, 'export-')), {
		flow,
		records: recordsExported,
	});
	sayTable(`export of ${recordsExported} records`, exports.rows);
	const telling = await measureTelling(mkdtempSync(join(folder, 'telling-')));
	sayTable(`an answer, ${telling.ratio.toFixed(2)} times as long while a crowd is told`, telling.rows);
	const isSlow = median(all) > mostMedianMs;
	if (isSlow) process.stdout.write(`\nExpected a median of at most ${mostMedianMs} ms for one update.\n`);
	if (exports.tooMuch.length > 0) {
		const {seconds, overIdleMb} = exportLimits;
		process.stdout.write(
			`\nExpected an export within ${seconds} s and ${overIdleMb} MiB; ${exports.tooMuch.join(', ')} took more.\n`,
		);
	}
	if (measuring.tooMuch.length > 0) {
		const {median: middle, ninetyFive, peakMb} = measuringLimits;
		process.stdout.write(
			`\nExpected a photo within ${middle} times bare decoding (95 in 100 within ${ninetyFive}), and ${peakMb} MiB.\n`,
		);
	}
	const isHeldUp = telling.ratio > mostRatio;
	if (isHeldUp)
		process.stdout.write(`\nExpected answers at most ${mostRatio} times as long while a crowd is told.\n`);
	return isSlow || isHeldUp || exports.tooMuch.length + measuring.tooMuch.length > 0 ? 1 : 0;
}

/** Numbers mean little without the machine, and nothing beside other work. */
function sayMachine(): void {
	const [first] = cpus();
	const load = loadavg()[0]?.toFixed(1);
	process.stdout.write(`Node ${process.version}, ${cpus().length} cores (${first?.model}), load ${load}\n`);
}
