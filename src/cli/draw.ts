/** `draw`: a region's key as a picture and as text of a state diagram. */
import {mkdirSync, writeFileSync} from 'node:fs';
import {join, resolve} from 'node:path';
import {parseArgs} from 'node:util';
import {diagramOf} from '../key/diagram.ts';
import {mermaidOf} from './diagram-mermaid.ts';
import {svgOf} from './diagram-svg.ts';
import {readChecked} from './regions.ts';
import {type ExitCode, pathFrom, sayFaults, type Terminal} from './terminal.ts';

/** What `draw --help` says. */
export const drawHelp = `npm run key -- draw <region> [--out DIR] [--stdout svg|mermaid]

Draws a region's key: one box for each question and each taxon, one arrow for each option and size.
Writes <region>.svg (a picture) and <region>.mmd (a Mermaid state diagram).

  --out DIR               where to write; else the folder you are in
  --stdout svg|mermaid    write no file and say this one instead`;

/** Draws one region into files or on standard output. */
export function runDraw(args: readonly string[], terminal: Terminal): ExitCode {
	const {values, positionals} = parseArgs({
		args: [...args],
		options: {help: {type: 'boolean', short: 'h'}, out: {type: 'string'}, stdout: {type: 'string'}},
		allowPositionals: true,
	});
	const [regionId] = positionals;
	if (values.help || regionId === undefined) {
		terminal.say(drawHelp);
		return values.help ? 0 : 2;
	}
	if (values.stdout !== undefined && values.stdout !== 'svg' && values.stdout !== 'mermaid') {
		terminal.complain(`Expected --stdout svg or --stdout mermaid; got "${values.stdout}"`);
		return 2;
	}
	const read = readChecked(terminal.root, regionId);
	if (read.kind === 'faults') {
		sayFaults({...terminal, say: terminal.complain}, read.faults);
		return 1;
	}
	const diagram = diagramOf(read.region, read.say);
	if (values.stdout !== undefined) {
		terminal.say((values.stdout === 'svg' ? svgOf(diagram) : mermaidOf(diagram)).trimEnd());
		return 0;
	}
	const folder = resolve(terminal.calledIn, values.out ?? '.');
	mkdirSync(folder, {recursive: true});
	for (const [ending, text] of [
		['svg', svgOf(diagram)],
		['mmd', mermaidOf(diagram)],
	] as const) {
		const file = join(folder, `${regionId}.${ending}`);
		writeFileSync(file, text);
		terminal.say(pathFrom(terminal.calledIn, file));
	}
	return 0;
}
