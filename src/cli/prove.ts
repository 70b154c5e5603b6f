/** `prove`: simulated finds of a region, named in every way, and a report of what came of it. */
import {writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {parseArgs} from 'node:util';
import {prove} from './proof.ts';
import {reportOf} from './proof-report.ts';
import {proofSvg} from './proof-svg.ts';
import {readChecked} from './regions.ts';
import {type ExitCode, pathFrom, sayFaults, type Terminal} from './terminal.ts';

/** What `prove --help` says. */
export const proveHelp = `npm run key -- prove <region> [--finds 20000] [--seed 1] [--write]

Draws finds by chance from a region's profiles, wears them down, lets a finder answer with slips, and
names each as a conversation would. Says how often names are right beside simpler ways of naming and
beside the best that is possible, whether "how sure" is right, how much is asked, and what is taken
for what. The same region, number and seed give the same report.

  --finds N   how many finds to draw, from 100 to 1000000
  --seed N    from which whole number chance begins
  --write     write flows/<region>/proof.md and proof.svg instead of saying the report`;

const mostFinds = 1_000_000;

/** Proves one region; says the report, or writes it beside the region's other files. */
export function runProve(args: readonly string[], terminal: Terminal): ExitCode {
	const {values, positionals} = parseArgs({
		args: [...args],
		options: {
			help: {type: 'boolean', short: 'h'},
			finds: {type: 'string', default: '20000'},
			seed: {type: 'string', default: '1'},
			write: {type: 'boolean'},
		},
		allowPositionals: true,
	});
	const [regionId] = positionals;
	if (values.help || regionId === undefined) {
		terminal.say(proveHelp);
		return values.help ? 0 : 2;
	}
	const [finds, seed] = [wholeNumber(values.finds), wholeNumber(values.seed)];
	if (finds === undefined || finds < 100 || finds > mostFinds || seed === undefined) {
		terminal.complain(
			`Expected --finds from 100 to ${mostFinds} and --seed as a whole number; got "${values.finds}" and "${values.seed}"`,
		);
		return 2;
	}
	const read = readChecked(terminal.root, regionId);
	if (read.kind === 'faults') {
		sayFaults({...terminal, say: terminal.complain}, read.faults);
		return 1;
	}
	const proof = prove(read.region, {finds, seed});
	const name = read.say.say('region-name');
	const report = reportOf(proof, name);
	if (!values.write) {
		terminal.say(report.trimEnd());
		return 0;
	}
	for (const [file, text] of [
		[join(read.region.folder, 'proof.md'), report],
		[join(read.region.folder, 'proof.svg'), proofSvg(proof, name)],
	] as const) {
		writeFileSync(file, text);
		terminal.say(pathFrom(terminal.calledIn, file));
	}
	return 0;
}

function wholeNumber(text: string): number | undefined {
	return /^\d{1,9}$/.test(text) ? Number(text) : undefined;
}
