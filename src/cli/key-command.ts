/** The verbs of `npm run key`, and what is said when a call is not understood. */
import {checkHelp, runCheck} from './check.ts';
import {drawHelp, runDraw} from './draw.ts';
import {nameHelp, runName} from './name.ts';
import {proveHelp, runProve} from './prove.ts';
import {type ExitCode, messageOf, type Terminal} from './terminal.ts';
import {runVocabulary, vocabularyHelp} from './vocabulary.ts';

type Verb = {
	readonly help: string;
	readonly run: (args: readonly string[], terminal: Terminal) => ExitCode | Promise<ExitCode>;
};

const verbs: ReadonlyMap<string, Verb> = new Map([
	['check', {help: checkHelp, run: runCheck}],
	['draw', {help: drawHelp, run: runDraw}],
	['vocabulary', {help: vocabularyHelp, run: runVocabulary}],
	['name', {help: nameHelp, run: runName}],
	['prove', {help: proveHelp, run: runProve}],
]);

const help = `npm run key -- <verb> …   tools for people who write keys

  check        say what is wrong with the regions, by file and line
  draw         draw a region's key
  vocabulary   list a region's characters, states, sizes, parts and taxa
  name         name specimens given as JSON
  prove        say how often names are right, by simulated finds

Each verb explains itself with --help.`;

/** Runs one verb; whatever goes wrong is said in one line and never as a stack of calls. */
export async function runKey(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
	const [name, ...rest] = args;
	if (name === undefined || name === '--help' || name === '-h') {
		terminal.say(help);
		return name === undefined ? 2 : 0;
	}
	const verb = verbs.get(name);
	if (!verb) {
		terminal.complain(`Expected one of ${[...verbs.keys()].join(', ')}; got "${name}"`);
		return 2;
	}
	try {
		return await verb.run(rest, terminal);
	} catch (error) {
		terminal.complain(messageOf(error));
		return isMiscalled(error) ? 2 : 1;
	}
}

/** Node's own parser of arguments marks its errors so. */
function isMiscalled(error: unknown): boolean {
	return error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS');
}
