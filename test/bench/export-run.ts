/** One export in a process of its own: says as JSON how long it took and how much memory it used over idling. */
import process from 'node:process';
import {runExport} from '../../src/cli/export-command.ts';
import {projectRoot} from '../../src/settings.ts';

const [folder = '.', ...args] = process.argv.slice(2);
const idleBytes = process.memoryUsage.rss();
const began = performance.now();
process.exitCode = await runExport(args, {
	root: projectRoot(),
	calledIn: folder,
	environment: {DATA_DIR: folder},
	say: () => undefined,
	complain: line => process.stderr.write(`${line}\n`),
});
const seconds = (performance.now() - began) / 1000;
// In kilobytes, on every platform that Node runs on.
const peakBytes = process.resourceUsage().maxRSS * 1024;
process.stdout.write(JSON.stringify({seconds, overIdleMb: (peakBytes - idleBytes) / 2 ** 20}));
