/** Begins `npm run export`: hands this process's words, settings and streams to the command. */
import process from 'node:process';
import {projectRoot} from '../settings.ts';
import {runExport} from './export-command.ts';

process.exitCode = await runExport(process.argv.slice(2), {
	root: projectRoot(),
	calledIn: process.cwd(),
	environment: process.env,
	say: line => process.stdout.write(`${line}\n`),
	complain: line => process.stderr.write(`${line}\n`),
});
