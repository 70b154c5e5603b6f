/** Photos measured in a process of its own: says as JSON how long each took beside bare decoding, and the most memory. */
import {readFileSync} from 'node:fs';
import process from 'node:process';
import sharp from 'sharp';
import {measurePhoto} from '../../src/capsule/measure.ts';

type Took = {readonly ms: number; readonly processorMs: number};

// As in the thread that measures.
sharp.cache(false);
const files = process.argv.slice(2);
const rounds = {decode: [] as Took[], whole: [] as Took[]};
// The first few are compiled while they run.
for (const [index, file] of [...files.slice(0, 6), ...files].entries()) {
	const bytes = readFileSync(file);
	const decode = await clock(() => sharp(bytes).rotate().raw().toBuffer());
	const whole = await clock(() => measurePhoto(bytes));
	if (index < 6) continue;
	rounds.decode.push(decode);
	rounds.whole.push(whole);
}
// In kilobytes, on every platform that Node runs on.
const peakMb = process.resourceUsage().maxRSS / 1024;
process.stdout.write(JSON.stringify({...rounds, peakMb}));

async function clock(work: () => Promise<unknown>): Promise<Took> {
	const [began, begunCpu] = [performance.now(), process.cpuUsage()];
	await work();
	const {user, system} = process.cpuUsage(begunCpu);
	return {ms: performance.now() - began, processorMs: (user + system) / 1000};
}
