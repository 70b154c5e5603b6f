/** The program as a process: settings from the environment, a clean stop on SIGTERM and SIGINT. */
import pino from 'pino';
import {type Claim, type Clock, startProgram} from './program.ts';
import {readSettings, type Settings} from './settings.ts';

const stopPatienceMs = 10_000;

try {
	await run(readSettings(process.env));
} catch (error) {
	process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
	process.exit(2);
}

async function run(settings: Settings): Promise<void> {
	const logger = pino({level: settings.logLevel, base: null}, pino.destination(2));
	const log = ({level, ...line}: Readonly<Record<string, unknown>>) => {
		if (level === 'error') logger.error(line);
		else if (level === 'warn') logger.warn(line);
		else logger.info(line);
	};
	const program = await startProgram(settings, {clock: realClock(), log});
	const ready =
		program.roomUrl === undefined
			? 'pursekey is listening. Stop it with Ctrl+C.\n'
			: `pursekey is ready. Open its chat room in a browser: ${program.roomUrl}\nStop it with Ctrl+C.\n`;
	let isStopping = false;
	const stop = (exitCode: 0 | 1) => {
		if (isStopping) return;
		isStopping = true;
		// A hanging connection may not keep the process alive for ever.
		setTimeout(() => process.exit(1), stopPatienceMs).unref();
		program.stop().then(
			() => process.exit(exitCode),
			error => {
				log({level: 'error', what: 'stop', error: String(error)});
				process.exit(1);
			},
		);
	};
	process.on('SIGTERM', () => stop(0));
	process.on('SIGINT', () => stop(0));
	program.ended.catch(error => {
		process.stderr.write(`Listening ended: ${String(error)}\n`);
		stop(1);
	});
	// Last, since whoever reads it may stop the program at once.
	process.stdout.write(program.claim ? ready + sayClaim(program.claim) : ready);
}

function sayClaim({code, link}: Claim): string {
	const how = link === undefined ? 'write this to the bot' : `open ${link} or write this to the bot`;
	return `It has no owner yet. To become its owner, ${how}: /start ${code}\n`;
}

/** The machine's clock, and how far the room has moved it. */
function realClock(): Clock {
	let aheadMs = 0;
	return {
		now: () => Date.now() + aheadMs,
		forward: ms => {
			aheadMs += ms;
		},
	};
}
