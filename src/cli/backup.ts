/** Begins `npm run backup`: hands this process's words, settings and streams to the command. */
import process from 'node:process';
import {runBackup} from './backup-command.ts';

process.exitCode = await runBackup(process.argv.slice(2), {
	calledIn: process.cwd(),
	environment: process.env,
	say: line => process.stdout.write(`${line}\n`),
	complain: line => process.stderr.write(`${line}\n`),
});
