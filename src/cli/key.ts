/** Begins `npm run key`: hands this process's words, folder and streams to the command. */
import process from 'node:process';
import {createInterface} from 'node:readline';
import {projectRoot} from '../settings.ts';
import {runKey} from './key-command.ts';

// Somebody who pipes into `head` has seen enough.
process.stdout.on('error', () => process.exit(0));

process.exitCode = await runKey(process.argv.slice(2), {
	root: projectRoot(),
	calledIn: process.cwd(),
	lines: {
		[Symbol.asyncIterator]: () => createInterface({input: process.stdin})[Symbol.asyncIterator](),
	},
	say: line => process.stdout.write(`${line}\n`),
	complain: line => process.stderr.write(`${line}\n`),
});
