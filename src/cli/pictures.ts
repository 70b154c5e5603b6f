/** Begins `npm run pictures`: hands this process's words, folder and streams to the command. */
import process from 'node:process';
import {projectRoot} from '../settings.ts';
import {runPictures} from './pictures-command.ts';

process.exitCode = await runPictures(process.argv.slice(2), {
	root: projectRoot(),
	calledIn: process.cwd(),
	say: line => process.stdout.write(`${line}\n`),
	complain: line => process.stderr.write(`${line}\n`),
});
