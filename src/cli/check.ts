/** `check`: every fault of the regions and of the questions around the key. */
import {existsSync} from 'node:fs';
import {join} from 'node:path';
import {parseArgs} from 'node:util';
import {checkAround} from '../find/check-around.ts';
import type {Fault} from '../key/yaml.ts';
import {readTexts} from '../text/text.ts';
import {flowsOf, readChecked, regionsIn, sharedFolders} from './regions.ts';
import {checkSentenceFiles} from './sentence-files.ts';
import {type ExitCode, sayFaults, type Terminal} from './terminal.ts';

/** What `check --help` says. */
export const checkHelp = `npm run key -- check [region]

Reads every region under flows/, or the one named, and the questions around the key
(flows/around.yaml and flows/en.ftl), and says what is wrong as "file:line: what, and what to do".
Leaves with 1 when anything is wrong.`;

/** Says every fault, or one line for each region without one. */
export function runCheck(args: readonly string[], terminal: Terminal): ExitCode {
	const {values, positionals} = parseArgs({
		args: [...args],
		options: {help: {type: 'boolean', short: 'h'}},
		allowPositionals: true,
	});
	if (values.help) {
		terminal.say(checkHelp);
		return 0;
	}
	const around = faultsAround(terminal.root);
	sayFaults(terminal, around);
	const regions = positionals.length > 0 ? positionals : regionsIn(terminal.root);
	const clean = regions.filter(region => isClean(region, terminal));
	return around.length === 0 && clean.length === regions.length ? 0 : 1;
}

function isClean(regionId: string, terminal: Terminal): boolean {
	const read = readChecked(terminal.root, regionId);
	if (read.kind === 'faults') {
		sayFaults(terminal, read.faults);
		return false;
	}
	const {key, profiles} = read.region;
	const taxa = counted(Object.keys(profiles.taxa).length, ['taxon', 'taxa']);
	const questions = counted(Object.keys(key.questions).length, ['question', 'questions']);
	terminal.say(`${regionId}: ${taxa}, ${questions}, nothing wrong`);
	return true;
}

function faultsAround(root: string): readonly Fault[] {
	const file = join(flowsOf(root), 'around.yaml');
	const missing = existsSync(file)
		? []
		: [{file, line: 1, what: 'There is no such file.', todo: 'Write the questions around the key.'}];
	const faults = [...missing, ...checkSentenceFiles(sharedFolders(root))];
	return faults.length > 0 ? faults : checkAround(flowsOf(root), readTexts([flowsOf(root)])).faults;
}

function counted(count: number, [one, many]: readonly [string, string]): string {
	return `${count} ${count === 1 ? one : many}`;
}
