/** A copy of the project's flows to seed faults in, and a terminal that remembers what was said. */

import {cpSync, readFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {runKey} from '../../src/cli/key-command.ts';
import type {Terminal} from '../../src/cli/terminal.ts';
import {ownFolder} from '../support/folder.ts';

const root = join(import.meta.dirname, '../..');

/** A change to one file of the copy. */
export type Seed = {readonly in: string; readonly find: string | RegExp; readonly put: string};

/** What a command said and left behind. */
export type Ran = {readonly said: string; readonly complained: string; readonly exitCode: number};

/** Copies `flows/` into a folder of its own and changes it; gives the folder. */
export function projectWith(...seeds: readonly Seed[]): string {
	const folder = ownFolder('project');
	cpSync(join(root, 'flows'), join(folder, 'flows'), {recursive: true});
	for (const {in: name, find, put} of seeds) {
		const file = join(folder, 'flows', name);
		const whole = readFileSync(file, 'utf8');
		const seeded = whole.replace(find, put);
		if (seeded === whole) throw new Error(`Expected ${String(find)} in ${name}; it is not there`);
		writeFileSync(file, seeded);
	}
	return folder;
}

/** Runs the command in a project, from its folder, with words on its standard input. */
export async function run(args: readonly string[], from: {root?: string; input?: string} = {}): Promise<Ran> {
	const said: string[] = [];
	const complained: string[] = [];
	const folder = from.root ?? root;
	const terminal: Terminal = {
		root: folder,
		calledIn: folder,
		lines: linesOf(from.input ?? ''),
		say: line => said.push(line),
		complain: line => complained.push(line),
	};
	const exitCode = await runKey(args, terminal);
	return {said: said.join('\n'), complained: complained.join('\n'), exitCode};
}

async function* linesOf(text: string): AsyncGenerator<string> {
	if (text !== '') yield* text.split('\n');
}
