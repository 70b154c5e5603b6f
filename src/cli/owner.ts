/** Begins `npm run owner`: hands this process's words, settings, chance and clock to the command. */
import {randomBytes} from 'node:crypto';
import process from 'node:process';
import {runOwner} from './owner-command.ts';

process.exitCode = await runOwner(process.argv.slice(2), {
	calledIn: process.cwd(),
	environment: process.env,
	random: randomBytes,
	now: Date.now(),
	say: line => process.stdout.write(`${line}\n`),
	complain: line => process.stderr.write(`${line}\n`),
});
