/** Begins `npm run capsule`: hands this process's words, folder, clock and streams to the command. */
import process from 'node:process';
import {projectRoot} from '../settings.ts';
import {runCapsule} from './capsule-command.ts';

process.exitCode = await runCapsule(process.argv.slice(2), {
	root: projectRoot(),
	calledIn: process.cwd(),
	now: Date.now,
	say: line => process.stdout.write(`${line}\n`),
	complain: line => process.stderr.write(`${line}\n`),
});
