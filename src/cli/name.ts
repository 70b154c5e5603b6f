/** `name`: specimens on standard input, one JSON object a line, named as a conversation would name them. */
import {parseArgs} from 'node:util';
import {conclude} from '../key/conclude.ts';
import {rank} from '../key/evidence.ts';
import {nameSpecimen} from '../key/name.ts';
import type {Observed} from '../key/observed.ts';
import type {Region} from '../key/region.ts';
import {compileKey} from '../key/states.ts';
import {readChecked} from './regions.ts';
import {type ReadSpecimen, specimenReader} from './specimen-line.ts';
import {type ExitCode, sayFaults, type Terminal} from './terminal.ts';

/** What `name --help` says. */
export const nameHelp = `npm run key -- name <region> [--json] [--all]

Reads specimens from standard input, one JSON object a line, and answers each with one line:

  {"length": 66, "lengthUncertainty": 1, "width": 48, "bound": "exact", "lost": ["horns"],
   "characters": {"<character>": "<state>", "<another>": "cant-tell"}}

Sizes are in millimetres and may be left out; without an uncertainty it is 1 mm. "bound" is "exact"
or "at-least" and holds for both sizes; without it a length counts as "at-least" when "aprons" are
lost and a width when "sides" are lost. A character may also stand beside the sizes; one that is not
given, or "cant-tell", cannot be told. The command "vocabulary" lists characters, states and parts.

  --json   {"ranking": [{"taxon", "probability"}], "leaves": [...], "asked": [...], "said": "..."}
           ranking: every taxon and "something-else", best first; the probabilities sum to 1
           leaves:  the taxa that the questions lead to
           asked:   the characters and "width", in the order the key asks for them
           said:    how sure the answer is, and the scientific names
  --all    rank by everything on the line; otherwise by what the key asks for, as in a conversation

A line that cannot be read is answered with {"error": "...", "line": n}; the others still count, and
the command leaves with 1 at the end.`;

/** One specimen answered. */
export type NameAnswer = {
	readonly ranking: readonly {readonly taxon: string; readonly probability: number}[];
	readonly leaves: readonly string[];
	readonly asked: readonly string[];
	/** How sure the answer is and the scientific names, best first. */
	readonly said: string;
};

/** A line that was not understood; lines count from 1. */
export type NameRefusal = {readonly error: string; readonly line: number};

/** Answers specimens line by line as they come. */
export async function runName(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
	const {values, positionals} = parseArgs({
		args: [...args],
		options: {
			help: {type: 'boolean', short: 'h'},
			json: {type: 'boolean'},
			all: {type: 'boolean'},
		},
		allowPositionals: true,
	});
	const [regionId] = positionals;
	if (values.help || regionId === undefined) {
		terminal.say(nameHelp);
		return values.help ? 0 : 2;
	}
	const read = readChecked(terminal.root, regionId);
	if (read.kind === 'faults') {
		sayFaults({...terminal, say: terminal.complain}, read.faults);
		return 1;
	}
	const name = namerOf(read.region, values.all === true);
	let exitCode: ExitCode = 0;
	let line = 0;
	for await (const text of terminal.lines) {
		line += 1;
		if (text.trim() === '') continue;
		const answer = name(text, line);
		if ('error' in answer) exitCode = 1;
		terminal.say(values.json ? JSON.stringify(answer) : inWords(answer, line));
	}
	return exitCode;
}

/** Builds what answers one line; `isAll` ranks by everything given, not only by what the key asks for. */
export function namerOf(
	region: Region,
	isAll: boolean,
): (text: string, line: number) => NameAnswer | NameRefusal {
	const machine = compileKey(region);
	const readSpecimen: ReadSpecimen = specimenReader(region);
	const answer = (specimen: Observed): NameAnswer => {
		const {asked, leaves, observed} = nameSpecimen(region, machine, specimen);
		const ranking = rank(region, isAll ? specimen : observed);
		const {sure, names} = conclude(ranking, leaves);
		const said = names.map(({taxon}) => region.profiles.taxa[taxon]?.scientificName ?? taxon);
		return {ranking, leaves, asked, said: said.length > 0 ? `${sure}: ${said.join(', ')}` : sure};
	};
	return (text, line) => {
		const read = readSpecimen(text);
		return read.kind === 'specimen' ? answer(read.observed) : {error: read.why, line};
	};
}

function inWords(answer: NameAnswer | NameRefusal, line: number): string {
	if ('error' in answer) return `${line}: ${answer.error}`;
	const best = answer.ranking
		.slice(0, 3)
		.map(({taxon, probability}) => `${taxon} ${(probability * 100).toFixed(1)} in 100`);
	return `${line}: ${answer.said} (${best.join(', ')})`;
}
